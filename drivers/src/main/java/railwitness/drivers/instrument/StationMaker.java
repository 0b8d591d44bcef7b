package railwitness.drivers.instrument;

import railwitness.drivers.line.Line;
import railwitness.drivers.time.Agenda;
import railwitness.drivers.time.VirtualAgenda;

/** Gives an instrument its worker. */
public interface StationMaker {
    /** @param line closed with the station */
    <I extends Instrument> Station<I> make(I instrument, Line line);

    /** A thread for each instrument. */
    static StationMaker threaded(Agenda agenda) {
        return new StationMaker() {
            @Override
            public <I extends Instrument> Station<I> make(I instrument, Line line) {
                return new ThreadedStation<>(instrument, agenda, line);
            }
        };
    }

    /** All in the one thread of a virtual agenda. */
    static StationMaker inline(VirtualAgenda agenda) {
        return new StationMaker() {
            @Override
            public <I extends Instrument> Station<I> make(I instrument, Line line) {
                return new InlineStation<>(instrument, agenda, line);
            }
        };
    }
}
