/** A sheet in a form: one field for each key, its fault in words beside it, the person's text kept underneath. */
package railwitness.logger.ui.screen.form;
