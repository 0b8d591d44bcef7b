/**
 * What a design sheet leads to expect at every point, with the uncertainty that its parts' tolerances, parts left out and
 * the forward model's own error give it; and what was measured beside it.
 */
package railwitness.analysis.expected;
