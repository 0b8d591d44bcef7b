package railwitness.drivers.bench;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetTable;

/**
 * What stands on the bench.
 *
 * @param ambientDegC temperature of the room, for the instruments' temperature coefficients
 * @param leadResistanceOhms from the source to the unit's terminals, both leads
 * @param interval one round of readings
 * @param instruments those with a wire, in the order of the sheet
 * @param handRead meters the person reads
 * @param banks load resistors the person switches, at most one bank a rail
 * @param acceptedWithoutProtection the words in which a supply without protection is accepted; empty when it is not
 * @param acceptedWithoutGuardian the words in which a run that no second process guards is accepted; empty when it is
 *     not
 * @param patience longest pause of the program, while power is on, before the guardian switches off
 */
public record BenchSheet(
        String name,
        double ambientDegC,
        Source source,
        double leadResistanceOhms,
        double mainsHz,
        Duration interval,
        List<InstrumentSheet> instruments,
        List<HandRead> handRead,
        List<ResistorBank> banks,
        Optional<String> acceptedWithoutProtection,
        Optional<String> acceptedWithoutGuardian,
        Duration patience) {
    public BenchSheet {
        instruments = List.copyOf(instruments);
        handRead = List.copyOf(handRead);
        banks = List.copyOf(banks);
    }

    /** @throws railwitness.drivers.sheet.SheetException with all faults */
    public static BenchSheet of(Path file) {
        return Sheet.of(file).read(BenchSheet::from);
    }

    /** For {@link Sheet#read}. */
    public static BenchSheet from(SheetTable root) {
        return new BenchReader(root).read();
    }

    /** Every channel that is read in each round (a scope is asked only when a waveform is wanted), with the name of the instrument or of the hand-read meter. */
    public Map<Channel, String> readBy() {
        Map<Channel, String> readBy = new TreeMap<>();
        instruments.stream()
                .filter(instrument -> !instrument.isScope())
                .forEach(instrument -> instrument.reads().forEach(channel -> readBy.put(channel, instrument.name())));
        handRead.forEach(meter -> readBy.put(meter.reads(), meter.name()));
        return readBy;
    }

    /** Whether the supply has only knobs, which a person sets. */
    public boolean isSetByHand() {
        return instruments.stream().anyMatch(InstrumentSheet::isByHand);
    }

    public Optional<InstrumentSheet> instrument(String wanted) {
        return instruments.stream()
                .filter(instrument -> instrument.name().equals(wanted))
                .findFirst();
    }

    /** How well this channel is read; empty when nobody reads it. */
    public Optional<ChannelAccuracy> accuracyOf(Channel channel) {
        Optional<ChannelAccuracy> wired = instruments.stream()
                .filter(instrument ->
                        !instrument.isScope() && instrument.reads().contains(channel))
                .findFirst()
                .map(instrument -> ChannelAccuracy.of(channel, instrument, ambientDegC));
        return wired.or(() -> handRead.stream()
                .filter(meter -> meter.reads().equals(channel))
                .findFirst()
                .map(meter -> ChannelAccuracy.of(meter, ambientDegC)));
    }

    /** The scope that looks at this channel, where there is one. */
    public Optional<InstrumentSheet> scopeOf(Channel channel) {
        return instruments.stream()
                .filter(instrument -> instrument.isScope() && instrument.reads().contains(channel))
                .findFirst();
    }

    /** How well the scope that looks at this channel measures it; empty where there is none. */
    public Optional<ChannelAccuracy> waveformAccuracyOf(Channel channel) {
        return scopeOf(channel).map(scope -> ChannelAccuracy.of(channel, scope, ambientDegC));
    }

    /** The bank of this rail, where there is one. */
    public Optional<ResistorBank> bank(String rail) {
        return banks.stream().filter(bank -> bank.rail().equals(rail)).findFirst();
    }
}
