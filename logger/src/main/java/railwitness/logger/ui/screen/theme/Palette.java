package railwitness.logger.ui.screen.theme;

import java.awt.Color;
import java.util.List;

/**
 * The colours of one theme. Colour stands only for what is wrong or live, and never alone.
 *
 * @param paper ground of the window
 * @param sheet ground of what is filled in
 * @param band ground of the band while nothing is live
 * @param tint ground of the row and of the part of a trace that is being averaged
 * @param rule hairline between rows
 * @param strongRule line under a head
 * @param ink what is measured or said
 * @param muted captions
 * @param pencil what is predicted
 * @param fault what is wrong
 * @param rails traces of the rails in the order of the design sheet
 * @param input traces of the input
 * @param live ground while the output is on, and the live mark
 * @param onLive text on it
 * @param trip ground after a trip
 * @param onTrip text on it
 */
public record Palette(
        Color paper,
        Color sheet,
        Color band,
        Color tint,
        Color rule,
        Color strongRule,
        Color ink,
        Color muted,
        Color pencil,
        Color fault,
        List<Color> rails,
        Color input,
        Color live,
        Color onLive,
        Color trip,
        Color onTrip) {
    public Palette {
        rails = List.copyOf(rails);
    }

    /** The colour of the rail at this place of the design sheet; after the last it begins again, with another dash. */
    public Color rail(int index) {
        return rails.get(index % rails.size());
    }

    /** Grounds on which ordinary text stands. */
    public List<Color> grounds() {
        return List.of(paper, sheet, band, tint);
    }

    /** Colours of ordinary text. */
    public List<Color> texts() {
        return List.of(ink, muted, pencil, fault);
    }
}
