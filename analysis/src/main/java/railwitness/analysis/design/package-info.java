/**
 * The design sheet: what the unit under test should be and what it must keep to. Each record mirrors one table of the
 * sheet, key by key and in the sheet's units; what the owner does not know is left out and never guessed. From it come
 * the predictions that stand beside the measured figures.
 */
package railwitness.analysis.design;
