package railwitness.drivers.line;

/**
 * The far end of a line: an instrument as the bytes see it. Used by {@link PeerLine} in the same process and by {@link
 * PeerTerminal} over a pseudo-terminal.
 */
@FunctionalInterface
public interface Peer {
    /**
     * Takes one message, its terminator cut off; never empty. May be called from any thread, one at a time for an
     * exchange, but a message cut in (output off) can come between from another one.
     *
     * @throws LineException of trouble UNPLUGGED when this end is to seem unplugged
     */
    Answer hear(String message);
}
