package railwitness.drivers.converter;

/**
 * Where the input power goes that does not reach the loads, W, each zero or more.
 *
 * @param control drive, control, gate and standby drain
 * @param inputCapacitor series resistance of the input capacitor
 * @param switches conduction of the switches
 * @param primary primary winding
 * @param core core loss
 * @param magnetising what driving the magnetising current costs
 * @param shortedTurn a turn that is closed
 * @param clamp energy of the leakage at turn-off, and of the ringing
 * @param secondary secondary winding
 * @param rectifiers diodes, sound or not
 * @param chokes filter chokes
 * @param filterCapacitors series resistance of the filter capacitors
 * @param bleeders bleeder resistors
 * @param leaks switches that conduct when they should not
 */
public record Losses(
        double control,
        double inputCapacitor,
        double switches,
        double primary,
        double core,
        double magnetising,
        double shortedTurn,
        double clamp,
        double secondary,
        double rectifiers,
        double chokes,
        double filterCapacitors,
        double bleeders,
        double leaks) {

    /** All of them together, W. */
    public double total() {
        return transformer() + heatsink() + control + inputCapacitor + chokes + filterCapacitors + bleeders;
    }

    /** What heats the transformer, W. */
    public double transformer() {
        return primary + secondary + core + magnetising + shortedTurn;
    }

    /** What heats the heat sink with switches and diodes, W. */
    public double heatsink() {
        return switches + rectifiers + clamp + leaks;
    }
}
