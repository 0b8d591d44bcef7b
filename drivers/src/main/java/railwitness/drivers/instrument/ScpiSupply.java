package railwitness.drivers.instrument;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import railwitness.drivers.instrument.Dialect.Level;
import railwitness.drivers.instrument.Dialect.State;
import railwitness.drivers.instrument.Dialect.SupplyWords;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.Dialogue;

/** A supply that talks SCPI. Each command is one message, so that what is cut in comes before it or after it. */
public final class ScpiSupply extends ScpiInstrument implements Supply {
    private static final Channel VOLTAGE = new Channel("supply", Quantity.VOLTAGE);
    private static final Channel CURRENT = new Channel("supply", Quantity.CURRENT);
    /** Protection may stand above what the supply can give. */
    private static final double HIGHEST_PROTECTION = 1e4;

    /** Judged from its readings, a supply limits that is within so much of its limit and below its voltage. */
    private static final double LIMIT_SHARE = 0.02;

    /** What it is set to is read back again after this, voltage, current limit and protections in turn. */
    private static final long HOLD_NANOS = 1_000_000_000L;

    /** A slow supply is asked for it less often: it must not make its readings old. */
    private static final int ANSWERS = 40;

    private static final double LIMIT_AMPS = 0.02;
    private static final double LIMIT_VOLTS = 0.1;

    private final SupplyWords words;
    private final SupplySetting setting;
    private final Template template;
    private final States states;
    private Optional<Level> overVolts;
    private Optional<Level> overAmps;
    private boolean tellsVolts = true;
    private boolean tellsAmps = true;
    private OptionalDouble sentVolts = OptionalDouble.empty();
    private OptionalDouble sentAmps = OptionalDouble.empty();
    private final HeldSetting heldVolts;
    private final HeldSetting heldAmps;
    private final HeldSetting heldOverVolts = new HeldSetting("over-voltage protection", "V", 0);
    private final HeldSetting heldOverAmps = new HeldSetting("over-current protection", "A", 0);
    private final HeldSettings held;
    private volatile Optional<String> changed = Optional.empty();
    private long holdNanos;

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
        this.overVolts = words.overVolts();
        this.overAmps = words.overAmps();
        this.heldVolts =
                new HeldSetting("voltage", "V", setting.resolutionVolts().orElse(0));
        this.heldAmps =
                new HeldSetting("current limit", "A", setting.resolutionAmps().orElse(0));
        this.held = new HeldSettings(heldVolts, heldAmps, heldOverVolts, heldOverAmps);
        this.states = new States(words.states(), template::fill, this::lost);
    }

    /**
     * Chooses the channel where that is needed, and asks once for all that a supply may not know; the instrument has been
     * reset before.
     *
     * @throws LineException when it does not know what no run can do without
     */
    public void setUp() {
        noteErrorQueue();
        selection().ifPresent(dialogue()::set);
        isOn();
        Trial trial = new Trial(dialogue());
        tellsVolts = tells(trial, words.volts(), "the voltage it is set to", "its own reading shows what it gives");
        tellsAmps = tells(trial, words.amps(), "its current limit", "its own reading shows where it limits");
        overVolts = known(trial, words.overVolts(), "over-voltage");
        overAmps = known(trial, words.overAmps(), "over-current");
        states.tryOnce(trial, template.fill(words.isOn()));
        if (!states.tell(Condition.OUTPUT_OFF)) {
            states.add(new State(words.isOn(), Map.of(), Map.of(Condition.OUTPUT_OFF, List.of("0"))));
        }
        if (!lacks().isEmpty()) {
            trial.needs(template.fill(words.readVolts()), "a reading of its voltage");
            trial.needs(template.fill(words.readAmps()), "a reading of its current");
        }
    }

    private boolean tells(Trial trial, Level level, String what, String instead) {
        boolean tells = trial.answersNumber(template.fill(level.ask()));
        if (!tells) {
            lacks("'" + template.fill(level.ask()) + "' is not answered: " + what + " is not read back; " + instead);
        }
        return tells;
    }

    private Optional<Level> known(Trial trial, Optional<Level> level, String which) {
        Optional<Level> known = level.filter(asked -> trial.answersNumber(template.fill(asked.ask())));
        if (level.isPresent() && known.isEmpty()) {
            lacks("'" + template.fill(level.get().ask()) + "' is not answered: it has no " + which
                    + " protection that can be set; this program's own watch stands alone");
        }
        return known;
    }

    private void lost(State state) {
        Set<Condition> told = new TreeSet<>(state.bits().keySet());
        told.addAll(state.words().keySet());
        List<String> lost = new ArrayList<>();
        if (told.contains(Condition.LIMITING)) {
            lost.add("whether it limits its current is judged from its own readings");
        }
        if (told.contains(Condition.PROTECTION)) {
            lost.add("that its protection tripped shows only in its output going off");
        }
        if (told.contains(Condition.OUTPUT_OFF)) {
            lost.add("whether its output is on is asked by '" + template.fill(words.isOn()) + "'");
        }
        lacks("'" + template.fill(state.ask()) + "' is not answered: " + String.join("; ", lost));
    }

    private Optional<String> selection() {
        return setting.drivesRemote() ? words.select().map(template::fill) : Optional.empty();
    }

    @Override
    public void setVolts(double volts) {
        within("voltage in V", volts, 0, highestVolts().orElse(HIGHEST_PROTECTION));
        heldVolts.forget();
        set(words.volts(), "volts", volts);
        sentVolts = OptionalDouble.of(volts);
    }

    @Override
    public double voltsSetting() {
        return tellsVolts ? readBack(words.volts(), heldVolts) : sentVolts.orElse(0);
    }

    @Override
    public void setCurrentLimit(double amps) {
        within("current limit in A", amps, 0, highestAmps().orElse(HIGHEST_PROTECTION));
        heldAmps.forget();
        set(words.amps(), "amps", amps);
        sentAmps = OptionalDouble.of(amps);
    }

    @Override
    public double currentLimitSetting() {
        return tellsAmps ? readBack(words.amps(), heldAmps) : sentAmps.orElse(0);
    }

    @Override
    public boolean hasOverVoltageProtection() {
        return overVolts.isPresent();
    }

    @Override
    public void setOverVoltageProtection(double volts) {
        within("over-voltage protection in V", volts, 0, HIGHEST_PROTECTION);
        heldOverVolts.forget();
        set(overVolts.orElseThrow(this::noProtection), "volts", volts);
    }

    @Override
    public double overVoltageProtectionSetting() {
        return readBack(overVolts.orElseThrow(this::noProtection), heldOverVolts);
    }

    @Override
    public boolean hasOverCurrentProtection() {
        return overAmps.isPresent();
    }

    @Override
    public void setOverCurrentProtection(double amps) {
        within("over-current protection in A", amps, 0, HIGHEST_PROTECTION);
        heldOverAmps.forget();
        set(overAmps.orElseThrow(this::noProtection), "amps", amps);
    }

    @Override
    public double overCurrentProtectionSetting() {
        return readBack(overAmps.orElseThrow(this::noProtection), heldOverAmps);
    }

    private IllegalStateException noProtection() {
        return new IllegalStateException(name() + " has no such protection");
    }

    private void set(Level level, String name, double value) {
        Template filled = new Template().with("channel", setting.channel()).with(name, value);
        dialogue().set(filled.fill(level.set()));
    }

    private double readBack(Level level, HeldSetting held) {
        double value = ask(level);
        holdNanos = held.isHeld() ? holdNanos : dialogue().nowNanos() + HOLD_NANOS;
        held.readBack(value);
        return value;
    }

    private double ask(Level level) {
        return dialogue().askNumber(template.fill(level.ask()));
    }

    @Override
    public void switchOn() {
        states.forget();
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
    public OptionalDouble resolutionVolts() {
        return setting.resolutionVolts();
    }

    @Override
    public OptionalDouble resolutionAmps() {
        return setting.resolutionAmps();
    }

    @Override
    public PollResult poll() {
        PollCycle round = round();
        Reading volts = round.reading(VOLTAGE, template.fill(words.readVolts()), number -> number);
        Reading amps = round.reading(CURRENT, template.fill(words.readAmps()), number -> number);
        Set<Condition> conditions = new TreeSet<>(states.ask(round));
        if (seemsToLimit(volts, amps)) {
            conditions.add(Condition.LIMITING);
        }
        hold(round);
        return new PollResult(name(), round.inStep(List.of(volts, amps)), conditions);
    }

    @Override
    public Optional<String> settingChanged() {
        return changed;
    }

    @Override
    public Optional<String> askSettings() {
        Optional<String> volts = tellsVolts ? asked(heldVolts) : Optional.empty();
        return volts.isPresent() || !tellsAmps ? volts : asked(heldAmps);
    }

    private Optional<String> asked(HeldSetting setting) {
        Level level = levelOf(setting);
        Optional<String> otherwise = setting.isHeld() ? setting.now(ask(level)) : Optional.empty();
        return setting.doubted() && otherwise.isEmpty() ? setting.now(ask(level)) : otherwise;
    }

    private Level levelOf(HeldSetting setting) {
        if (setting == heldOverVolts || setting == heldOverAmps) {
            return (setting == heldOverVolts ? overVolts : overAmps).orElseThrow(this::noProtection);
        }
        return setting == heldVolts ? words.volts() : words.amps();
    }

    /* Last in a round, so that no reading waits for it; one that falls silent is not asked for again. */
    private void hold(PollCycle round) {
        if (!round.isSilent() && (held.doubted() || dialogue().nowNanos() >= holdNanos)) {
            held.next().ifPresent(setting -> {
                holdNanos = dialogue().nowNanos()
                        + Math.max(HOLD_NANOS, ANSWERS * quickestAnswer().toNanos());
                OptionalDouble value =
                        round.number(template.fill(levelOf(setting).ask()));
                Optional<String> now = held.now(setting, value);
                changed = value.isPresent() ? now : changed;
            });
        }
    }

    /* It gives all the current it may, and less voltage than it was set to, whatever its registers say. */
    private boolean seemsToLimit(Reading volts, Reading amps) {
        return volts instanceof Measured givenVolts
                && amps instanceof Measured givenAmps
                && sentVolts.isPresent()
                && sentAmps.isPresent()
                && givenAmps.value() >= sentAmps.getAsDouble() * (1 - LIMIT_SHARE) - LIMIT_AMPS
                && givenVolts.value() < sentVolts.getAsDouble() * (1 - LIMIT_SHARE) - LIMIT_VOLTS;
    }
}
