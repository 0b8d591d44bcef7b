package railwitness.drivers.instrument;

import java.util.Optional;

/**
 * One thing that a person does at a supply without a serial line, and then types what its display shows.
 *
 * @param value what is to be set, V or A; of a mere look at the display what is expected there
 * @param before what was typed at the turn before, when that was not what was wanted
 */
public record KnobTurn(Kind kind, double value, Optional<Double> before) {
    /** What is done. */
    public enum Kind {
        SET_VOLTS("V"),
        SET_LIMIT("A"),
        SWITCH_ON("V"),
        LOOK_VOLTS("V"),
        LOOK_AMPS("A");

        private final String unit;

        Kind(String unit) {
            this.unit = unit;
        }

        /** Of what is typed then. */
        public String unit() {
            return unit;
        }
    }
}
