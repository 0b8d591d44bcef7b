package railwitness.analysis.soak;

import java.util.OptionalDouble;

/**
 * What a stability rule says of a record's end.
 *
 * @param rule the rule
 * @param steady whether it was kept
 * @param moved what was measured for it, in K or K/h as the rule goes; absent where the record is too short
 * @param reason one line for print
 */
public record Stability(StabilityRule rule, boolean steady, OptionalDouble moved, String reason) {}
