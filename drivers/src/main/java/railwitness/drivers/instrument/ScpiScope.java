package railwitness.drivers.instrument;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import railwitness.drivers.instrument.Dialect.ScopeWords;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Waveform;
import railwitness.drivers.scpi.Dialogue;
import railwitness.drivers.scpi.Fields;
import railwitness.drivers.scpi.Numeric;

/** A scope that talks SCPI. It has no channels of its own in a round: a waveform is asked for when one is wanted. */
public final class ScpiScope extends ScpiInstrument implements Scope {
    private static final Duration TRANSFER = Duration.ofSeconds(30);
    private static final Duration CAPTURE = Duration.ofSeconds(5);

    private final ScopeWords words;
    private final ScopeSetting setting;
    private final Template template;

    /** @throws IllegalArgumentException when the dialect has no scope */
    public ScpiScope(Dialogue dialogue, Identity identity, Dialect dialect, String terminator, ScopeSetting setting) {
        super(dialogue, identity, dialect, terminator);
        this.words = dialect.scope()
                .orElseThrow(
                        () -> new IllegalArgumentException(name() + ": dialect " + dialect.name() + " has no scope"));
        this.setting = setting;
        this.template = new Template()
                .with("channel", setting.channel())
                .with("range", setting.rangeVolts())
                .with("span", setting.spanSeconds());
    }

    /** Sends the setting; the instrument has been reset before. */
    public void setUp() {
        noteErrorQueue();
        dialogue().set(template.fillKnown(words.setUp()));
    }

    @Override
    public PollResult poll() {
        return new PollResult(name(), List.of(), Set.of());
    }

    @Override
    public Waveform waveform() {
        Duration capture = CAPTURE.plusNanos(Math.round(2e9 * setting.spanSeconds()));
        dialogue().ask(template.fill(words.capture()), capture);
        Map<String, Double> preamble = preamble();
        byte[] samples = dialogue().askBlock(template.fill(words.waveform()), TRANSFER);
        return new Waveform(setting.reads(), preamble.get("start_s"), preamble.get("step_s"), volts(samples, preamble));
    }

    private Map<String, Double> preamble() {
        String question = template.fill(words.preamble());
        String reply = dialogue().ask(question);
        List<String> fields = Fields.split(reply, ',');
        Map<String, Double> preamble = new TreeMap<>();
        for (int i = 0; i < Math.min(fields.size(), words.fields().size()); i++) {
            String name = words.fields().get(i);
            number(fields.get(i)).ifPresent(value -> preamble.put(name, value));
        }
        if (!preamble.keySet().containsAll(Set.of("start_s", "step_s", "step_volts", "offset_volts"))) {
            throw LineException.garbled(dialogue().port(), question, reply, "a preamble of " + words.fields())
                    .of(name());
        }
        return preamble;
    }

    private static OptionalDouble number(String field) {
        try {
            return Numeric.of(field) instanceof Numeric.Value number
                    ? OptionalDouble.of(number.value())
                    : OptionalDouble.empty();
        } catch (IllegalArgumentException e) {
            return OptionalDouble.empty();
        }
    }

    private double[] volts(byte[] samples, Map<String, Double> preamble) {
        ByteBuffer buffer = ByteBuffer.wrap(samples);
        double[] volts = new double[samples.length / words.sampleBytes()];
        for (int i = 0; i < volts.length; i++) {
            int code = words.sampleBytes() == 1 ? buffer.get() : buffer.getShort();
            volts[i] = code * preamble.get("step_volts") + preamble.get("offset_volts");
        }
        return volts;
    }
}
