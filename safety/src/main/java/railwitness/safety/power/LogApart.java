package railwitness.safety.power;

import railwitness.drivers.time.Scheduler;

/**
 * A log whose mistakes do not stop the power: what it throws is thrown again in a turn of the scheduler of its own, so that
 * a window or a file that fails while off is on its way is heard of, and off goes on.
 */
final class LogApart implements PowerLog {
    private final Scheduler scheduler;
    private final PowerLog log;

    LogApart(Scheduler scheduler, PowerLog log) {
        this.scheduler = scheduler;
        this.log = log;
    }

    @Override
    public void step(long atNanos, String what, String words) {
        apart(() -> log.step(atNanos, what, words));
    }

    @Override
    public void alarm(long atNanos, String words) {
        apart(() -> log.alarm(atNanos, words));
    }

    @Override
    public void alarmOver(long atNanos, String words) {
        apart(() -> log.alarmOver(atNanos, words));
    }

    private void apart(Runnable telling) {
        try {
            telling.run();
        } catch (RuntimeException e) {
            scheduler.post(() -> {
                throw e;
            });
        } catch (Error e) {
            scheduler.post(() -> {
                throw e;
            });
        }
    }
}
