package railwitness.logger.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/**
 * Every instrument of the demo's bench, at every moment of a session, with every trouble. Prints a table; ends with 1
 * when a case was unsafe, a reading was foreign or a session was lost. Arguments: seeds on the virtual clock (0 for none), cases over
 * pseudo-terminals in real time, how many of these side by side, at most so
 * many on the virtual clock.
 */
final class FaultCampaign {
    private static final long SAMPLE_SEED = 7;

    private FaultCampaign() {}

    public static void main(String[] arguments) throws InterruptedException, ExecutionException {
        int seeds = number(arguments, 0, 1);
        int real = number(arguments, 1, 0);
        List<CaseEnding> all = new ArrayList<>();
        if (seeds > 0) {
            List<CaseEnding> endings = sideBySide(
                    FaultCase.sample(FaultCase.all(seeds), number(arguments, 3, Integer.MAX_VALUE), SAMPLE_SEED),
                    2,
                    FaultySession::virtual);
            System.out.println("On the virtual clock:\n\n" + EndingTable.of(endings));
            all.addAll(endings);
        }
        if (real > 0) {
            List<FaultCase> sample = FaultCase.sample(FaultCase.all(1), real, SAMPLE_SEED);
            List<CaseEnding> endings = sideBySide(sample, number(arguments, 2, 1), FaultySession::real);
            System.out.println("Over pseudo-terminals in real time:\n\n" + EndingTable.of(endings));
            all.addAll(endings);
        }
        System.exit(
                all.stream()
                                .allMatch(end -> end.safe()
                                        && end.kept()
                                        && end.foreign().isEmpty())
                        ? 0
                        : 1);
    }

    private static int number(String[] arguments, int index, int otherwise) {
        return arguments.length > index ? Integer.parseInt(arguments[index]) : otherwise;
    }

    private static List<CaseEnding> sideBySide(
            List<FaultCase> cases, int threads, Function<FaultCase, CaseEnding> carryOut)
            throws InterruptedException, ExecutionException {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<CaseEnding>> futures = new ArrayList<>();
            cases.forEach(one -> futures.add(pool.submit(() -> carryOut.apply(one))));
            List<CaseEnding> endings = new ArrayList<>();
            for (Future<CaseEnding> future : futures) {
                endings.add(future.get());
            }
            return endings;
        } finally {
            pool.shutdownNow();
        }
    }
}
