/**
 * Is the unit fit? Requirements held against figures with their uncertainty, after JCGM 106 and ILAC-G8: every verdict
 * names its decision rule and its probability of conformity, and none leans silently on an accuracy nobody stated.
 */
package railwitness.analysis.verdict;
