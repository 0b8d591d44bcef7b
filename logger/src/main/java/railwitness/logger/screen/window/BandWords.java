package railwitness.logger.screen.window;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.screen.live.RunView;
import railwitness.logger.screen.paper.Numbers;
import railwitness.logger.screen.paper.Words;
import railwitness.safety.power.PowerState;

/**
 * What the band says at one moment.
 *
 * @param ground how grave it is
 * @param title what the output is doing
 * @param volts of the supply, with unit; empty when it is not read
 * @param amps of the supply, with unit
 * @param detail what stands between the rails, and what to do
 */
record BandWords(Ground ground, String title, String volts, String amps, String detail) {
    /** How the band is coloured; the title always says the same in words. */
    enum Ground {
        PLAIN,
        LIVE,
        TRIPPED
    }

    static BandWords now(Optional<RunView> view) {
        return view.map(BandWords::of)
                .orElseGet(
                        () -> new BandWords(Ground.PLAIN, Words.of("band.none"), "", "", Words.of("band.none.detail")));
    }

    static BandWords of(RunView view) {
        return new BandWords(
                ground(view),
                title(view),
                value(view, Quantity.VOLTAGE, " V"),
                value(view, Quantity.CURRENT, " A"),
                detail(view));
    }

    private static Ground ground(RunView view) {
        return switch (view.power()) {
            case ON, SWITCHING_OFF -> view.trip().isPresent() ? Ground.TRIPPED : Ground.LIVE;
            case NOT_CONFIRMED -> Ground.TRIPPED;
            case OFF, ARMED, DISCHARGING -> view.trip().isPresent() ? Ground.TRIPPED : Ground.PLAIN;
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
        OptionalDouble value = view.value(new Channel("supply", quantity));
        return value.isPresent() ? Numbers.fixed(value.getAsDouble(), 2) + unit : "";
    }

    private static String detail(RunView view) {
        String trip = view.trip().map(why -> capital(why) + ". ").orElse("");
        if (view.power() == PowerState.NOT_CONFIRMED) {
            return Words.of("band.open");
        }
        String rehearsal = view.rehearsal() ? Words.of("band.rehearsal") + " " : "";
        if (view.betweenRails().isEmpty()) {
            return rehearsal + trip + Words.of("band.rails.unknown");
        }
        String between = Numbers.fixed(view.betweenRails().getAsDouble(), 0) + " V";
        String key =
                view.over() ? "band.between.over" : view.power() == PowerState.ON ? "band.between.on" : "band.between";
        return rehearsal + trip + Words.of(key, between);
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
    }
}
