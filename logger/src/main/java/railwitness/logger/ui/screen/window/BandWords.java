package railwitness.logger.ui.screen.window;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.record.RailsNow;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.stage.AtRest;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.power.PowerState;

/**
 * What the band says at one moment.
 *
 * @param ground how grave it is
 * @param title what the output is doing
 * @param volts of the supply, with unit; empty when it is not read
 * @param amps of the supply, with unit
 * @param touch what stands between the rails, and what not to touch
 * @param large whether that is as large as the state itself: something may be charged or live
 * @param detail why it tripped, and what kind of bench this is
 */
record BandWords(Ground ground, String title, String volts, String amps, String touch, boolean large, String detail) {
    /** How the band is coloured; the title always says the same in words. */
    enum Ground {
        PLAIN,
        LIVE,
        TRIPPED
    }

    /** A run that is over says nothing any more once another bench or unit lies on the desk, unless it never said off. */
    static BandWords now(WindowModel desk) {
        Optional<RunView> view = desk.view().filter(seen -> desk.shownByRun() || stillOpen(seen));
        return view.map(BandWords::of).orElseGet(() -> atRest(desk.atRest()));
    }

    private static boolean stillOpen(RunView view) {
        return !view.rehearsal() && view.power() == PowerState.NOT_CONFIRMED;
    }

    static BandWords atRest(Optional<AtRest> watched) {
        String title = watched.map(rest -> rest.supplySaysOff() ? "band.OFF" : "band.NOT_KNOWN")
                .orElse("band.none");
        String detail = watched.map(rest -> Words.of(
                        rest.supplySaysOff() ? "band.rest.off" : "band.rest.unknown", rest.answering(), rest.all()))
                .orElseGet(() -> Words.of("band.none.detail"));
        return new BandWords(Ground.PLAIN, Words.of(title), "", "", "", false, detail);
    }

    static BandWords of(RunView view) {
        return new BandWords(
                ground(view),
                title(view),
                value(view, Quantity.VOLTAGE, " V"),
                value(view, Quantity.CURRENT, " A"),
                touch(view),
                charged(view),
                detail(view));
    }

    private static Ground ground(RunView view) {
        return switch (view.power()) {
            case ON, SWITCHING_OFF -> view.trip().isPresent() ? Ground.TRIPPED : Ground.LIVE;
            case NOT_CONFIRMED -> Ground.TRIPPED;
            case NOT_KNOWN, OFF, ARMED, DISCHARGING -> view.trip().isPresent() ? Ground.TRIPPED : Ground.PLAIN;
        };
    }

    private static String title(RunView view) {
        boolean said = view.power() != PowerState.ON && view.power() != PowerState.NOT_CONFIRMED;
        return view.trip().isPresent() && said
                ? Words.of("band.tripped", Words.of("power." + view.power().name()))
                : Words.of("band." + view.power().name());
    }

    private static String value(RunView view, Quantity quantity, String unit) {
        if (view.over()) {
            return "";
        }
        Channel channel = new Channel("supply", quantity);
        OptionalDouble value = view.value(channel);
        boolean known = value.isPresent() && RailsNow.isFresh(view.last().get(channel), view.nowSeconds());
        return known
                ? Numbers.fixed(value.getAsDouble(), 2) + unit
                : view.last().containsKey(channel) ? Words.of("band.value.unknown", unit.strip()) : "";
    }

    private static boolean charged(RunView view) {
        return switch (view.power()) {
            case ON, SWITCHING_OFF, DISCHARGING, NOT_CONFIRMED -> !view.over();
            case NOT_KNOWN, OFF, ARMED -> false;
        };
    }

    private static String detail(RunView view) {
        String rehearsal = view.rehearsal() ? Words.of("band.rehearsal") : "";
        return (view.trip().map(why -> capital(why) + ". ").orElse("") + rehearsal).strip();
    }

    private static String touch(RunView view) {
        if (view.power() == PowerState.NOT_CONFIRMED) {
            return Words.of("band.open");
        }
        RailsNow rails = view.rails();
        if (rails.betweenVolts().isEmpty()) {
            return Words.of(view.last().isEmpty() ? "band.rails.unknown" : "band.rails.silent");
        }
        String between = Numbers.fixed(rails.betweenVolts().getAsDouble(), 0) + " V";
        if (!rails.unread().isEmpty()) {
            return Words.of("band.between.some", between, names(rails));
        }
        String key =
                view.over() ? "band.between.over" : view.power() == PowerState.ON ? "band.between.on" : "band.between";
        return Words.of(key, between);
    }

    private static String names(RailsNow rails) {
        return rails.unread().stream().map(RailNames::full).collect(Collectors.joining(", "));
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
    }
}
