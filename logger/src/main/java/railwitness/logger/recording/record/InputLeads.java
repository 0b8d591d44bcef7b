package railwitness.logger.recording.record;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.ChannelAccuracy;
import railwitness.drivers.reading.Channel;

/**
 * The leads on which the input current is read.
 *
 * @param words whose they are, such as {@code the shunt's leads}
 * @param negativeAmps how far below zero a reading may be by the meter's own error, A
 */
record InputLeads(String words, double negativeAmps) {
    /** Share of the highest input current where the sheet states no accuracy (common practice, no source). */
    private static final double UNSTATED = 0.01;

    /** A stated limit is doubled: an instrument a little out of calibration is not a reversed one. */
    private static final double SLACK = 2;

    private static final double LEAST_AMPS = 0.02;

    static InputLeads of(BenchSheet bench, Channel current, RunLimits limits) {
        Optional<ChannelAccuracy> accuracy = bench.accuracyOf(current);
        OptionalDouble stated = accuracy.isPresent()
                ? accuracy.get().halfWidthAt(0, accuracy.get().rangeFor(limits.inputAmps()))
                : OptionalDouble.empty();
        double own = stated.isPresent() ? SLACK * stated.getAsDouble() : UNSTATED * limits.inputAmps();
        String words = accuracy.map(
                        known -> known.perUnit() != 1 ? "the shunt's leads" : "the leads of " + known.instrument())
                .orElse("the leads of the input current meter");
        return new InputLeads(words, Math.max(LEAST_AMPS, own));
    }
}
