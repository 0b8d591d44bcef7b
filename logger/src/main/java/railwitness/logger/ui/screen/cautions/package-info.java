/** The stage between a person and power: cautions, checklist, cold resistances, a name. */
package railwitness.logger.ui.screen.cautions;
