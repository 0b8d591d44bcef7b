package railwitness.analysis.supply;

import java.util.Optional;
import railwitness.analysis.design.FigureName;

/**
 * A figure that the points cannot give.
 *
 * @param name which
 * @param rail of which rail; empty where it is not of one
 * @param reason why, and what would give it
 */
public record NotFound(FigureName name, Optional<String> rail, String reason) {}
