package railwitness.drivers.instrument;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.drivers.instrument.Dialect.Level;
import railwitness.drivers.instrument.Dialect.SupplyWords;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.Dialogue;

/** A supply that talks SCPI. Each command is one message, so that what is cut in comes before it or after it. */
public final class ScpiSupply extends ScpiInstrument implements Supply {
    private static final Channel VOLTAGE = new Channel("supply", Quantity.VOLTAGE);
    private static final Channel CURRENT = new Channel("supply", Quantity.CURRENT);
    /** Protection may stand above what the supply can give. */
    private static final double HIGHEST_PROTECTION = 1e4;

    private final SupplyWords words;
    private final SupplySetting setting;
    private final Template template;
    private Set<Condition> conditions = Set.of();

    /** @throws IllegalArgumentException when the dialect has no supply, or none that can drive the remote line as said */
    public ScpiSupply(Dialogue dialogue, Identity identity, Dialect dialect, String terminator, SupplySetting setting) {
        super(dialogue, identity, dialect, terminator);
        this.words = dialect.supply()
                .orElseThrow(
                        () -> new IllegalArgumentException(name() + ": dialect " + dialect.name() + " has no supply"));
        this.setting = setting;
        if (setting.drivesRemote() && words.remoteOn().isEmpty()) {
            throw new IllegalArgumentException(name() + ": dialect " + dialect.name()
                    + " cannot drive the remote turn-on; set drives_remote = false");
        }
        this.template = new Template()
                .with("channel", setting.channel())
                .with("remote_channel", setting.remoteChannel())
                .with("remote_volts", setting.remoteVolts())
                .with("remote_amps", setting.remoteAmps());
    }

    /** Chooses the channel where that is needed; the instrument has been reset before. */
    public void setUp() {
        selection().ifPresent(dialogue()::set);
        isOn();
    }

    private Optional<String> selection() {
        return setting.drivesRemote() ? words.select().map(template::fill) : Optional.empty();
    }

    @Override
    public void setVolts(double volts) {
        within("voltage in V", volts, 0, highestVolts().orElse(HIGHEST_PROTECTION));
        set(words.volts(), "volts", volts);
    }

    @Override
    public double voltsSetting() {
        return ask(words.volts());
    }

    @Override
    public void setCurrentLimit(double amps) {
        within("current limit in A", amps, 0, highestAmps().orElse(HIGHEST_PROTECTION));
        set(words.amps(), "amps", amps);
    }

    @Override
    public double currentLimitSetting() {
        return ask(words.amps());
    }

    @Override
    public boolean hasOverVoltageProtection() {
        return words.overVolts().isPresent();
    }

    @Override
    public void setOverVoltageProtection(double volts) {
        within("over-voltage protection in V", volts, 0, HIGHEST_PROTECTION);
        set(words.overVolts().orElseThrow(this::noProtection), "volts", volts);
    }

    @Override
    public double overVoltageProtectionSetting() {
        return ask(words.overVolts().orElseThrow(this::noProtection));
    }

    @Override
    public boolean hasOverCurrentProtection() {
        return words.overAmps().isPresent();
    }

    @Override
    public void setOverCurrentProtection(double amps) {
        within("over-current protection in A", amps, 0, HIGHEST_PROTECTION);
        set(words.overAmps().orElseThrow(this::noProtection), "amps", amps);
    }

    @Override
    public double overCurrentProtectionSetting() {
        return ask(words.overAmps().orElseThrow(this::noProtection));
    }

    private IllegalStateException noProtection() {
        return new IllegalStateException(name() + " has no such protection");
    }

    private void set(Level level, String name, double value) {
        Template filled = new Template().with("channel", setting.channel()).with(name, value);
        dialogue().set(filled.fill(level.set()));
    }

    private double ask(Level level) {
        return dialogue().askNumber(template.fill(level.ask()));
    }

    @Override
    public void switchOn() {
        dialogue().set(template.fill(words.on()));
    }

    @Override
    public void switchOff() {
        dialogue().set(template.fill(words.off()));
    }

    @Override
    public boolean isOn() {
        return saysOn(template.fill(words.isOn()));
    }

    @Override
    public byte[] offBytes() {
        return selected(words.off());
    }

    @Override
    public byte[] askOnBytes() {
        return selected(words.isOn());
    }

    private byte[] selected(String message) {
        List<String> messages = new ArrayList<>();
        selection().ifPresent(messages::add);
        messages.add(template.fill(message));
        return urgent(messages);
    }

    @Override
    public boolean drivesRemote() {
        return setting.drivesRemote();
    }

    @Override
    public void setRemote(boolean on) {
        if (!drivesRemote()) {
            throw new IllegalStateException(name() + " does not drive the remote turn-on");
        }
        try {
            dialogue().set(template.fill((on ? words.remoteOn() : words.remoteOff()).orElseThrow()));
        } finally {
            selection().ifPresent(dialogue()::set);
        }
    }

    @Override
    public boolean hasWatchdog() {
        return words.watchdog().isPresent();
    }

    @Override
    public void setWatchdog(int seconds) {
        dialogue()
                .set(new Template()
                        .with("channel", setting.channel())
                        .with("seconds", seconds)
                        .fill(words.watchdog().orElseThrow().on()));
    }

    @Override
    public void endWatchdog() {
        words.watchdog().ifPresent(watchdog -> dialogue().set(template.fill(watchdog.off())));
    }

    @Override
    public OptionalDouble highestVolts() {
        return setting.highestVolts();
    }

    @Override
    public OptionalDouble highestAmps() {
        return setting.highestAmps();
    }

    @Override
    public Sweep poll() {
        Round round = round();
        Reading volts = round.reading(VOLTAGE, template.fill(words.readVolts()), number -> number);
        Reading amps = round.reading(CURRENT, template.fill(words.readAmps()), number -> number);
        conditions = round.conditions(words.states(), template::fill, conditions);
        return new Sweep(name(), List.of(volts, amps), conditions);
    }
}
