/**
 * Everything a set of operating points gives, together: figures, predictions, budgets, verdicts, causes. The same points
 * give the same findings, whenever and wherever they are worked out.
 */
package railwitness.analysis.findings;
