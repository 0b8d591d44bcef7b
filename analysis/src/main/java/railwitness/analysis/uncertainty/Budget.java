package railwitness.analysis.uncertainty;

import java.util.Comparator;
import java.util.List;

/**
 * An uncertainty budget, one row per independent cause, largest first (EA-4/02 section 7).
 *
 * @param quantity the result's name
 * @param result the result
 * @param rows its causes
 */
public record Budget(String quantity, Estimate result, List<Row> rows) {

    /**
     * One cause.
     *
     * @param quantity name of the influence, or of the readings or fit it comes from
     * @param value its best estimate in its own unit: of readings their mean, of an error 0
     * @param u its standard uncertainty, in its own unit
     * @param unit its own unit
     * @param distribution the shape's word
     * @param sensitivity change of the result per unit of the influence, signed
     * @param contribution standard uncertainty it brings, in the result's unit
     * @param degreesOfFreedom above 0, may be infinite
     */
    public record Row(
            String quantity,
            double value,
            double u,
            String unit,
            String distribution,
            double sensitivity,
            double contribution,
            double degreesOfFreedom) {}

    public Budget {
        rows = List.copyOf(rows);
    }

    /**
     * @param quantity the result's name
     * @param result the result
     * @param unit its unit; rows of a set of readings or of a fit are given in it
     */
    public static Budget of(String quantity, Estimate result, String unit) {
        Comparator<Row> largestFirst =
                Comparator.comparingDouble(Row::contribution).reversed().thenComparing(Row::quantity);
        List<Row> rows = Contributions.groups(result.terms()).stream()
                .map(group -> row(group, unit))
                .sorted(largestFirst)
                .toList();
        return new Budget(quantity, result, rows);
    }

    private static Row row(List<Term> group, String unit) {
        Influence first = group.get(0).influence();
        Contribution all = Contributions.together(group);
        boolean single = group.size() == 1 && first.group() == first && first.u() > 0;
        double u = single ? first.u() : all.u();
        double sensitivity = single ? group.get(0).coefficient() / u : 1;
        String own = single ? first.unit() : unit;
        double value = single ? first.estimate() : 0;
        return new Row(all.name(), value, u, own, all.shape().word(), sensitivity, all.u(), all.degreesOfFreedom());
    }
}
