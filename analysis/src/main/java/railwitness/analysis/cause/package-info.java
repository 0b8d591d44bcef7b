/**
 * Probable causes. Each supposed fault is put into the design's closed form; what it would do to the figures is held
 * against what was measured, with its uncertainty, and against 'nothing wrong'. How often a fault occurs plays no part.
 */
package railwitness.analysis.cause;
