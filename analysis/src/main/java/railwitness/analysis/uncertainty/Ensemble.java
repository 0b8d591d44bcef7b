package railwitness.analysis.uncertainty;

/**
 * Influences that were estimated together from one set of data (simultaneous readings, one fit).
 *
 * <p>They share one estimate of scatter, so they count as one term in Welch and Satterthwaite's formula and as
 * one line of a budget. Identity counts, not the name.
 */
final class Ensemble {
    private final String name;

    Ensemble(String name) {
        this.name = Arguments.blank("name of an ensemble", name);
    }

    String name() {
        return name;
    }
}
