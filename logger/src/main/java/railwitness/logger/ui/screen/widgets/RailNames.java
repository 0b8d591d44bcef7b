package railwitness.logger.ui.screen.widgets;

/** What people call a rail. */
public final class RailNames {
    private RailNames() {}

    /** Such as "+ rail". */
    public static String full(String rail) {
        return Words.orElse("rail." + rail, Words.of("rail", rail));
    }

    /** Such as "+". */
    public static String sign(String rail) {
        return Words.orElse("rail.sign." + rail, rail);
    }

    /** A step's name with the rails in it as people call them. */
    public static String inStep(String step) {
        return step.replace("plus ", sign("plus") + " ").replace("minus ", sign("minus") + " ");
    }
}
