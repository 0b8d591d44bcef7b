package railwitness.drivers.instrument;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import railwitness.drivers.instrument.Dialect.Level;
import railwitness.drivers.instrument.Dialect.LoadWords;
import railwitness.drivers.instrument.Dialect.State;
import railwitness.drivers.instrument.Dialect.SupplyWords;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.Visible;
import railwitness.drivers.scpi.Numeric;
import railwitness.drivers.scpi.SwitchState;

/**
 * Tries a dialect on an instrument, question by question. Only questions are sent, one to a message: nothing is set,
 * reset or switched. What would change something is named and not tried.
 */
public final class DialectTrial {
    /** The parts of a dialect. */
    public static final List<String> KINDS = List.of("meter", "supply", "load", "scope");

    /**
     * One line of the dialect.
     *
     * @param key where it stands, such as {@code supply.volts.ask}
     * @param sent the question
     * @param reply what came, empty for nothing
     * @param holds whether the reply is what the dialect says
     * @param words what that means
     */
    public record Tried(String key, String sent, String reply, boolean holds, boolean needed, String words) {}

    private interface Fit {
        boolean is(String reply);
    }

    private final Line line;
    private final Duration patience;
    private final List<Tried> tried = new ArrayList<>();

    /** @param patience longest wait for each reply */
    public DialectTrial(Line line, Duration patience) {
        this.line = line;
        this.patience = patience;
    }

    /**
     * Tries all questions of these kinds that the dialect has.
     *
     * @throws LineException when the port has gone
     */
    public List<Tried> of(Dialect dialect, Set<String> kinds) {
        identity(dialect);
        if (!dialect.error().isEmpty()) {
            ask(
                    "common.error",
                    dialect.error(),
                    false,
                    reply -> reply.matches("(?s)[-+]?\\d+\\s*(,.*)?"),
                    "an error number");
        }
        dialect.meter()
                .filter(words -> kinds.contains("meter"))
                .ifPresent(words -> number("meter.read", words.read(), true));
        dialect.supply().filter(words -> kinds.contains("supply")).ifPresent(this::supply);
        dialect.load().filter(words -> kinds.contains("load")).ifPresent(this::load);
        dialect.scope()
                .filter(words -> kinds.contains("scope"))
                .ifPresent(
                        words -> ask("scope.preamble", words.preamble(), true, reply -> reply.contains(","), "fields"));
        return List.copyOf(tried);
    }

    private void identity(Dialect dialect) {
        Optional<String> answer = ask("identity", "*IDN?", false, reply -> !reply.isBlank(), "an identity");
        answer.ifPresent(reply -> {
            line.getToKnow(reply, patience);
            boolean known = dialect.identity().matcher(reply).matches();
            tried.set(
                    tried.size() - 1,
                    new Tried(
                            "identity",
                            "*IDN?",
                            reply,
                            known,
                            false,
                            known
                                    ? "is one that this dialect is chosen by"
                                    : "is not matched by its identity: give dialect on the bench sheet by hand"));
        });
    }

    private void supply(SupplyWords words) {
        level("supply.volts.ask", words.volts(), false);
        level("supply.amps.ask", words.amps(), false);
        words.overVolts().ifPresent(level -> level("supply.over_volts.ask", level, false));
        words.overAmps().ifPresent(level -> level("supply.over_amps.ask", level, false));
        onOff("supply.is_on", words.isOn());
        number("supply.read_volts", words.readVolts(), true);
        number("supply.read_amps", words.readAmps(), true);
        words.states().forEach(state -> state("supply.state", state));
    }

    private void load(LoadWords words) {
        level("load.amps.ask", words.amps(), true);
        level("load.ohms.ask", words.ohms(), false);
        onOff("load.is_on", words.input().isOn());
        words.otherwise()
                .ifPresent(other ->
                        ask("load.otherwise.is_on", filled(other.isOn()), false, DialectTrial::isSwitch, "on or off"));
        number("load.read_volts", words.readVolts(), false);
        number("load.read_amps", words.readAmps(), true);
        words.states().forEach(state -> state("load.state", state));
    }

    private void level(String key, Level level, boolean needed) {
        number(key, level.ask(), needed);
    }

    private void number(String key, String question, boolean needed) {
        ask(key, filled(question), needed, DialectTrial::isNumber, "a number");
    }

    private void onOff(String key, String question) {
        ask(key, filled(question), true, DialectTrial::isSwitch, "on or off");
    }

    private void state(String key, State state) {
        ask(
                key + " '" + state.ask() + "'",
                filled(state.ask()),
                false,
                reply -> StateReply.fits(state, reply),
                "a state it knows");
    }

    private static String filled(String question) {
        return new Template().with("channel", 1).with("remote_channel", 2).fill(question);
    }

    private static boolean isSwitch(String reply) {
        return SwitchState.of(reply).isPresent();
    }

    private static boolean isNumber(String reply) {
        try {
            Numeric.of(reply);
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    private Optional<String> ask(String key, String question, boolean needed, Fit fit, String expected) {
        if (!isHarmless(question)) {
            tried.add(new Tried(key, question, "", false, needed, "not tried: it is no single question"));
            return Optional.empty();
        }
        try {
            String reply = line.ask(question, patience).strip();
            boolean fits = fit.is(reply);
            tried.add(new Tried(key, question, reply, fits, needed, fits ? expected : "is not " + expected));
            if (!fits) {
                line.doubt();
            }
            return Optional.of(reply);
        } catch (LineException e) {
            if (e.trouble() != Trouble.NO_ANSWER && e.trouble() != Trouble.GARBLED) {
                throw e;
            }
            String came = Visible.text(e.received());
            tried.add(new Tried(
                    key,
                    question,
                    came,
                    false,
                    needed,
                    String.format(Locale.ROOT, "no answer within %.1f s", patience.toMillis() / 1e3)));
            return Optional.empty();
        }
    }

    /** One command that ends in a question mark: what stands behind a semicolon could be anything. */
    static boolean isHarmless(String question) {
        return question.strip().matches("[^;?]*\\?[^;?]*") && !question.contains("\n");
    }

    /** What the dialect holds besides, which changes something and is therefore not tried, by its keys. */
    public static List<String> leftAlone(Dialect dialect, Set<String> kinds) {
        List<String> keys = new ArrayList<>(List.of("common.remote", "common.reset"));
        dialect.meter().filter(words -> kinds.contains("meter")).ifPresent(words -> keys.add("meter set_up, range"));
        dialect.supply()
                .filter(words -> kinds.contains("supply"))
                .ifPresent(words -> keys.add("supply set, on, off, remote_on, remote_off, watchdog"));
        dialect.load().filter(words -> kinds.contains("load")).ifPresent(words -> keys.add("load set, on, off"));
        dialect.scope().filter(words -> kinds.contains("scope")).ifPresent(words -> keys.add("scope set_up, capture"));
        return List.copyOf(keys);
    }
}
