package railwitness.analysis.design;

/** The figures that are worked out, with unit and definition; a requirement names one of them. */
public enum FigureName {
    STEP_UP_SLOPE(
            "step-up slope",
            "V/V",
            true,
            "slope of the rail against the input terminals' voltage at constant load, from the line sweep"),
    EFFECTIVE_TURNS_RATIO(
            "effective turns ratio",
            "1",
            true,
            "capacitor-input filter: the step-up slope; choke-input filter: the step-up slope over both duties"),
    LOAD_EFFECT_AS_WIRED(
            "load effect as wired",
            "V",
            true,
            "rail at no load minus rail at full load, as measured, source and lead sag inside"),
    LOAD_EFFECT(
            "load effect",
            "V",
            true,
            "rail at no load minus rail at full load, both at nominal input at the terminals, held there or moved by the slope"),
    LOAD_REGULATION_OF_FULL_LOAD("load regulation of full load", "%", true, "load effect over the rail at full load"),
    LOAD_REGULATION_OF_NOMINAL("load regulation of nominal", "%", true, "load effect over the nominal rail voltage"),
    OUTPUT_RESISTANCE_AS_WIRED(
            "output resistance as wired",
            "ohm",
            true,
            "fall of the rail per ampere of its load, both rails loaded alike, as measured"),
    OUTPUT_RESISTANCE(
            "output resistance",
            "ohm",
            true,
            "fall of the rail per ampere of its load, both rails loaded alike, at nominal input at the terminals"),
    LINE_REGULATION(
            "line regulation",
            "%",
            true,
            "change over the line sweep over the rail at nominal input at the terminals, same load"),
    CROSS_EFFECT_AS_WIRED(
            "cross effect as wired",
            "V",
            true,
            "change of the rail when the other's load goes from its lowest to full, as measured, sag of the leads inside"),
    CROSS_EFFECT(
            "cross effect",
            "V",
            true,
            "the same at nominal input at the terminals, held there or moved by the step-up slope"),
    RAIL_BALANCE_AS_WIRED(
            "rail balance as wired", "V", false, "difference of the rails' magnitudes at equal loads, as measured"),
    RAIL_BALANCE("rail balance", "V", false, "the same at nominal input at the terminals"),
    RAIL_VOLTAGE_AS_WIRED(
            "rail voltage as wired", "V", true, "rail at full load as measured, whatever its terminals' voltage"),
    RAIL_VOLTAGE("rail voltage", "V", true, "rail at full load, at nominal input at the terminals"),
    HIGHEST_RAIL_VOLTAGE("highest rail voltage", "V", true, "rail without load at the highest planned input"),
    AVERAGE_EFFICIENCY(
            "average efficiency", "1", false, "mean of the efficiencies at 25, 50, 75 and 100 % of full load"),
    FULL_LOAD_EFFICIENCY("full-load efficiency", "1", false, "output power over input power at full load"),
    NO_LOAD_INPUT_POWER("no-load input power", "W", false, "input power with the remote turn-on on and no load"),
    STANDBY_CURRENT("standby current", "A", false, "input current with the remote turn-on off"),
    DROP_OUT_VOLTAGE("drop-out voltage", "V", false, "input at which the rails give up when it is lowered"),
    RIPPLE("ripple", "V", true, "rms of the rail's alternating part at full load, in the stated band"),
    RIPPLE_PEAK_TO_PEAK("ripple peak to peak", "V", true, "highest minus lowest of the rail's waveform at full load"),
    PEAK_DRAIN_VOLTAGE("peak drain voltage", "V", false, "highest of a switch's drain waveform at full load"),
    DRIVE_FREQUENCY("drive frequency", "Hz", false, "of whole periods of a switch's drain waveform"),
    DRIVE_DUTY(
            "drive duty",
            "1",
            false,
            "share of a period in which a drain is low, at half its mean; the pauses of the drive count where the winding swings on"),
    VOLT_SECONDS(
            "volt-seconds of the drive",
            "V s",
            false,
            "of the half winding while its switch is on, from the drain waveform; the drain's own mean is the centre tap's voltage"),
    DRIVE_DROOP(
            "droop of the drive",
            "%",
            false,
            "fall of the winding's voltage while the other switch is on, by a straight line, of its begin"),
    DRAIN_SPIKE(
            "spike of the drain",
            "V",
            false,
            "highest of a switch's drain waveform above its mean level while the other switch is on"),
    FINAL_HEAT_SINK_TEMPERATURE(
            "final heat-sink temperature",
            "degC",
            false,
            "what the heat sink tends to while held, by a fit of one or two bodies, the room as at the end"),
    FINAL_HEAT_SINK_RISE("final heat-sink rise", "K", false, "final heat-sink temperature above the room"),
    FINAL_TRANSFORMER_TEMPERATURE(
            "final transformer temperature", "degC", false, "the same of a thermometer named transformer"),
    FINAL_TRANSFORMER_RISE("final transformer rise", "K", false, "final transformer temperature above the room"),
    HIGHEST_FINAL_TEMPERATURE("highest final temperature", "degC", false, "the same of the place that gets hottest"),
    HIGHEST_FINAL_RISE("highest final rise", "K", false, "highest final temperature above the room"),
    THERMAL_TIME_CONSTANT(
            "thermal time constant", "s", false, "the slower time constant of the heat sink, or the only one"),
    TIME_TO_FINAL_TEMPERATURE(
            "time to final temperature", "s", false, "from the begin of the hold until no more than 1 K is left"),
    THERMAL_RESISTANCE("thermal resistance", "K/W", false, "final rise over the whole loss at the end of the hold"),
    DRIFT("drift", "%/h", true, "slope of the rail over the second half of the hold, over its mean"),
    DRIFT_BY_TEMPERATURE(
            "change with temperature", "%/K", true, "what of the rail goes with the temperature, held all the time"),
    AGEING("ageing", "%/h", true, "what of the rail goes with time and neither with temperature nor with the input"),
    CHANGE_OVER_HOLD("change over the hold", "%", true, "rail at the end of the hold against its begin"),
    DRIFT_OF_RIPPLE("drift of ripple", "%/h", true, "slope of the ripple over the second half of the hold"),
    EFFICIENCY_WHILE_HELD("efficiency while held", "1", false, "output over input power at the end of the hold"),
    DRIFT_OF_EFFICIENCY(
            "drift of efficiency", "%/h", false, "slope of the efficiency over the second half of the hold"),
    CHANGE_OF_EFFICIENCY("change of efficiency", "%", false, "efficiency at the end of the hold against its begin"),
    EXCURSIONS("excursions", "1", false, "how often a channel left what it was held to, for a moment or longer"),
    GAPS("gaps", "1", false, "how often readings were missing for longer than usual while held"),
    RESTARTS("restarts", "1", false, "how often the unit was powered again while held"),
    PRIMARY_A_RESISTANCE("primary A resistance", "ohm", false, "of the winding itself by four wires, at 20 degC"),
    PRIMARY_B_RESISTANCE("primary B resistance", "ohm", false, "of the winding itself by four wires, at 20 degC"),
    SECONDARY_A_RESISTANCE("secondary A resistance", "ohm", false, "of the winding itself by four wires, at 20 degC"),
    SECONDARY_B_RESISTANCE("secondary B resistance", "ohm", false, "of the winding itself by four wires, at 20 degC"),
    HALF_A_RATIO("turns ratio, half A", "1", false, "voltage of secondary A over that of primary A, which is driven"),
    HALF_B_RATIO("turns ratio, half B", "1", false, "voltage of secondary B over that of primary A, which is driven"),
    PRIMARY_HALVES_DIFFER(
            "primary halves differ by", "%", false, "difference of the halves' voltages over their mean, driven alike"),
    SECONDARY_HALVES_DIFFER(
            "secondary halves differ by",
            "%",
            false,
            "difference of the halves' voltages over their mean, driven alike"),
    MAGNETISING_INDUCTANCE(
            "magnetising inductance", "H", false, "of primary A with all other windings open, at a low drive"),
    LEAKAGE_INDUCTANCE(
            "leakage inductance", "H", false, "of primary A with both secondary halves shorted, at a low drive"),
    CORE_LOSS(
            "core loss",
            "W",
            false,
            "input power without load at nominal input, less what control, gates, switching and bleeders take by the sheet"),
    SATURATION_INPUT(
            "saturation input",
            "V",
            false,
            "input at which the current without load leaves its straight course because the core saturates"),
    WINDING_TEMPERATURE(
            "winding temperature",
            "degC",
            false,
            "of secondary A when the output went off, from its resistance (method of IEC 60034-1)");

    private final String word;
    private final String unit;
    private final boolean perRail;
    private final String definition;

    FigureName(String word, String unit, boolean perRail, String definition) {
        this.word = word;
        this.unit = unit;
        this.perRail = perRail;
        this.definition = definition;
    }

    /** As written in sheets, findings and certificates. */
    public String word() {
        return word;
    }

    /** SI unit; "1" for a plain ratio, "%" for regulations. */
    public String unit() {
        return unit;
    }

    /** Whether each rail has its own. */
    public boolean perRail() {
        return perRail;
    }

    /** One line that says how the figure is defined. */
    public String definition() {
        return definition;
    }

    /** Finds a figure by its word; throws IllegalArgumentException naming those known. */
    public static FigureName of(String word) {
        return SheetWord.find(values(), FigureName::word, "figure", word);
    }
}
