package railwitness.safety.interlock;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import railwitness.drivers.reading.Channel;

/** What a watch looks at: one channel, or a value worked out from several. */
public sealed interface Subject {
    /** The channels it needs; at least one. */
    Set<Channel> channels();

    /** Its value, in {@link #unit()}, from the values of its channels. */
    double value(ToDoubleFunction<Channel> of);

    /** SI unit of the value. */
    String unit();

    /** The channel as it is read. */
    record Plain(Channel channel) implements Subject {
        @Override
        public Set<Channel> channels() {
            return Set.of(channel);
        }

        @Override
        public double value(ToDoubleFunction<Channel> of) {
            return of.applyAsDouble(channel);
        }

        @Override
        public String unit() {
            return channel.quantity().unit();
        }
    }

    /** The channel without its sign, for negative rails. */
    record Magnitude(Channel channel) implements Subject {
        @Override
        public Set<Channel> channels() {
            return Set.of(channel);
        }

        @Override
        public double value(ToDoubleFunction<Channel> of) {
            return Math.abs(of.applyAsDouble(channel));
        }

        @Override
        public String unit() {
            return channel.quantity().unit();
        }
    }

    /** How far the magnitudes of two rails are apart, V, never negative. */
    record Imbalance(Channel one, Channel other) implements Subject {
        @Override
        public Set<Channel> channels() {
            return Set.of(one, other);
        }

        @Override
        public double value(ToDoubleFunction<Channel> of) {
            return Math.abs(Math.abs(of.applyAsDouble(one)) - Math.abs(of.applyAsDouble(other)));
        }

        @Override
        public String unit() {
            return "V";
        }
    }

    /** Voltage and current channel of one rail. */
    record RailPair(Channel volts, Channel amps) {}

    /**
     * Input power less output power less the loss the design expects, W. The expected loss is {@code fixedWatts +
     * wattsPerAmp I + ohms I^2} with I the sum of the rails' currents: drive and core, junctions, resistances.
     */
    record ExtraLoss(
            Channel inputVolts,
            Channel inputAmps,
            List<RailPair> rails,
            double fixedWatts,
            double wattsPerAmp,
            double ohms)
            implements Subject {
        public ExtraLoss {
            rails = List.copyOf(rails);
        }

        @Override
        public Set<Channel> channels() {
            Set<Channel> all = new HashSet<>(Set.of(inputVolts, inputAmps));
            rails.forEach(rail -> {
                all.add(rail.volts());
                all.add(rail.amps());
            });
            return all;
        }

        @Override
        public double value(ToDoubleFunction<Channel> of) {
            double excess = of.applyAsDouble(inputVolts) * of.applyAsDouble(inputAmps) - fixedWatts;
            double amps = 0;
            for (RailPair rail : rails) {
                double current = Math.abs(of.applyAsDouble(rail.amps()));
                excess -= Math.abs(of.applyAsDouble(rail.volts())) * current;
                amps += current;
            }
            return excess - wattsPerAmp * amps - ohms * amps * amps;
        }

        @Override
        public String unit() {
            return "W";
        }
    }
}
