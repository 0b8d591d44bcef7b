package railwitness.logger.ui.command;

import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Peer;

/**
 * Four windings on a ring in a few lines: 4 + 4 and 12 + 12 turns, copper at 21.5 degC, a supply that holds its current and
 * a meter with 25 uV of warm joints in its leads. Nothing of it comes from the program.
 */
final class PlainCoil {
    static final Map<String, Double> OHMS_20 =
            Map.of("primary A", 1.10e-3, "primary B", 1.12e-3, "secondary A", 9.3e-3, "secondary B", 9.2e-3);
    static final double DEGC = 21.5;
    private static final double JOINTS_VOLTS = 25e-6;

    private final Map<String, Double> turns;
    private String winding = "primary A";
    private double way = 1;
    private double limitAmps;
    private double setVolts;
    private boolean on;

    PlainCoil(double secondaryB) {
        turns = Map.of("primary A", 4.0, "primary B", 4.0, "secondary A", 12.0, "secondary B", secondaryB);
    }

    /** What a person does, told in the program's sentence; the answer that they type. */
    synchronized String doAs(String sentence) {
        turns.keySet().stream()
                .filter(sentence::contains)
                .filter(one -> sentence.contains("Clip") || sentence.contains("across " + one))
                .forEach(one -> winding = one);
        way = sentence.contains("Exchange the supply's") ? -1 : 1;
        if (sentence.contains("Temperature")) {
            return String.valueOf(DEGC);
        }
        if (sentence.contains("one turn of insulated")) {
            winding = "one turn";
        }
        if (sentence.contains("two outer ends")) {
            winding = sentence.contains("primary") ? "both primaries" : "both secondaries";
        }
        return sentence.contains("alternating voltage in V") ? String.format(Locale.ROOT, "%.4f", alternating()) : "";
    }

    private double alternating() {
        return switch (winding) {
            case "both primaries" -> 0.25 * (turns.get("primary A") + turns.get("primary B"));
            case "both secondaries" -> 0.25 * (turns.get("secondary A") + turns.get("secondary B"));
            case "one turn" -> 0.25;
            default -> 0.25 * turns.get(winding);
        };
    }

    private double ohms() {
        return OHMS_20.getOrDefault(winding, 1e6) * (1 + 0.00393 * (DEGC - 20));
    }

    private double amps() {
        return on ? Math.min(limitAmps, setVolts / (ohms() + 0.02)) : 0;
    }

    synchronized double meterVolts() {
        return way * amps() * ohms() + JOINTS_VOLTS;
    }

    synchronized boolean isOn() {
        return on;
    }

    Peer supply() {
        return message -> {
            String reply = said(message);
            return reply.isEmpty() ? Answer.silence(Duration.ZERO) : Answer.of(reply, Duration.ofMillis(1));
        };
    }

    private synchronized String said(String message) {
        StringBuilder reply = new StringBuilder();
        for (String part : message.split(";")) {
            String one = one(part.strip().replaceFirst("^:", ""));
            reply.append(reply.isEmpty() || one.isEmpty() ? "" : ";").append(one);
        }
        return reply.toString();
    }

    private String one(String part) {
        String[] words = part.split(" ", 2);
        switch (words[0]) {
            case "VOLT" -> setVolts = Double.parseDouble(words[1]);
            case "CURR" -> limitAmps = Double.parseDouble(words[1]);
            case "OUTP" -> on = words[1].equals("ON") || words[1].equals("1");
            default -> {
                return switch (words[0]) {
                    case "*IDN?" -> "Lockside,WS-9,3,1.1";
                    case "VOLT?" -> number(setVolts);
                    case "CURR?" -> number(limitAmps);
                    case "OUTP?" -> on ? "1" : "0";
                    case "MEAS:VOLT?" -> number(on ? amps() * (ohms() + 0.02) : 0);
                    case "MEAS:CURR?" -> number(amps());
                    default -> "";
                };
            }
        }
        return "";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.6E", value);
    }
}
