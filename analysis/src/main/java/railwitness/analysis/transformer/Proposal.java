package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Turns that would do, each with what it costs.
 *
 * @param core they go on
 * @param drive of the primary
 * @param workingVolts input that the rails are stepped up from, V: the nominal; with a choke-input filter its share by
 *     the duty; where the unit regulates, that of the lowest input
 * @param rails wanted
 * @param ambientDegC around it
 * @param highestDegC the winding may reach
 * @param highestFluxTesla the core may reach by the sheet, where it says so, T
 */
public record Proposal(
        Core core,
        Drive drive,
        double workingVolts,
        List<RailLoad> rails,
        double ambientDegC,
        double highestDegC,
        OptionalDouble highestFluxTesla) {
    private static final int MOST_PRIMARY_TURNS = 40;
    private static final double FILL_AIM = 0.28;
    private static final double SAG = 1.08;
    private static final double DIODE_VOLTS = 0.9;
    private static final double THICKEST = 0.8e-3;

    public Proposal {
        rails = List.copyOf(rails);
        if (!(workingVolts > 0)) {
            throw new IllegalArgumentException("working voltage " + workingVolts + " V must be above 0");
        }
        if (rails.isEmpty()) {
            throw new IllegalArgumentException("rails: at least one is needed to propose turns");
        }
    }

    /**
     * All whole numbers of primary turns whose design keeps every limit, the least total loss first; empty where none
     * does on this core.
     */
    public List<DesignSheet> all() {
        List<DesignSheet> sheets = new ArrayList<>();
        for (int turns = 1; turns <= MOST_PRIMARY_TURNS; turns++) {
            DesignSheet sheet = DesignSheet.of(with(turns));
            if (sheet.holds()) {
                sheets.add(sheet);
            }
        }
        sheets.sort(Comparator.comparingDouble(Proposal::watts));
        return sheets;
    }

    /** The design with so many primary turns, whether or not it keeps its limits. */
    public ToroidDesign with(int primaryTurns) {
        double highest =
                rails.stream().mapToDouble(rail -> Math.abs(rail.volts())).max().orElseThrow();
        int secondaryTurns = (int) Math.ceil(primaryTurns * (highest + DIODE_VOLTS) * SAG / workingVolts - 1e-9);
        return new ToroidDesign(
                core,
                new Winding(primaryTurns, fitting(core, drive, primaryTurns)),
                new Winding(secondaryTurns, fitting(core, drive, secondaryTurns)),
                drive,
                rails,
                ambientDegC,
                highestDegC,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                highestFluxTesla);
    }

    /** Strands no thicker than twice the skin depth, as many as fill half of what the window offers. */
    static Wire fitting(Core core, Drive drive, int turns) {
        double skin = Copper.skinDepthMetres(drive.frequencyHz(), 100);
        double strand = Math.min(THICKEST, 2 * skin);
        double room = FILL_AIM / 2 * core.windowSquareMetres() / (2.0 * turns);
        Wire one = new Wire(strand, 1);
        int strands = (int) (room / one.windowSquareMetres());
        return strands >= 1 ? new Wire(strand, strands) : new Wire(Math.sqrt(room) / Wire.ENAMEL, 1);
    }

    /** The line that limits a choice; how thick its strands are was chosen here and is none. */
    public static DesignLine limiting(DesignSheet sheet) {
        List<DesignLine> lines = sheet.lines().stream()
                .filter(line -> !line.name().startsWith("strand over"))
                .toList();
        return DesignSheet.limiting(lines).orElseThrow();
    }

    /** Copper and core loss together, W. */
    public static double watts(DesignSheet sheet) {
        return sheet.lines().stream()
                .filter(line ->
                        line.name().startsWith("copper loss") || line.name().equals("core loss"))
                .mapToDouble(DesignLine::value)
                .sum();
    }
}
