package railwitness.logger.ui.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import railwitness.drivers.rehearsal.StandIn;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.rehearsal.PortsOnSheet;
import railwitness.logger.recording.sheet.Sheets;

/** The virtual bench behind real serial devices. */
@Command(
        name = "stand-in",
        mixinStandardHelpOptions = true,
        description = {
            "Serves the virtual bench on pseudo-terminals, to try all that is serial.",
            "It needs Linux or macOS; elsewhere use rehearse --pace real. Ctrl-C stops it."
        },
        footer = {
            "",
            "Example: railwitness stand-in --bench-out bench.toml",
            "then, in a second terminal: railwitness run --design sessions-sample/demo/design.toml --bench bench.toml \\",
            "             --plan sessions-sample/demo/plan.toml --out try.session --acknowledge \"Your Name\""
        })
final class StandInCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private SheetOptions sheets;

    @Mixin
    private FaultOptions faults;

    @Option(
            names = "--bench-out",
            paramLabel = "FILE",
            description = "Write a bench sheet that fits these devices to FILE.")
    private Path benchOut;

    @Override
    public Integer call() throws IOException, InterruptedException {
        Sheets used = sheets.orDemo();
        long origin = System.nanoTime();
        VirtualBench bench = FixtureMaker.bench(used, faults.faults(), faults.seed(), () -> System.nanoTime() - origin);
        PrintWriter out = spec.commandLine().getOut();
        try (StandIn standIn =
                new StandIn(bench, (supply, on) -> say(out, supply + " output " + (on ? "on" : "off")))) {
            Map<String, String> devices = new HashMap<>();
            for (StandIn.Place place : standIn.places()) {
                devices.put(place.name(), place.device());
                say(out, place.name() + "\t" + place.device());
            }
            if (benchOut != null) {
                Files.writeString(benchOut, PortsOnSheet.changed(used.bench(), devices));
            }
            say(out, "ready");
            new CountDownLatch(1).await();
        }
        return ExitCode.DONE;
    }

    private static void say(PrintWriter out, String line) {
        synchronized (out) {
            out.println(line);
            out.flush();
        }
    }
}
