/**
 * When has a reading come to rest, and what is its mean worth? Settling by a named rule, averages of readings that
 * are not independent, and drift that an average would hide.
 */
package railwitness.analysis.steady;
