package railwitness.analysis.design;

import java.util.Comparator;
import java.util.List;

/**
 * What of a design sheet cannot be, or should be looked at: rails against turns, parts against what they will see, limits
 * against a sound unit. Only what the sheet gives is judged.
 */
public final class DesignCheck {
    private DesignCheck() {}

    /**
     * All remarks, what cannot be first.
     *
     * @param plannedVolts highest input of the plan, V; 0 where there is none
     */
    public static List<Remark> of(Design design, double plannedVolts) {
        Remarks remarks = new Remarks();
        double highest = RailBounds.highestInput(design, plannedVolts);
        for (int place = 0; place < design.rails().size(); place++) {
            new RailCheck(design, highest, remarks).take(place);
        }
        new RatingCheck(design, highest, remarks).take();
        new CoreCheck(design, highest, remarks).take();
        new InputCheck(design, remarks).take();
        new LimitCheck(design, highest, remarks).take();
        return remarks.all().stream()
                .sorted(Comparator.comparing(Remark::weight))
                .toList();
    }
}
