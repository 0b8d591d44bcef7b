/**
 * What the points of a test say about a supply: powers, the figures by their definitions, where the loss goes, what the
 * sag is made of, and ripple. Everything carries its uncertainty; what the points cannot give is said with its reason.
 */
package railwitness.analysis.supply;
