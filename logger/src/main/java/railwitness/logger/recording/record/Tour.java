package railwitness.logger.recording.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.reading.Quantity;

/**
 * In which order a person reads the meters of a step. A meter that stays is read once. One that is moved begins where it
 * stands, at a rail, takes what needs no move of its leads at once (the ripple of the rail it is on), goes to each other
 * place once and comes back to the first, whose second reading shows what drifted meanwhile: as many moves as places, which
 * is the fewest that ends where the next step begins.
 */
final class Tour {
    private Tour() {}

    /** The readings in their order; the first of a meter that is moved stands there twice. */
    static List<HandRead> of(List<HandRead> meters) {
        List<HandRead> order = new ArrayList<>();
        Map<String, List<HandRead>> moved = new LinkedHashMap<>();
        for (HandRead meter : meters) {
            if (meter.moved().isPresent()) {
                moved.computeIfAbsent(meter.meter(), name -> new ArrayList<>()).add(meter);
            } else {
                order.add(meter);
            }
        }
        moved.values().forEach(places -> order.addAll(round(places)));
        return List.copyOf(order);
    }

    private static List<HandRead> round(List<HandRead> places) {
        HandRead first = places.stream()
                .filter(meter -> meter.reads().quantity() == Quantity.VOLTAGE
                        && !meter.reads().node().equals("input"))
                .findFirst()
                .orElse(places.get(0));
        List<HandRead> left = new ArrayList<>(places);
        List<HandRead> order = new ArrayList<>();
        HandRead at = first;
        while (at != null) {
            HandRead here = at;
            order.add(here);
            left.remove(here);
            at = left.stream()
                    .filter(next -> next.isAtPlaceOf(here))
                    .findFirst()
                    .orElse(left.isEmpty() ? null : left.get(0));
        }
        if (order.size() > 1) {
            order.add(first);
        }
        return order;
    }
}
