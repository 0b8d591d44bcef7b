package railwitness.logger.ui.screen.run;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.store.Photograph;
import railwitness.logger.ui.screen.live.LiveRun;
import railwitness.logger.ui.screen.live.Prompt;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.live.StepView;
import railwitness.logger.ui.screen.live.TimeLeft;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Question;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.power.PowerState;

/** What stands at the bottom while the unit is run, and what the person is asked there. */
final class RunLine {
    private static final String PROMPT = "prompt";
    private static final String NOTE = "note";

    private final WindowModel desk;
    private final Asker asker;
    private final Runnable findings;
    private final BooleanSupplier far;
    private final BooleanSupplier cramped;
    private final Runnable turn;
    private List<StepView> pencilled = List.of();
    private Optional<Prompt> asked = Optional.empty();

    /**
     * @param far whether the step fills the room
     * @param cramped whether the window is so low that what is less needed gives way to the figures
     * @param turn to the other of the two views
     */
    RunLine(
            WindowModel desk,
            Asker asker,
            Runnable findings,
            BooleanSupplier far,
            BooleanSupplier cramped,
            Runnable turn) {
        this.desk = desk;
        this.asker = asker;
        this.findings = findings;
        this.far = far;
        this.cramped = cramped;
        this.turn = turn;
    }

    void pencilled(List<StepView> steps) {
        pencilled = List.copyOf(steps);
    }

    List<StepView> pencilled() {
        return pencilled;
    }

    /** Puts a prompt of the run to the person, once. */
    void moment(RunView view) {
        if (view.prompt().equals(asked)) {
            return;
        }
        asked = view.prompt();
        asked.ifPresentOrElse(this::ask, () -> asker.withdraw(PROMPT));
    }

    private void ask(Prompt prompt) {
        LiveRun run = desk.run().orElseThrow();
        Question question = new Question(
                        PROMPT,
                        prompt.sentence(),
                        field(prompt),
                        List.of(new Question.Answer(Words.of("prompt.done"), typed -> run.answer(prompt, typed))))
                .enlarged();
        if (prompt.kind() == Prompt.Kind.SWITCH_OFF || prompt.kind() == Prompt.Kind.DISCONNECT) {
            asker.askFirst(question);
        } else {
            asker.ask(question);
        }
        desk.sounds().asked();
    }

    private static Optional<String> field(Prompt prompt) {
        return switch (prompt.kind()) {
            case ACT -> Optional.empty();
            case NUMBER -> Optional.of(Words.of("prompt.value"));
            case DISCONNECT -> Optional.of(Words.of("prompt.disconnect.field"));
            case SWITCH_OFF -> Optional.of(Words.of("prompt.knobs.field"));
        };
    }

    private void note() {
        LiveRun run = desk.run().orElseThrow();
        asker.ask(new Question(
                NOTE,
                Words.of("note.sentence"),
                Optional.of(Words.of("note.field")),
                List.of(
                        new Question.Answer(Words.of("note.keep"), typed -> {
                            if (!typed.isBlank()) {
                                keep(run, typed.strip());
                            }
                        }),
                        new Question.Answer(Words.of("note.leave"), typed -> {}))));
    }

    /** A photograph is copied beside the session first, so that the note has its digest. */
    private void keep(LiveRun run, String typed) {
        desk.work(
                () -> Photograph.kept(typed, run.file()),
                text -> {
                    run.note(text);
                    desk.message(Words.of("note.kept"));
                },
                why -> {
                    run.note(typed);
                    desk.message(Words.of("note.nophoto", why));
                });
    }

    StatusLine line() {
        Optional<LiveRun> run = desk.run();
        if (run.isEmpty()) {
            Duration time = TimeLeft.of(List.of()).left(pencilled, 0);
            return StatusLine.of(
                    Words.of("run.waiting"), Words.of("run.waiting.next", pencilled.size(), Numbers.span(time)));
        }
        RunView view = desk.view().orElseThrow();
        return view.over() ? over(run.get(), view) : going(view);
    }

    private StatusLine over(LiveRun run, RunView view) {
        Act open = new Act("findings", Words.of("act.findings"), "control ENTER", true, findings);
        if (view.failed().isPresent()) {
            return StatusLine.of(
                    Words.of("run.failed"),
                    view.failed().get(),
                    desk.session().isPresent() ? new Act[] {open} : new Act[0]);
        }
        String head = view.ended()
                .map(end -> Words.of("run.over." + end.state().name()))
                .orElse("");
        return StatusLine.of(
                head, view.trip().orElse(Words.of("run.kept", run.file().getFileName())), open);
    }

    /** From the first byte of off nothing of the plan is to come. */
    private StatusLine switchingOff(RunView view) {
        String head = view.trip()
                .or(() -> view.stop())
                .map(why -> Words.of("run.off.because", why))
                .orElseGet(() -> Words.of("run.off"));
        boolean open = view.power() == PowerState.NOT_CONFIRMED;
        return StatusLine.of(head, open ? Words.of("run.off.open") : capital(view.saying()), note(this::note));
    }

    private static Act note(Runnable done) {
        return new Act("note", Words.of("act.note"), "control N", false, done);
    }

    private static boolean isOff(RunView view) {
        return switch (view.power()) {
            case SWITCHING_OFF, DISCHARGING, NOT_CONFIRMED -> true;
            case NOT_KNOWN, OFF, ARMED, ON -> false;
        };
    }

    private StatusLine going(RunView view) {
        if (isOff(view) || view.trip().isPresent() || view.stop().isPresent()) {
            return switchingOff(view);
        }
        TimeLeft time = TimeLeft.of(view.steps());
        Duration left = time.left(view.steps(), view.nowSeconds());
        int live = view.liveStep();
        String head = live >= 0 ? StepWords.now(view.steps().get(live), view.nowSeconds()) : capital(view.saying());
        String whole = view.stepsDone() == view.steps().size()
                ? Words.of("run.closing")
                : Words.of("run.left", Numbers.span(left));
        String caption = view.contradiction()
                .map(text -> Words.of("contradiction.text", text))
                .orElse(live >= 0 ? next(view, live, time) + whole : whole);
        List<Act> acts = new ArrayList<>();
        acts.add(note(this::note));
        boolean low = cramped.getAsBoolean();
        boolean anew = live >= 0
                && view.prompt().isEmpty()
                && view.steps().get(live).forecast().step().hold().isZero();
        if (anew) {
            LiveRun run = desk.run().orElseThrow();
            acts.add(new Act("pause", Words.of("act.pause"), "P", false, run::pause));
            if (!low) {
                acts.add(new Act("repeat", Words.of("act.repeat"), "R", false, run::repeatStep));
            }
        }
        if (!low) {
            acts.add(new Act(
                    "sound",
                    Words.of(desk.sounds().on() ? "act.silent" : "act.sound"),
                    "S",
                    false,
                    desk.sounds()::turn));
        }
        acts.add(new Act("view", Words.of(far.getAsBoolean() ? "act.near" : "act.far"), "V", false, turn));
        double all = view.steps().size();
        double length = view.nowSeconds() + left.toMillis() / 1000.0;
        String words = Words.of(
                "run.stepof", Math.min(view.stepsDone() + 1, view.steps().size()), (int) all);
        return new StatusLine(head, caption, Optional.empty(), acts)
                .with(new StatusLine.Progress(words, length > 0 ? Math.min(1, view.nowSeconds() / length) : 0));
    }

    private static String next(RunView view, int live, TimeLeft time) {
        StepView now = view.steps().get(live);
        String then = now.averagedFrom().isPresent()
                ? ""
                : Words.of(
                                "run.then.averaging",
                                Numbers.span(now.forecast().step().timing().average()))
                        + " ";
        if (live + 1 >= view.steps().size()) {
            return then + Words.of("run.next.off") + " ";
        }
        Step next = view.steps().get(live + 1).forecast().step();
        return then
                + Words.of(
                        "run.next",
                        RailNames.inStep(next.name()),
                        Numbers.span(Duration.ofMillis(Math.round(time.whole(next) * 1000))))
                + " ";
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
    }
}
