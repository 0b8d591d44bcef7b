package railwitness.drivers.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.drivers.sheet.SheetTable;

/**
 * How an instrument's readings are traced to standards: its last calibration, as the bench sheet states it.
 *
 * @param day of it
 * @param due when the next one is due
 * @param certificate number of its certificate
 * @param laboratory that made it
 */
public record Calibration(
        Optional<LocalDate> day, Optional<LocalDate> due, Optional<String> certificate, Optional<String> laboratory) {
    /** Nothing stated. */
    public static final Calibration NOT_STATED =
            new Calibration(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /** The keys {@code calibrated}, {@code calibration_due} and so on. */
    static Calibration of(SheetTable table) {
        return of(table, "calibrated", "calibration", "its last calibration");
    }

    /** The keys {@code shunt_calibrated}, {@code shunt_calibration_due} and so on: a shunt is an instrument too. */
    static Calibration ofShunt(SheetTable table) {
        return of(table, "shunt_calibrated", "shunt_calibration", "the shunt's last calibration");
    }

    private static Calibration of(SheetTable table, String day, String more, String whose) {
        Calibration stated = new Calibration(
                table.date(day, "day of " + whose).optional(),
                table.date(more + "_due", "day on which the next one is due").optional(),
                table.text(more + "_certificate", "number of the certificate of " + whose)
                        .optional(),
                table.text(more + "_laboratory", "who made it").optional());
        if (stated.day.isPresent()
                && stated.due.filter(stated.day.get()::isAfter).isPresent()) {
            table.fault(more + "_due", "lies before " + day + " = " + stated.day.get());
        }
        return stated;
    }

    /** Whether it was past due on a day. */
    public boolean isPastDue(LocalDate on) {
        return due.filter(on::isAfter).isPresent();
    }

    /** Such as "no. R-118, by Lockside, 2026-05-11, due 2027-05-11"; empty where nothing is stated. */
    public String words() {
        List<String> parts = new ArrayList<>();
        certificate.ifPresent(number -> parts.add("no. " + number));
        laboratory.ifPresent(name -> parts.add("by " + name));
        day.ifPresent(date -> parts.add(date.toString()));
        due.ifPresent(date -> parts.add("due " + date));
        return String.join(", ", parts);
    }
}
