package railwitness.drivers.converter;

import java.util.List;

/**
 * What acts on the converter during one step.
 *
 * @param draws one for each rail
 * @param running whether the switches are driven
 * @param ceilingVolts what the control holds the mean of the rails at by shortening the pulses, V; infinite for none
 */
record Situation(Feed feed, List<Draw> draws, boolean running, double ceilingVolts) {
    Situation {
        draws = List.copyOf(draws);
    }
}
