package railwitness.safety.power;

/**
 * How switching off ended.
 *
 * @param confirmed true when the supply said off and nothing spoke against it
 * @param railsSafe true when every rail was read below the touch limit
 * @param words for the person: what is off, what is still charged, what to do
 */
public record Ended(boolean confirmed, boolean railsSafe, String words) {}
