/**
 * Readings that cannot all be true. Physics is the first witness: power does not come from nowhere, a rail has its sign,
 * two instruments that look at one thing see the same. What is found here blocks every verdict that rests on it.
 */
package railwitness.analysis.contradiction;
