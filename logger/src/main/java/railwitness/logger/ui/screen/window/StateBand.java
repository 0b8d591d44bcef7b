package railwitness.logger.ui.screen.window;

import java.awt.Color;
import java.util.function.Function;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Sheet;

/** Across the top, always: what the output is doing, in words, and the button that switches it off. */
final class StateBand {
    private final Sheet face = new Sheet(
            new MigLayout("insets 0 20 0 20, gap 0 0, fill, hidemode 3", "[]28[grow,fill]20[]", "[72!]"),
            Palette::band);
    private final Label title = Label.of("", Type.BAND);
    private final Label volts = Label.of("", Type.BAND_FIGURE);
    private final Label amps = Label.of("", Type.BAND_FIGURE);
    private final Note detail = Note.of("", Type.CAPTION);
    private final OffButton off;
    private BandWords shown;

    StateBand(Runnable switchOff) {
        off = new OffButton(switchOff);
        title.setName("band title");
        detail.setName("band detail");
        JPanel figures = new JPanel(new MigLayout("insets 0, gap 0, hidemode 3", "[]28[]20[]"));
        figures.setOpaque(false);
        figures.add(title);
        figures.add(volts);
        figures.add(amps);
        face.add(figures, "wmin pref");
        face.add(detail, "growx, wmin 60, aligny center");
        face.add(off, "w 200!, h 54!");
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
        volts.setVisible(!words.volts().isEmpty());
        amps.setVisible(!words.amps().isEmpty());
        detail.setText(words.detail());
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
        detail.setForeground(text.apply(Look.palette()));
        off.live(ground != BandWords.Ground.PLAIN);
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
