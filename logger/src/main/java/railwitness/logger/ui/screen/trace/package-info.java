/** Traces of a run against prediction and limits, by a painter of our own: a frame costs the same at any length. */
package railwitness.logger.ui.screen.trace;
