package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When the computer cannot go on: one line, and an end that no script takes for a verdict. */
class MachineErrorsTest {
    @TempDir
    Path folder;

    @Test
    void everyErrorOfTheMachineIsOneLineAndItsOwnCode() {
        for (Error error : List.of(
                new OutOfMemoryError("Java heap space"),
                new StackOverflowError(),
                new NoClassDefFoundError("railwitness/Nowhere"),
                new UnsatisfiedLinkError("no library"),
                new AssertionError())) {
            Refusal refusal = Refusal.of(error);
            assertThat(refusal.exitCode()).isEqualTo(5);
            assertThat(refusal.lines()).hasSize(1);
            assertThat(refusal.lines().get(0)).doesNotContain("java.lang").contains("nothing was judged");
        }
    }

    /** It never means that what was given is bad, nor anything of a unit. */
    @Test
    void aMistakeInTheProgramHasTheMachinesCode() {
        for (RuntimeException mistake : List.of(
                new NullPointerException("where"),
                new IndexOutOfBoundsException(3),
                new IllegalStateException("how"))) {
            Refusal refusal = Refusal.of(mistake);
            assertThat(refusal.exitCode()).isEqualTo(5);
            assertThat(refusal.lines()).hasSize(1);
            assertThat(refusal.lines().get(0))
                    .startsWith("a mistake in the program")
                    .contains("nothing was judged");
        }
    }

    /** A session whose readings need more memory than there is, in a Java of its own with very little. */
    @Test
    void aLackOfMemoryIsOneLineAndCodeFive() throws Exception {
        Path session = folder.resolve("big.session");
        Said.by("rehearse", "--out", session.toString());
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + session);
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("UPDATE sheet SET text = hex(zeroblob(20000000)) WHERE kind = 'plan'");
        }
        Path err = folder.resolve("err.txt");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx40m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "railwitness.logger.ui.command.Main",
                        "findings",
                        session.toString())
                .redirectError(err.toFile())
                .redirectOutput(folder.resolve("out.txt").toFile())
                .start();
        int exit = process.waitFor();
        assertThat(exit).as(Files.readString(err)).isIn(4, 5);
        assertThat(Files.readAllLines(err)).hasSize(1);
        assertThat(Files.readString(err)).doesNotContain("Exception").doesNotContain("java.lang");
    }
}
