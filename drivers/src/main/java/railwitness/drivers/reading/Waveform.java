package railwitness.drivers.reading;

/**
 * Equally spaced samples of one channel.
 *
 * @param startSeconds time of the first sample against the trigger, s
 * @param stepSeconds distance of two samples, s, above zero
 * @param values samples in the channel's unit
 */
public record Waveform(Channel channel, double startSeconds, double stepSeconds, double[] values) {}
