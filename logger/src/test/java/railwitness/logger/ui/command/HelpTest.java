package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import picocli.CommandLine;

/** {@code --help} of every command: whole sentences, 100 columns, what the exit codes mean. */
class HelpTest {
    private static final Set<String> LEADS_ON = Set.of(
            "a", "an", "and", "as", "by", "for", "from", "in", "its", "of", "on", "or", "that", "the", "to", "which",
            "with", "without");

    private static Stream<CommandLine> commands() {
        CommandLine main = new CommandLine(new Main());
        return Stream.concat(Stream.of(main), main.getSubcommands().values().stream());
    }

    private static String help(CommandLine command) {
        List<String> said = new ArrayList<>();
        if (command.getParent() != null) {
            said.add(command.getCommandName());
        }
        said.add("--help");
        Said help = Said.by(said.toArray(String[]::new));
        assertThat(help.exitCode()).isZero();
        return help.out();
    }

    @TestFactory
    Stream<DynamicTest> everyHelpSpeaksInWholeSentencesWithinItsColumns() {
        return commands()
                .map(command -> DynamicTest.dynamicTest(command.getCommandName(), () -> {
                    SoftAssertions all = new SoftAssertions();
                    var usage = command.getCommandSpec().usageMessage();
                    all.assertThat(usage.description()).isNotEmpty();
                    Stream.of(usage.description())
                            .forEach(text ->
                                    all.assertThat(isSentence(text)).as(text).isTrue());
                    command.getCommandSpec().args().forEach(argument -> {
                        String text = String.join(" ", argument.description());
                        all.assertThat(isSentence(text) || isShortPhrase(text))
                                .as(argument.paramLabel() + ": " + text)
                                .isTrue();
                    });
                    help(command).lines().forEach(line -> all.assertThat(line).hasSizeLessThanOrEqualTo(Help.COLUMNS));
                    all.assertAll();
                }));
    }

    @Test
    void theListOfCommandsShowsWholeSentences() {
        String help = help(new CommandLine(new Main()));
        commands().filter(command -> command.getParent() != null).forEach(command -> {
            String first = command.getCommandSpec().usageMessage().description()[0];
            assertThat(help).containsPattern("(?m)^  " + command.getCommandName() + "\\b");
            assertThat(help.replaceAll("\\s+", " ")).contains(first);
        });
    }

    @Test
    void everyHelpAndTheDocumentationSayTheExitCodes() throws IOException {
        String page = Files.readString(Path.of("docs/exit-codes.md")).replaceAll("\\s+", " ");
        commands().forEach(command -> {
            String help = help(command).replaceAll("\\s+", " ");
            ExitCode.words()
                    .forEach((code, words) ->
                            assertThat(help).as(command.getCommandName()).contains(code + " " + words));
        });
        ExitCode.words().forEach((code, words) -> assertThat(page).contains("| " + code + " | " + words + " |"));
    }

    private static boolean isSentence(String text) {
        return text.matches("(?s)(\\p{Lu}|\\*IDN|railwitness ).*\\.") && !text.contains("  ");
    }

    private static boolean isShortPhrase(String text) {
        String last = text.substring(text.lastIndexOf(' ') + 1);
        return text.length() <= 60 && text.matches("(?s)[\\p{Ll}\\dA-Z].*[\\p{L}\\d)]") && !LEADS_ON.contains(last);
    }
}
