package railwitness.analysis.transformer;

/**
 * Something that a design sheet does not say.
 *
 * @param keys where it would stand, such as "[core] outer_mm"
 * @param costs what was taken instead, or what cannot be worked out without it
 */
public record SheetGap(String keys, String costs) {}
