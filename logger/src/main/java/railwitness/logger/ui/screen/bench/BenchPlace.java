package railwitness.logger.ui.screen.bench;

import java.util.ArrayList;
import java.util.List;
import railwitness.logger.recording.sheet.SheetEdit;

/**
 * One table of a bench sheet that is being written.
 *
 * @param header such as {@code [[instrument]]}
 * @param place which of several, from 0
 */
record BenchPlace(String header, int place) {
    static final String BENCH = "[bench]";
    static final String INSTRUMENT = "[[instrument]]";
    static final String BY_HAND = "[[hand_read]]";
    static final String BANK = "[[resistor_bank]]";

    /** The bench as a whole, then its instruments, its meters read by hand, its load resistors. */
    static List<BenchPlace> of(SheetEdit sheet) {
        List<BenchPlace> all = new ArrayList<>(List.of(new BenchPlace(BENCH, 0)));
        for (String header : List.of(INSTRUMENT, BY_HAND, BANK)) {
            for (int place = 0; place < sheet.count(header); place++) {
                all.add(new BenchPlace(header, place));
            }
        }
        return all;
    }

    boolean instrument() {
        return header.equals(INSTRUMENT);
    }

    boolean whole() {
        return header.equals(BENCH);
    }

    /** One of its texts; empty where it says none. */
    String text(SheetEdit sheet, String key) {
        return sheet.text(header, place, key);
    }
}
