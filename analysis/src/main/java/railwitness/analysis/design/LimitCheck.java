package railwitness.analysis.design;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whether the limits leave a sound unit alone and a faulty one none of what it may not have. */
final class LimitCheck {
    private static final String LIMITS = "[limits]";
    private static final String RAIL = "[[rail]]";

    /** Direct voltage that counts as safe to touch (IEC 62368-1 ES1, from memory; IEC 60065 as printed in a public copy). */
    private static final double TOUCHABLE_VOLTS = 60;

    private final Design design;
    private final UnitLimits limits;
    private final double highestVolts;
    private final Remarks remarks;

    LimitCheck(Design design, double highestVolts, Remarks remarks) {
        this.design = design;
        this.limits = design.limits();
        this.highestVolts = highestVolts;
        this.remarks = remarks;
    }

    void take() {
        boolean highSaid = false;
        boolean lowSaid = false;
        for (int place = 0; place < design.rails().size(); place++) {
            Rail rail = design.rails().get(place);
            boolean ownHigh = rail.limitHighVolts().isPresent();
            boolean ownLow = rail.limitLowVolts().isPresent();
            highSaid |= (ownHigh || !highSaid)
                    && high(
                            rail,
                            ownHigh ? rail.limitHighVolts() : limits.railHighVolts(),
                            ownHigh ? RAIL : LIMITS,
                            place);
            lowSaid |= (ownLow || !lowSaid)
                    && low(rail, ownLow ? rail.limitLowVolts() : limits.railLowVolts(), ownLow ? RAIL : LIMITS, place);
        }
        imbalance();
        touch();
        input();
    }

    /** The watch compares two rails' magnitudes; rails that are meant to differ would always trip it. */
    private void imbalance() {
        if (limits.imbalanceVolts().isEmpty() || design.rails().size() != 2) {
            return;
        }
        double apart = Math.abs(
                design.rails().get(0).nominalMagnitude() - design.rails().get(1).nominalMagnitude());
        if (apart > limits.imbalanceVolts().getAsDouble()) {
            remarks.cannotBe(
                    LIMITS,
                    Remarks.ONLY,
                    "imbalance_V",
                    "the rails are nominally %s V apart in size and would be switched off at %s V; take this limit out",
                    apart,
                    limits.imbalanceVolts().getAsDouble());
        }
    }

    private boolean high(Rail rail, OptionalDouble stated, String table, int place) {
        if (stated.isEmpty()) {
            return false;
        }
        double limit = stated.getAsDouble();
        String key = table.equals(RAIL) ? "limit_high_V" : "rail_high_V";
        int at = table.equals(RAIL) ? place : Remarks.ONLY;
        OptionalDouble rating = design.capacitorRatingVolts(rail);
        if (rating.isPresent() && limit > rating.getAsDouble()) {
            remarks.cannotBe(
                    table,
                    at,
                    key,
                    "the %s rail may rise to %s V and its capacitors are rated %s V; lower the limit",
                    rail.name(),
                    limit,
                    rating.getAsDouble());
            return true;
        }
        if (design.ratio(rail).isEmpty() && !design.regulates(rail)) {
            return false;
        }
        double highest = RailBounds.of(design, rail, highestVolts).expectedVolts();
        double nominal =
                RailBounds.of(design, rail, design.input().nominalVolts()).expectedVolts();
        if (limit < highest) {
            remarks.add(
                    limit < nominal ? Remark.Weight.CANNOT_BE : Remark.Weight.LOOK,
                    table,
                    at,
                    key,
                    "a sound %s rail stands at %s V %s and would be switched off at %s V; raise the limit, or put turns or"
                            + " input right",
                    rail.name(),
                    limit < nominal ? nominal : highest,
                    design.regulates(rail)
                            ? "in use"
                            : "without load at "
                                    + Allowed.text(
                                            limit < nominal ? design.input().nominalVolts() : highestVolts)
                                    + " V of input",
                    limit);
            return true;
        }
        return false;
    }

    private boolean low(Rail rail, OptionalDouble stated, String table, int place) {
        if (stated.isEmpty() || stated.getAsDouble() < rail.nominalMagnitude()) {
            return false;
        }
        remarks.cannotBe(
                table,
                table.equals(RAIL) ? place : Remarks.ONLY,
                table.equals(RAIL) ? "limit_low_V" : "rail_low_V",
                "the %s rail is nominally %s V and would be switched off below %s V; give that rail its own limit_low_V",
                rail.name(),
                rail.nominalMagnitude(),
                stated.getAsDouble());
        return true;
    }

    private void touch() {
        boolean plus = design.rails().stream().anyMatch(rail -> rail.nominalVolts() > 0);
        boolean minus = design.rails().stream().anyMatch(rail -> rail.nominalVolts() < 0);
        double sides = plus && minus ? 2 : 1;
        limits.touchVolts().ifPresent(touch -> {
            if (sides * touch > TOUCHABLE_VOLTS) {
                remarks.cannotBe(
                        LIMITS,
                        Remarks.ONLY,
                        "touch_V",
                        "rails of either sign that count as discharged at %s V each may still stand %s V apart, above the"
                                + " 60 V that may be touched; at most 30 V",
                        touch,
                        sides * touch);
                return;
            }
            design.rails().stream()
                    .filter(rail -> touch >= rail.nominalMagnitude())
                    .findFirst()
                    .ifPresent(rail -> remarks.look(
                            LIMITS,
                            Remarks.ONLY,
                            "touch_V",
                            "the %s rail counts as discharged at %s V, which is not below its nominal %s V",
                            rail.name(),
                            touch,
                            rail.nominalMagnitude()));
        });
    }

    private void input() {
        Prediction.of(design, design.input().nominalVolts(), Map.of()).ifPresent(idle -> idle.inputCurrent()
                .ifPresent(amperes -> under(limits.noLoadInputAmperes(), "no_load_input_A", "without load", amperes)));
        Optional<Prediction> full = InputCheck.atFullLoad(design);
        full.ifPresent(at -> at.inputCurrent()
                .ifPresent(amperes -> under(limits.inputAmperes(), "input_A", "at full load", amperes)));
        if (limits.extraLossWatts().isPresent()
                && full.map(Prediction::complete).filter(complete -> complete).isEmpty()) {
            remarks.look(
                    LIMITS,
                    Remarks.ONLY,
                    "extra_loss_W",
                    "the loss beyond the predicted one cannot be watched: the sheet does not give all parts that losses"
                            + " hang on");
        }
    }

    private void under(OptionalDouble limit, String key, String when, double amperes) {
        limit.ifPresent(stated -> {
            if (stated < amperes) {
                remarks.look(
                        LIMITS,
                        Remarks.ONLY,
                        key,
                        "a sound unit draws %s A %s and would be switched off at %s A",
                        amperes,
                        when,
                        stated);
            }
        });
    }
}
