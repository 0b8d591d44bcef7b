package railwitness.drivers.time;

/** Something that stands on the scheduler. */
public interface Due {
    /** Takes it off; nothing happens when it has run already. */
    void cancel();
}
