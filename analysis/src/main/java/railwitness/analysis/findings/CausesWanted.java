package railwitness.analysis.findings;

/** When probable causes are looked for, which takes longer than all else. */
public enum CausesWanted {
    ALWAYS,
    /** Only where no reading differs from what the sheet leads to expect, so that a cause alone may tell what is off. */
    WHERE_NOTHING_DEVIATES,
    NEVER
}
