package railwitness.logger.recording.sheet;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Remark;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.Calibration;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.instrument.Dialects;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.sheet.SheetException;
import railwitness.logger.recording.plan.Plan;

/** Whether the bench fits the unit and the plan, and the dialect files that it names can be read. */
final class BenchCheck {
    private static final String INSTRUMENT = "[[instrument]]";

    private final BenchSheet bench;
    private final List<Remark> remarks = new ArrayList<>();

    private BenchCheck(BenchSheet bench) {
        this.bench = bench;
    }

    static List<Remark> of(BenchSheet bench, Optional<Design> design, Optional<Plan> plan) {
        BenchCheck check = new BenchCheck(bench);
        check.dialects();
        check.calibrations(LocalDate.now());
        design.ifPresent(check::rails);
        check.knobs(design);
        if (design.isPresent() && plan.isPresent()) {
            check.supply(plan.get().highestInputVolts(SheetsCheck.rating(design.get())));
        }
        return List.copyOf(check.remarks);
    }

    private void dialects() {
        for (int place = 0; place < bench.instruments().size(); place++) {
            String dialect = bench.instruments().get(place).dialect().orElse("");
            if (dialect.endsWith(".toml")) {
                int at = place;
                whyUnreadable(Path.of(dialect))
                        .ifPresent(why -> say(
                                Remark.Weight.CANNOT_BE,
                                INSTRUMENT,
                                at,
                                "dialect",
                                bench.instruments().get(at).name() + " is to be spoken to by the file " + dialect + ", "
                                        + why));
            }
        }
    }

    /** Said before the run: what is read with an expired instrument is traced to nothing. */
    private void calibrations(LocalDate today) {
        for (int place = 0; place < bench.instruments().size(); place++) {
            InstrumentSheet instrument = bench.instruments().get(place);
            pastDue(instrument.calibration(), today, INSTRUMENT, place, "calibration_due", instrument.name());
            pastDue(
                    instrument.shuntCalibration(),
                    today,
                    INSTRUMENT,
                    place,
                    "shunt_calibration_due",
                    "the shunt of " + instrument.name());
        }
        for (int place = 0; place < bench.handRead().size(); place++) {
            var meter = bench.handRead().get(place);
            pastDue(meter.calibration(), today, "[[hand_read]]", place, "calibration_due", meter.name());
        }
        for (int place = 0; place < bench.banks().size(); place++) {
            var bank = bench.banks().get(place);
            pastDue(
                    bank.calibration(),
                    today,
                    "[[resistor_bank]]",
                    place,
                    "calibration_due",
                    "the resistor bank of " + bank.rail());
        }
    }

    private void pastDue(Calibration calibration, LocalDate today, String table, int place, String key, String whose) {
        if (calibration.isPastDue(today)) {
            say(
                    Remark.Weight.LOOK,
                    table,
                    place,
                    key,
                    "calibration of " + whose + " was due on "
                            + calibration.due().orElseThrow()
                            + "; the certificate will say that it had expired");
        }
    }

    private static Optional<String> whyUnreadable(Path file) {
        if (!Files.exists(file)) {
            return Optional.of("which does not exist; a name without folders is looked for in "
                    + Path.of("").toAbsolutePath());
        }
        try {
            Dialects.of(file);
            return Optional.empty();
        } catch (SheetException e) {
            return Optional.of("which has faults: " + e.getMessage().replaceAll("\\R", "; "));
        }
    }

    private void rails(Design design) {
        for (int place = 0; place < bench.instruments().size(); place++) {
            InstrumentSheet instrument = bench.instruments().get(place);
            if (instrument.duty() instanceof Duty.AsLoad load) {
                onRail(design, INSTRUMENT, place, load.setting().rail(), instrument.name() + " loads");
            }
        }
        for (int place = 0; place < bench.banks().size(); place++) {
            onRail(design, "[[resistor_bank]]", place, bench.banks().get(place).rail(), "a resistor bank loads");
        }
        design.rails().stream()
                .filter(rail -> !bench.readBy().containsKey(new Channel(rail.name(), Quantity.VOLTAGE)))
                .forEach(rail -> say(
                        Remark.Weight.LOOK,
                        "[bench]",
                        0,
                        "name",
                        "nobody reads the voltage of the " + rail.name() + " rail, so it is not watched"));
    }

    /** What a supply without a serial line cannot do must be accepted in words, and its being off must be readable. */
    private void knobs(Optional<Design> design) {
        if (!bench.isSetByHand()) {
            return;
        }
        if (bench.acceptedWithoutGuardian().isEmpty()) {
            say(
                    Remark.Weight.CANNOT_BE,
                    "[bench]",
                    0,
                    "without_guardian",
                    "is missing: the supply has only knobs, so nothing switches off when this program dies; say here in"
                            + " words why that is accepted");
        }
        if (bench.acceptedWithoutProtection().isEmpty()) {
            say(
                    Remark.Weight.CANNOT_BE,
                    "[bench]",
                    0,
                    "supply_without_protection",
                    "is missing: the supply has only knobs, so no protection of it is set and read back; say here in words"
                            + " why that is accepted");
        }
        design.ifPresent(unit -> unit.rails().stream()
                .filter(rail -> !bench.readBy().containsKey(new Channel(rail.name(), Quantity.VOLTAGE)))
                .forEach(rail -> say(
                        Remark.Weight.CANNOT_BE,
                        "[bench]",
                        0,
                        "name",
                        "nobody reads the voltage of the " + rail.name()
                                + " rail: a supply with knobs counts as off only"
                                + " when every rail was read low; add a [[hand_read]] or a meter for it")));
    }

    private void onRail(Design design, String table, int place, String rail, String who) {
        if (design.rail(rail).isEmpty()) {
            List<String> names =
                    design.rails().stream().map(known -> known.name()).toList();
            say(
                    Remark.Weight.CANNOT_BE,
                    table,
                    place,
                    "rail",
                    who + " a rail '" + rail + "', which the design sheet does not have; its rails are "
                            + String.join(", ", names));
        }
    }

    private void supply(double highestVolts) {
        for (int place = 0; place < bench.instruments().size(); place++) {
            InstrumentSheet instrument = bench.instruments().get(place);
            if (instrument.duty() instanceof Duty.AsSupply supply) {
                double gives = supply.setting().highestVolts().orElse(highestVolts);
                if (gives < highestVolts) {
                    say(
                            Remark.Weight.LOOK,
                            INSTRUMENT,
                            place,
                            "highest_V",
                            "the plan needs " + highestVolts + " V and " + instrument.name() + " gives " + gives
                                    + " V: such steps will be left out");
                }
            }
        }
    }

    private void say(Remark.Weight weight, String table, int place, String key, String words) {
        remarks.add(new Remark(weight, table, place, key, words));
    }
}
