package railwitness.analysis.transformer;

import java.util.List;
import java.util.Locale;

/** Losses and the temperature they lead to, line by line. */
final class HeatLines {
    static final String COPPER_LOSS = "copper loss, ";
    static final String CORE_LOSS = "core loss";
    static final String RISE = "winding temperature rise";
    static final String TEMPERATURE = "winding temperature";
    private static final String RULE = "rule of handbooks, from memory";

    private HeatLines() {}

    static List<DesignLine> of(ToroidDesign design, Heat heat) {
        String copper = "both halves, I^2 R, warm, alternating";
        String still = "still air, no neighbours: some 30 % of the rise";
        return List.of(
                DesignLine.of(COPPER_LOSS + "primary", heat.primaryWatts(), "W", copper, "definition"),
                DesignLine.of(COPPER_LOSS + "secondary", heat.secondaryWatts(), "W", copper, "definition"),
                DesignLine.of(
                                CORE_LOSS,
                                heat.coreWatts(),
                                "W",
                                "Steinmetz, square drive with rests, nominal input",
                                "K. Venkatachalam and others, IEEE COMPEL 2002; "
                                        + design.core().material().source())
                        .weak("data sheets and cores differ by 20 to 50 %"),
                DesignLine.of(TEMPERATURE, heat.degC(), "degC", "ambient + rise", RULE)
                        .weak(still),
                DesignLine.of(
                                RISE,
                                heat.degC() - design.ambientDegC(),
                                "K",
                                "(mW of loss / cm^2 of surface)^0.833",
                                RULE)
                        .atMost(
                                design.highestDegC() - design.ambientDegC(),
                                String.format(
                                        Locale.ROOT,
                                        "up to %.0f degC in air of %.0f degC: insulation class (IEC 60085)",
                                        design.highestDegC(),
                                        design.ambientDegC()))
                        .weak(still));
    }
}
