package railwitness.logger.ui.screen.window;

import java.awt.Color;
import java.util.List;
import java.util.function.Function;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Sheet;

/** Across the top, always: what the output is doing, in words, and the button that switches it off. */
final class StateBand {
    private final Label title = Label.of("", Type.BAND);
    private final Label volts = Label.of("", Type.BAND_FIGURE);
    private final Label amps = Label.of("", Type.BAND_FIGURE);
    private final Label touch = Label.of("", Type.BAND);
    private final Label calm = Label.of("", Type.TEXT);
    private final Label detail = Label.of("", Type.TEXT);
    private final OffButton off;
    private final Sheet face;
    private BandWords shown;

    StateBand(Runnable switchOff) {
        off = new OffButton(switchOff);
        title.setName("band title");
        touch.setName("band touch");
        calm.setName("band rails");
        detail.setName("band detail");
        List<Label> figures = List.of(title, volts, amps);
        List<Label> below = List.of(touch, calm, detail);
        face = new Sheet(new BandLayout(figures, below, off), Palette::band);
        figures.forEach(face::add);
        below.forEach(face::add);
        face.add(off);
    }

    Sheet face() {
        return face;
    }

    OffButton off() {
        return off;
    }

    void show(BandWords words) {
        if (words.equals(shown)) {
            return;
        }
        boolean grounds = shown == null || shown.ground() != words.ground();
        shown = words;
        title.setText(words.title());
        volts.setText(words.volts());
        amps.setText(words.amps());
        touch.setText(words.large() ? words.touch() : "");
        calm.setText(words.large() ? "" : words.touch());
        detail.setText(words.detail());
        for (Label one : List.of(volts, amps, touch, calm, detail)) {
            one.setVisible(!one.getText().isEmpty());
        }
        face.revalidate();
        if (grounds) {
            ground(words.ground());
        }
    }

    private void ground(BandWords.Ground ground) {
        face.ground(palette -> colour(ground, palette, true));
        Function<Palette, Color> text = palette -> colour(ground, palette, false);
        title.colour(text);
        volts.colour(text);
        amps.colour(text);
        List.of(touch, calm, detail).forEach(label -> label.colour(text));
        off.live(ground != BandWords.Ground.PLAIN);
    }

    /** The state, and what not to touch, so many times as large. */
    void grow(double times) {
        List.of(title, volts, amps, touch).forEach(label -> label.grow(times));
    }

    /** After another theme was installed. */
    void refresh() {
        if (shown != null) {
            ground(shown.ground());
        }
    }

    private static Color colour(BandWords.Ground ground, Palette palette, boolean below) {
        return switch (ground) {
            case PLAIN -> below ? palette.band() : palette.ink();
            case LIVE -> below ? palette.live() : palette.onLive();
            case TRIPPED -> below ? palette.trip() : palette.onTrip();
        };
    }
}
