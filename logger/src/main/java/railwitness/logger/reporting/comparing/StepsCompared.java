package railwitness.logger.reporting.comparing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.logger.reporting.findings.SessionFindings;

/** The operating points of all sessions, step by step. */
final class StepsCompared {
    private StepsCompared() {}

    private record Place(String stage, String step) {}

    static List<ComparedStep> of(List<SessionFindings> sessions) {
        Set<Place> places = new LinkedHashSet<>();
        sessions.forEach(session ->
                session.findings().points().forEach(point -> places.add(new Place(point.stage(), point.step()))));
        return places.stream()
                .map(place -> new ComparedStep(place.stage(), place.step(), values(points(sessions, place))))
                .toList();
    }

    private static List<Optional<OperatingPoint>> points(List<SessionFindings> sessions, Place place) {
        return sessions.stream()
                .map(session -> session.findings().points().stream()
                        .filter(point -> point.stage().equals(place.stage())
                                && point.step().equals(place.step()))
                        .findFirst())
                .toList();
    }

    private static List<Compared> values(List<Optional<OperatingPoint>> points) {
        List<Compared> values = new ArrayList<>();
        values.add(whole("input voltage", "V", points, point -> point.input().voltage()));
        values.add(whole("input current", "A", points, point -> point.input().current()));
        rails(points).forEach(rail -> {
            values.add(rail("voltage", "V", rail, points, RailPoint::voltage));
            values.add(rail("current", "A", rail, points, RailPoint::current));
            values.add(Compared.of("ripple", Optional.of(rail), "V", points, point -> point.flatMap(p -> p.rail(rail))
                    .flatMap(RailPoint::rippleRms)));
        });
        values.add(whole("loss", "W", points, OperatingPoint::loss));
        values.add(Compared.of("efficiency", Optional.empty(), "1", points, point -> point.filter(
                        p -> p.outputPower().value() > 0)
                .flatMap(OperatingPoint::efficiency)));
        nodes(points)
                .forEach(node -> values.add(Compared.of(
                        "temperature",
                        Optional.of(node),
                        "degC",
                        points,
                        point -> point.flatMap(
                                p -> Optional.ofNullable(p.temperatures().get(node))))));
        return values.stream().filter(Compared::inAny).toList();
    }

    private static Compared whole(
            String name,
            String unit,
            List<Optional<OperatingPoint>> points,
            java.util.function.Function<OperatingPoint, Estimate> value) {
        return Compared.of(name, Optional.empty(), unit, points, point -> point.map(value));
    }

    private static Compared rail(
            String name,
            String unit,
            String rail,
            List<Optional<OperatingPoint>> points,
            java.util.function.Function<RailPoint, Estimate> value) {
        return Compared.of(name, Optional.of(rail), unit, points, point -> point.flatMap(p -> p.rail(rail))
                .map(value));
    }

    private static Set<String> rails(List<Optional<OperatingPoint>> points) {
        Set<String> rails = new LinkedHashSet<>();
        points.forEach(point -> point.ifPresent(p -> rails.addAll(p.rails().keySet())));
        return rails;
    }

    private static Set<String> nodes(List<Optional<OperatingPoint>> points) {
        Set<String> nodes = new LinkedHashSet<>();
        points.forEach(
                point -> point.ifPresent(p -> nodes.addAll(p.temperatures().keySet())));
        return nodes;
    }
}
