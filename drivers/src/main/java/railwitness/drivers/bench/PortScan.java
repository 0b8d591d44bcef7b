package railwitness.drivers.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Dialects;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.line.PortSettings.Parity;
import railwitness.drivers.line.Visible;

/**
 * Asks ports who is there, at the few settings in which bench instruments leave the works. Nothing but {@code *IDN?} is
 * sent, but at a wrong baud rate an instrument hears nonsense and may beep.
 */
public final class PortScan {
    private static final List<Integer> BAUDS = List.of(9600, 115200, 19200, 38400, 57600);
    private static final List<String> TERMINATORS = List.of("\n", "\r\n", "\r");
    private static final int SIDE_BY_SIDE = 16;

    private final LineOpener opener;
    private final Duration patience;
    private volatile boolean ended;

    /**
     * What one port said.
     *
     * @param settings at which it answered; empty when it did not
     * @param identity its answer, empty when there was none
     * @param dialect the dialect that knows this identity
     * @param trouble why it could not be asked, or what came that was no answer; empty when it was merely silent
     */
    public record Found(String port, Optional<PortSettings> settings, String identity, String dialect, String trouble) {
        /** A port on which nobody answered. */
        public static Found silent(String port) {
            return new Found(port, Optional.empty(), "", "", "");
        }
    }

    /** @param patience longest wait at each setting */
    public PortScan(LineOpener opener, Duration patience) {
        this.opener = opener;
        this.patience = patience;
    }

    /** Asks all of them side by side; the answers keep the order of the ports. */
    public List<Found> scan(List<String> ports) {
        return scan(ports, found -> {});
    }

    /** @param told each answer as soon as it is there, on a thread of its own */
    public List<Found> scan(List<String> ports, Consumer<Found> told) {
        ExecutorService askers = Executors.newFixedThreadPool(SIDE_BY_SIDE);
        try {
            return ports.stream()
                    .map(port -> CompletableFuture.supplyAsync(() -> told(port, told), askers))
                    .toList()
                    .stream()
                    .map(CompletableFuture::join)
                    .toList();
        } finally {
            askers.shutdown();
        }
    }

    private Found told(String port, Consumer<Found> told) {
        Found found = scan(port);
        told.accept(found);
        return found;
    }

    /** Asks at no further setting; what is being asked ends by its own deadline. From any thread. */
    public void end() {
        ended = true;
    }

    /** Asks one port at one setting after the other until it answers. */
    public Found scan(String port) {
        String came = "";
        for (PortSettings settings : settings(port)) {
            if (ended) {
                break;
            }
            try {
                String[] half = {""};
                Optional<String> answer = ask(settings, half);
                came = came.isEmpty() ? half[0] : came;
                if (answer.isPresent()) {
                    String dialect =
                            Dialects.shipped().forIdentity(answer.get()).name();
                    return new Found(port, Optional.of(settings), answer.get(), dialect, "");
                }
            } catch (LineException e) {
                return new Found(port, Optional.empty(), "", "", e.getMessage());
            }
        }
        return came.isEmpty() ? Found.silent(port) : new Found(port, Optional.empty(), "", "", came);
    }

    private static List<PortSettings> settings(String port) {
        List<PortSettings> all = new ArrayList<>();
        for (String terminator : TERMINATORS) {
            for (int baud : BAUDS) {
                all.add(new PortSettings(port, baud, 8, Parity.NONE, 1, terminator));
            }
        }
        return all;
    }

    /* @param half told what came where it was no answer */
    private Optional<String> ask(PortSettings settings, String[] half) {
        try (Line line = opener.open(settings)) {
            try {
                return Optional.of(line.ask("*IDN?", patience)).filter(answer -> !answer.isBlank());
            } catch (LineException e) {
                if (e.trouble() == Trouble.NO_ANSWER || e.trouble() == Trouble.GARBLED) {
                    half[0] = e.received().isBlank()
                            ? ""
                            : "no answer to *IDN?, but something came: '" + Visible.text(e.received()) + "' at "
                                    + settings.baud() + " baud; is it slower, or at another setting?";
                    return Optional.empty();
                }
                throw e;
            }
        }
    }
}
