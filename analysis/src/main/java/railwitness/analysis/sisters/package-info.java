/** Units of one model side by side: which of them is unlike its sisters. */
package railwitness.analysis.sisters;
