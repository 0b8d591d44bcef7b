package railwitness.drivers.instrument;

import railwitness.drivers.reading.Channel;

/**
 * What a scope captures.
 *
 * @param rangeVolts full height of the picture, V
 * @param spanSeconds its length, s
 */
public record ScopeSetting(Channel reads, double rangeVolts, double spanSeconds, int channel) {}
