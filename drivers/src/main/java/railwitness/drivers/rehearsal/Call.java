package railwitness.drivers.rehearsal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.drivers.scpi.Fields;

/**
 * One command or query as it came: its parameters, the channel list taken out, and the numbers of its header.
 *
 * @param channel from a list such as {@code (@2)}
 */
record Call(List<String> parameters, OptionalInt channel, List<Integer> numbers) {
    private static final Pattern CHANNELS =
            Pattern.compile("\\(@\\s*(\\d{1,3}).*\\)|CH(\\d{1,3})", Pattern.CASE_INSENSITIVE);

    static Call of(String text, List<Integer> numbers) {
        List<String> parameters = new ArrayList<>(text.isBlank() ? List.of() : Fields.split(text, ','));
        OptionalInt channel = OptionalInt.empty();
        if (!parameters.isEmpty()) {
            Matcher list = CHANNELS.matcher(parameters.get(parameters.size() - 1));
            if (list.matches()) {
                parameters.remove(parameters.size() - 1);
                channel = OptionalInt.of(Integer.parseInt(list.group(1) == null ? list.group(2) : list.group(1)));
            }
        }
        return new Call(List.copyOf(parameters), channel, numbers);
    }

    boolean has(int index) {
        return index < parameters.size();
    }

    /** Parameter as it came; refused when it is lacking. */
    String word(int index) {
        if (!has(index)) {
            throw RefusedCommand.missing();
        }
        return parameters.get(index);
    }

    /** A number within bounds; MIN and MAX mean the bounds, DEF means the default. */
    double number(int index, double lowest, double highest, double standard) {
        String text = word(index).toUpperCase(Locale.ROOT);
        double value =
                switch (text) {
                    case "MIN", "MINIMUM" -> lowest;
                    case "MAX", "MAXIMUM" -> highest;
                    case "DEF", "DEFAULT", "AUTO" -> standard;
                    default -> parsed(text);
                };
        if (!(value >= lowest && value <= highest)) {
            throw RefusedCommand.range(text);
        }
        return value;
    }

    private static double parsed(String text) {
        try {
            return Double.parseDouble(text.replaceAll("\\s*(V|A|OHM|S|HZ)$", ""));
        } catch (NumberFormatException e) {
            throw RefusedCommand.type(text);
        }
    }

    /** ON, OFF, 1 or 0. */
    boolean onOff(int index) {
        return switch (word(index).toUpperCase(Locale.ROOT)) {
            case "ON", "1" -> true;
            case "OFF", "0" -> false;
            default -> throw RefusedCommand.illegal(word(index));
        };
    }
}
