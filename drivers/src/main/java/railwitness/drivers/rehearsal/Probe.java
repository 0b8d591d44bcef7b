package railwitness.drivers.rehearsal;

import java.util.Optional;
import railwitness.drivers.converter.Apart;
import railwitness.drivers.converter.Balance;
import railwitness.drivers.converter.Ripple;
import railwitness.drivers.converter.World;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.winding.Connected;

/** Where a meter's leads are: what an ideal meter would read there. */
final class Probe {
    private final World world;
    private final Channel channel;
    private final double shuntOhm;
    private final double bandLowHz;
    private final double bandHighHz;
    private Ripple lastRipple;
    private double lastVolts;

    /** @param shuntOhm true resistance of the shunt between the leads; zero for none */
    Probe(World world, Channel channel, double shuntOhm, double bandLowHz, double bandHighHz) {
        this.world = world;
        this.channel = channel;
        this.shuntOhm = shuntOhm;
        this.bandLowHz = bandLowHz;
        this.bandHighHz = bandHighHz;
    }

    /** Direct voltage between the leads, V. */
    double directVolts(long nanos) {
        if (shuntOhm > 0) {
            return shuntOhm * directAmps(nanos);
        }
        Balance state = world.at(nanos);
        Optional<Apart> apart = apart();
        if (apart.isPresent()) {
            return apart.get().directVolts(state.inputAmps(), world.apartDegC());
        }
        return switch (channel.node()) {
            case "input" -> state.terminalVolts();
            case "supply" -> state.terminalVolts() + state.inputAmps() * world.leadOhm();
            default -> isRail() ? state.rail(channel.node()).volts() : 0;
        };
    }

    /** Root mean square of what alternates within the meter's band, V. */
    double alternatingVolts(long nanos) {
        Balance state = world.at(nanos);
        if (apart().isPresent()) {
            return apart().get().alternatingVolts(world.apartDegC());
        }
        return isRail() ? inBand(state.rail(channel.node()).ripple()) : 0;
    }

    /** Whatever this probe was moved to, where the unit lies aside. */
    private Optional<Apart> apart() {
        return world.apart().filter(instead -> instead.node().equals(channel.node()));
    }

    /** Worked out once for each ripple, as it is asked for often while nothing changes. */
    private double inBand(Ripple ripple) {
        if (ripple != lastRipple) {
            lastRipple = ripple;
            lastVolts = ripple.rmsVolts(bandLowHz, bandHighHz);
        }
        return lastVolts;
    }

    /** Direct current through the meter, A. */
    double directAmps(long nanos) {
        Balance state = world.at(nanos);
        return isRail() ? state.rail(channel.node()).amps() : state.inputAmps();
    }

    /** Temperature of the body the sensor is on, degC; for a node that is no body, that of the air. */
    double degC(long nanos) {
        return channel.node().equals("winding") ? world.degC(nanos, "transformer") : world.degC(nanos, channel.node());
    }

    /** The channel's own quantity; zero where it has no such thing. */
    double value(long nanos) {
        return switch (channel.quantity()) {
            case VOLTAGE -> directVolts(nanos);
            case CURRENT -> directAmps(nanos);
            case RIPPLE -> alternatingVolts(nanos);
            case TEMPERATURE -> degC(nanos);
            case POWER -> directVolts(nanos) * directAmps(nanos);
            case RESISTANCE -> 0;
            case FREQUENCY ->
                world.apart()
                        .filter(Connected.class::isInstance)
                        .map(instead -> ((Connected) instead).ringingHertz())
                        .orElse(0.0);
        };
    }

    boolean hasSensor() {
        return channel.quantity() == Quantity.TEMPERATURE;
    }

    boolean isRail() {
        return world.specimen().rails().stream().anyMatch(rail -> rail.name().equals(channel.node()));
    }
}
