package railwitness.drivers.instrument;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A bench supply. SI units. Setting calls read the error queue afterwards and throw when the instrument refused.
 * {@link #switchOn}, {@link #switchOff} and {@link #offBytes} belong to the safety module alone.
 */
public interface Supply extends Instrument {
    /** Sets the output voltage, V. */
    void setVolts(double volts);

    /** Reads the voltage setting back, V; what was sent last, where the instrument does not tell ({@link #lacks}). */
    double voltsSetting();

    /** Sets the current limit, A. */
    void setCurrentLimit(double amps);

    /** Reads the current limit back, A; what was sent last, where the instrument does not tell. */
    double currentLimitSetting();

    /** True where it has knobs only: whatever is told to it is asked of the person at it, and takes their time. */
    default boolean isSetByHand() {
        return false;
    }

    /** True when this model has an over-voltage protection that can be set. */
    boolean hasOverVoltageProtection();

    void setOverVoltageProtection(double volts);

    double overVoltageProtectionSetting();

    boolean hasOverCurrentProtection();

    void setOverCurrentProtection(double amps);

    double overCurrentProtectionSetting();

    void switchOn();

    void switchOff();

    /** Asks the instrument whether its output is on. */
    boolean isOn();

    /** Ready-made bytes that switch the output off from any state of the line: newline, channel selection, off. */
    byte[] offBytes();

    /** Ready-made bytes that ask for {@link #isOn}, for the guardian. */
    byte[] askOnBytes();

    /** The unit's remote turn-on line, where a supply channel or relay of this instrument drives it. */
    boolean drivesRemote();

    /** Switches the remote turn-on line; only where {@link #drivesRemote}. */
    void setRemote(boolean on);

    /** True when this model can be told to switch itself off once nothing has been asked of it for some seconds. */
    default boolean hasWatchdog() {
        return false;
    }

    /**
     * Lets the supply switch its output off by itself when it hears nothing for so long; only where {@link
     * #hasWatchdog}.
     *
     * @param seconds whole seconds, at least 1
     */
    default void setWatchdog(int seconds) {
        throw new IllegalStateException(name() + " has no watchdog");
    }

    /** Ends {@link #setWatchdog}. */
    default void endWatchdog() {
        // nothing was begun
    }

    /**
     * In words, that its voltage or current limit is no longer as it was set last; empty while it is, and where it cannot
     * be read back. Looked at while it is polled; from any thread.
     */
    default Optional<String> settingChanged() {
        return Optional.empty();
    }

    /** Asks now what it is set to; in words what is not as it was set last. Empty also where it cannot be read back. */
    default Optional<String> askSettings() {
        return Optional.empty();
    }

    /** Largest voltage and current the bench sheet allows this supply, where stated. */
    OptionalDouble highestVolts();

    OptionalDouble highestAmps();

    /** Steps in which it can be set, V and A, where the bench sheet states them: a setting may read back so far off. */
    default OptionalDouble resolutionVolts() {
        return OptionalDouble.empty();
    }

    default OptionalDouble resolutionAmps() {
        return OptionalDouble.empty();
    }
}
