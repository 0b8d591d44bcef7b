package railwitness.logger.recording.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Remark;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.Sheet;

/** Watts are volts squared over ohms: 30 V on 10 ohm are 90 W. */
class ResistorCheckTest {
    private static final String DESIGN = """
            [unit]
            name = "Saloon amplifier supply"
            [converter]
            filter = "capacitor"
            [input]
            nominal_V = 12
            [[rail]]
            name = "plus"
            nominal_V = 30
            full_load_A = 3
            """;
    private static final String PLAN = """
            [plan]
            settle_at_most_s = 60
            average_s = 10
            [[stage]]
            kind = "power-up"
            current_limit_A = 5
            [[stage]]
            kind = "load-sweep"
            loads_pct = [50, 100]
            """;

    private static List<Remark> remarks(String rating) {
        String bench = """
                [bench]
                name = "Two resistors"
                [[instrument]]
                name = "supply"
                kind = "supply"
                port = "/dev/none"
                [[resistor_bank]]
                rail = "plus"
                resistances_ohm = [10, 20]
                """ + rating;
        return ResistorCheck.of(
                SheetText.of("bench", Sheet.of("bench.toml", bench), BenchSheet::from)
                        .content(),
                SheetText.of("design", Sheet.of("design.toml", DESIGN), DesignReader::design)
                        .content(),
                SheetText.of("plan", Sheet.of("plan.toml", PLAN), PlanReader::plan)
                        .content());
    }

    @Test
    void aResistorAboveItsRatingIsSaidWithItsWattsAndTime() {
        assertThat(remarks("rating_W = 50\n")).singleElement().satisfies(remark -> {
            assertThat(remark.weight()).isEqualTo(Remark.Weight.LOOK);
            assertThat(remark.words())
                    .startsWith(
                            "load-sweep 100 % puts some 90 W into 10 ohm on the plus rail, rated 50 W, for up to 70 s");
        });
    }

    @Test
    void oneThatWouldBurnIsRefused() {
        assertThat(remarks("rating_W = 17\n")).singleElement().satisfies(remark -> assertThat(remark.refuses())
                .isTrue());
    }

    @Test
    void oneThatBearsItIsNotSpokenOf() {
        assertThat(remarks("rating_W = 100\n")).isEmpty();
        assertThat(remarks("")).isEmpty();
    }
}
