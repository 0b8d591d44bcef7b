package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.findings.SessionFindings;

/** Somebody turns a knob at the supply while the unit is measured: off, in words, whatever was turned. */
class ChangedByHandTest {
    @TempDir
    Path folder;

    private StoppedSession made;

    /** @param when how what is told begins, just before the knob is turned */
    private StoppedSession changed(String when, String what) {
        StoppedSession asItWas = new StoppedSession(-1, run -> {});
        asItWas.virtual(folder.resolve("as-it-was.session"));
        List<String> begins =
                asItWas.told.stream().filter(words -> words.startsWith(when)).toList();
        assertThat(begins).as("%s", asItWas.told).isNotEmpty();
        int at = asItWas.told.indexOf(begins.get(0)) + 1;
        made = new StoppedSession(at, run -> made.far.supply("supply").hear(what));
        made.virtual(folder.resolve("changed.session"));
        return made;
    }

    private void assertTripped(StoppedSession session, String words) {
        SessionFindings findings = SessionFindings.of(folder.resolve("changed.session"));
        assertThat(findings.state()).isEqualTo(SessionState.TRIPPED);
        assertThat(session.told).anyMatch(one -> one.startsWith("trip") && one.contains(words));
        assertThat(session.told).noneMatch(one -> one.startsWith("end:"));
        assertThat(session.far.supply("supply").isOn()).isFalse();
    }

    /** No reading shows it: the unit draws far less than either limit. */
    @Test
    void aCurrentLimitTurnedUpTrips() {
        assertTripped(changed("averaging 0 %", "CURR 39"), "its current limit was set to");
    }

    /** Less than the watch on the reading would notice. */
    @Test
    void aVoltageTurnedALittleTrips() {
        assertTripped(changed("averaging 50 %", "VOLT 13.5"), "its voltage was set to 13.80 V and reads back 13.50 V");
    }

    /** The unit's own protection against a wrong number typed. */
    @Test
    void aProtectionTurnedUpTrips() {
        assertTripped(changed("averaging 0 %", "VOLT:PROT 19"), "its over-voltage protection was set to");
    }

    @Test
    void aLimitTurnedUpWhileTheUnitComesUpTripsBeforeItIsOpened() {
        StoppedSession session = changed("remote turn-on: remote turn-on on", "CURR 39");
        assertThat(session.told).anyMatch(one -> one.contains("its current limit was set to"));
        assertTripped(session, "its current limit was set to");
    }
}
