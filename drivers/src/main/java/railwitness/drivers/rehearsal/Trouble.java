package railwitness.drivers.rehearsal;

/** What can be made to go wrong with a virtual instrument. */
public enum Trouble {
    /** It neither obeys nor answers. */
    SILENT,
    /** It obeys, but its answers are spoilt. */
    GARBLED,
    /** It obeys, but each answer comes two seconds late. */
    LATE,
    /** Each query is answered with the answer to the one before. */
    ANSWERS_BEFORE,
    /** Its measurements are all beyond the range: 9.9E37. */
    OVERLOADED,
    /** Its port has gone. */
    VANISHED,
    /** It refuses every setting, output on and off among them, with an entry in its error queue. */
    REFUSES,
    /** It does not carry the next switching off out, without a word. */
    IGNORES_OFF_ONCE,
    /** It carries no switching off out, without a word. */
    IGNORES_OFF,
    /** It says that its output is off whatever it is. */
    SAYS_OFF,
    /** Once it falls back to the settings of switching on, as after a dip of its mains; then it obeys as before. */
    RESETS,
    /** A meter's leads are exchanged: direct voltage and current have the other sign. */
    REVERSED_LEADS,
    /** A meter goes on answering with the number it gave last. */
    FROZEN,
    /** It knows no state registers, protections, error queue or event register: to these it says nothing. */
    KNOWS_LITTLE,
    /** Its computer stands still for 20 s, longer than anybody waits; then it obeys all that it was told meanwhile. */
    STANDS_STILL
}
