package railwitness.logger.reporting.certificate;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.verdict.DecisionRule;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.bench.ResistorBank;
import railwitness.drivers.instrument.Identity;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.record.RunSetup;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.InstrumentEntry;
import railwitness.logger.reporting.findings.ReadInTurn;

/** How it was done and with what: method, definitions, decision rule, instruments. */
final class MethodPages {
    private static final String HOW_IMPORTED =
            "How they were taken, in which order, and whether the unit had settled, is"
                    + " not known to this program; every step is averaged over the rows that name it.";

    private final Evidence evidence;
    private final Typesetter type;
    private final Section section;

    MethodPages(Evidence evidence, Typesetter type) {
        this.evidence = evidence;
        this.type = type;
        this.section = new Section(type);
    }

    void set() {
        method();
        decision();
        instruments();
    }

    private void method() {
        section.begin("Method", 60);
        section.paragraph(evidence.wasRun() ? howRun() : howImported());
        List<OperatingPoint> points = evidence.session().findings().points();
        if (!points.isEmpty()) {
            section.paragraph("Input voltage: "
                    + points.stream()
                            .map(point -> point.inputSource().words())
                            .distinct()
                            .collect(Collectors.joining("; "))
                    + ". Powers are products of the means of voltage and current."
                    + ripple());
        }
        section.paragraph(
                "Uncertainty: law of propagation with correlation (JCGM 100:2008, 5.2). What an instrument may be"
                        + " off by is one and the same for all its readings on a range; the scatter of a mean allows for"
                        + " autocorrelation. U = k u at a coverage probability of 95 %, k by the distribution of the sum, not by"
                        + " custom. Rounded to two digits of U.");
    }

    private String howImported() {
        return evidence.imported()
                        .map(from -> "The readings were brought in: " + from + ". ")
                        .orElse("No plan was run by this program. ")
                + HOW_IMPORTED;
    }

    private String howRun() {
        return "The unit was fed from a laboratory supply behind a current limit and loaded in steps; input and rails were"
                + " read in rounds"
                + evidence.session()
                        .bench()
                        .map(bench -> " of " + Wording.number(bench.interval().toMillis() / 1000.0) + " s")
                        .orElse("")
                + ". A step is averaged once every judged channel has settled, which means: "
                + RunSetup.settlingRule().words()
                + ". Readings taken while the supply limited its current or a load could not hold its set point enter no"
                + " average.";
    }

    private String ripple() {
        boolean read = evidence.session().findings().points().stream()
                .map(OperatingPoint::rails)
                .anyMatch(rails -> rails.values().stream()
                        .anyMatch(rail -> rail.rippleRms().isPresent()));
        if (!read) {
            return "";
        }
        String bands = evidence.session().bench().stream()
                .flatMap(bench -> bench.instruments().stream())
                .filter(instrument -> instrument.bandHz().size() == 2)
                .map(instrument -> frequency(instrument.bandHz().get(0)) + " to "
                        + frequency(instrument.bandHz().get(1)))
                .distinct()
                .collect(Collectors.joining(", "));
        return " Ripple: rms" + (bands.isEmpty() ? ", band not stated." : " in the band " + bands + ".");
    }

    private static String frequency(double hertz) {
        if (hertz >= 1e6) {
            return Wording.number(hertz / 1e6) + " MHz";
        }
        return hertz >= 1000 ? Wording.number(hertz / 1000) + " kHz" : Wording.number(hertz) + " Hz";
    }

    private void decision() {
        Optional<DecisionRule> rule = evidence.session().findings().verdicts().stream()
                .map(verdict -> verdict.rule())
                .findFirst();
        section.begin("Decision rule", 50);
        if (rule.isEmpty()) {
            section.paragraph("No requirement was stated, so nothing was judged.");
            return;
        }
        section.paragraph("The design sheet asks for " + rule.get().words() + " (ILAC-G8:09/2019, JCGM 106:2012)."
                + (rule.get() == DecisionRule.GUARD_BAND
                        ? " Inside the limit by more than that: pass; inside by less: conditional pass; outside by less:"
                                + " conditional fail; outside by more: fail."
                        : " The value alone is held against the limit.")
                + " Any fail or conditional fail makes the unit not fit; a requirement that the readings cannot answer is"
                + " not judged.");
    }

    private void instruments() {
        section.begin("Instruments", 70);
        if (!evidence.wasRun() && evidence.instruments().isEmpty()) {
            section.paragraph("Not known: the readings were brought in, and with what they were taken is not in them."
                    + (evidence.session().bench().isPresent()
                            ? " Accuracies are those of the bench sheet that was given beside them."
                            : ""));
            if (evidence.session().bench().isEmpty()) {
                return;
            }
        }
        Table table = new Table(
                type,
                Section.SMALL,
                2,
                List.of(
                        Column.words("instrument", 20),
                        Column.words("maker, model, serial, firmware", 36),
                        Column.words("calibration: certificate, laboratory, day, due", 34),
                        Column.words("accuracy", 38)));
        table.head();
        evidence.instruments().forEach(entry -> {
            table.row(row(entry));
            shunt(entry).ifPresent(table::row);
        });
        evidence.session().bench().ifPresent(bench -> {
            bench.handRead().forEach(meter -> table.row(row(meter)));
            bench.banks().forEach(bank -> table.row(row(bank)));
        });
        type.down(4);
        section.small("Calibration dates and accuracies as the bench sheet states them"
                + evidence.session()
                        .bench()
                        .map(BenchSheet::name)
                        .map(name -> " ('" + name + "')")
                        .orElse("")
                + "; 'limit' means the error never lies outside, '95 %' that it does with 5 % probability. Identities as"
                + " the instruments answered.");
        evidence.session().readInTurn().filter(ReadInTurn::any).ifPresent(read -> section.small(read.words() + "."));
        leads();
    }

    /** What was found at the leads before power, where somebody looked. */
    private void leads() {
        List<String> found = evidence.session().events().stream()
                .filter(event -> event.is(EventKind.LEADS))
                .map(EventEntry::text)
                .map(Typography::of)
                .toList();
        if (!found.isEmpty()) {
            section.paragraph(
                    List.of(Span.strong("Leads, checked before power: "), Span.plain(String.join("; ", found) + ".")));
        }
    }

    private List<String> row(InstrumentEntry entry) {
        Optional<InstrumentSheet> sheet = evidence.session().bench().flatMap(bench -> bench.instrument(entry.name()));
        String accuracy = sheet.map(MethodPages::accuracy).orElse(entry.accuracy());
        return List.of(
                entry.name(),
                identity(entry.identity()),
                sheet.map(one -> Calibrations.words(one.calibration(), evidence))
                        .orElse("not stated"),
                accuracy.isEmpty() ? "not stated" : accuracy);
    }

    private static String accuracy(InstrumentSheet sheet) {
        String stated = sheet.accuracy().entrySet().stream()
                .map(entry ->
                        entry.getKey().word() + " " + plusMinus(entry.getValue().words()))
                .sorted()
                .collect(Collectors.joining("; "));
        return stated;
    }

    /** A shunt is an instrument: it stands in the table below the meter that reads it. */
    private Optional<List<String>> shunt(InstrumentEntry entry) {
        return evidence.session()
                .bench()
                .flatMap(bench -> bench.instrument(entry.name()))
                .filter(InstrumentSheet::hasShunt)
                .map(sheet -> List.of(
                        "shunt of " + entry.name(),
                        "read by the voltage across it",
                        Calibrations.words(sheet.shuntCalibration(), evidence),
                        sheet.shuntTolerancePct() > 0
                                ? "\u00b1" + Wording.number(sheet.shuntTolerancePct()) + " %"
                                : "not stated"));
    }

    private static String plusMinus(String words) {
        return words.replace("+-", "\u00b1");
    }

    private static String identity(Identity identity) {
        return identity.maker() + ", " + identity.model() + ", " + identity.serial() + ", " + identity.firmware();
    }

    private List<String> row(HandRead meter) {
        return List.of(
                meter.name(),
                "read by hand: " + meter.reads(),
                Calibrations.words(meter.calibration(), evidence),
                meter.accuracy().map(one -> plusMinus(one.words())).orElse("not stated"));
    }

    private List<String> row(ResistorBank bank) {
        return List.of(
                bank.rail() + " load resistors",
                "switched by hand",
                Calibrations.words(bank.calibration(), evidence),
                String.format(Locale.ROOT, "\u00b1%s %%", Wording.number(bank.tolerancePct())));
    }
}
