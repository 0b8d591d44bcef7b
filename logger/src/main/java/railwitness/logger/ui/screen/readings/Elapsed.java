package railwitness.logger.ui.screen.readings;

import java.util.Locale;
import railwitness.logger.ui.screen.widgets.Numbers;

/** Time of a session as it is written along an axis: 1:05:00, and as many decimals of the second as are told apart. */
final class Elapsed {
    private static final int MINUTE = 60;
    private static final int HOUR = 3600;

    private Elapsed() {}

    /** @param places decimals of the second */
    static String of(double seconds, int places) {
        double rounded = Math.round(Math.max(0, seconds) * Math.pow(10, places)) / Math.pow(10, places);
        long whole = (long) rounded;
        String rest = Numbers.fixed(rounded - whole + whole % MINUTE, places);
        String padded = whole % MINUTE < 10 ? "0" + rest : rest;
        return String.format(Locale.ROOT, "%d:%02d:", whole / HOUR, whole % HOUR / MINUTE) + padded;
    }

    /** How many decimals tell moments this far apart from each other. */
    static int places(double apart) {
        int places = 0;
        for (double shown = apart; shown < 0.999 && places < 6; shown *= 10) {
            places++;
        }
        return places;
    }
}
