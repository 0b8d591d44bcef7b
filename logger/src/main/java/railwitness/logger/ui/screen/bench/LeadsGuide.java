package railwitness.logger.ui.screen.bench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.stream.Stream;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.record.LeadCheck;
import railwitness.logger.recording.record.LeadCheck.Shorting;
import railwitness.logger.recording.record.LeadFinding;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Question;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.Words;

/** Leads the person through the check of the leads, one sentence at a time, while the bench is watched. */
final class LeadsGuide {
    private static final String QUESTION = "leads";
    private static final int READINGS = 3;

    private final WindowModel desk;
    private final Asker asker;
    private final Watching watching;
    private final LeadsPanel panel;
    private final List<Row> rows = new ArrayList<>();
    private final List<String> kept = new ArrayList<>();
    private List<Shorting> left = List.of();
    private LeadCheck check;
    private Optional<Gathering> gathering = Optional.empty();
    private Consumer<Gathering> then = done -> {};
    private boolean on;

    LeadsGuide(WindowModel desk, Asker asker, Watching watching, LeadsPanel panel) {
        this.desk = desk;
        this.asker = asker;
        this.watching = watching;
        this.panel = panel;
    }

    boolean on() {
        return on;
    }

    /** Begins anew; the bench is watched from now on. */
    void begin() {
        end();
        on = true;
        rows.clear();
        kept.clear();
        check = LeadCheck.of(desk.sheets());
        left = new ArrayList<>(check.shortings());
        panel.joined(check.joined());
        panel.rows(rows);
        watching.begin();
        next();
    }

    /** Ends it wherever it stands; what was found stays to be seen. */
    void end() {
        on = false;
        gathering = Optional.empty();
        asker.withdraw(QUESTION);
    }

    /** A moment has gone by. */
    void moment() {
        if (gathering.isPresent() && gathering.get().over()) {
            Gathering done = gathering.get();
            gathering = Optional.empty();
            then.accept(done);
        }
    }

    private void next() {
        if (!on) {
            return;
        }
        if (left.isEmpty()) {
            ask("leads.back", Optional.empty(), answer("leads.done", typed -> rest()), answer("leads.end", t -> end()));
            return;
        }
        Shorting meter = left.remove(0);
        Optional<String> field = meter.byHand() ? Optional.of(Words.of("leads.shows")) : Optional.empty();
        String sentence = meter.byHand() ? shownByHand(meter) : Words.of("leads.short", meter.instrument());
        ask(
                sentence,
                field,
                answer("leads.shorted", typed -> shorted(meter, typed)),
                answer("leads.skip", typed -> {
                    row(LeadRows.without(meter.instrument(), "leads.skipped"));
                    next();
                }),
                answer("leads.end", typed -> end()));
    }

    private void ask(String sentence, Optional<String> field, Question.Answer... answers) {
        asker.ask(new Question(QUESTION, Words.orElse(sentence, sentence), field, List.of(answers)));
    }

    private static Question.Answer answer(String label, Consumer<String> chosen) {
        return new Question.Answer(Words.of(label), chosen);
    }

    private void shorted(Shorting meter, String typed) {
        if (meter.byHand()) {
            OptionalDouble shown = Numbers.parsed(typed);
            row(
                    shown.isPresent()
                            ? found(check.zero(meter, List.of(shown.getAsDouble())))
                            : LeadRows.without(meter.instrument(), "leads.nonumber"));
            next();
            return;
        }
        leads(meter, true);
        gather(Map.of(meter.reads(), meter.instrument()), READINGS, came -> {
            leads(meter, false);
            List<Double> values = came.of(meter.reads());
            row(
                    values.isEmpty()
                            ? LeadRows.without(meter.instrument(), "leads.silent")
                            : found(check.zero(meter, values)));
            next();
        });
    }

    /** On the virtual bench nobody has hands, so what the person says is done is done there. */
    private void leads(Shorting meter, boolean together) {
        watching.virtual().ifPresent(rest -> rest.bench().shortLeads(meter.instrument(), together));
    }

    /** A virtual meter without a wire can be read nowhere but in the sentence. */
    private String shownByHand(Shorting meter) {
        BenchSheet bench = desk.sheets().bench().content();
        Optional<HandRead> virtual = bench.handRead().stream()
                .filter(one -> watching.virtual().isPresent() && one.name().equals(meter.instrument()))
                .findFirst();
        return virtual.isPresent()
                ? Words.of("leads.short.virtual", meter.instrument(), shown(virtual.get()))
                : Words.of("leads.short.byhand", meter.instrument());
    }

    private String shown(HandRead meter) {
        return Numbers.fixed(watching.virtual().orElseThrow().atRest(meter), 3) + " "
                + ChannelNames.unit(meter.reads().quantity());
    }

    private void gather(Map<Channel, String> wanted, int each, Consumer<Gathering> done) {
        then = done;
        gathering = Optional.of(new Gathering(watching, wanted, each));
    }

    /** Rails and input at rest, every lead in its place. */
    private void rest() {
        Map<Channel, String> readBy = desk.sheets().bench().content().readBy();
        Map<Channel, String> wanted = new HashMap<>();
        Stream.concat(check.rails().stream(), check.inputChannels().stream())
                .forEach(channel -> wanted.put(channel, readBy.get(channel)));
        gather(wanted, 1, this::rested);
    }

    private void rested(Gathering came) {
        for (Channel rail : check.rails()) {
            List<Double> values = came.of(rail);
            row(
                    values.isEmpty()
                            ? LeadRows.without(ChannelNames.full(rail), "leads.silent")
                            : found(check.atRest(rail, values.get(0))));
        }
        List<Channel> input = check.inputChannels();
        if (input.stream().noneMatch(channel -> came.of(channel).isEmpty()) && !input.isEmpty()) {
            check.input(came.of(input.get(0)).get(0), came.of(input.get(1)).get(0))
                    .ifPresent(one -> row(found(one)));
        } else {
            row(LeadRows.without(Words.of("node.input"), input.isEmpty() ? "leads.noinput" : "leads.silent"));
        }
        on = false;
    }

    /** Kept for the session that is run next. */
    private Row found(LeadFinding finding) {
        kept.add(finding.words());
        desk.leads(kept);
        return LeadRows.of(finding);
    }

    private void row(Row row) {
        rows.add(row);
        panel.rows(rows);
    }
}
