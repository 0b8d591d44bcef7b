package railwitness.logger.reporting.comparing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.logger.recording.points.BenchErrors;
import railwitness.logger.recording.store.ChainState;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * Two or more sessions side by side.
 *
 * @param sessions in the order given, the first being what the others are held against; from {@value #LEAST_FOR_CHARTS} on
 *     in the order of time
 * @param seals digest of each session, 64 hexadecimal digits
 * @param figures every figure that one of them has
 * @param steps every step that one of them measured, in the order in which they first come
 * @param charts each figure that all have, from {@value #LEAST_FOR_CHARTS} sessions on
 */
public record Comparison(
        List<SessionFindings> sessions,
        List<String> seals,
        List<Compared> figures,
        List<ComparedStep> steps,
        List<SisterChart> charts) {
    /** So many units make a control chart worth while. */
    public static final int LEAST_FOR_CHARTS = 8;

    private static final int LONGEST_NAME = 8;

    public Comparison {
        sessions = List.copyOf(sessions);
        seals = List.copyOf(seals);
        figures = List.copyOf(figures);
        steps = List.copyOf(steps);
        charts = List.copyOf(charts);
    }

    /**
     * Works all of them out with the same errors of the same instruments.
     *
     * @throws ComparisonException for less than two, one given twice, one still running, or one without a measured step
     * @throws railwitness.logger.recording.store.StoreException when one cannot be read
     */
    public static Comparison of(List<Path> files) {
        return of(files, share -> {});
    }

    /**
     * The same.
     *
     * @param progress told the share of the sessions that are worked out, 0 to 1
     */
    public static Comparison of(List<Path> files, DoubleConsumer progress) {
        if (files.size() < 2) {
            throw new ComparisonException("a comparison needs two sessions or more, not " + files.size());
        }
        List<ChainState> chains = new ArrayList<>();
        for (Path file : files) {
            ChainState chain = ChainState.of(file, false);
            chain.refuseBroken(file);
            chains.add(chain);
        }
        BenchErrors errors = new BenchErrors();
        List<SessionFindings> sessions = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (Path file : files) {
            progress.accept((double) sessions.size() / files.size());
            SessionFindings session = SessionFindings.compared(file, errors, chains.get(sessions.size()));
            if (session.state() == SessionState.RUNNING) {
                throw new ComparisonException(
                        "session " + file + " is being recorded right now; compare it when it has ended");
            }
            if (!seen.add(session.head().id())) {
                throw new ComparisonException("session " + file + " ("
                        + session.head().id() + ") is given twice; a session is only compared with others");
            }
            if (session.findings().points().isEmpty() && session.wound().isEmpty()) {
                throw new ComparisonException(
                        "session " + file + " measured no step, so there is nothing to compare; leave it out");
            }
            sessions.add(session);
        }
        return between(sessions, files.stream().map(Comparison::seal).toList());
    }

    private static String seal(Path file) {
        try (SessionFile opened = SessionFile.open(file)) {
            return opened.seal();
        }
    }

    private static Comparison between(List<SessionFindings> given, List<String> seals) {
        List<Integer> order = IntStream.range(0, given.size()).boxed().toList();
        if (given.size() >= LEAST_FOR_CHARTS) {
            order = order.stream()
                    .sorted(Comparator.comparing(i -> given.get(i).head().startedWall()))
                    .toList();
        }
        return ordered(
                order.stream().map(given::get).toList(),
                order.stream().map(seals::get).toList());
    }

    private static Comparison ordered(List<SessionFindings> sessions, List<String> seals) {
        List<Compared> figures = figures(sessions);
        List<SisterChart> charts = sessions.size() < LEAST_FOR_CHARTS
                ? List.of()
                : figures.stream().filter(Compared::inAll).map(SisterChart::of).toList();
        return new Comparison(sessions, seals, figures, StepsCompared.of(sessions), charts);
    }

    private static List<Compared> figures(List<SessionFindings> sessions) {
        Set<String> rails = new LinkedHashSet<>();
        sessions.forEach(session ->
                session.findings().figures().forEach(figure -> figure.rail().ifPresent(rails::add)));
        List<Compared> compared = new ArrayList<>();
        for (FigureName name : FigureName.values()) {
            if (name.perRail()) {
                rails.forEach(rail -> compared.add(figure(sessions, name, Optional.of(rail))));
            } else {
                compared.add(figure(sessions, name, Optional.empty()));
            }
        }
        return compared.stream().filter(Compared::inAny).toList();
    }

    private static Compared figure(List<SessionFindings> sessions, FigureName name, Optional<String> rail) {
        List<Optional<Figure>> found = sessions.stream()
                .map(session -> session.findings().figure(name, rail))
                .toList();
        return new Compared(
                name.word(),
                rail,
                name.unit(),
                found.stream().map(figure -> figure.map(Figure::value)).toList(),
                sessions.stream()
                        .map(session ->
                                session.findings().against().figure(name, rail).map(Figure::value))
                        .toList(),
                found.stream().map(figure -> figure.map(Figure::at).orElse("")).toList());
    }

    /** The control chart of a figure; empty for fewer than {@value #LEAST_FOR_CHARTS} sessions or where one has it not. */
    public Optional<SisterChart> chart(Compared figure) {
        return sessions.size() < LEAST_FOR_CHARTS || !figure.inAll()
                ? Optional.empty()
                : Optional.of(SisterChart.of(figure));
    }

    /** A, B, C and so on; 27 and more are AA, AB. */
    public static String letter(int place) {
        String last = String.valueOf((char) ('A' + place % 26));
        return place < 26 ? last : letter(place / 26 - 1) + last;
    }

    /** The serial number of a session's unit where it has a short one that none of the others has; else its letter. */
    static String name(Comparison comparison, int place) {
        List<String> serials = comparison.sessions().stream()
                .map(session -> session.head().unitSerial())
                .toList();
        String own = serials.get(place);
        boolean alone = serials.stream().filter(own::equals).count() == 1;
        return own.isEmpty() || own.length() > LONGEST_NAME || !alone ? letter(place) : own;
    }

    /** By place of the session: the charts in which its unit is unlike the others. Empty when all are alike. */
    public SortedMap<Integer, List<SisterChart>> unlike() {
        SortedMap<Integer, List<SisterChart>> unlike = new TreeMap<>();
        charts.forEach(chart -> chart.unlike().forEach(place -> unlike.computeIfAbsent(place, key -> new ArrayList<>())
                .add(chart)));
        return unlike;
    }

    /** How many differences were held against their uncertainty. */
    public long judged() {
        return changes().stream()
                .filter(change -> change.answer() != Answer.NOT_KNOWN)
                .count();
    }

    /** How many of them are real changes. */
    public long real() {
        return changes().stream()
                .filter(change -> change.answer() == Answer.REAL)
                .count();
    }

    private List<Change> changes() {
        return figures.stream()
                .flatMap(figure -> figure.changes().stream())
                .flatMap(Optional::stream)
                .toList();
    }
}
