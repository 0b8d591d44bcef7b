package railwitness.logger.reporting.certificate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.Calibration;
import railwitness.drivers.bench.InstrumentSheet;

/** How the readings are traced, instrument by instrument; a shunt is one. */
final class Calibrations {
    private Calibrations() {}

    /** Names of those whose calibration was past due on the day of the test. */
    static List<String> expired(Evidence evidence) {
        Optional<BenchSheet> bench = evidence.session().bench();
        LocalDate day = day(evidence);
        List<String> late = new ArrayList<>();
        bench.ifPresent(sheet -> {
            for (InstrumentSheet instrument : sheet.instruments()) {
                if (instrument.calibration().isPastDue(day)) {
                    late.add(instrument.name());
                }
                if (instrument.shuntCalibration().isPastDue(day)) {
                    late.add("shunt of " + instrument.name());
                }
            }
            sheet.handRead().stream()
                    .filter(meter -> meter.calibration().isPastDue(day))
                    .forEach(meter -> late.add(meter.name()));
            sheet.banks().stream()
                    .filter(bank -> bank.calibration().isPastDue(day))
                    .forEach(bank -> late.add(bank.rail() + " load resistors"));
        });
        return late;
    }

    private static LocalDate day(Evidence evidence) {
        return evidence.session()
                .head()
                .startedWall()
                .atZone(evidence.session().head().zone())
                .toLocalDate();
    }

    /** As printed, with a warning where it had expired when the unit was tested. */
    static String words(Calibration calibration, Evidence evidence) {
        String words = calibration.words();
        return words.isEmpty()
                ? "not stated"
                : words + (calibration.isPastDue(day(evidence)) ? "; EXPIRED when tested" : "");
    }
}
