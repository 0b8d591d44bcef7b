package railwitness.logger.recording.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Design;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.World;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.recording.sheet.DesignReader;
import railwitness.logger.recording.sheet.Sheets;

/** A sheet of which little is known is rehearsed on a unit that fits it. */
class UsualUnitTest {
    private static Design sparse(double input, double rail, double amps) {
        return Sheet.of("design.toml", """
                [unit]
                name = "Sparse"
                [converter]
                filter = "capacitor"
                [input]
                nominal_V = %s
                [[rail]]
                name = "plus"
                nominal_V = %s
                full_load_A = %s
                [[rail]]
                name = "minus"
                nominal_V = -%s
                full_load_A = %s
                """.formatted(input, rail, amps, rail, amps))
                .read(DesignReader::design);
    }

    @Test
    void theUsualUnitIsLeftAsItIs() {
        Specimen unit = UsualUnit.of(Sheets.demo().design().content());
        Specimen usual = Specimen.usual();
        assertThat(unit.drive()).isEqualTo(usual.drive());
        assertThat(unit.input()).isEqualTo(usual.input());
        assertThat(unit.side1()).isEqualTo(usual.side1());
        assertThat(unit.rectifier()).isEqualTo(usual.rectifier());
    }

    /** From 6 V boats to 24 V lorries: with nothing but input and rails on the sheet the rails are those of the sheet. */
    @Test
    void itsRailsAreThoseOfTheSheet() {
        for (double[] kind : new double[][] {{13.8, 36.7, 4}, {24, 60, 5}, {6.5, 20, 1}, {13.8, 15, 1}, {48, 80, 8}}) {
            Specimen unit = SpecimenMaker.of(sparse(kind[0], kind[1], kind[2]), 0.001);
            World world = new World(unit, 22);
            world.feed(0, new railwitness.drivers.converter.Feed(true, kind[0], 40));
            world.remote(0, true);
            double rail = world.at(8_000_000_000L).rail("plus").volts();
            assertThat(rail / kind[1]).as("%s V to %s V", kind[0], kind[1]).isCloseTo(1.1, within(0.1));
        }
    }
}
