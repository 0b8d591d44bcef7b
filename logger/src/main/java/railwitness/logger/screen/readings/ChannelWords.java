package railwitness.logger.screen.readings;

import railwitness.drivers.reading.Channel;
import railwitness.logger.screen.paper.RailNames;
import railwitness.logger.screen.paper.Words;

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
        String node = Words.orElse("node." + channel.node(), RailNames.full(channel.node()));
        return switch (channel.quantity()) {
            case VOLTAGE -> new ChannelWords(node, "V", 1, 3);
            case CURRENT -> new ChannelWords(Words.of("channel.current", node), "A", 1, 3);
            case RIPPLE -> new ChannelWords(Words.of("channel.ripple", node), "mV", MILLI, 2);
            case POWER -> new ChannelWords(Words.of("channel.power", node), "W", 1, 2);
            case RESISTANCE -> new ChannelWords(Words.of("channel.resistance", node), "\u03a9", 1, 3);
            case TEMPERATURE -> new ChannelWords(Words.of("channel.temperature", node), "\u00b0C", 1, 1);
        };
    }

    /** Name and unit. */
    String titled() {
        return name + ", " + unit;
    }
}
