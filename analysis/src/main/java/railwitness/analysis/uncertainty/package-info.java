/**
 * Values with their uncertainty. An estimate is its value and a sum of named influences, so what two estimates share
 * correlates them without a word; after the Guide to the Expression of Uncertainty in Measurement (JCGM 100).
 */
package railwitness.analysis.uncertainty;
