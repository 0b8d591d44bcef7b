/** The paper of the screen: words and numbers as people read them, and the ruled sheet that every stage is written on. */
package railwitness.logger.ui.screen.widgets;
