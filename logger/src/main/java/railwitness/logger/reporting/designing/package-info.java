/** A transformer's design sheet and the turns proposed for it, printed for the builder and for other programs. */
package railwitness.logger.reporting.designing;
