package railwitness.drivers.instrument;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import railwitness.drivers.instrument.Dialect.Level;
import railwitness.drivers.instrument.Dialect.LoadWords;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.Dialogue;

/** A load that talks SCPI. */
public final class ScpiLoad extends ScpiInstrument implements Load {
    private static final double HIGHEST_AMPS = 1e4;
    private static final double HIGHEST_OHMS = 1e7;

    private final LoadWords words;
    private final LoadSetting setting;
    private final Template template;
    private final Channel current;
    private final Channel voltage;
    private String kind = "";
    private Set<Condition> conditions = Set.of();

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
    }

    /** Chooses the channel where that is needed; the instrument has been reset before. */
    public void setUp() {
        words.select().map(template::fill).ifPresent(dialogue()::set);
        isOn();
    }

    @Override
    public String rail() {
        return setting.rail();
    }

    @Override
    public void setAmps(double amps) {
        within("current in A", amps, 0, setting.highestAmps().orElse(HIGHEST_AMPS));
        set(words.amps(), "amps", amps, words.constantAmps());
    }

    @Override
    public void setOhms(double ohms) {
        within("resistance in ohm", ohms, Double.MIN_VALUE, HIGHEST_OHMS);
        set(words.ohms(), "ohms", ohms, words.constantOhms());
    }

    /* The setting first: the kind then changes straight to the value wanted. */
    private void set(Level level, String name, double value, String wantedKind) {
        Template filled = new Template().with("channel", setting.channel()).with(name, value);
        dialogue().set(filled.fill(level.set()));
        if (!kind.equals(wantedKind)) {
            dialogue().set(template.fill(wantedKind));
            kind = wantedKind;
        }
    }

    @Override
    public double setting() {
        Level level = kind.equals(words.constantOhms()) ? words.ohms() : words.amps();
        return dialogue().askNumber(template.fill(level.ask()));
    }

    @Override
    public void inputOn() {
        dialogue().set(template.fill(words.on()));
    }

    @Override
    public void inputOff() {
        dialogue().set(template.fill(words.off()));
    }

    @Override
    public boolean isOn() {
        return saysOn(template.fill(words.isOn()));
    }

    @Override
    public byte[] offBytes() {
        List<String> messages = new ArrayList<>();
        words.select().map(template::fill).ifPresent(messages::add);
        messages.add(template.fill(words.off()));
        return urgent(messages);
    }

    @Override
    public Sweep poll() {
        Round round = round();
        List<Reading> readings = new ArrayList<>();
        readings.add(round.reading(current, template.fill(words.readAmps()), number -> number));
        if (setting.readsVoltage()) {
            double sign = setting.reversed() ? -1 : 1;
            readings.add(round.reading(voltage, template.fill(words.readVolts()), number -> sign * number));
        }
        conditions = round.conditions(words.states(), template::fill, conditions);
        return new Sweep(name(), readings, conditions);
    }
}
