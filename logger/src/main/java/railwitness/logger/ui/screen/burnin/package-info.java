/** A hold of hours or days as a page: temperatures with what is foretold, drift, efficiency, what happened. */
package railwitness.logger.ui.screen.burnin;
