package railwitness.drivers.rehearsal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import railwitness.drivers.scpi.Header;

/** The headers an instrument knows, each with what it does. */
final class CommandSet {
    private static final int MOST_REMEMBERED = 500;

    /** What is done for a call; what it returns is the answer. */
    private interface Action extends Function<Call, Optional<byte[]>> {}

    private record Entry(Header header, Action action) {}

    /** An entry found, with the numbers that stood in the header. */
    private record Found(Action action, List<Integer> numbers) {}

    private final List<Entry> entries = new ArrayList<>();
    private final Map<String, Optional<Found>> remembered = new HashMap<>();

    /** Adds a command; the header as SCPI writes it. */
    void command(String header, Consumer<Call> action) {
        add(header, call -> {
            action.accept(call);
            return Optional.empty();
        });
    }

    /** Adds a query that answers with a line of text. */
    void query(String header, Function<Call, String> answer) {
        add(header, call -> Optional.of(answer.apply(call).getBytes(StandardCharsets.ISO_8859_1)));
    }

    /** Adds a query that answers with bytes. */
    void block(String header, Function<Call, byte[]> answer) {
        add(header, call -> Optional.of(answer.apply(call)));
    }

    private void add(String header, Action action) {
        entries.add(new Entry(Header.of(header), action));
    }

    /** Carries a call out; throws {@link RefusedCommand} when the header is not known or the call cannot be carried out. */
    Optional<byte[]> run(String header, String parameters) {
        Found found = find(header).orElseThrow(() -> RefusedCommand.undefined(header));
        return found.action().apply(Call.of(parameters, found.numbers()));
    }

    private Optional<Found> find(String header) {
        if (remembered.size() > MOST_REMEMBERED) {
            remembered.clear();
        }
        return remembered.computeIfAbsent(header, this::look);
    }

    private Optional<Found> look(String header) {
        for (Entry entry : entries) {
            Optional<List<Integer>> numbers = entry.header().numbers(header);
            if (numbers.isPresent()) {
                return Optional.of(new Found(entry.action(), numbers.get()));
            }
        }
        return Optional.empty();
    }
}
