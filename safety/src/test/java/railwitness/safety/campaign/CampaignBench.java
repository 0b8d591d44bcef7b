package railwitness.safety.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.World;
import railwitness.drivers.rehearsal.Fixture;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.sheet.Sheet;

/** The bench of the campaign: supply, five meters, two loads, around the usual virtual unit. */
final class CampaignBench {
    static final List<String> INSTRUMENTS =
            List.of("supply", "input-meter", "plus-meter", "minus-meter", "heatsink-meter", "plus-load", "minus-load");

    private static final Map<String, String> READS = Map.of(
            "input-meter", "input.voltage",
            "plus-meter", "plus.voltage",
            "minus-meter", "minus.voltage",
            "heatsink-meter", "heatsink.temperature");

    private CampaignBench() {}

    static VirtualBench virtual(long seed, LongSupplier clock) {
        List<Fixture> fixtures = new ArrayList<>();
        fixtures.add(Fixture.supply("supply").withRemote().withHighest(20, 40));
        READS.forEach((name, reads) -> fixtures.add(Fixture.meter(name, reads)));
        fixtures.add(Fixture.load("plus-load", "plus"));
        fixtures.add(Fixture.load("minus-load", "minus"));
        return new VirtualBench(new World(Specimen.usual(), 22), fixtures, seed, clock);
    }

    /** @param devices device of each instrument by name */
    static BenchSheet sheet(Map<String, String> devices) {
        StringBuilder text = new StringBuilder("[bench]\nname = \"campaign\"\nsource = \"supply\"\n");
        for (String name : INSTRUMENTS) {
            text.append("[[instrument]]\nname = \"").append(name).append("\"\n");
            text.append("port = \"").append(devices.get(name)).append("\"\nbaud = 115200\ndialect = \"scpi-1999\"\n");
            text.append(rest(name));
        }
        return Sheet.of("bench.toml", text.toString()).read(BenchSheet::from);
    }

    private static String rest(String name) {
        if (name.equals("supply")) {
            return "kind = \"supply\"\nhighest_V = 20\nhighest_A = 40\ndrives_remote = true\n";
        }
        if (name.endsWith("-load")) {
            String rail = name.replace("-load", "");
            return "kind = \"load\"\nrail = \"" + rail + "\"\nreads = \"" + rail + ".current\"\n";
        }
        return "kind = \"meter\"\nplc = 1\nreads = \"" + READS.get(name) + "\"\n"
                + (name.equals("heatsink-meter") ? "" : "range = 100\n");
    }
}
