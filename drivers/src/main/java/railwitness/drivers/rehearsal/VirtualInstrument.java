package railwitness.drivers.rehearsal;

import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.LongSupplier;
import railwitness.drivers.converter.World;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.Peer;
import railwitness.drivers.scpi.Fields;
import railwitness.drivers.scpi.Numeric;
import railwitness.drivers.scpi.StandardEvent;

/**
 * The far side of an instrument's line: reads SCPI messages in long or short form, with relative headers after a
 * semicolon, keeps an error queue, and answers nothing at all to a bad query. Its answers take the time that bytes need
 * at the baud rate and the reading needs to integrate.
 */
public abstract class VirtualInstrument implements Peer {
    private static final Duration LATENESS = Duration.ofSeconds(2);
    private static final long STANDSTILL_NANOS = 20_000_000_000L;
    private static final Duration THINKING = Duration.ofNanos(1_500_000);
    private static final int BITS_PER_CHARACTER = 10;

    private final Fixture fixture;
    private final World world;
    private final LongSupplier clock;
    private final Random random;
    private final ErrorQueue errors = new ErrorQueue();
    private final CommandSet commands = new CommandSet();
    private final Troubles troubles = new Troubles();
    private final boolean remoteFirst;
    private boolean remoteMode;
    private String bench = "";
    private int eventEnable;
    private long exchanges;
    private double busySeconds;
    private byte[] before = new byte[0];
    private final List<String> toldMeanwhile = new ArrayList<>();
    private long standsUntilNanos;
    private Overheard overheard = (question, answer, atNanos) -> {};

    /** What the instrument itself answers, before any trouble changes it on its way. */
    @FunctionalInterface
    public interface Overheard {
        /** Called in the turn of the answer, before it is sent. */
        void meant(String question, byte[] answer, long atNanos);
    }

    VirtualInstrument(Fixture fixture, World world, LongSupplier clock, Random random) {
        this.fixture = fixture;
        this.world = world;
        this.clock = clock;
        this.random = random;
        remoteFirst = fixture.talk().remoteFirst();
        common();
    }

    private void common() {
        commands.query("*IDN?", call -> identity());
        commands.command("*RST", call -> reset());
        commands.command("*CLS", call -> errors.clear());
        commands.query("*ESR?", call -> Integer.toString(errors.takeEvents()));
        commands.command("*ESE", call -> eventEnable = (int) call.number(0, 0, 255, 0));
        commands.query("*ESE?", call -> Integer.toString(eventEnable));
        commands.command("*SRE", call -> call.number(0, 0, 255, 0));
        commands.query("*STB?", call -> errors.isEmpty() ? "0" : "4");
        commands.command("*OPC", call -> errors.note(StandardEvent.OPERATION_COMPLETE));
        commands.query("*OPC?", call -> "1");
        commands.command("*WAI", call -> {});
        commands.query("*TST?", call -> "0");
        commands.query("SYSTem:ERRor[:NEXT]?", call -> errors.next());
        commands.query("SYSTem:ERRor:COUNt?", call -> Integer.toString(errors.size()));
        commands.query("SYSTem:VERSion?", call -> "1999.0");
        commands.command("SYSTem:REMote", call -> remoteMode = true);
        commands.command("SYSTem:RWLock", call -> remoteMode = true);
        commands.command("SYSTem:LOCal", call -> remoteMode = false);
    }

    /** Another draw of errors is another instrument: its serial number says of which bench it is. */
    final void ofBench(long seed) {
        bench = seed == 1 ? "" : " of bench " + seed;
    }

    private String identity() {
        String kind = fixture.kind().name().toLowerCase(Locale.ROOT);
        String manner = remoteFirst ? "-RF" : fixture.talk().channels() ? "-CH" : "";
        return "Railwitness,virtual " + kind + manner + "," + fixture.name().replace(',', ' ') + bench + ",1.0";
    }

    @Override
    public Answer hear(String message) {
        synchronized (world) {
            troubles.look(nowNanos(), ++exchanges);
            if (troubles.has(Trouble.VANISHED)) {
                throw LineException.unplugged(fixture.port(), message);
            }
            Duration in = wireTime(message.length() + 1);
            if (troubles.has(Trouble.SILENT)) {
                return Answer.silence(in);
            }
            if (troubles.has(Trouble.STANDS_STILL) && standsStill(message)) {
                return Answer.silence(in);
            }
            busySeconds = 0;
            world.at(nowNanos());
            toldMeanwhile.forEach(this::carryOut);
            toldMeanwhile.clear();
            if (troubles.has(Trouble.RESETS)) {
                troubles.end(Trouble.RESETS);
                remoteMode = false;
                eventEnable = 0;
                reset();
            }
            Optional<byte[]> own = carryOut(message);
            own.ifPresent(answer -> overheard.meant(message, answer, nowNanos()));
            Optional<byte[]> reply = own.map(this::troubled);
            Duration busy = in.plus(THINKING).plusNanos(Math.round(busySeconds * 1e9));
            return reply.isEmpty() ? Answer.silence(busy) : Answer.of(reply.get(), outTime(busy, reply.get()));
        }
    }

    private boolean standsStill(String message) {
        standsUntilNanos = standsUntilNanos == 0 ? nowNanos() + STANDSTILL_NANOS : standsUntilNanos;
        boolean still = nowNanos() < standsUntilNanos;
        if (still) {
            toldMeanwhile.add(message);
        } else {
            troubles.end(Trouble.STANDS_STILL);
            standsUntilNanos = 0;
        }
        return still;
    }

    private Duration outTime(Duration busy, byte[] reply) {
        Duration out = busy.plus(wireTime(reply.length + 1));
        return troubles.has(Trouble.LATE) ? out.plus(LATENESS) : out;
    }

    private Duration wireTime(int bytes) {
        return Duration.ofNanos(
                1_000_000_000L * bytes * BITS_PER_CHARACTER / fixture.talk().baud());
    }

    private byte[] troubled(byte[] reply) {
        byte[] said = reply;
        if (troubles.has(Trouble.ANSWERS_BEFORE)) {
            said = before;
            before = reply;
        }
        if (troubles.has(Trouble.GARBLED)) {
            said = said.clone();
            for (int k = 0; k < said.length; k++) {
                said[k] = (byte) (0x21 + random.nextInt(12));
            }
        }
        before = troubles.has(Trouble.ANSWERS_BEFORE) ? before : reply;
        return said;
    }

    /** Carries the parts of a message out one after the other; the answers are joined by semicolons. */
    private Optional<byte[]> carryOut(String message) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        boolean any = false;
        String path = "";
        for (String part : Fields.split(message, ';')) {
            if (part.isEmpty()) {
                continue;
            }
            int blank = part.indexOf(' ');
            String header = blank < 0 ? part : part.substring(0, blank);
            String parameters = blank < 0 ? "" : part.substring(blank + 1).strip();
            String whole = header.startsWith("*") || header.startsWith(":") ? header : path + header;
            path = header.startsWith("*") ? path : whole.substring(0, whole.lastIndexOf(':') + 1);
            Optional<byte[]> answer = one(whole, parameters);
            if (answer.isPresent()) {
                if (any) {
                    all.write(';');
                }
                all.writeBytes(answer.get());
                any = true;
            }
        }
        return any ? Optional.of(all.toByteArray()) : Optional.empty();
    }

    private Optional<byte[]> one(String header, String parameters) {
        try {
            boolean setting = !header.endsWith("?") && !isCommon(header);
            if (setting && remoteFirst && !remoteMode) {
                throw RefusedCommand.conflict("not in remote mode");
            }
            if (troubles.has(Trouble.KNOWS_LITTLE) && isDispensable(header)) {
                return Optional.empty();
            }
            if (setting && troubles.has(Trouble.REFUSES)) {
                throw RefusedCommand.conflict(header);
            }
            return commands.run(header, parameters);
        } catch (RefusedCommand refusal) {
            errors.add(refusal);
            return Optional.empty();
        }
    }

    private static boolean isDispensable(String header) {
        String upper = header.toUpperCase(Locale.ROOT);
        return upper.matches("\\*(ES|SR|OPC|STB|CLS|RST).*")
                || upper.matches(":?SYST.*ERR.*")
                || upper.contains("STAT:QUES")
                || upper.contains("STATUS:")
                || upper.contains("PROT");
    }

    private static boolean isCommon(String header) {
        String upper = header.toUpperCase(Locale.ROOT);
        return upper.startsWith("*") || upper.startsWith("SYST") || upper.startsWith(":SYST");
    }

    /** Trouble from that time on, ns. */
    public final void trouble(Trouble trouble, long fromNanos) {
        synchronized (world) {
            troubles.from(trouble, fromNanos);
        }
    }

    /** Trouble from the next exchange on. */
    public final void trouble(Trouble trouble) {
        trouble(trouble, Long.MIN_VALUE);
    }

    /** Trouble from the n-th exchange on, counted from 1. */
    public final void troubleAtExchange(Trouble trouble, long exchange) {
        synchronized (world) {
            troubles.fromExchange(trouble, exchange);
        }
    }

    /** Everything is in order again. */
    public final void cure() {
        synchronized (world) {
            troubles.clear();
        }
    }

    /** Lets somebody hear what it answers, whatever arrives at the other end; the last listener counts. */
    public final void overheardBy(Overheard listener) {
        synchronized (world) {
            overheard = listener;
        }
    }

    /** How many messages it has heard. */
    public final long exchanges() {
        synchronized (world) {
            return exchanges;
        }
    }

    public final Fixture fixture() {
        return fixture;
    }

    final Troubles troubles() {
        return troubles;
    }

    final World world() {
        return world;
    }

    final CommandSet commands() {
        return commands;
    }

    final Random random() {
        return random;
    }

    final long nowNanos() {
        return clock.getAsLong();
    }

    /** The instrument needs that long before it can answer. */
    final void busy(double seconds) {
        busySeconds += seconds;
    }

    /** A measurement as it is sent: a number, or 9.9E37 beyond the range. */
    final String measurement(double value, double most) {
        if (troubles.has(Trouble.OVERLOADED) || Math.abs(value) > most) {
            return value < 0 ? "-9.90000000E+37" : "+9.90000000E+37";
        }
        return Numeric.write(value);
    }

    /** Back to the settings of switching on. */
    abstract void reset();
}
