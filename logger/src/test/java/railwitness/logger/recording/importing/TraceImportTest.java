package railwitness.logger.recording.importing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Waveform;
import railwitness.logger.recording.event.EventForm;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.store.EventEntry;

class TraceImportTest {
    private static final Channel RIPPLE = Channel.of("plus.ripple");

    @TempDir
    Path folder;

    private Path trace(String text) throws IOException {
        return Files.writeString(folder.resolve("ripple.csv"), text);
    }

    private static String rows(int count) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < count; i++) {
            rows.append(String.format(Locale.ROOT, "%.7f,%.4f%n", -1e-4 + i * 1e-6, 0.01 * (i % 20)));
        }
        return rows.toString();
    }

    @Test
    void timeAndVoltsAreTakenWithARowOfNamesOnTop() throws IOException {
        Waveform waveform = TraceImport.of(trace("time_s,volts\n" + rows(200)), RIPPLE);
        assertThat(waveform.values()).hasSize(200);
        assertThat(waveform.stepSeconds()).isCloseTo(1e-6, within(1e-12));
        assertThat(waveform.startSeconds()).isCloseTo(-1e-4, within(1e-12));
        assertThat(waveform.values()[19]).isEqualTo(0.19);
    }

    @Test
    void unevenTimesAreRefused() throws IOException {
        Path file = trace(rows(100) + "0.5,0.1\n");
        assertThatThrownBy(() -> TraceImport.of(file, RIPPLE)).hasMessageContaining("evenly");
    }

    @Test
    void aWordAmongTheNumbersIsRefusedWithItsRow() throws IOException {
        Path file = trace(rows(20) + "0.1,none\n");
        assertThatThrownBy(() -> TraceImport.of(file, RIPPLE)).hasMessageContaining("row 21");
    }

    @Test
    void aThirdColumnIsRefused() throws IOException {
        Path file = trace("0,1,2\n");
        assertThatThrownBy(() -> TraceImport.of(file, RIPPLE)).hasMessageContaining("3 cells");
    }

    @Test
    void aHandfulOfSamplesIsRefused() throws IOException {
        Path file = trace(rows(15));
        assertThatThrownBy(() -> TraceImport.of(file, RIPPLE)).hasMessageContaining("15 samples");
    }

    @Test
    void whatWasSaidOfATraceIsReadBackFromItsEvent() {
        SessionEvent note =
                new SessionEvent.TraceTaken(RIPPLE, "a, b.csv", OptionalDouble.of(20e6), OptionalDouble.of(3));
        SessionEvent silent =
                new SessionEvent.TraceTaken(RIPPLE, "b.csv", OptionalDouble.empty(), OptionalDouble.empty());
        for (SessionEvent one : List.of(note, silent)) {
            assertThat(new EventEntry(5, one.what(), EventForm.text(one)).event())
                    .isEqualTo(one);
            assertThat(new EventEntry(5, one.what(), one.words()).event()).isEqualTo(one);
        }
        assertThat(new EventEntry(1, "trip", note.words()).event()).isInstanceOf(SessionEvent.Earlier.class);
    }
}
