package railwitness.logger.recording.points;

import java.util.Optional;
import java.util.OptionalInt;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;
import railwitness.drivers.bench.ChannelAccuracy;
import railwitness.drivers.reading.Channel;

/**
 * Half of the last digit of a display, from one source: the bench sheet's resolution, which is what the display shows and the
 * same for every reading; where the sheet states none, what a person typed.
 */
final class LastDigit {
    private LastDigit() {}

    /**
     * What the last digit may hide, as an estimate of zero; exact where nothing is known of it.
     *
     * @param typed decimals a person typed, where one read the channel
     * @param where the step, for the name of its influence
     */
    static Estimate of(ChannelAccuracy accuracy, OptionalInt typed, Channel channel, String where) {
        return influence(accuracy, typed, channel, where)
                .map(half -> Estimate.of(0, half.times(1)))
                .orElse(Estimate.exact(0));
    }

    private static Optional<Influence> influence(
            ChannelAccuracy accuracy, OptionalInt typed, Channel channel, String where) {
        String unit = channel.quantity().unit();
        if (accuracy.digit() > 0) {
            return Optional.of(Influence.rectangular("last digit of " + channel, accuracy.digit() / 2, unit));
        }
        return typed.isEmpty()
                ? Optional.empty()
                : Optional.of(Influence.resolution(
                        "last digit read of " + channel + ", " + where, Math.pow(10, -typed.getAsInt()), unit));
    }
}
