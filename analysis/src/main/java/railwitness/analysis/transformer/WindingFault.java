package railwitness.analysis.transformer;

/** What may be wrong with a wound transformer. */
public enum WindingFault {
    REVERSED_HALF("reversed-half", "a half is wound or joined the wrong way", "exchange the ends of that half"),
    SHORTED_TURN(
            "shorted-turn",
            "a turn is shorted",
            "look for damaged enamel where wires cross, at edges of the core first"),
    MISMATCHED_HALVES(
            "mismatched-halves", "the halves of a winding have different turns", "count the turns of both halves"),
    WRONG_TURNS("wrong-turns", "turns differ from the sheet's", "count turns with one probe turn through the hole"),
    WEAK_CORE("weak-core", "the core is weak or of another material", "measure the bare core with ten turns"),
    GAP("gap", "the core has a crack or a gap", "look for a crack; a ring that rings dull when tapped is cracked"),
    THIN_WIRE("thin-wire", "the wire is thinner or has fewer strands than the sheet's", "count strands at both ends"),
    POOR_JOINT(
            "poor-joint",
            "a joint is poor, or strands of one half are not soldered",
            "solder the ends of that half again");

    private final String code;
    private final String words;
    private final String check;

    WindingFault(String code, String words, String check) {
        this.code = code;
        this.words = words;
        this.check = check;
    }

    /** As in findings. */
    public String code() {
        return code;
    }

    public String words() {
        return words;
    }

    /** What to do next. */
    public String check() {
        return check;
    }
}
