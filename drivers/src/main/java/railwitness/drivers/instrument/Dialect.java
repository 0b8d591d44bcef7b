package railwitness.drivers.instrument;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import railwitness.drivers.reading.Quantity;

/**
 * The messages in which models differ, as data. Names in braces are filled in when sent.
 *
 * @param name as bench sheets call it
 * @param identity knows the answers to {@code *IDN?} of the models it is for
 * @param terminator ends a message: LF, CR or CR LF
 * @param remote sent before anything else
 * @param reset sent once the identity is known to be right
 * @param error asks for the next entry of the error queue; empty where the models have none
 */
public record Dialect(
        String name,
        String about,
        Pattern identity,
        String terminator,
        List<String> remote,
        List<String> reset,
        String error,
        Optional<MeterWords> meter,
        Optional<SupplyWords> supply,
        Optional<LoadWords> load,
        Optional<ScopeWords> scope) {

    /** How an input or output is switched, and the question whether it is on. */
    public record Switch(String on, String off, String isOn) {}

    /** A setting and the question that reads it back. */
    public record Level(String set, String ask) {}

    /**
     * A question that tells the state.
     *
     * @param bits for a register: which bits mean which condition
     * @param words for an answer in words: which mean which condition
     */
    public record State(String ask, Map<Condition, Integer> bits, Map<Condition, List<String>> words) {}

    /** How one function of a meter is set up, and its range changed later. */
    public record Function(List<String> setUp, Optional<String> range) {}

    /** @param form where the number stands in the reply to {@code read} */
    public record MeterWords(String read, ReplyForm form, Map<Quantity, Function> functions) {}

    /**
     * How a supply is told to switch itself off when it hears nothing for some seconds.
     *
     * @param on with {@code {seconds}}
     */
    public record Watchdog(String on, String off) {}

    /** @param select chooses the channel, where that is not said in each message */
    public record SupplyWords(
            Optional<String> select,
            Level volts,
            Level amps,
            Optional<Level> overVolts,
            Optional<Level> overAmps,
            String on,
            String off,
            String isOn,
            String readVolts,
            String readAmps,
            Optional<String> remoteOn,
            Optional<String> remoteOff,
            Optional<Watchdog> watchdog,
            List<State> states) {}

    /** @param otherwise how the input is switched where the instrument does not know the first way */
    public record LoadWords(
            Optional<String> select,
            Level amps,
            Level ohms,
            String constantAmps,
            String constantOhms,
            Switch input,
            Optional<Switch> otherwise,
            String readVolts,
            String readAmps,
            List<State> states) {}

    /**
     * @param fields what the preamble's fields are, in order: count, step_s, start_s, step_volts, offset_volts; others
     *     are passed over
     * @param sampleBytes 1 or 2 bytes a sample, signed, the high byte first
     */
    public record ScopeWords(
            List<String> setUp,
            String capture,
            String preamble,
            List<String> fields,
            String waveform,
            int sampleBytes) {}
}
