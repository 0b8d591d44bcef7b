package railwitness.logger.reporting.certificate;

import java.util.List;
import java.util.Optional;
import railwitness.analysis.transformer.WoundReport;
import railwitness.logger.reporting.chart.IdleChart;
import railwitness.logger.reporting.findings.WoundText;

/** The transformer by itself: winding by winding, what is wrong with it, its idle current. */
final class WoundPage {
    private static final float PICTURE_HEIGHT = 150;

    private final Evidence evidence;
    private final Typesetter type;
    private final Section section;

    WoundPage(Evidence evidence, Typesetter type) {
        this.evidence = evidence;
        this.type = type;
        this.section = new Section(type);
    }

    void set() {
        Optional<WoundReport> wound = evidence.session().wound();
        if (wound.isEmpty()) {
            return;
        }
        section.begin("The transformer by itself", 120);
        Table table = new Table(
                type,
                Section.TEXT,
                2.2f,
                List.of(
                        Column.words("winding", 26),
                        Column.numbers("turns meant", 18),
                        Column.numbers("turns counted", 22),
                        Column.numbers("resistance at 20 \u00b0C, m\u03a9", 32),
                        Column.words("polarity", 22)));
        table.head();
        new WoundText(wound.get())
                .rows()
                .forEach(row -> table.row(row.stream().map(Typography::of).toList()));
        type.down(4);
        faults(wound.get());
        section.small(
                "Resistances by four wires with the current both ways, so that warm joints cancel. Turns are counted with"
                        + " one turn of wire through the hole. "
                        + WoundText.INSULATION.substring(0, 1).toUpperCase(java.util.Locale.ROOT)
                        + WoundText.INSULATION.substring(1) + ".");
        IdleChart.of(evidence.session()).ifPresent(chart -> {
            type.down(6);
            new Pictures(type).flow(List.of(chart), PICTURE_HEIGHT);
        });
    }

    private void faults(WoundReport wound) {
        if (wound.suspicions().isEmpty()) {
            section.paragraph(
                    "Nothing measured speaks against it: turns, polarity, resistances and core are as its design"
                            + " leads to expect, as far as they were measured.");
        }
        wound.suspicions()
                .forEach(one -> section.paragraph(List.of(
                        Span.strong(one.fault().words() + (one.where().isEmpty() ? "" : ", " + one.where()) + ": "),
                        Span.plain(one.reason() + ". Next: " + one.fault().check() + "."))));
    }
}
