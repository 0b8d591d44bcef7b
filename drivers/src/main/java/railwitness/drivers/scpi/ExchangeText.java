package railwitness.drivers.scpi;

import java.util.ArrayList;
import java.util.List;

/**
 * Exchanges of one instrument as text that people can read and write: {@code > } stands before what was sent, {@code < }
 * before what came back, a line each where more than one came; {@code ~} alone says that nothing came, {@code #} begins a
 * remark. {@code \r}, {@code \n}, {@code \t} and {@code \\} stand for the signs themselves.
 */
public final class ExchangeText {
    private ExchangeText() {}

    /** The text of these exchanges. */
    public static String of(List<Exchange> exchanges) {
        StringBuilder text = new StringBuilder();
        for (Exchange exchange : exchanges) {
            if (!exchange.trouble().isEmpty()) {
                text.append("# ").append(written(exchange.trouble())).append('\n');
            }
            text.append("> ").append(written(exchange.sent())).append('\n');
            if (!exchange.received().isEmpty()) {
                text.append("< ").append(written(exchange.received())).append('\n');
            } else if (exchange.sent().contains("?")) {
                text.append("~\n");
            }
        }
        return text.toString();
    }

    /**
     * Reads it back; several lines that came back are one reply with line feeds between them. Times are zero.
     *
     * @throws IllegalArgumentException naming the line that is none of these
     */
    public static List<Exchange> read(String instrument, String text) {
        List<Exchange> exchanges = new ArrayList<>();
        int number = 0;
        for (String line : text.split("\n")) {
            number++;
            if (line.startsWith("> ")) {
                exchanges.add(new Exchange(0, instrument, false, read(line.substring(2)), "", ""));
            } else if (line.startsWith("<") && !exchanges.isEmpty()) {
                Exchange last = exchanges.remove(exchanges.size() - 1);
                String more = read(line.substring(Math.min(2, line.length())));
                String whole = last.received().isEmpty() ? more : last.received() + "\n" + more;
                exchanges.add(new Exchange(0, instrument, false, last.sent(), whole, ""));
            } else if (!line.isBlank() && !line.startsWith("#") && !line.equals("~")) {
                throw new IllegalArgumentException("line " + number + " '" + line
                        + "': write '> ' before what was sent, '< ' before what came back, '~' for nothing");
            }
        }
        return exchanges;
    }

    private static String written(String text) {
        return text.replace("\\", "\\\\")
                .replace("\r", "\\r")
                .replace("\n", "\\n")
                .replace("\t", "\\t");
    }

    private static String read(String text) {
        StringBuilder plain = new StringBuilder();
        for (int at = 0; at < text.length(); at++) {
            char sign = text.charAt(at);
            if (sign == '\\' && at + 1 < text.length()) {
                at++;
                plain.append(
                        switch (text.charAt(at)) {
                            case 'r' -> '\r';
                            case 'n' -> '\n';
                            case 't' -> '\t';
                            default -> text.charAt(at);
                        });
            } else {
                plain.append(sign);
            }
        }
        return plain.toString();
    }
}
