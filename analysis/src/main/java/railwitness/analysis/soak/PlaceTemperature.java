package railwitness.analysis.soak;

import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * One place's way to its final temperature.
 *
 * @param place such as heatsink
 * @param last mean of the last tenth of the hold, degC
 * @param end what it tends to, degC, the room as it was at the end
 * @param rise of that above the room, K; empty where nothing is known of the room
 * @param timeConstantSeconds the slower one; empty where the readings do not tell it to better than itself
 * @param secondsToFinal from the begin of the hold until no more than 1 K is left
 * @param reached whether no more than 1 K was left at the end
 * @param fit the curve
 */
public record PlaceTemperature(
        String place,
        Estimate last,
        Estimate end,
        Optional<Estimate> rise,
        Optional<Estimate> timeConstantSeconds,
        Optional<Estimate> secondsToFinal,
        boolean reached,
        WarmUp fit) {}
