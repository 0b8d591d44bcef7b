package railwitness.safety.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.line.SerialPorts;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealScheduler;
import railwitness.drivers.time.Scheduler;
import railwitness.safety.power.Power;
import railwitness.safety.power.Rails;

/** The serial library closes its ports when the program ends; off must leave before. Real process, real signal. */
class LastWordTest {
    /** A program that holds a supply's port open by the serial library and is then ended from outside. */
    static final class Program {
        private Program() {}

        public static void main(String[] arguments) throws Exception {
            BenchSheet sheet = Sheet.of(
                            "bench.toml",
                            "[bench]\nname = \"b\"\nsource = \"supply\"\n[[instrument]]\nname = \"supply\"\n"
                                    + "kind = \"supply\"\ndialect = \"scpi-1999\"\nport = \"" + arguments[0] + "\"\n")
                    .read(BenchSheet::from);
            Scheduler scheduler = new RealScheduler();
            Bench bench =
                    Bench.open(sheet, SerialLine::open, scheduler, WorkerMaker.threaded(scheduler), ExchangeLog.none());
            Power power = new Power(
                    scheduler, bench.supply(), List.of(), new Rails(List.of(), List.of(), 5), () -> true, new Quiet());
            SerialPorts.beforePortsClose("output off", () -> power.lastWord(Duration.ofSeconds(2)));
            System.out.println("ready");
            TimeUnit.MINUTES.sleep(1);
        }
    }

    private static final class Quiet implements railwitness.safety.power.PowerLog {
        @Override
        public void step(long atNanos, String what, String words) {
            // nobody listens
        }

        @Override
        public void alarm(long atNanos, String words) {
            // nobody listens
        }

        @Override
        public void alarmOver(long atNanos, String words) {
            // nobody listens
        }
    }

    @Test
    void offLeavesBeforeTheSerialLibraryClosesThePort() throws Exception {
        assumeTrue(PseudoTerminal.available());
        for (int i = 0; i < 3; i++) {
            AtomicLong off = new AtomicLong();
            try (QuickInstrument supply = new QuickInstrument(off::set)) {
                Process program = new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java")
                                        .toString(),
                                "-cp",
                                System.getProperty("java.class.path"),
                                Program.class.getName(),
                                supply.device())
                        .redirectError(ProcessBuilder.Redirect.INHERIT)
                        .start();
                byte[] said = program.getInputStream().readNBytes(5);
                assertThat(new String(said, StandardCharsets.US_ASCII)).isEqualTo("ready");
                off.set(0);
                program.destroy();
                program.waitFor();
                awaitOff(off, Duration.ofSeconds(5));
                assertThat(off.get()).isNotZero();
            }
        }
    }

    private static void awaitOff(AtomicLong off, Duration longest) throws InterruptedException {
        long until = System.nanoTime() + longest.toNanos();
        while (off.get() == 0 && System.nanoTime() < until) {
            TimeUnit.MILLISECONDS.sleep(5);
        }
    }
}
