package railwitness.logger.reporting.designing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railwitness.analysis.transformer.DesignLine;
import railwitness.analysis.transformer.DesignSheet;
import railwitness.analysis.transformer.DesignWords;
import railwitness.analysis.transformer.Proposal;
import railwitness.analysis.transformer.ProposalReport;
import railwitness.analysis.transformer.RingSizes;
import railwitness.analysis.transformer.ToroidDesign;
import railwitness.logger.reporting.findings.TextTable;

/** Turns to choose from, as plain text: what each choice costs, and what keeps the others from being one. */
public final class ProposalText {
    private static final List<String> HEAD = List.of(
            "turns of a half",
            "wire of a half",
            "ratio",
            "flux T",
            "fill %",
            "copper W",
            "core W",
            "rise K",
            "what limits");

    private final ProposalReport report;
    private final List<String> lines = new ArrayList<>();

    private ProposalText(ProposalReport report) {
        this.report = report;
    }

    /** The text, its lines ended by line feeds. */
    public static String of(ProposalReport report) {
        ProposalText text = new ProposalText(report);
        text.lines.add("TURNS PROPOSED   " + report.wound().design().unit().name());
        text.own();
        text.rings();
        text.how();
        DesignText.gaps(report.gaps(), text.lines);
        return DesignText.joined(text.lines);
    }

    private void own() {
        if (report.own().isEmpty()) {
            return;
        }
        ToroidDesign any = report.own().get(0).design();
        lines.add(DesignText.drive(any.drive()));
        lines.add("");
        lines.add(report.best()
                .map(sheet -> String.format(
                        Locale.ROOT,
                        "On this core %s loses least of all that keep their limits: %s W.",
                        turns(sheet.design()),
                        DesignWords.number(Proposal.watts(sheet))))
                .orElse("No number of turns keeps every limit on this core; those that come nearest follow."));
        lines.add("");
        lines.add("On the sheet's core, " + RingSizes.words(any.core()) + ", "
                + any.core().material().name());
        TextTable table = new TextTable();
        table.row(HEAD);
        report.own().forEach(sheet -> table.row(row(sheet)));
        lines.addAll(table.lines(1));
    }

    private void rings() {
        lines.add("");
        lines.add("On usual rings of "
                + report.rings().get(0).design().core().material().name() + ", the best on each");
        TextTable table = new TextTable();
        List<String> head = new ArrayList<>(List.of("ring"));
        head.addAll(HEAD);
        table.row(head);
        report.rings().forEach(sheet -> {
            List<String> row =
                    new ArrayList<>(List.of(RingSizes.words(sheet.design().core())));
            row.addAll(row(sheet));
            table.row(row);
        });
        lines.addAll(table.lines(2));
    }

    private static String turns(ToroidDesign design) {
        return String.format(
                Locale.ROOT,
                "%d + %d : %d + %d",
                design.primary().turns(),
                design.primary().turns(),
                design.secondary().turns(),
                design.secondary().turns());
    }

    private static List<String> row(DesignSheet sheet) {
        ToroidDesign design = sheet.design();
        double core = value(sheet, "core loss");
        return List.of(
                turns(design),
                design.primary().wire().words() + " : "
                        + design.secondary().wire().words(),
                DesignWords.number(design.ratio()),
                DesignWords.number(value(sheet, "flux density")),
                DesignWords.number(value(sheet, "window fill")),
                DesignWords.number(Proposal.watts(sheet) - core),
                DesignWords.number(core),
                DesignWords.number(value(sheet, "winding temperature rise")),
                limits(sheet));
    }

    private static double value(DesignSheet sheet, String name) {
        return sheet.line(name).orElseThrow().value();
    }

    private static String limits(DesignSheet sheet) {
        DesignLine line = Proposal.limiting(sheet);
        return String.format(
                Locale.ROOT,
                "%s%s, %.0f %%",
                sheet.holds() ? "" : "NO: ",
                line.name(),
                100 * line.share().getAsDouble());
    }

    private void how() {
        lines.add("");
        lines.add("Secondary turns: the next whole number that gives the rail, 0.9 V for the diode and 8 % for sag");
        lines.add(
                "(common practice, no source). Wire: what the hole has room for, no thicker than twice the skin depth.");
        lines.add(
                "Sizes of rings are from memory; measure yours, put it into [core], and read 'design' without --propose.");
    }
}
