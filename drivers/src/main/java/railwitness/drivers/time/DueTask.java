package railwitness.drivers.time;

/** One task on the queue; run at most once. */
final class DueTask implements Due, Comparable<DueTask> {
    private final long nanos;
    private final long order;
    private final Runnable task;
    private volatile boolean cancelled;

    DueTask(long nanos, long order, Runnable task) {
        this.nanos = nanos;
        this.order = order;
        this.task = task;
    }

    long nanos() {
        return nanos;
    }

    boolean isCancelled() {
        return cancelled;
    }

    void run() {
        if (!cancelled) {
            cancelled = true;
            task.run();
        }
    }

    @Override
    public void cancel() {
        cancelled = true;
    }

    @Override
    public int compareTo(DueTask other) {
        int byTime = Long.compare(nanos, other.nanos);
        return byTime != 0 ? byTime : Long.compare(order, other.order);
    }
}
