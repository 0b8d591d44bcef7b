/** The manual in the window: one page for every figure, limit, caution and stage, word for word what the document says. */
package railwitness.logger.ui.screen.help;
