package railwitness.drivers.reading;

/**
 * One thing that is read: a node and a quantity, written {@code plus.voltage}.
 *
 * @param node input, supply, a rail's name, heatsink, ambient; lower-case letters, digits and hyphens
 * @param quantity what is measured there
 */
public record Channel(String node, Quantity quantity) implements Comparable<Channel> {
    public Channel {
        if (!node.matches("[a-z][a-z0-9-]*")) {
            throw new IllegalArgumentException("node '" + node + "' must be lower-case letters, digits and hyphens");
        }
    }

    /** Reads {@code node.quantity}; throws IllegalArgumentException that says what is wrong. */
    public static Channel of(String text) {
        int dot = text.indexOf('.');
        if (dot < 0) {
            throw new IllegalArgumentException("channel '" + text + "' must be node.quantity, such as plus.voltage");
        }
        return new Channel(text.substring(0, dot), Quantity.of(text.substring(dot + 1)));
    }

    @Override
    public int compareTo(Channel other) {
        int byNode = node.compareTo(other.node);
        return byNode != 0 ? byNode : quantity.word().compareTo(other.quantity.word());
    }

    @Override
    public String toString() {
        return node + "." + quantity.word();
    }
}
