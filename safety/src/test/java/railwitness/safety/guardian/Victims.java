package railwitness.safety.guardian;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/** One victim process and its guardian, for a test to end. */
final class Victims implements AutoCloseable {
    private final Process process;
    private final List<ProcessHandle> guardians;
    private final BufferedReader said;

    /** @param shell put before the program, such as a limit; empty for none */
    Victims(String shell, String how, int megabytes, String... devices) throws IOException {
        List<String> java = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-XX:-UsePerfData",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Victim.class.getName(),
                how,
                String.valueOf(megabytes)));
        java.addAll(List.of(devices));
        String quoted = java.stream().map(word -> "'" + word + "'").collect(Collectors.joining(" "));
        process = new ProcessBuilder("setsid", "sh", "-c", shell + " exec " + quoted)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        said = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        String first = said.readLine();
        if (!"ready".equals(first)) {
            throw new IOException("the victim said " + first);
        }
        List<Long> shells = process.children().map(ProcessHandle::pid).toList();
        guardians =
                process.descendants().filter(one -> !shells.contains(one.pid())).toList();
    }

    String nextLine() throws IOException {
        return said.readLine();
    }

    /** SIGKILL, STOP or CONT to the process alone. */
    void signal(String name) throws Exception {
        new ProcessBuilder("kill", "-" + name, String.valueOf(process.pid()))
                .start()
                .waitFor();
    }

    /** SIGKILL without another process between. */
    void kill() {
        process.destroyForcibly();
    }

    void killGroup() throws Exception {
        new ProcessBuilder("sh", "-c", "kill -KILL -" + process.pid()).start().waitFor();
    }

    /** Waits until the guardian has let go of its ports by ending. */
    void awaitGuardiansEnd() throws Exception {
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(10);
        while (guardians.stream().anyMatch(ProcessHandle::isAlive)) {
            if (System.nanoTime() > until) {
                throw new AssertionError("the guardian did not end");
            }
            TimeUnit.MILLISECONDS.sleep(2);
        }
    }

    @Override
    public void close() {
        process.destroyForcibly();
        guardians.forEach(ProcessHandle::destroyForcibly);
    }
}
