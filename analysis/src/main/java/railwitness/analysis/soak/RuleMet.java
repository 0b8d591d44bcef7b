package railwitness.analysis.soak;

import java.util.OptionalDouble;

/**
 * A stability rule and when it was first kept.
 *
 * @param rule by name of the standard
 * @param metAtSeconds s of the session; empty where it never was
 */
public record RuleMet(String rule, OptionalDouble metAtSeconds) {}
