package railwitness.logger.reporting.comparing;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;

/** A short session on the demo's bench, written straight into a file: a load sweep of a rail with a known resistance. */
public final class SmallSession {
    private static final long ROUND_NANOS = 500_000_000L;

    private final SessionWriter writer;
    private final Random random;
    private final double ohms;
    private long nanos = 1_000_000_000L;

    private SmallSession(SessionWriter writer, long seed, double ohms) {
        this.writer = writer;
        this.random = new Random(seed);
        this.ohms = ohms;
    }

    /**
     * @param instruments part of the instruments' serial numbers; empty: they say none
     * @param ohms output resistance of both rails
     */
    public static Path write(Path file, String id, String instruments, double ohms) {
        return write(file, id, instruments, ohms, "Saloon amplifier supply");
    }

    public static Path write(Path file, String id, String instruments, double ohms, String unit) {
        Sheets demo = Sheets.demo();
        SessionHead head = new SessionHead(
                id, Instant.parse("2026-03-04T05:06:07Z"), ZoneOffset.UTC, true, "test", "", unit, id, "as found");
        SessionWriter writer = SessionWriter.create(file, head);
        writer.sheet("design", demo.design().fileName(), demo.design().text());
        writer.sheet("bench", demo.bench().fileName(), demo.bench().text());
        writer.sheet("plan", demo.plan().fileName(), demo.plan().text());
        for (InstrumentSheet one : demo.bench().content().instruments()) {
            String serial = instruments.isEmpty() ? "0" : one.name() + instruments;
            writer.instrument(one.name(), "meter", "port", "", new Identity("Works", "M1", serial, "1.0"), "");
        }
        SmallSession session = new SmallSession(writer, id.hashCode(), ohms);
        session.step("no-load", "0 %", 0);
        for (int percent : new int[] {25, 50, 75, 100}) {
            session.step("load-sweep", percent + " %", percent * 0.04);
        }
        session.writer.event(session.nanos, "note", "=1+1 is shown, not run");
        writer.finish(SessionState.COMPLETE);
        return file;
    }

    private void step(String stage, String name, double amps) {
        long begin = nanos;
        round(amps, 0.05);
        writer.reading(new Overload(Channel.of("plus.voltage"), nanos - 1000, nanos));
        writer.reading(new Missing(Channel.of("minus.voltage"), "no answer in 1 s", nanos - 1000, nanos));
        round(amps, 0.05);
        long from = nanos;
        for (int i = 0; i < 10; i++) {
            round(amps, 0);
        }
        TreeMap<String, Double> loads = new TreeMap<>();
        if (amps > 0) {
            loads.put("minus", amps);
            loads.put("plus", amps);
        }
        writer.step(new StepEntry(
                stage,
                name,
                begin,
                Optional.of(new TimeSpan(from, nanos)),
                true,
                StepOutcome.MEASURED,
                "",
                OptionalDouble.of(13.8),
                loads));
    }

    private void round(double amps, double offVolts) {
        reading("input.voltage", 13.8 - 0.5 * amps / 10 + 0.0002 * random.nextGaussian());
        reading("input.current", 0.4 + 6.1 * amps + 0.0005 * random.nextGaussian());
        reading("plus.voltage", 41 + offVolts - ohms * amps + 0.0003 * random.nextGaussian());
        reading("minus.voltage", -41 - offVolts + ohms * amps + 0.0003 * random.nextGaussian());
        reading("plus.current", amps + 0.00005 * random.nextGaussian());
        reading("minus.current", amps + 0.00005 * random.nextGaussian());
        reading("heatsink.temperature", 31.25);
        nanos += ROUND_NANOS;
    }

    private void reading(String channel, double value) {
        writer.reading(new Measured(Channel.of(channel), value, nanos + 1_000, nanos + 12_000_345));
    }
}
