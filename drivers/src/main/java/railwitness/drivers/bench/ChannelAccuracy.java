package railwitness.drivers.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.instrument.LoadSetting;
import railwitness.drivers.instrument.MeterSetting;
import railwitness.drivers.instrument.SupplySetting;
import railwitness.drivers.reading.Accuracy;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.InstrumentError;
import railwitness.drivers.reading.InstrumentError.Kind;
import railwitness.drivers.reading.Quantity;

/**
 * How well one channel is read, worked out from the data-sheet limits on the bench sheet.
 *
 * @param instrument who reads it
 * @param accuracy in the instrument's own unit; empty when the sheet states none
 * @param perUnit the instrument's number divided by this is the channel's value: ohms of a shunt, else 1
 * @param shuntTolerancePct limit of the shunt's error, percent
 * @param ranges ranges in the instrument's own unit, smallest first; empty when not stated
 * @param digit worth of the last digit that a person types, in the channel's unit; 0 where an instrument sends numbers
 * @param functionMoved what it measures, where one meter is moved between places and takes its errors along
 */
public record ChannelAccuracy(
        Channel channel,
        String instrument,
        Optional<Accuracy> accuracy,
        double perUnit,
        double shuntTolerancePct,
        double ambientDegC,
        List<Double> ranges,
        double digit,
        Optional<String> functionMoved) {
    public ChannelAccuracy {
        ranges = ranges.stream().sorted().toList();
    }

    static ChannelAccuracy of(HandRead meter, double ambientDegC) {
        return new ChannelAccuracy(
                meter.reads(),
                meter.meter(),
                meter.accuracy(),
                meter.perUnit(),
                meter.shuntTolerancePct(),
                ambientDegC,
                listed(meter.range()),
                meter.digit(),
                meter.moved().map(name -> meter.function().word()));
    }

    static ChannelAccuracy of(Channel channel, InstrumentSheet sheet, double ambientDegC) {
        Quantity measured = channel.quantity();
        double perUnit = 1;
        List<Double> ranges = new ArrayList<>();
        if (sheet.duty() instanceof Duty.AsMeter meter) {
            MeterSetting setting = meter.setting();
            measured = setting.function();
            perUnit = setting.perUnit();
            ranges.addAll(listed(setting.standbyRange()));
            ranges.addAll(listed(setting.range()));
        } else if (sheet.duty() instanceof Duty.AsSupply supply) {
            SupplySetting setting = supply.setting();
            ranges.addAll(listed(measured == Quantity.CURRENT ? setting.highestAmps() : setting.highestVolts()));
        } else if (sheet.duty() instanceof Duty.AsLoad load && measured == Quantity.CURRENT) {
            LoadSetting setting = load.setting();
            ranges.addAll(listed(setting.highestAmps()));
        } else if (sheet.duty() instanceof Duty.AsScope scope) {
            ranges.add(scope.setting().rangeVolts());
        }
        return new ChannelAccuracy(
                channel,
                sheet.name(),
                Optional.ofNullable(sheet.accuracy().get(measured)),
                perUnit,
                sheet.shuntTolerancePct(),
                ambientDegC,
                ranges,
                sheet.isByHand()
                        ? Optional.ofNullable(sheet.accuracy().get(measured))
                                .map(Accuracy::resolution)
                                .orElse(0.0)
                        : 0,
                Optional.empty());
    }

    private static List<Double> listed(OptionalDouble value) {
        return value.isPresent() ? List.of(value.getAsDouble()) : List.of();
    }

    /**
     * The range in use for a stage in which values up to this are expected, in the channel's unit; the value's own
     * magnitude where the sheet states none.
     */
    public double rangeFor(double highest) {
        double own = Math.abs(highest) * perUnit;
        return ranges.stream()
                        .filter(range -> range >= own)
                        .findFirst()
                        .orElse(ranges.isEmpty() ? own : ranges.get(ranges.size() - 1))
                / perUnit;
    }

    /**
     * Half the width of the band around a value, all limits added up, in the channel's unit; empty when not stated.
     *
     * @param range as {@link #rangeFor} gives it
     */
    public OptionalDouble halfWidthAt(double value, double range) {
        if (accuracy.isEmpty()) {
            return OptionalDouble.empty();
        }
        double own = accuracy.get().halfWidthAt(value * perUnit, range * perUnit, ambientDegC) / perUnit;
        return OptionalDouble.of(own + shuntTolerancePct / 100 * Math.abs(value));
    }

    /**
     * What may be wrong with a value, each thing by itself, in the channel's unit; empty when nothing is stated. The
     * gain of a meter is one unknown in each of its ranges, shared by all values taken in that range (one for all values
     * where no range is stated); the shunt's error
     * is one for all.
     *
     * @param range as {@link #rangeFor} gives it
     */
    public List<InstrumentError> contributions(double value, double range) {
        List<InstrumentError> found = new ArrayList<>();
        accuracy.ifPresent(stated -> {
            double gain = stated.gainHalfWidth(value * perUnit, ambientDegC) / perUnit;
            double fixed = stated.fixedHalfWidth(range * perUnit, ambientDegC) / perUnit;
            add(found, "gain of " + instrument, "gain " + place(range), Math.copySign(gain, value), stated, true);
            add(found, "offset of " + instrument, "offset " + place(range), fixed, stated, false);
        });
        double shunt = -shuntTolerancePct / 100 * value;
        if (shunt != 0) {
            found.add(new InstrumentError(
                    "shunt of " + instrument, "shunt " + instrument, shunt, Kind.RECTANGULAR, true));
        }
        return found;
    }

    private String place(double range) {
        return instrument + " " + functionMoved.orElse(channel.toString())
                + (ranges.isEmpty() ? "" : " " + (float) (range * perUnit));
    }

    private static void add(
            List<InstrumentError> found, String name, String sharedAs, double half, Accuracy stated, boolean relative) {
        if (half != 0) {
            boolean limit = stated.statedAs() == Accuracy.StatedAs.LIMIT;
            found.add(new InstrumentError(
                    name, sharedAs, limit ? half : half / 2, limit ? Kind.RECTANGULAR : Kind.NORMAL, relative));
        }
    }
}
