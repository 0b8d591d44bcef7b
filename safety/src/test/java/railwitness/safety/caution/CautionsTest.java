package railwitness.safety.caution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railwitness.drivers.bench.Source;

class CautionsTest {
    private static final Instant NOW = Instant.parse("2026-11-25T10:00:00Z");

    /** IEC 62368-1 (from memory): ES1 ends at 60 V d.c., ES2 at 120 V d.c. */
    @Test
    void voltageBetweenTheRailsFollowsTheTwoClasses() {
        assertThat(word(Topic.RAIL_VOLTAGE, between(59.9))).isEmpty();
        assertThat(word(Topic.RAIL_VOLTAGE, between(60))).contains(SignalWord.WARNING);
        assertThat(word(Topic.RAIL_VOLTAGE, between(119.9))).contains(SignalWord.WARNING);
        assertThat(word(Topic.RAIL_VOLTAGE, between(120))).contains(SignalWord.DANGER);
    }

    /** Electrical safety pages of Lawrence Berkeley National Laboratory: 100 V and 10 J; below 100 V 100 J. */
    @Test
    void storedEnergyFollowsTheLaboratoryRules() {
        assertThat(word(Topic.STORED_ENERGY, energy(80, 0.5))).isEmpty();
        assertThat(word(Topic.STORED_ENERGY, energy(80, 8.3))).contains(SignalWord.CAUTION);
        assertThat(word(Topic.STORED_ENERGY, energy(80, 101))).contains(SignalWord.WARNING);
        assertThat(word(Topic.STORED_ENERGY, energy(100, 9.9))).contains(SignalWord.CAUTION);
        assertThat(word(Topic.STORED_ENERGY, energy(100, 10))).contains(SignalWord.DANGER);
    }

    /** Robertson, as printed in a public copy: 10 uF at 200 V hold 0.2 J. The others worked out by hand. */
    @Test
    void energyOfACapacitor() {
        assertThat(Hazards.joules(10e-6, 200)).isCloseTo(0.2, within(1e-12));
        assertThat(Hazards.joules(4700e-6, 35)).isCloseTo(2.88, within(0.005));
        assertThat(Hazards.joules(10e-3, 60)).isCloseTo(18.0, within(1e-9));
    }

    @Test
    void gravestComesFirst() {
        List<SignalWord> words =
                Cautions.of(energy(130, 12)).stream().map(Caution::word).toList();
        assertThat(words).isSorted().startsWith(SignalWord.DANGER).endsWith(SignalWord.NOTICE);
    }

    @Test
    void softwareIsNoEmergencyStopIsSaidAlways() {
        assertThat(word(Topic.NO_EMERGENCY_STOP, between(1))).contains(SignalWord.WARNING);
        assertThat(word(Topic.LOCAL_CODES, between(1))).contains(SignalWord.NOTICE);
    }

    @Test
    void aCapacitorAboveItsRatingRefusesPower() {
        Hazards above = hazards(110, 55, 50, 14, OptionalDouble.of(40), List.of(), Source.SUPPLY, false);
        assertThat(word(Topic.CAPACITOR_RATING, above)).contains(SignalWord.WARNING);
        assertThat(Cautions.refusals(above)).singleElement().asString().contains("a rail reaches 55 V", "rated 50 V");
        Hazards near = hazards(92, 46, 50, 14, OptionalDouble.of(40), List.of(), Source.SUPPLY, false);
        assertThat(word(Topic.CAPACITOR_RATING, near)).contains(SignalWord.CAUTION);
        assertThat(Cautions.refusals(near)).isEmpty();
    }

    @Test
    void aBatteryIsRefusedUnlessAContactorIsReadBack() {
        for (Source source : List.of(Source.BATTERY, Source.SUPPLY_WITH_BATTERY)) {
            Hazards without = hazards(80, 40, 50, 6, OptionalDouble.of(40), List.of(), source, false);
            assertThat(Cautions.refusals(without)).hasSize(1);
            assertThat(word(Topic.SOURCE, without)).contains(SignalWord.DANGER);
            Hazards with = hazards(80, 40, 50, 6, OptionalDouble.of(40), List.of(), source, true);
            assertThat(Cautions.refusals(with)).isEmpty();
        }
    }

    @Test
    void everyJoinedPairIsNamed() {
        List<String> pairs = List.of("scope clip on minus", "negatives of both loads");
        Hazards joined = hazards(80, 40, 50, 6, OptionalDouble.of(40), pairs, Source.SUPPLY, false);
        assertThat(Cautions.of(joined))
                .filteredOn(caution -> caution.topic() == Topic.JOINED_TERMINALS)
                .extracting(Caution::here)
                .containsExactly("Here: scope clip on minus.", "Here: negatives of both loads.");
    }

    @Test
    void aMissingFuseIsAWarning() {
        Hazards none = hazards(80, 40, 50, 6, OptionalDouble.empty(), List.of(), Source.SUPPLY, false);
        assertThat(word(Topic.FUSE, none)).contains(SignalWord.WARNING);
        assertThat(word(Topic.FUSE, between(80))).isEmpty();
    }

    @Test
    void acknowledgingNeedsANameAndEveryConfirmation() {
        Briefing briefing = Briefing.of(between(80), checklist());
        assertThatThrownBy(() -> briefing.acknowledge(" ", NOW, confirmed(briefing)))
                .hasMessageContaining("must be named");
        assertThatThrownBy(() -> briefing.acknowledge("M. Fairlead", NOW, List.of()))
                .hasMessageContaining("A disconnect that is opened by hand")
                .hasMessageContaining("A fuse stands");
        Acknowledgement given = briefing.acknowledge("M. Fairlead", NOW, confirmed(briefing));
        assertThat(given.sentence()).startsWith("M. Fairlead acknowledged");
        assertThat(given.when()).isEqualTo(NOW);
    }

    @Test
    void aLowColdResistanceStandsAgainstPower() {
        Briefing briefing = Briefing.of(between(80), checklist());
        List<Checklist.Answer> answers = new ArrayList<>(confirmed(briefing));
        Check bank = briefing.checklist().checks().stream()
                .filter(check -> check.text().contains("switch bank 2"))
                .findFirst()
                .orElseThrow();
        answers.add(new Checklist.Answer(bank, false, OptionalDouble.of(120)));
        assertThatThrownBy(() -> briefing.acknowledge("M. Fairlead", NOW, answers))
                .hasMessageContaining("switch bank 2 is 120.0 ohm, it must be at least 1.000e+05 ohm");
    }

    @Test
    void theHandoutIsTheSameText() throws Exception {
        assertThat(Files.readString(Path.of("CAUTIONS.md"))).isEqualTo(CautionsText.text());
    }

    private static Optional<SignalWord> word(Topic topic, Hazards hazards) {
        return Cautions.of(hazards).stream()
                .filter(caution -> caution.topic() == topic)
                .map(Caution::word)
                .findFirst();
    }

    private static Checklist checklist() {
        return Checklist.of(1000, 2, 100_000, List.of("plus", "minus"), 1000);
    }

    private static List<Checklist.Answer> confirmed(Briefing briefing) {
        return briefing.checklist().allConfirmed();
    }

    private static Hazards between(double volts) {
        return energy(volts, 0.5);
    }

    private static Hazards energy(double volts, double joules) {
        return hazards(volts, volts / 2, volts, joules, OptionalDouble.of(40), List.of(), Source.SUPPLY, false);
    }

    private static Hazards hazards(
            double between,
            double rail,
            double rating,
            double joules,
            OptionalDouble fuse,
            List<String> joined,
            Source source,
            boolean contactor) {
        return new Hazards(
                between,
                rail,
                4400e-6,
                rating,
                joules,
                14.4,
                OptionalDouble.of(25),
                30,
                fuse,
                85,
                joined,
                source,
                contactor,
                5);
    }
}
