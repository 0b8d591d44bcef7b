package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.OptionalDouble;

/**
 * One row of a hold's table of cycles.
 *
 * @param length how long, above zero
 * @param loadPercent of full load, all rails
 * @param inputVolts setting of the supply, V; empty for the nominal input
 * @param off the supply's output is off meanwhile; the unit comes back by first power
 */
public record HoldPart(Duration length, double loadPercent, OptionalDouble inputVolts, boolean off) {}
