package railwitness.logger.ui.screen.theme;

import java.awt.Color;
import java.util.Arrays;
import java.util.List;

/** Light paper or dark paper. */
public enum Theme {
    LIGHT(palette(
            "FBFAF6 FFFFFF E9E6DD EEF2F5 DCD8CE B9B4A7 1D2329 59636E 656E78 B3261E 3C4650",
            "1F5A8A 8A4B1F 5B3E8C 2A6A57")),
    DARK(palette(
            "171A1D 1E2226 262B30 232A30 343A40 58616A E9ECEF A7B0BA 8E97A1 FF8A80 C5CCD3",
            "8AB9E0 E0A878 BDA6E6 7FC9B2"));

    private final Palette palette;

    Theme(Palette palette) {
        this.palette = palette;
    }

    public Palette palette() {
        return palette;
    }

    public Theme other() {
        return this == LIGHT ? DARK : LIGHT;
    }

    private static Palette palette(String grounds, String rails) {
        List<Color> c = colours(grounds);
        return new Palette(
                c.get(0),
                c.get(1),
                c.get(2),
                c.get(3),
                c.get(4),
                c.get(5),
                c.get(6),
                c.get(7),
                c.get(8),
                c.get(9),
                colours(rails),
                c.get(10),
                new Color(0xF5B700),
                new Color(0x1D1600),
                new Color(0xB3261E),
                new Color(0xFFFFFF));
    }

    private static List<Color> colours(String hex) {
        return Arrays.stream(hex.split(" "))
                .map(one -> new Color(Integer.parseInt(one, 16)))
                .toList();
    }
}
