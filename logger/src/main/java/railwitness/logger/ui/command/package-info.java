/** What a person types: one class per command, exit codes, and the only place that writes to the standard streams. */
package railwitness.logger.ui.command;
