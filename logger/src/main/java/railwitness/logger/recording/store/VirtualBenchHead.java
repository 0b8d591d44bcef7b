package railwitness.logger.recording.store;

import java.util.List;
import java.util.regex.Pattern;
import railwitness.drivers.instrument.Identity;

/** The head of a session, with what its instruments say of themselves: readings of a virtual one are a rehearsal. */
public final class VirtualBenchHead {
    private static final Pattern VIRTUAL = Pattern.compile("\\bvirtual\\b", Pattern.CASE_INSENSITIVE);

    private VirtualBenchHead() {}

    /** The head as it was kept, a rehearsal where any instrument calls itself virtual, by whatever command it was run. */
    public static SessionHead of(SessionFile file) {
        return of(file.head(), file.instruments());
    }

    static SessionHead of(SessionHead head, List<InstrumentEntry> instruments) {
        boolean virtual = instruments.stream().map(InstrumentEntry::identity).anyMatch(VirtualBenchHead::isVirtual);
        return head.rehearsal() || !virtual
                ? head
                : new SessionHead(
                        head.id(),
                        head.startedWall(),
                        head.zone(),
                        true,
                        head.programVersion(),
                        head.acknowledgedBy(),
                        head.unitName(),
                        head.unitSerial(),
                        head.unitCondition());
    }

    private static boolean isVirtual(Identity identity) {
        return VIRTUAL.matcher(identity.maker() + " " + identity.model()).find();
    }
}
