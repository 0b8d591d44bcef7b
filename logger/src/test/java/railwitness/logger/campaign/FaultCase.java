package railwitness.logger.campaign;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.drivers.rehearsal.VirtualBench;

/**
 * One thing that goes wrong in one session.
 *
 * @param seed draws the instruments' errors and the time from the moment to the trouble
 */
record FaultCase(String instrument, Trouble trouble, Moment moment, long seed) {
    private static final int LONGEST_MILLIS = 1200;
    private static final int MOST_EXCHANGES = 12;

    /** One case in three has a design sheet of turns, input and rails alone. */
    boolean sparse() {
        return (instrument.length() + trouble.ordinal() + moment.ordinal() + seed) % 3 == 0;
    }

    /** All there are, seeds 1 to {@code seeds}. */
    static List<FaultCase> all(int seeds) {
        List<FaultCase> cases = new ArrayList<>();
        for (long seed = 1; seed <= seeds; seed++) {
            for (String instrument : CampaignSheets.instruments()) {
                for (Trouble trouble : Trouble.values()) {
                    for (Moment moment : Moment.values()) {
                        cases.add(new FaultCase(instrument, trouble, moment, seed));
                    }
                }
            }
        }
        return cases;
    }

    /** So many of them, the same for the same seed. */
    static List<FaultCase> sample(List<FaultCase> cases, int count, long seed) {
        List<FaultCase> mixed = new ArrayList<>(cases);
        Collections.shuffle(mixed, new Random(seed));
        return List.copyOf(mixed.subList(0, Math.min(count, mixed.size())));
    }

    /** Lets it go wrong while the bench is opened, where that is the moment. */
    void beforeOpening(VirtualBench far) {
        if (moment == Moment.OPENING) {
            far.instrument(instrument).troubleAtExchange(trouble, exchange());
        }
    }

    /** The exchange with which it begins while the bench is opened; a late one may come after that. */
    int exchange() {
        return 1 + random().nextInt(MOST_EXCHANGES);
    }

    /** Lets it go wrong, now or a moment later. */
    void begin(VirtualBench far, long nowNanos) {
        Random random = random();
        long later = moment.atOnce() ? 0 : random.nextInt(LONGEST_MILLIS) * 1_000_000L;
        far.instrument(instrument).trouble(trouble, nowNanos + later);
        if (trouble == Trouble.SAYS_OFF && random.nextBoolean()) {
            far.instrument(instrument).trouble(Trouble.IGNORES_OFF, nowNanos + later);
        }
    }

    /** Seed of a bench whose instruments have serial numbers of their own, for benches side by side on one computer. */
    long ownBench() {
        return 2 + Integer.toUnsignedLong(toString().hashCode());
    }

    private Random random() {
        return new Random(31L * toString().hashCode() + seed);
    }
}
