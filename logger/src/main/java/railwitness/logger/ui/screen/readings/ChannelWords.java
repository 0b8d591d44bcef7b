package railwitness.logger.ui.screen.readings;

import railwitness.drivers.reading.Channel;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * How a channel and its numbers are written on the screen.
 *
 * @param name such as "+ rail" or "ripple, + rail"
 * @param unit such as "V" or "mV"
 * @param scale from the channel's SI unit to the one shown
 * @param places after the point
 */
record ChannelWords(String name, String unit, double scale, int places) {
    private static final double MILLI = 1000;

    static ChannelWords of(Channel channel) {
        String unit = ChannelNames.unit(channel.quantity());
        String node = ChannelNames.node(channel);
        return switch (channel.quantity()) {
            case VOLTAGE -> new ChannelWords(node, unit, 1, 3);
            case CURRENT -> new ChannelWords(Words.of("channel.current", node), unit, 1, 3);
            case RIPPLE -> new ChannelWords(Words.of("channel.ripple", node), "mV", MILLI, 2);
            case POWER -> new ChannelWords(Words.of("channel.power", node), unit, 1, 2);
            case RESISTANCE -> new ChannelWords(Words.of("channel.resistance", node), unit, 1, 3);
            case FREQUENCY -> new ChannelWords(node, unit, 1, 0);
            case TEMPERATURE -> new ChannelWords(Words.of("channel.temperature", node), unit, 1, 1);
        };
    }

    /** Name and unit. */
    String titled() {
        return name + ", " + unit;
    }
}
