package railwitness.drivers.instrument;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The settings of a supply that must stay as they were set: read back one in a round, in turn, the doubted one first. */
final class HeldSettings {
    private static final int MOST_SILENCES = 2;

    private final List<HeldSetting> all;
    private int last;
    private int silences;

    HeldSettings(HeldSetting... all) {
        this.all = List.of(all);
    }

    boolean doubted() {
        return all.stream().anyMatch(HeldSetting::doubted);
    }

    /** The one whose turn it is; empty where none is held, or where the supply fell silent when it was asked. */
    Optional<HeldSetting> next() {
        if (silences >= MOST_SILENCES) {
            return Optional.empty();
        }
        Optional<HeldSetting> doubted =
                all.stream().filter(HeldSetting::doubted).findFirst();
        return doubted.or(this::inTurn);
    }

    private Optional<HeldSetting> inTurn() {
        for (int k = 1; k <= all.size(); k++) {
            int index = (last + k) % all.size();
            if (all.get(index).isHeld()) {
                last = index;
                return Optional.of(all.get(index));
            }
        }
        return Optional.empty();
    }

    /** What it answered; in words what is not as it was set, once that is certain. */
    Optional<String> now(HeldSetting setting, OptionalDouble value) {
        silences = value.isPresent() ? 0 : silences + 1;
        return value.isPresent() ? setting.now(value.getAsDouble()) : Optional.empty();
    }
}
