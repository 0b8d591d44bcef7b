package railwitness.analysis.soak;

/** What a stability rule measures at the end of a record, and how much of it is allowed. */
sealed interface Criterion permits Change, Gradient, Apart {
    /** Length of record it looks at. */
    double needsSeconds();

    /** How much the record moved, 0 or more. */
    double moved(Series record);

    boolean steady(double moved);

    /** Unit of what moved. */
    String unit();
}
