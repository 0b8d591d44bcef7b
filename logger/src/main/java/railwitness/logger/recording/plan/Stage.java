package railwitness.logger.recording.plan;

import java.util.List;

/** One kind of test, with its own timing. */
public sealed interface Stage permits Standby, PowerUp, NoLoad, LoadSweep, LineSweep, CrossLoad, Hold, TransformerTest {
    /** The trade's word, as written in a plan and in a session. */
    String word();

    /** What this stage is made of for a unit of this rating. */
    List<Step> steps(Rating rating);
}
