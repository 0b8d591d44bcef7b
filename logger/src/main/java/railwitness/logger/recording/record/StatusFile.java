package railwitness.logger.recording.record;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Consumer;
import java.util.function.Supplier;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;

/**
 * A small file of JSON that says how a run stands, for any program to read. It is written anew beside itself and put in
 * place in one go, so whoever reads it finds it whole. It is written at most once in so often, and when something happens.
 */
public final class StatusFile implements RunListener {
    private final Path file;
    private final Path session;
    private final Duration every;
    private final Supplier<Instant> clock;
    private final Consumer<String> trouble;
    private final LastReadings last = new LastReadings();
    private final ObjectMapper json = new ObjectMapper();
    private Instant written = Instant.MIN;
    private String step = "";
    private String what = "begin";
    private String text = "";
    private double atSeconds;
    private boolean over;
    private boolean failed;

    /** @param trouble told once where it cannot be written */
    public StatusFile(Path file, Path session, Duration every, Supplier<Instant> clock, Consumer<String> trouble) {
        this.file = file;
        this.session = session;
        this.every = every;
        this.clock = clock;
        this.trouble = trouble;
    }

    @Override
    public void swept(PollResult pollResult) {
        pollResult.readings().forEach(last::heard);
        if (written.plus(every).isBefore(clock.get())) {
            write();
        }
    }

    @Override
    public void heard(Reading reading) {
        last.heard(reading);
    }

    @Override
    public void began(int index, int of, Step begun) {
        step = begun.stage() + " " + begun.name() + ", " + index + " of " + of;
        write();
    }

    @Override
    public void happened(double at, SessionEvent event) {
        atSeconds = at;
        what = event.what();
        text = event.words();
        over |= event.is(EventKind.OFF);
        write();
    }

    private void write() {
        written = clock.get();
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("session", session.toAbsolutePath().toString())
                .put("at", written.toString())
                .put("over", over)
                .put("step", step);
        root.putObject("last_event").put("at_s", atSeconds).put("what", what).put("text", text);
        ObjectNode readings = root.putObject("readings");
        last.words().forEach((channel, value) -> readings.put(channel, Double.parseDouble(value)));
        Path beside = file.resolveSibling(file.getFileName() + ".new");
        try {
            Files.writeString(beside, json.writerWithDefaultPrettyPrinter().writeValueAsString(root) + "\n");
            Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            if (!failed) {
                failed = true;
                trouble.accept("the status file " + file + " cannot be written: " + e.getMessage());
            }
        }
    }
}
