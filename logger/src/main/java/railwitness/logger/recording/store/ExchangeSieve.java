package railwitness.logger.recording.store;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Chooses the exchanges worth keeping: all of the setting-up, whatever went wrong together with what came before and
 * after it on the same instrument, and every reply that says more or other than the number that was kept. For one
 * thread.
 */
public final class ExchangeSieve {
    private final int around;
    private final Consumer<ExchangeEntry> keep;
    private final Map<String, Deque<ExchangeEntry>> before = new HashMap<>();
    private final Map<String, Integer> toCome = new HashMap<>();

    /**
     * @param around how many exchanges before and after a trouble are kept, zero or more
     * @param keep takes those that are kept, in order for each instrument
     */
    public ExchangeSieve(int around, Consumer<ExchangeEntry> keep) {
        if (around < 0) {
            throw new IllegalArgumentException("around " + around + " must be zero or more");
        }
        this.around = around;
        this.keep = keep;
    }

    /** An exchange of the setting-up: kept. */
    public void settingUp(ExchangeEntry exchange) {
        keep.accept(exchange);
    }

    /** Any other exchange, whose reply is no number of its own: a switch, a set point. */
    public void take(ExchangeEntry exchange) {
        sift(exchange, false);
    }

    /**
     * An exchange that gave a number.
     *
     * @param number as it was read from the reply, before any shunt is divided out
     */
    public void take(ExchangeEntry exchange, double number) {
        sift(exchange, !says(exchange.received(), number));
    }

    /** True when the text is that number and nothing else, so that it can be made anew from the number. */
    private static boolean says(String received, double number) {
        try {
            return Double.compare(Double.parseDouble(received), number) == 0;
        } catch (NumberFormatException e) {
            return false;
        }
    }

    private void sift(ExchangeEntry exchange, boolean odd) {
        String instrument = exchange.instrument();
        Deque<ExchangeEntry> earlier = before.computeIfAbsent(instrument, name -> new ArrayDeque<>());
        boolean trouble = !exchange.trouble().isEmpty();
        int following = toCome.getOrDefault(instrument, 0);
        if (trouble) {
            earlier.forEach(keep);
            earlier.clear();
        }
        if (trouble || odd || following > 0) {
            keep.accept(exchange);
        } else {
            earlier.add(exchange);
        }
        if (earlier.size() > around) {
            earlier.poll();
        }
        toCome.put(instrument, trouble ? around : Math.max(0, following - 1));
    }
}
