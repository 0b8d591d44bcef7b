package railwitness.logger.ui.screen.widgets;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/** What people call the things that are read. */
public final class ChannelNames {
    private static final Pattern CHANNEL =
            Pattern.compile("\\b[a-z][a-z0-9-]*\\.(voltage|current|ripple|power|resistance|temperature)\\b");

    private ChannelNames() {}

    /** Such as "+ rail voltage". */
    public static String full(Channel channel) {
        return node(channel) + " " + Words.of("quantity." + channel.quantity().word());
    }

    /** Where it is read, such as "+ rail" or "heat sink". */
    public static String node(Channel channel) {
        return Words.orElse("node." + channel.node(), RailNames.full(channel.node()));
    }

    /** The same of a channel as a sheet writes it; a text that is no channel stays as it is. */
    public static String ofText(String text) {
        try {
            return full(Channel.of(text));
        } catch (IllegalArgumentException noChannel) {
            return text;
        }
    }

    /** A sentence with every channel in it as people call it, and without signs of programs. */
    public static String inText(String sentence) {
        Matcher matcher = CHANNEL.matcher(sentence);
        return matcher.replaceAll(found -> Matcher.quoteReplacement(ofText(found.group())));
    }

    /** As it is written beside a number. */
    public static String unit(Quantity quantity) {
        return Words.orElse("symbol." + quantity.unit(), quantity.unit());
    }
}
