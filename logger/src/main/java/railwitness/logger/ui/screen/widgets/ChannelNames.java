package railwitness.logger.ui.screen.widgets;

import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/** What people call the things that are read. */
public final class ChannelNames {
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

    /** As it is written beside a number. */
    public static String unit(Quantity quantity) {
        return Words.orElse("symbol." + quantity.unit(), quantity.unit());
    }
}
