/**
 * What hours of running show: drift, the way to the final temperature, and whether it was reached, by a rule that is
 * named because the standards disagree. Pure functions on time series; safe temperatures are for local codes to say.
 */
package railwitness.analysis.soak;
