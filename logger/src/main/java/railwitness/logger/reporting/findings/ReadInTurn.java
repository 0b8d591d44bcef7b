package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.points.Visits;
import railwitness.logger.recording.points.WindingChannels;

/**
 * Which readings of an operating point were taken together, and which one after the other while it stood: what was not read
 * at the same time tells of two moments.
 *
 * @param together read by instruments side by side, all in each round; sorted
 * @param moved for each meter that is moved, what it read in turn, in the order of the bench sheet
 * @param byEye what a person read off meters of their own, in turn too; sorted
 */
public record ReadInTurn(List<Channel> together, List<List<Channel>> moved, List<Channel> byEye) {
    public ReadInTurn {
        together = List.copyOf(together);
        moved = moved.stream().map(List::copyOf).toList();
        byEye = List.copyOf(byEye);
    }

    /**
     * As the bench sheet says who reads what; what belongs to a transformer alone is left out, and so is what a supply with
     * knobs shows of its output where a meter reads the input.
     */
    public static ReadInTurn of(BenchSheet bench) {
        Collection<List<Channel>> places = Visits.places(bench);
        List<List<Channel>> moved = places.stream()
                .map(ReadInTurn::ofUnit)
                .filter(channels -> !channels.isEmpty())
                .toList();
        Set<Channel> byEye = new TreeSet<>();
        bench.handRead().stream().map(HandRead::reads).forEach(byEye::add);
        places.forEach(byEye::removeAll);
        Set<Channel> together = new TreeSet<>(bench.readBy().keySet());
        bench.handRead().forEach(meter -> together.remove(meter.reads()));
        bench.instruments().stream().filter(InstrumentSheet::isByHand).forEach(knobs -> {
            knobs.reads().forEach(together::remove);
            knobs.reads().stream()
                    .filter(shown -> !bench.readBy().containsKey(new Channel("input", shown.quantity())))
                    .forEach(byEye::add);
        });
        return new ReadInTurn(ofUnit(together), moved, ofUnit(byEye));
    }

    private static List<Channel> ofUnit(Collection<Channel> channels) {
        return channels.stream()
                .filter(channel -> !WindingChannels.isWinding(channel))
                .toList();
    }

    /** Whether anything was read in turn. */
    public boolean any() {
        return !moved.isEmpty() || !byEye.isEmpty();
    }

    /** All that was read in turn, in the order of the moves. */
    public List<Channel> inTurn() {
        return Stream.concat(moved.stream().flatMap(List::stream), byEye.stream())
                .toList();
    }

    /** One plain sentence. */
    public String words() {
        if (!any()) {
            return "All readings of an operating point were taken together, in the same rounds";
        }
        List<String> parts = new ArrayList<>();
        if (!together.isEmpty()) {
            parts.add("read together, in the same rounds: " + names(together));
        }
        moved.forEach(places ->
                parts.add("read in turn by one meter that was moved, while the point stood: " + names(places)));
        if (!byEye.isEmpty()) {
            parts.add("read in turn by eye, while the point stood: " + names(byEye));
        }
        String words = String.join("; ", parts);
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private static String names(List<Channel> channels) {
        return channels.stream()
                .collect(Collectors.groupingBy(
                        Channel::node,
                        java.util.LinkedHashMap::new,
                        Collectors.mapping(channel -> channel.quantity().word(), Collectors.joining(" and "))))
                .entrySet()
                .stream()
                .map((Map.Entry<String, String> node) -> node.getKey() + " " + node.getValue())
                .collect(Collectors.joining(", "));
    }
}
