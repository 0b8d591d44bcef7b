package railwitness.drivers.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** A sheet cannot be used. The message has one line for each fault, in the order of the file. */
public final class SheetException extends RuntimeException {
    private static final int MOST = 40;

    private final transient List<SheetFault> faults;

    public SheetException(List<SheetFault> faults) {
        super(inOrder(faults).stream().map(SheetFault::toString).collect(Collectors.joining("\n")));
        this.faults = inOrder(faults);
    }

    private static List<SheetFault> inOrder(List<SheetFault> faults) {
        List<SheetFault> sorted =
                faults.stream().sorted(Comparator.comparing(SheetFault::line)).toList();
        if (sorted.size() <= MOST) {
            return sorted;
        }
        List<SheetFault> first = new ArrayList<>(sorted.subList(0, MOST - 1));
        SheetFault next = sorted.get(MOST - 1);
        first.add(new SheetFault(
                next.file(), next.line(), "and " + (sorted.size() - MOST + 1) + " more faults from here on"));
        return first;
    }

    public List<SheetFault> faults() {
        return faults;
    }
}
