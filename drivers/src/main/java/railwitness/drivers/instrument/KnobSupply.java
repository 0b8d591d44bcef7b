package railwitness.drivers.instrument;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import railwitness.drivers.instrument.KnobTurn.Kind;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Reading;

/**
 * A supply that has knobs and a display and no serial line: its actuator is the person. What is set is read back as it
 * was typed off the display; off is a person's word, and {@link #cutIn} tells them large and at once. A question under
 * way is given up by that, as an exchange on a wire is.
 */
public final class KnobSupply implements Supply {
    private static final Channel VOLTAGE = new Channel("supply", Quantity.VOLTAGE);
    private static final Channel CURRENT = new Channel("supply", Quantity.CURRENT);
    private static final double HIGHEST_VOLTS = 1e3;
    private static final double HIGHEST_AMPS = 1e4;

    /** Last digit of a usual display, V and A, where the sheet states none (common practice, no source). */
    private static final double USUAL_VOLTS = 0.1;

    private static final double USUAL_AMPS = 0.2;
    private static final int TURNS = 3;

    private final String name;
    private final SupplySetting setting;
    private final Hand hand;
    private final HandWait wait;
    private final Supplier<Long> clock;
    private OptionalDouble volts = OptionalDouble.empty();
    private OptionalDouble limit = OptionalDouble.empty();
    /** What the knobs stand at since they were last turned; nobody is asked for it twice. */
    private OptionalDouble wantedVolts = OptionalDouble.empty();

    private OptionalDouble wantedLimit = OptionalDouble.empty();
    private volatile Optional<Boolean> known = Optional.empty();
    private volatile Optional<Consumer<Answer>> pending = Optional.empty();

    /** What ends a question: a number or none, or that something more urgent came. */
    private record Answer(OptionalDouble shown, boolean cut) {}

    /** @param clock ns on the session's axis */
    public KnobSupply(String name, SupplySetting setting, Hand hand, HandWait wait, Supplier<Long> clock) {
        this.name = name;
        this.setting = setting;
        this.hand = hand;
        this.wait = wait;
        this.clock = clock;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Identity identity() {
        return new Identity("0", "supply with knobs", "0", "0");
    }

    @Override
    public boolean isSetByHand() {
        return true;
    }

    @Override
    public List<String> lacks() {
        return List.of(
                "it has knobs only: at a limit, at a trip and at the off button this program can only tell you to switch"
                        + " off; your hand is what switches",
                "it is not watched between two readings: what happens there is not seen, and trips nothing",
                "it has no over-voltage or over-current protection that is set and read back",
                "when this program or this computer stops, nothing switches off and nothing tells you so");
    }

    private OptionalDouble turned(Kind kind, double value, Optional<Double> before) {
        Answer answer = wait.await(then -> {
            Consumer<Answer> once = found -> {
                pending = Optional.empty();
                then.accept(found);
            };
            pending = Optional.of(once);
            hand.turn(new KnobTurn(kind, value, before), shown -> once.accept(new Answer(shown, false)));
        });
        if (answer.cut()) {
            throw new LineException(
                    Trouble.CUT_SHORT, name + ": something more urgent was asked of the person", "", "");
        }
        return answer.shown();
    }

    /** Asked again while the display shows something else than what was to be set. */
    private double set(Kind kind, double value, double resolution) {
        Optional<Double> before = Optional.empty();
        for (int turn = 0; turn < TURNS; turn++) {
            OptionalDouble shown = turned(kind, value, before);
            if (shown.isEmpty()) {
                return value;
            }
            before = Optional.of(shown.getAsDouble());
            if (Math.abs(shown.getAsDouble() - value) <= resolution * (1 + 1e-9)) {
                break;
            }
        }
        return before.orElse(value);
    }

    @Override
    public void setVolts(double wanted) {
        within("voltage in V", wanted, highestVolts().orElse(HIGHEST_VOLTS));
        if (wantedVolts.isEmpty() || wantedVolts.getAsDouble() != wanted) {
            wantedVolts = OptionalDouble.empty();
            volts = OptionalDouble.of(
                    set(Kind.SET_VOLTS, wanted, resolutionVolts().getAsDouble()));
            wantedVolts = OptionalDouble.of(wanted);
        }
    }

    @Override
    public double voltsSetting() {
        return volts.orElse(0);
    }

    @Override
    public void setCurrentLimit(double wanted) {
        within("current limit in A", wanted, highestAmps().orElse(HIGHEST_AMPS));
        if (wantedLimit.isEmpty() || wantedLimit.getAsDouble() != wanted) {
            wantedLimit = OptionalDouble.empty();
            limit = OptionalDouble.of(
                    set(Kind.SET_LIMIT, wanted, resolutionAmps().getAsDouble()));
            wantedLimit = OptionalDouble.of(wanted);
        }
    }

    @Override
    public double currentLimitSetting() {
        return limit.orElse(0);
    }

    private void within(String what, double value, double highest) {
        if (!(value >= 0 && value <= highest)) {
            throw new LineException(
                    Trouble.REFUSED,
                    name + ": " + what + " " + value + " must be 0 to " + highest + " by the bench sheet",
                    "",
                    "");
        }
    }

    @Override
    public boolean hasOverVoltageProtection() {
        return false;
    }

    @Override
    public void setOverVoltageProtection(double wanted) {
        throw noProtection();
    }

    @Override
    public double overVoltageProtectionSetting() {
        throw noProtection();
    }

    @Override
    public boolean hasOverCurrentProtection() {
        return false;
    }

    @Override
    public void setOverCurrentProtection(double amps) {
        throw noProtection();
    }

    @Override
    public double overCurrentProtectionSetting() {
        throw noProtection();
    }

    private IllegalStateException noProtection() {
        return new IllegalStateException(name + " has no such protection");
    }

    @Override
    public void switchOn() {
        known = Optional.empty();
        turned(Kind.SWITCH_ON, volts.orElse(0), Optional.empty());
        known = Optional.of(true);
    }

    @Override
    public void switchOff() {
        wantedVolts = OptionalDouble.empty();
        wantedLimit = OptionalDouble.empty();
        wait.<Boolean>await(then -> hand.switchOff(() -> then.accept(true)));
        known = Optional.of(false);
    }

    /** What the person did last, said once; asked of them when it is not known any more. */
    @Override
    public boolean isOn() {
        if (known.isEmpty()) {
            switchOff();
        }
        boolean on = known.orElse(true);
        known = Optional.empty();
        return on;
    }

    @Override
    public byte[] offBytes() {
        return new byte[0];
    }

    @Override
    public byte[] askOnBytes() {
        return new byte[0];
    }

    @Override
    public boolean drivesRemote() {
        return false;
    }

    @Override
    public void setRemote(boolean on) {
        throw new IllegalStateException(name + " does not drive the remote turn-on");
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
        return OptionalDouble.of(setting.resolutionVolts().orElse(USUAL_VOLTS));
    }

    @Override
    public OptionalDouble resolutionAmps() {
        return OptionalDouble.of(setting.resolutionAmps().orElse(USUAL_AMPS));
    }

    /** A look at its display, which the person types: never asked for in rounds. */
    @Override
    public PollResult poll() {
        return new PollResult(
                name,
                List.of(
                        look(VOLTAGE, Kind.LOOK_VOLTS, volts.orElse(0)),
                        look(CURRENT, Kind.LOOK_AMPS, limit.orElse(0))),
                Set.of());
    }

    private Reading look(Channel channel, Kind kind, double expected) {
        long asked = clock.get();
        OptionalDouble shown = turned(kind, expected, Optional.empty());
        return shown.isPresent()
                ? new Measured(channel, shown.getAsDouble(), asked, clock.get())
                : new Missing(channel, "the display does not show it", asked, clock.get());
    }

    @Override
    public boolean cutIn(byte[] bytes) {
        known = Optional.empty();
        hand.offNow();
        wait.post(() -> pending.ifPresent(question -> {
            hand.forget();
            question.accept(new Answer(OptionalDouble.empty(), true));
        }));
        return true;
    }
}
