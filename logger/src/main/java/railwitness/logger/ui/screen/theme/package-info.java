/** How the screen looks, as data: colours of both themes, sizes of type, and their installation in the look-and-feel. */
package railwitness.logger.ui.screen.theme;
