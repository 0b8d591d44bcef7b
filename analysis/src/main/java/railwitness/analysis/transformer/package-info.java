/**
 * The transformer by itself: what a design of core, turns and wire comes to before it is wound, and which whole number
 * of turns agrees with a measured ratio.
 */
package railwitness.analysis.transformer;
