package railwitness.safety.power;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Why first power ended without rails that are up, with its numbers. */
public sealed interface FirstPowerEnd {
    /** What was seen and what it points to. */
    String words();

    /**
     * A rail as it was read.
     *
     * @param volts V; empty where it was not read
     * @param target where it should be, in words
     */
    record RailSeen(String name, OptionalDouble volts, String target) {
        String words() {
            return name + " " + (volts.isPresent() ? number(volts.getAsDouble(), "V") : "not read");
        }
    }

    /**
     * With the remote turn-on off the unit drew more than it should.
     *
     * @param amps what was drawn, A; infinite beyond the meter's range
     * @param volts input voltage that was set, V
     * @param boundAmps highest that was taken as right, A
     * @param boundKnown whether the design gives that
     * @param limits whether it was near the supply's limit
     */
    record TooMuchOff(double amps, double volts, double boundAmps, boolean boundKnown, boolean limits)
            implements FirstPowerEnd {
        @Override
        public String words() {
            String draws = "remote off: the unit draws " + drawn(amps) + " at " + number(volts, "V");
            String limited = limits ? "; the supply limits its current" : "";
            String suspects = ": a shorted switch suspected, or the input capacitor, or reversed wiring";
            return boundKnown
                    ? draws + ", the design allows " + number(boundAmps, "A") + limited + suspects
                    : draws + limited + "; the design sheet does not say how much that may be (limits.standby_A), and"
                            + " the bound taken is " + number(boundAmps, "A") + (limits ? suspects : "");
        }
    }

    /**
     * With the remote turn-on on the unit drew more than it should without load.
     *
     * @param amps what was drawn, A; infinite beyond the meter's range
     * @param volts input voltage that was set, V
     * @param windowSeconds how long the inrush was waited for, s
     * @param boundAmps highest that was taken as right, A
     * @param boundKnown whether the design gives that
     * @param blocked whether it had drawn no more than it should with the remote turn-on off
     * @param rails those that are read
     * @param railsStand whether all of them are where they should be
     */
    record TooMuchOn(
            double amps,
            double volts,
            double windowSeconds,
            double boundAmps,
            boolean boundKnown,
            boolean blocked,
            List<RailSeen> rails,
            boolean railsStand)
            implements FirstPowerEnd {
        public TooMuchOn {
            rails = List.copyOf(rails);
        }

        @Override
        public String words() {
            String before =
                    blocked ? "; with the remote off it drew no more than it should, so the switches block" : "";
            String bounded = boundKnown
                    ? ", without load the design allows "
                    : "; the design sheet does not say how much that may be (limits.no_load_input_A), and the bound taken is ";
            String suspects = noShort()
                    ? ": it is not a short on a rail"
                            + (boundKnown ? "; a turn, the core, or what is connected suspected" : "")
                    : ": a shorted " + (blocked ? "" : "switch, ") + "rectifier, turn or rail suspected";
            return "remote on: the unit draws " + drawn(amps) + " at " + number(volts, "V")
                    + " after the inrush window of " + number(windowSeconds, "s") + bounded + number(boundAmps, "A")
                    + before
                    + (rails.isEmpty()
                            ? ""
                            : "; the rails read ("
                                    + rails.stream().map(RailSeen::words).collect(Collectors.joining(", ")) + ")")
                    + suspects;
        }

        /** Rails that stand are not shorted. */
        public boolean noShort() {
            return !rails.isEmpty() && railsStand;
        }
    }

    /**
     * The current was right, the rails were not.
     *
     * @param low rails that are not where they should be, or do not stand still
     * @param limits whether the supply limits its current
     * @param still whether all rails stand still
     */
    record NotUp(List<RailSeen> low, boolean limits, boolean still) implements FirstPowerEnd {
        public NotUp {
            low = List.copyOf(low);
        }

        @Override
        public String words() {
            String down = "the rails did not come up (" + lowWords(low) + ")";
            if (limits) {
                return "remote on: the supply limits its current, and " + down
                        + ": something loads the input or a rail, or the unit starts again and again (hiccup)";
            }
            return "remote on: the current is within its bound, but " + down
                    + (still
                            ? ": drive, start circuit or rectifier suspected, or other turns than the sheet says"
                            : ", and do not stand still: the unit starts again and again (hiccup), or a rail is loaded");
        }
    }

    /** The rails stand where others should. */
    record Exchanged(String said) implements FirstPowerEnd {
        @Override
        public String words() {
            return "remote on: " + said;
        }
    }

    /** What says nothing of the unit's parts: leads, an instrument, a lost supply. */
    record Said(String said) implements FirstPowerEnd {
        @Override
        public String words() {
            return said;
        }
    }

    /** {@code plus 27 V of 40.7 V predicted}. */
    static String lowWords(List<RailSeen> low) {
        return low.stream().map(rail -> rail.words() + " of " + rail.target()).collect(Collectors.joining(", "));
    }

    private static String drawn(double amps) {
        return Double.isInfinite(amps) ? "more than the meter's range" : number(amps, "A");
    }

    private static String number(double value, String unit) {
        return String.format(Locale.ROOT, "%.3g %s", value, unit);
    }
}
