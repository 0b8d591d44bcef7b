package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railwitness.drivers.sheet.SheetException;

class DialectsTest {
    private final Dialects dialects = Dialects.shipped();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Workshop,M-1,7,1.0 | scpi-1999",
                "Workshop,M-1-RF,7,1.0 | remote-first",
                "Workshop,S-3-CH,7,1.0,extra | channels",
                "no commas at all | scpi-1999"
            })
    void dialectIsChosenByTheIdentity(String answer, String dialect) {
        assertThat(dialects.forIdentity(answer).name()).isEqualTo(dialect);
    }

    @Test
    void everyShippedDialectCoversEveryKindOfInstrument() {
        for (String name : Dialects.SHIPPED) {
            Dialect dialect = dialects.named(name);
            assertThat(dialect.meter().orElseThrow().functions()).as(name).hasSize(5);
            assertThat(dialect.supply().orElseThrow().states()).as(name).isNotEmpty();
            assertThat(dialect.load().orElseThrow().states()).as(name).isNotEmpty();
            assertThat(dialect.scope()).as(name).isPresent();
        }
    }

    @Test
    void unknownNameListsThoseThatAreKnown() {
        assertThatThrownBy(() -> dialects.named("latin"))
                .hasMessage("unknown dialect 'latin'; known are remote-first, channels, scpi-1999");
    }

    @Test
    void ownDialectIsReadFromAFile(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("old-meter.toml");
        Files.writeString(file, """
                about = "an old meter"
                identity = "Old.*"
                terminator = "CR"
                [common]
                error = "SYST:ERR?"
                [meter]
                read = "VAL?"
                [meter.voltage]
                set_up = ["VDC"]
                """);
        Dialect dialect = Dialects.of(file);
        assertThat(dialect.name()).isEqualTo("old-meter");
        assertThat(dialect.terminator()).isEqualTo("\r");
        assertThat(dialect.supply()).isEmpty();
    }

    @Test
    void faultsOfADialectAreNamedByFileAndLine(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("bad.toml");
        Files.writeString(file, "about = \"bad\"\nidentity = \"(\"\n[common]\nerror = \"SYST:ERR?\"\nrestet = []\n");
        assertThat(catchThrowableOfType(SheetException.class, () -> Dialects.of(file))
                        .getMessage()
                        .lines())
                .containsExactly(
                        "bad.toml:2: identity is no regular expression: Unclosed group",
                        "bad.toml:5: [common] restet is not a key that is known here; did you mean reset?");
    }

    /** Source: IEEE 488.2, four fields, the last of which is free; "0" for one not known. */
    @Test
    void commasInTheFourthFieldOfAnIdentityAreKept() {
        assertThat(Identity.of("Workshop, M-1 ,0,1.0,boot 2,fpga 3 "))
                .isEqualTo(new Identity("Workshop", "M-1", "0", "1.0,boot 2,fpga 3"));
        assertThat(Identity.of("Workshop,,7")).isEqualTo(new Identity("Workshop", "0", "7", "0"));
    }
}
