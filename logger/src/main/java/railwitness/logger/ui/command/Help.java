package railwitness.logger.ui.command;

import picocli.CommandLine;
import picocli.CommandLine.Model.UsageMessageSpec;

/** What {@code --help} shows of every command alike: 100 columns, and how the command may end. */
final class Help {
    static final int COLUMNS = 100;

    private Help() {}

    /** Gives a command and all below it the width and the list of exit codes. */
    static void widen(CommandLine command) {
        UsageMessageSpec usage = command.getCommandSpec().usageMessage();
        usage.width(COLUMNS);
        usage.exitCodeListHeading("%nExit codes:%n");
        usage.exitCodeList(ExitCode.words());
        command.getSubcommands().values().forEach(Help::widen);
    }
}
