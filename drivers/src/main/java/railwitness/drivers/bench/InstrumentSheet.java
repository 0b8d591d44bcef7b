package railwitness.drivers.bench;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.reading.Accuracy;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/**
 * One instrument of the bench sheet.
 *
 * @param port how to reach it; its terminator is LF where the sheet states none
 * @param terminatorStated true when the sheet states the terminator, so that the dialect's own does not count
 * @param dialect name of the dialect, or a file of one; chosen by the identity where empty
 * @param expect what the answer to {@code *IDN?} must contain, such as the model; anything where empty
 * @param answerWithin longest wait for an ordinary answer
 * @param reads the channels it reads
 * @param accuracy by what the instrument itself measures: voltage for a meter on a shunt
 * @param shuntTolerancePct limit of the shunt's error, percent; zero without a shunt
 * @param calibration of the instrument itself
 * @param shuntCalibration of the shunt it stands on
 * @param bandHz lowest and highest frequency a ripple is measured in; empty where not stated
 */
public record InstrumentSheet(
        String name,
        PortSettings port,
        boolean terminatorStated,
        Optional<String> dialect,
        Optional<String> expect,
        Duration answerWithin,
        List<Channel> reads,
        Map<Quantity, Accuracy> accuracy,
        double shuntTolerancePct,
        List<Double> bandHz,
        Calibration calibration,
        Calibration shuntCalibration,
        Duty duty) {
    /** Stands for the port of a supply that has only knobs. */
    public static final String BY_HAND = "by hand";

    public InstrumentSheet {
        reads = List.copyOf(reads);
        accuracy = Map.copyOf(accuracy);
        bandHz = List.copyOf(bandHz);
    }

    /** Day of its last calibration. */
    public Optional<LocalDate> calibrated() {
        return calibration.day();
    }

    /** Whether it reads a current by a shunt, which is an instrument of its own. */
    public boolean hasShunt() {
        return shuntTolerancePct > 0 || !shuntCalibration.equals(Calibration.NOT_STATED);
    }

    /** Whether it has no serial line: a supply that a person sets. */
    public boolean isByHand() {
        return port.port().equals(BY_HAND);
    }

    /** Whether it is a scope, which is not asked in each round. */
    public boolean isScope() {
        return duty instanceof Duty.AsScope;
    }
}
