package railwitness.logger.ui.command;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;
import railwitness.drivers.converter.Room;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.Surroundings;
import railwitness.drivers.converter.Wear;

/** How a rehearsal's unit wears, and in which room it runs. */
final class WearOptions {
    @Option(
            names = "--wear",
            paramLabel = "PART=RATE",
            description =
                    "What running does to the unit: capacitor@RAIL=0.2 (its series resistance grows by a fifth of its first"
                            + " value in an hour), joint=55 (opens hot, about 55 degC), core=0.02 (core loss per kelvin above"
                            + " 60 degC) or runaway=10 (switches that double with every 10 K). May be given several times.")
    private List<String> wear = new ArrayList<>();

    @Option(
            names = "--room-swing",
            paramLabel = "K",
            description = "The room wanders by so many kelvin up and down through the day (default: 0).")
    private double swing;

    @Option(
            names = "--joined",
            paramLabel = "K/W",
            description = "Transformer and heat sink warm each other through so many kelvin per watt.")
    private Double joined;

    Specimen joined(Specimen unit) {
        if (joined == null) {
            return unit;
        }
        if (!(joined >= 0.01 && joined < 1e6)) {
            throw new BadInput("--joined " + joined + " must be 0.01 K/W or more");
        }
        return unit.withThermal(unit.thermal().joined(joined));
    }

    Surroundings surroundings(double degC) {
        if (!(swing >= 0 && swing <= 40)) {
            throw new BadInput("--room-swing " + swing + " must be 0 to 40 K");
        }
        Wear all = Wear.NONE;
        for (String one : wear) {
            try {
                all = all.and(Wear.of(one));
            } catch (IllegalArgumentException e) {
                throw new BadInput("--wear: " + e.getMessage());
            }
        }
        return new Surroundings(swing == 0 ? Room.still(degC) : Room.wandering(degC, swing), all);
    }
}
