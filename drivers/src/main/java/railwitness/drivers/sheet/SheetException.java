package railwitness.drivers.sheet;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** A sheet cannot be used. The message has one line for each fault, in the order of the file. */
public final class SheetException extends RuntimeException {
    private final transient List<SheetFault> faults;

    public SheetException(List<SheetFault> faults) {
        super(inOrder(faults).stream().map(SheetFault::toString).collect(Collectors.joining("\n")));
        this.faults = inOrder(faults);
    }

    private static List<SheetFault> inOrder(List<SheetFault> faults) {
        return faults.stream().sorted(Comparator.comparing(SheetFault::line)).toList();
    }

    public List<SheetFault> faults() {
        return faults;
    }
}
