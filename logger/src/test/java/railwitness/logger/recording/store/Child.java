package railwitness.logger.recording.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A Java program of its own, with the tests' classes. */
record Child(int code, String output) {
    /** Options are texts, the program a class; what follows the class are its arguments. */
    static List<String> command(Object... parts) {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(
                List.of("-XX:TieredStopAtLevel=1", "-Xshare:auto", "-cp", System.getProperty("java.class.path")));
        for (Object part : parts) {
            command.add(part instanceof Class<?> program ? program.getName() : part.toString());
        }
        return command;
    }

    static Child run(Object... parts) throws IOException, InterruptedException {
        Process process =
                new ProcessBuilder(command(parts)).redirectErrorStream(true).start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Child(process.waitFor(), output);
    }
}
