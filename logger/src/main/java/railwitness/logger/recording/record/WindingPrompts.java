package railwitness.logger.recording.record;

import java.util.Locale;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.winding.Half;
import railwitness.drivers.winding.Hookup;
import railwitness.logger.recording.plan.TransformerTest;
import railwitness.logger.recording.points.WindingChannels;

/** What the person is asked to connect at a transformer that lies on the bench. */
final class WindingPrompts {
    static final String INSULATION = "the insulation between windings and core is not tested here: that takes a proper"
            + " insulation tester, before the transformer meets a unit that people touch";

    static final String FIT =
            "Fit the transformer into the unit, join every lead, put supply and meters where the bench"
                    + " sheet has them, and check polarity once more";

    private final TransformerTest test;
    private final WindingChannels channels;
    private final double hertz;

    WindingPrompts(TransformerTest test, WindingChannels channels, double hertz) {
        this.test = test;
        this.channels = channels;
        this.hertz = hertz;
    }

    String sentence(Hookup hookup) {
        String half = hookup.half().map(Half::words).orElse("");
        String meter = meter(hookup);
        return switch (hookup.kind()) {
            case ONE_WAY ->
                "Output is off. Clip the supply's leads to the two ends of " + half
                        + ", plus to its start, and " + meter + " between the clips, at the ends of the winding itself,"
                        + " plus to its start; all other windings open";
            case OTHER_WAY ->
                "Output is off. Exchange the supply's two leads at " + half + "; leave " + meter + " as it is";
            case COOLING ->
                hookup.count() == 1
                        ? "Output is off. Quickly: lift " + half
                                + " off the rectifier, clip the supply's leads to its ends,"
                                + " plus to its start, and " + meter + " between them"
                        : "Leave everything as it is";
            case VOLTS -> generator() + "; put " + meter + " across " + half + ", all windings else open";
            case PRIMARIES -> series("primary", meter);
            case SECONDARIES -> series("secondary", meter);
            case ONE_TURN ->
                "Lay one turn of insulated wire through the hole and put " + meter + " across its ends;"
                        + " the generator stays on primary A";
            case RESISTOR -> "Put " + meter + " across the resistor in series with primary A; all windings else open";
            case BOTH -> "Put " + meter + " across resistor and primary A together, at the generator's own terminals";
            case SHORTED_WINDING ->
                "Join both ends of each secondary half by the shortest thick wire, and put " + meter
                        + " across primary A";
            case SHORTED_RESISTOR -> "Leave the secondaries shorted and put " + meter + " across the resistor";
            case RINGING ->
                String.format(
                        Locale.ROOT,
                        "Take the generator away, all windings open; put %.4g uF across primary A, the scope on it, and"
                                + " strike it with a short pulse",
                        test.ringMicrofarads().orElse(0));
        };
    }

    private String meter(Hookup hookup) {
        Channel channel = hookup.direct() ? channels.volts() : channels.alternating();
        return channels.name(channel) + (hookup.direct() ? " (direct volts)" : " (alternating volts)");
    }

    private String generator() {
        OptionalDouble resistor = test.senseOhms();
        return String.format(
                Locale.ROOT,
                "Output is off and the supply's leads are away. Drive primary A gently from a generator at %.4g kHz, about a"
                        + " volt%s",
                hertz / 1000,
                resistor.isPresent()
                        ? String.format(Locale.ROOT, ", through the resistor of %.4g ohm", resistor.getAsDouble())
                        : "");
    }

    private static String series(String pair, String meter) {
        return "The generator stays on primary A. Join the end of " + pair + " A to the start of " + pair
                + " B (at a centre tap they are) and put " + meter + " across the two outer ends";
    }

    /** What is asked where the person reads the meter. */
    String reading(Hookup hookup) {
        return switch (hookup.kind()) {
            case ONE_WAY, OTHER_WAY, COOLING -> "Read the winding's voltage in V, with its sign";
            case RINGING -> "Read the frequency of the ringing in Hz";
            default -> "Read the alternating voltage in V";
        };
    }

    String temperature() {
        return "Temperature of the transformer in degC (it should have lain here for an hour)";
    }
}
