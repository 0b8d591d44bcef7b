package railwitness.drivers.instrument;

import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.Dialogue;

/** A meter that talks SCPI. */
public final class ScpiMeter extends ScpiInstrument implements Meter {
    private final MeterSetting setting;
    private final Dialect.Function function;
    private final String read;
    private final ReplyForm form;
    private final Duration deadline;
    private OptionalDouble range;

    /** @throws IllegalArgumentException when the dialect has no such function */
    public ScpiMeter(Dialogue dialogue, Identity identity, Dialect dialect, String terminator, MeterSetting setting) {
        super(dialogue, identity, dialect, terminator);
        Dialect.MeterWords words = dialect.meter()
                .orElseThrow(
                        () -> new IllegalArgumentException(name() + ": dialect " + dialect.name() + " has no meter"));
        this.setting = setting;
        this.function = words.functions().get(setting.function());
        if (function == null) {
            throw new IllegalArgumentException(name() + ": dialect " + dialect.name() + " has no function to read "
                    + setting.function().word());
        }
        this.read = template().fill(words.read());
        this.form = words.form();
        this.deadline = dialogue.patience().plus(integration());
        this.range = setting.range();
    }

    /* Twice the aperture: a meter may take its own zero as well. */
    private Duration integration() {
        return Duration.ofMillis(Math.round(2000 * setting.lineCycles().orElse(1) / setting.mainsHz()));
    }

    /** Sends the setting; the instrument has been reset before. */
    public void setUp() {
        noteErrorQueue();
        Template template = template().with("range", "DEF");
        range.ifPresent(value -> template.with("range", value));
        setting.lineCycles().ifPresent(value -> template.with("plc", value));
        List<String> messages = template.fillKnown(function.setUp());
        messages.stream().limit(1).forEach(dialogue()::set);
        messages.stream().skip(1).forEach(this::setWhereKnown);
        if (!dialogue().hasErrorQueue()) {
            new Trial(dialogue()).needs(read, form, "its reading");
        }
    }

    /* The function it must know; what follows, such as the integration time, makes its readings better. */
    private void setWhereKnown(String message) {
        try {
            dialogue().set(message);
        } catch (LineException e) {
            if (!e.received().startsWith("-113")) {
                throw e;
            }
            lacks("'" + message + "' is not known: it measures by its own choice there");
        }
    }

    private Template template() {
        return new Template().with("channel", setting.channel());
    }

    @Override
    public void rangeFor(double highest) {
        OptionalDouble wanted = setting.rangeFor(highest);
        if (!wanted.equals(range) && wanted.isPresent() && function.range().isPresent()) {
            dialogue()
                    .set(template()
                            .with("range", wanted.getAsDouble())
                            .fill(function.range().get()));
            range = wanted;
        }
    }

    @Override
    public PollResult poll() {
        PollCycle round = isThere() ? round(deadline) : round(deadline).away();
        Reading reading = round.reading(setting.reads(), read, form, number -> number / setting.perUnit());
        went(round.isUnplugged());
        return new PollResult(name(), List.of(reading), Set.of());
    }

    /** Whoever had no power meanwhile has forgotten what it was told. */
    @Override
    void backAgain() {
        super.backAgain();
        Template template = template().with("range", "DEF");
        range.ifPresent(value -> template.with("range", value));
        setting.lineCycles().ifPresent(value -> template.with("plc", value));
        template.fillKnown(function.setUp()).stream().limit(1).forEach(dialogue()::set);
        template.fillKnown(function.setUp()).stream().skip(1).forEach(this::setWhereKnown);
    }
}
