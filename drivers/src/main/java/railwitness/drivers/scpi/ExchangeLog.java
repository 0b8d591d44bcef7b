package railwitness.drivers.scpi;

/** Is told of every exchange when it has ended, on the instrument's own thread; must be quick and never throw. */
@FunctionalInterface
public interface ExchangeLog {
    void ended(Exchange exchange);

    /** Keeps nothing. */
    static ExchangeLog none() {
        return exchange -> {};
    }
}
