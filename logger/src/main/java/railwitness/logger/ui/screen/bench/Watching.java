package railwitness.logger.ui.screen.bench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import javax.swing.SwingUtilities;
import railwitness.drivers.bench.BenchWatch;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.bench.Seen;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.stage.AtRest;
import railwitness.logger.ui.screen.stage.WindowModel;

/** The watch over the instruments of the bench sheet, begun and ended from the screen. Used on the event thread alone. */
final class Watching {
    private final WindowModel desk;
    private final Map<String, Seen> seen = new HashMap<>();
    private final Map<InstrumentSheet, BenchWatch> watches = new HashMap<>();
    private final List<CompletableFuture<Void>> ending = new ArrayList<>();
    private Optional<CompletableFuture<Void>> lease = Optional.empty();
    private Optional<VirtualRest> virtual = Optional.empty();
    private Sheets watched;

    Watching(WindowModel desk) {
        this.desk = desk;
        desk.watchedBy(this::atRest);
    }

    /** What the band may say of it; empty while nobody watches. */
    Optional<AtRest> atRest() {
        if (!on() || watched == null) {
            return Optional.empty();
        }
        List<InstrumentSheet> all = watched.bench().content().instruments();
        long answering = all.stream().filter(this::answers).count();
        return Optional.of(new AtRest((int) answering, all.size(), all.stream().anyMatch(this::saysOff)));
    }

    private boolean answers(InstrumentSheet sheet) {
        return seen(sheet.name())
                .filter(one -> one.state() == Seen.State.ANSWERS)
                .isPresent();
    }

    private boolean saysOff(InstrumentSheet sheet) {
        return sheet.duty() instanceof Duty.AsSupply
                && answers(sheet)
                && seen(sheet.name())
                        .flatMap(Seen::pollResult)
                        .filter(pollResult -> pollResult.conditions().contains(Condition.OUTPUT_OFF))
                        .isPresent();
    }

    boolean on() {
        return lease.isPresent();
    }

    /** Ports may still be held by a watch that was ended. */
    boolean ending() {
        ending.removeIf(CompletableFuture::isDone);
        return !on() && !ending.isEmpty();
    }

    /** What is known of an instrument; empty while nobody watches. */
    Optional<Seen> seen(String instrument) {
        return Optional.ofNullable(seen.get(instrument));
    }

    /** The virtual bench that is watched, where it is that one. */
    Optional<VirtualRest> virtual() {
        return virtual;
    }

    void begin() {
        if (!on()) {
            CompletableFuture<Void> held = new CompletableFuture<>();
            lease = Optional.of(held);
            desk.ports().take(() -> SwingUtilities.invokeLater(this::end), this::reset, held);
            follow();
        }
    }

    private void reset() {
        watches.values().forEach(BenchWatch::reset);
    }

    /** Watches what the desk says now; an instrument of which nothing has changed is left alone. */
    void follow() {
        if (!on() || desk.sheets() == watched && desk.virtualBench() == virtual.isPresent()) {
            return;
        }
        List<InstrumentSheet> wanted = desk.sheets().bench().content().instruments();
        boolean fresh = desk.virtualBench() || virtual.isPresent();
        if (fresh) {
            seen.clear();
        }
        List.copyOf(watches.keySet()).stream()
                .filter(sheet -> fresh || !wanted.contains(sheet))
                .forEach(this::drop);
        watched = desk.sheets();
        virtual = desk.virtualBench()
                ? Optional.of(new VirtualRest(watched, desk.rehearsal().seed(), new VirtualScheduler(Instant.now())))
                : Optional.empty();
        Sheets meant = watched;
        CompletableFuture<Void> free = CompletableFuture.allOf(ending.toArray(new CompletableFuture<?>[0]));
        if (free.isDone()) {
            start(meant);
        } else {
            free.thenRun(() -> SwingUtilities.invokeLater(() -> start(meant)));
        }
    }

    private void start(Sheets meant) {
        List<InstrumentSheet> wanted = meant.bench().content().instruments();
        if (!on() || meant != watched || wanted.isEmpty()) {
            return;
        }
        if (virtual.isPresent()) {
            VirtualRest rest = virtual.get();
            watches.put(
                    wanted.get(0), BenchWatch.inline(wanted, rest, rest.scheduler(), one -> hear(wanted.get(0), one)));
            return;
        }
        wanted.stream()
                .filter(sheet -> !watches.containsKey(sheet))
                .forEach(sheet ->
                        watches.put(sheet, BenchWatch.of(List.of(sheet), SerialLine::open, one -> hear(sheet, one))));
    }

    /** From the watch's threads; what comes after its end is not heard. */
    private void hear(InstrumentSheet sheet, Seen one) {
        SwingUtilities.invokeLater(() -> {
            if (watches.containsKey(sheet)) {
                seen.put(one.instrument(), one);
            }
        });
    }

    private void drop(InstrumentSheet sheet) {
        BenchWatch watch = watches.remove(sheet);
        watch.end();
        ending.removeIf(CompletableFuture::isDone);
        ending.add(watch.over());
        seen.remove(sheet.name());
    }

    /** No further look; what is answered completes when all ports have been let go. */
    CompletableFuture<Void> end() {
        List.copyOf(watches.keySet()).forEach(this::drop);
        seen.clear();
        watched = null;
        virtual = Optional.empty();
        CompletableFuture<Void> closed = CompletableFuture.allOf(ending.toArray(new CompletableFuture<?>[0]));
        lease.ifPresent(held -> closed.thenRun(() -> held.complete(null)));
        lease = Optional.empty();
        return closed;
    }
}
