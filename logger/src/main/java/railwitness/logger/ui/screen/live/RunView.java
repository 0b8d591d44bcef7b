package railwitness.logger.ui.screen.live;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.record.RailsNow;
import railwitness.logger.recording.record.RunEnd;
import railwitness.safety.power.PowerState;

/**
 * A run at one moment.
 *
 * @param rehearsal on the virtual bench
 * @param nowSeconds of the session
 * @param power what the output is doing, as far as it is known
 * @param last the last reading of each channel
 * @param rails what stands between the output terminals; once the run is over, when they were last read
 * @param steps all steps of the plan
 * @param prompt what the person is asked
 * @param saying the last thing that happened, in words
 * @param contradiction the last readings that cannot all be true, with what to check
 * @param trip why the output was switched off by the interlock
 * @param tripped the channel that was beyond its limit then
 * @param stop why a person ended it
 * @param ended once everything is off and the file closed
 * @param failed why there was no run, or why it broke off
 */
public record RunView(
        boolean rehearsal,
        double nowSeconds,
        PowerState power,
        Map<Channel, Reading> last,
        RailsNow rails,
        List<StepView> steps,
        Optional<Prompt> prompt,
        String saying,
        Optional<String> contradiction,
        Optional<String> trip,
        Optional<Channel> tripped,
        Optional<String> stop,
        Optional<RunEnd> ended,
        Optional<String> failed) {

    /** Everything is off and the file is closed. */
    public boolean over() {
        return ended.isPresent() || failed.isPresent();
    }

    /** The step that goes on right now, -1 between steps. */
    public int liveStep() {
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).live()) {
                return i;
            }
        }
        return -1;
    }

    /** How many steps have ended. */
    public int stepsDone() {
        return (int) steps.stream().filter(step -> step.ended().isPresent()).count();
    }

    /** The last number read on a channel. */
    public OptionalDouble value(Channel channel) {
        return last.get(channel) instanceof Measured measured
                ? OptionalDouble.of(measured.value())
                : OptionalDouble.empty();
    }
}
