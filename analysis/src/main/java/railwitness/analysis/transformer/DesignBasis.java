package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Switches;
import railwitness.analysis.design.Transformer;

/** What a sheet gives for the work, with what is taken where it says nothing; each such place is a {@link SheetGap}. */
final class DesignBasis {
    private static final double USUAL_HZ = 25_000;
    private static final double AMBIENT = 40;

    private final Design design;
    private final ToroidParts parts;
    private final List<SheetGap> gaps = new ArrayList<>();

    DesignBasis(WoundDesign wound) {
        this.design = wound.design();
        this.parts = wound.parts();
    }

    List<SheetGap> gaps() {
        return List.copyOf(gaps);
    }

    Drive drive() {
        double nominal = design.input().nominalVolts();
        return new Drive(
                or(
                        design.converter().frequencyHz(),
                        USUAL_HZ,
                        "[converter] frequency_Hz",
                        "25000 Hz taken (common practice, no source); flux density and losses hang on it"),
                or(
                        design.converter().duty(),
                        0.5,
                        "[converter] duty",
                        "0.5 taken, the most there can be: flux density comes out at its largest"),
                or(design.input().lowestVolts(), nominal, "[input] lowest_V", "the nominal input taken"),
                nominal,
                or(
                        design.input().highestVolts(),
                        nominal,
                        "[input] highest_V",
                        "the nominal input taken: flux density at a charging battery is larger"),
                parts.softStart().orElseGet(() -> {
                    gap("[converter] soft_start", "none taken: the first half-cycle swings twice as far");
                    return false;
                }));
    }

    /** Turns of the sheet. */
    Transformer turns() {
        return design.transformer()
                .orElseThrow(
                        () -> new IllegalArgumentException(
                                "[transformer] primary_turns and secondary_turns are missing; fill them in, or have them proposed"));
    }

    CoreMaterial material() {
        return parts.material().orElseGet(() -> {
            CoreMaterial usual = Materials.named("power ferrite").orElseThrow();
            gap("[core] material", "power ferrite taken; saturation, inductance and core loss hang on it");
            return usual;
        });
    }

    Core core(ToroidParts.Size size) {
        return core(
                size,
                design.transformer().map(Transformer::coreAreaSquareMillimetres).orElse(OptionalDouble.empty()),
                design.transformer()
                        .map(Transformer::inductancePerTurnSquaredNanohenries)
                        .orElse(OptionalDouble.empty()));
    }

    private Core core(ToroidParts.Size size, OptionalDouble squareMillimetres, OptionalDouble nanohenries) {
        return new Core(
                size.outerMetres(),
                size.innerMetres(),
                size.heightMetres(),
                scaled(squareMillimetres, 1e-6),
                scaled(nanohenries, 1e-9),
                material());
    }

    ToroidDesign toroid(ToroidParts.Size size, Drive drive) {
        Transformer turns = turns();
        Core core = core(size);
        double ratio = turns.ratio();
        return new ToroidDesign(
                core,
                new Winding(turns.primaryTurns(), primary(core, drive)),
                new Winding(turns.secondaryTurns(), secondary(core, drive)),
                drive,
                rails(),
                ambient(),
                highestDegC(),
                switchRating(),
                scaled(turns.leakageNanohenries(), 1e-9 / (ratio * ratio)),
                turns.highestFluxTesla());
    }

    private Wire primary(Core core, Drive drive) {
        return parts.primary().orElseGet(() -> assumed("primary", core, drive, turns().primaryTurns()));
    }

    private Wire secondary(Core core, Drive drive) {
        return parts.secondary().orElseGet(() -> assumed("secondary", core, drive, turns().secondaryTurns()));
    }

    private Wire assumed(String name, Core core, Drive drive, int turns) {
        Wire wire = Proposal.fitting(core, drive, turns);
        gap(
                "[winding] " + name + "_mm or " + name + "_awg",
                wire.words() + " taken, what the hole has room for; resistance, fill and copper loss hang on it");
        return wire;
    }

    List<RailLoad> rails() {
        design.rails().stream()
                .filter(rail -> rail.fullLoadAmperes().isEmpty())
                .forEach(rail -> gap(
                        "[[rail]] full_load_A of " + rail.name(),
                        "no currents: current density, copper loss, temperature and sag are not worked out"));
        int own = turnsOfAll();
        design.rails().stream()
                .filter(rail -> rail.secondaryTurns().isPresent()
                        && rail.secondaryTurns().getAsInt() != own)
                .forEach(rail -> gap(
                        "[[rail]] secondary_turns of " + rail.name(),
                        "differ from the table's: wire and copper loss are worked out for " + own + " turns only"));
        return design.rails().stream()
                .map(rail ->
                        new RailLoad(rail.nominalVolts(), rail.fullLoadAmperes().orElse(0)))
                .toList();
    }

    private int turnsOfAll() {
        return design.transformer().map(Transformer::secondaryTurns).orElse(0);
    }

    boolean loadsKnown() {
        return design.rails().stream().allMatch(rail -> rail.fullLoadAmperes().isPresent());
    }

    double ambient() {
        return or(
                parts.ambientDegC(),
                AMBIENT,
                "[winding] ambient_degC",
                "40 degC taken; the air inside of a unit may be warmer");
    }

    double highestDegC() {
        return parts.insulation()
                .orElseGet(() -> {
                    gap("[winding] insulation_class", "class A taken, 105 degC, the lowest that enamelled wire has");
                    return InsulationClass.A;
                })
                .highestDegC();
    }

    OptionalDouble switchRating() {
        OptionalDouble rating = design.switches().map(Switches::ratingVolts).orElse(OptionalDouble.empty());
        if (rating.isEmpty()) {
            gap("[switches] rating_V", "the switches' voltage has no limit to be held against");
        }
        return rating;
    }

    /** Input that the rails are stepped up from, V; see {@link Proposal}. */
    double workingVolts(Drive drive) {
        double volts = design.converter().regulated() ? drive.lowestVolts() : drive.nominalVolts();
        return design.converter().filter() == FilterInput.CHOKE ? 2 * drive.duty() * volts : volts;
    }

    void gap(String keys, String costs) {
        gaps.add(new SheetGap(keys, costs));
    }

    private double or(OptionalDouble given, double otherwise, String keys, String costs) {
        if (given.isEmpty()) {
            gap(keys, costs);
        }
        return given.orElse(otherwise);
    }

    private static OptionalDouble scaled(OptionalDouble value, double by) {
        return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * by) : value;
    }
}
