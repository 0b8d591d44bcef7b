package railwitness.safety.power;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What rails of the wrong sign say: one is a meter's leads or that rail's own wiring, two of different sign are exchanged. */
final class ReversedRails {
    private ReversedRails() {}

    /**
     * @param wrong rails of the wrong sign, at least one
     * @param all every rail that is read
     * @param reads a rail with its reading
     */
    static String words(List<RailTarget> wrong, List<RailTarget> all, Function<RailTarget, String> reads) {
        String seen = wrong.stream().map(reads).collect(Collectors.joining(", "));
        boolean positive = wrong.stream().anyMatch(target -> target.volts() > 0);
        boolean negative = wrong.stream().anyMatch(target -> target.volts() < 0);
        String names = wrong.stream().map(RailTarget::name).collect(Collectors.joining(" and "));
        if (positive && negative) {
            return "the rails " + names + " are exchanged (" + seen
                    + "), or the leads of both their meters are reversed";
        }
        String many = wrong.size() > 1 ? "the rails " + names + " have" : "the rail " + names + " has";
        String others = wrong.size() < all.size() ? "; the other rails are as they should be" : "";
        return many + " the wrong sign (" + seen + others
                + "): the leads of its meter are reversed, or the rail is wired the" + " wrong way round";
    }
}
