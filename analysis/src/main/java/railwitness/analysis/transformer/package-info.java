/** What the figures say of the transformer: which whole number of turns agrees with the measured ratio. */
package railwitness.analysis.transformer;
