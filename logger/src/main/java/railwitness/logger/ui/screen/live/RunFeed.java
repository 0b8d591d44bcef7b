package railwitness.logger.ui.screen.live;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleSupplier;
import railwitness.analysis.design.Rail;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.LatestReadings;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.points.PointMaker;
import railwitness.logger.recording.record.RailsNow;
import railwitness.logger.recording.record.RunEnd;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.record.StepForecast;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.safety.interlock.Trip;
import railwitness.safety.power.PowerState;

/** What a run tells, kept as little as possible: written on the run's thread, looked at from the screen's. */
final class RunFeed implements RunListener {
    private final boolean rehearsal;
    private final List<String> rails;
    private final DoubleSupplier nowSeconds;
    private final PointMaker points;
    private final StepReadings readings = new StepReadings();
    private final LatestReadings last = new LatestReadings();
    private final Map<Channel, TraceKeeper> traces = new ConcurrentHashMap<>();
    private final List<StepView> steps = new ArrayList<>();
    private final Deque<Prompt> prompts = new ArrayDeque<>();
    private int current = -1;
    private String saying = "";
    /** When the run was last looked at while it went on. */
    private long lookedNanos;

    private Optional<String> trip = Optional.empty();
    private Optional<Channel> tripped = Optional.empty();
    private Optional<String> stop = Optional.empty();
    private Optional<String> contradiction = Optional.empty();
    private Optional<RunEnd> end = Optional.empty();
    private Optional<String> failed = Optional.empty();

    RunFeed(Sheets sheets, boolean rehearsal, DoubleSupplier nowSeconds) {
        this.rehearsal = rehearsal;
        this.nowSeconds = nowSeconds;
        this.rails = sheets.design().content().rails().stream().map(Rail::name).toList();
        this.points = PointMaker.ofRun(sheets.bench().content(), sheets.design().content());
        StepForecast.of(sheets).forEach(forecast -> steps.add(StepView.toCome(forecast)));
    }

    @Override
    public synchronized void happened(double atSeconds, SessionEvent event) {
        Optional<String> text = Optional.of(event.words());
        if (!event.is(EventKind.WATCHED)) {
            saying = event.words();
        }
        switch (event.kind()) {
            case CONTRADICTION -> contradiction = text;
            case TRIP -> {
                trip = trip.or(() -> text);
                tripped = tripped.or(() -> beyond(event));
            }
            case STOP -> stop = stop.or(() -> text);
            default -> {}
        }
    }

    private static Optional<Channel> beyond(SessionEvent event) {
        return event instanceof SessionEvent.Tripped of ? of.beyond().flatMap(Trip.Beyond::channel) : Optional.empty();
    }

    @Override
    public void swept(PollResult pollResult) {
        for (Reading reading : pollResult.readings()) {
            heard(reading);
            if (reading instanceof Measured measured) {
                traces.computeIfAbsent(reading.channel(), channel -> new TraceKeeper())
                        .add(measured.repliedNanos() / 1e9, measured.value());
            }
        }
    }

    @Override
    public synchronized void heard(Reading reading) {
        last.heard(reading);
        readings.heard(reading);
    }

    @Override
    public synchronized void began(int index, int of, Step step) {
        current = index - 1;
        readings.clear();
        steps.set(current, steps.get(current).beginning(nowSeconds.getAsDouble()));
    }

    @Override
    public synchronized void averaging(Step step, boolean settled) {
        steps.set(current, steps.get(current).averaging(nowSeconds.getAsDouble(), settled));
    }

    @Override
    public void ended(Step step, StepEntry entry) {
        Optional<OperatingPoint> point = entry.outcome() == StepOutcome.MEASURED ? point(entry) : Optional.empty();
        synchronized (this) {
            steps.set(current, steps.get(current).over(nowSeconds.getAsDouble(), entry, point));
        }
    }

    /** Only the run's thread changes the readings, so it need not keep the screen waiting while it works them out. */
    private Optional<OperatingPoint> point(StepEntry entry) {
        return points.point(entry, readings.during(entry.average().orElseThrow()));
    }

    synchronized void ask(Prompt prompt) {
        prompts.addLast(prompt);
    }

    /** Nothing that was asked is wanted any more. */
    synchronized void forget() {
        prompts.clear();
    }

    /** Takes the present prompt; empty when somebody else was quicker. */
    synchronized Optional<Prompt> answered(Prompt prompt) {
        return prompts.remove(prompt) ? Optional.of(prompt) : Optional.empty();
    }

    synchronized void ended(RunEnd how) {
        end = Optional.of(how);
        prompts.clear();
    }

    synchronized void failed(String why) {
        failed = Optional.of(why);
        prompts.clear();
    }

    Optional<TraceKeeper> trace(Channel channel) {
        return Optional.ofNullable(traces.get(channel));
    }

    synchronized RunView view(PowerState power) {
        boolean over = end.isPresent() || failed.isPresent();
        lookedNanos = over ? lookedNanos : Math.round(nowSeconds.getAsDouble() * 1e9);
        return new RunView(
                rehearsal,
                nowSeconds.getAsDouble(),
                power,
                last.all(),
                RailsNow.of(rails, last, lookedNanos / 1e9),
                List.copyOf(steps),
                Optional.ofNullable(prompts.peekFirst()),
                saying,
                contradiction,
                trip,
                tripped,
                stop,
                end,
                failed);
    }
}
