package railwitness.drivers.instrument;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import railwitness.drivers.instrument.Dialect.Level;
import railwitness.drivers.instrument.Dialect.LoadWords;
import railwitness.drivers.instrument.Dialect.State;
import railwitness.drivers.instrument.Dialect.Switch;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.Dialogue;
import railwitness.drivers.scpi.SwitchState;

/** A load that talks SCPI. */
public final class ScpiLoad extends ScpiInstrument implements Load {
    private static final double HIGHEST_AMPS = 1e4;
    private static final double HIGHEST_OHMS = 1e7;
    /** Judged from its reading, a load holds that draws within so much of what it was set to. */
    private static final double HOLD_SHARE = 0.03;

    private static final double HOLD_AMPS = 0.05;

    private final LoadWords words;
    private final LoadSetting setting;
    private final Template template;
    private final Channel current;
    private final Channel voltage;
    private final States states;
    private Switch input;
    private boolean tellsAmps = true;
    private boolean knowsKinds = true;
    private String kind = "";
    private OptionalDouble sentAmps = OptionalDouble.empty();
    private double sent;
    private boolean toldOn;

    /** @throws IllegalArgumentException when the dialect has no load */
    public ScpiLoad(Dialogue dialogue, Identity identity, Dialect dialect, String terminator, LoadSetting setting) {
        super(dialogue, identity, dialect, terminator);
        this.words = dialect.load()
                .orElseThrow(
                        () -> new IllegalArgumentException(name() + ": dialect " + dialect.name() + " has no load"));
        this.setting = setting;
        this.template = new Template().with("channel", setting.channel());
        this.current = new Channel(setting.rail(), Quantity.CURRENT);
        this.voltage = new Channel(setting.node(), Quantity.VOLTAGE);
        this.input = words.input();
        this.states = new States(words.states(), template::fill, this::lost);
    }

    /**
     * Chooses the channel where that is needed, and asks once for all that a load may not know; the instrument has been
     * reset before.
     *
     * @throws LineException when it does not know what no run can do without
     */
    public void setUp() {
        noteErrorQueue();
        words.select().map(template::fill).ifPresent(dialogue()::set);
        chooseSwitch();
        Trial trial = new Trial(dialogue());
        tellsAmps = trial.answersNumber(template.fill(words.amps().ask()));
        if (!tellsAmps) {
            lacks(
                    "'" + template.fill(words.amps().ask())
                            + "' is not answered: the current it is set to is not read back; its own reading shows what it draws");
        }
        states.tryOnce(trial, template.fill(input.isOn()));
        if (!lacks().isEmpty()) {
            trial.needs(template.fill(words.readAmps()), "a reading of its current");
        }
    }

    /* The second way is tried only where the first is not known. */
    private void chooseSwitch() {
        Trial trial = new Trial(dialogue());
        Predicate<String> state = reply -> SwitchState.of(reply).isPresent();
        if (words.otherwise().isEmpty()) {
            isOn();
        } else if (!trial.answers(template.fill(input.isOn()), state)) {
            String first = template.fill(input.isOn());
            input = words.otherwise().get();
            if (!trial.answers(template.fill(input.isOn()), state)) {
                throw Trial.essential(dialogue(), first, "the word of the load that its input is off");
            }
            lacks("'" + first + "' is not answered: its input is switched by '" + template.fill(input.on()) + "'");
        }
    }

    private void lost(State state) {
        lacks("'" + template.fill(state.ask())
                + "' is not answered: whether it holds its set point is judged from its own"
                + " reading; that its protection tripped shows only in its current going away");
    }

    @Override
    public String rail() {
        return setting.rail();
    }

    @Override
    public void setAmps(double amps) {
        within("current in A", amps, 0, setting.highestAmps().orElse(HIGHEST_AMPS));
        set(words.amps(), "amps", amps, words.constantAmps());
        sentAmps = OptionalDouble.of(amps);
    }

    @Override
    public void setOhms(double ohms) {
        within("resistance in ohm", ohms, Double.MIN_VALUE, HIGHEST_OHMS);
        set(words.ohms(), "ohms", ohms, words.constantOhms());
        sentAmps = OptionalDouble.empty();
    }

    /* The setting first: the kind then changes straight to the value wanted. */
    private void set(Level level, String name, double value, String wantedKind) {
        Template filled = new Template().with("channel", setting.channel()).with(name, value);
        dialogue().set(filled.fill(level.set()));
        sent = value;
        if (knowsKinds && !kind.equals(wantedKind)) {
            changeKind(wantedKind);
        }
    }

    /* A load that knows constant current alone needs not be told so; for another kind it must know the word. */
    private void changeKind(String wantedKind) {
        try {
            dialogue().set(template.fill(wantedKind));
            kind = wantedKind;
        } catch (LineException e) {
            if (!wantedKind.equals(words.constantAmps())
                    || !kind.isEmpty()
                    || !e.received().startsWith("-113")) {
                throw e;
            }
            knowsKinds = false;
            lacks("'" + template.fill(wantedKind) + "' is not known: it is taken to draw a constant current");
        }
    }

    @Override
    public double setting() {
        boolean ohms = kind.equals(words.constantOhms());
        return ohms || tellsAmps
                ? dialogue().askNumber(template.fill((ohms ? words.ohms() : words.amps()).ask()))
                : sent;
    }

    @Override
    public OptionalDouble resolutionAmps() {
        return setting.resolutionAmps();
    }

    @Override
    public void inputOn() {
        dialogue().set(template.fill(input.on()));
        toldOn = true;
    }

    @Override
    public void inputOff() {
        toldOn = false;
        dialogue().set(template.fill(input.off()));
    }

    @Override
    public boolean isOn() {
        return saysOnAtLast(template.fill(input.isOn()));
    }

    @Override
    public byte[] offBytes() {
        List<String> messages = new ArrayList<>();
        words.select().map(template::fill).ifPresent(messages::add);
        messages.add(template.fill(input.off()));
        return urgent(messages);
    }

    @Override
    public PollResult poll() {
        PollCycle round = isThere() ? round() : round().away();
        List<Reading> readings = new ArrayList<>();
        Reading amps = round.reading(current, template.fill(words.readAmps()), number -> number);
        readings.add(amps);
        if (setting.readsVoltage()) {
            double sign = setting.reversed() ? -1 : 1;
            readings.add(round.reading(voltage, template.fill(words.readVolts()), number -> sign * number));
        }
        Set<Condition> conditions = new TreeSet<>(states.ask(round));
        if (!states.tell(Condition.NOT_HOLDING) && seemsNotToHold(amps)) {
            conditions.add(Condition.NOT_HOLDING);
        }
        went(round.isUnplugged());
        return new PollResult(name(), round.inStep(readings), conditions);
    }

    /* Told on, it draws another current than it was set to. */
    private boolean seemsNotToHold(Reading amps) {
        return toldOn
                && sentAmps.isPresent()
                && amps instanceof Measured drawn
                && Math.abs(drawn.value() - sentAmps.getAsDouble()) > HOLD_AMPS + HOLD_SHARE * sentAmps.getAsDouble();
    }
}
