package railwitness.logger.recording.record;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;

/** The system's signals that end the program, each with the words under which its stop is kept. */
enum EndSignal {
    INT("stopped by hand (Ctrl-C)"),
    TERM("stopped: the system told the program to end (TERM)"),
    HUP("stopped: the terminal was closed (HUP)");

    private final String words;

    EndSignal(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    /**
     * Those that came and have not ended the program yet, from the end of the program: the virtual machine ends itself on
     * a thread that bears the signal's name, and that thread waits for what is done before the end.
     */
    static Set<EndSignal> raised() {
        Set<String> threads = Thread.getAllStackTraces().keySet().stream()
                .map(Thread::getName)
                .collect(Collectors.toSet());
        Set<EndSignal> raised = EnumSet.noneOf(EndSignal.class);
        Arrays.stream(values())
                .filter(signal -> threads.contains("SIG" + signal.name() + " handler"))
                .forEach(raised::add);
        return raised;
    }
}
