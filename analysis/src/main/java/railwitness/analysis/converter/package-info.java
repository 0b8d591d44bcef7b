/** The forward model: a push-pull step-up converter worked out from its parts, sound or with any fault put into them. */
package railwitness.analysis.converter;
