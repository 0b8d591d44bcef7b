package railwitness.analysis.transformer;

import railwitness.analysis.design.Design;

/**
 * A design sheet with what it says of core and wire.
 *
 * @param design the unit
 * @param parts core and wire
 */
public record WoundDesign(Design design, ToroidParts parts) {}
