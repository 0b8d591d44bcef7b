/**
 * What can hurt the person at this unit, worked out from plain numbers before power, and the checklist of every run.
 * Thresholds name their source. The text defers to local codes and licensed practice.
 */
package railwitness.safety.caution;
