package railwitness.logger.reporting.certificate;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.logger.recording.store.SessionHead;

/** What was tested and with what, in short, on the first page; what is too long for it stands whole further inside. */
final class FirstFacts {
    private static final int MOST_LINES = 3;

    private final Evidence evidence;

    FirstFacts(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Fact> unit() {
        SessionHead head = evidence.session().head();
        Optional<Design> design = evidence.session().design();
        Particulars stated = evidence.order().stated();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Unit", head.unitName(), MOST_LINES));
        facts.add(new Fact("Serial", head.unitSerial().isEmpty() ? "not stated" : head.unitSerial(), MOST_LINES));
        facts.add(new Fact("Condition", condition(), 1));
        facts.add(new Fact("Design", design.map(Wording::design).orElse("no design sheet"), 2));
        facts.add(new Fact("Input", Wording.input(evidence), 2));
        facts.add(new Fact("Tested", tested(), 2));
        facts.add(new Fact("Connected", connected(), 2));
        facts.add(new Fact("Customer", stated.words(Particular.CUSTOMER), MOST_LINES));
        facts.add(new Fact("Received", stated.words(Particular.RECEIVED), 1));
        return facts;
    }

    List<Fact> test() {
        Particulars stated = evidence.order().stated();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Laboratory", stated.words(Particular.WORKSHOP), MOST_LINES));
        facts.add(new Fact("Address", stated.words(Particular.ADDRESS), MOST_LINES));
        facts.add(new Fact("Place of test", stated.of(Particular.PLACE).orElse("at that address"), 2));
        facts.add(new Fact("Ambient", ambient(evidence), 2));
        facts.add(new Fact(
                "Switching", evidence.session().design().map(Wording::switching).orElse("not stated"), 1));
        facts.add(new Fact("Instruments", instruments(), 3));
        facts.add(new Fact("U", "expanded, 95 %; k beside each figure inside", 1));
        facts.add(new Fact(
                "Method",
                evidence.wasRun()
                        ? "settled by slope, then averaged; told inside"
                        : "readings brought in; how they were taken is not known",
                2));
        facts.add(
                new Fact("Before", evidence.earlier().map(Earlier::words).orElse("no earlier test cited"), MOST_LINES));
        return facts;
    }

    /** As stated for the paper, else as the bench sheet has it. */
    static String ambient(Evidence evidence) {
        return evidence.order()
                .stated()
                .of(Particular.AMBIENT)
                .map(text -> text.replaceAll("\\b(deg ?C)\\b", "\u00b0C"))
                .or(() -> evidence.session().bench().map(FirstFacts::onTheSheet))
                .orElse("not stated");
    }

    private static String onTheSheet(BenchSheet bench) {
        return Wording.number(bench.ambientDegC()) + " \u00b0C by the bench sheet, its U not stated";
    }

    private String instruments() {
        int count = evidence.instruments().size()
                + evidence.session()
                        .bench()
                        .map(bench -> bench.handRead().size() + bench.banks().size())
                        .orElse(0);
        if (count == 0) {
            return "not known";
        }
        List<String> late = Calibrations.expired(evidence);
        return count + ", each with its calibration inside"
                + (late.isEmpty() ? "" : "; calibration past due: " + String.join(", ", late));
    }

    private String connected() {
        return evidence.session()
                .design()
                .map(Design::connected)
                .filter(items -> !items.isEmpty())
                .map(items -> String.join(", ", items))
                .orElse("not stated");
    }

    private String condition() {
        String condition = evidence.session().head().unitCondition();
        return condition.isEmpty() ? "not stated" : condition;
    }

    private String tested() {
        ZoneId zone = evidence.session().head().zone();
        Instant start = evidence.session().head().startedWall();
        Instant end = start.plusNanos(evidence.session().endedNanos());
        return Dates.minute(start, zone) + " to " + Dates.until(start, end, zone) + ", "
                + evidence.session().state().word();
    }
}
