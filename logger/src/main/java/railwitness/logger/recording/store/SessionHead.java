package railwitness.logger.recording.store;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Objects;

/**
 * What is known of a session when it begins.
 *
 * @param id name of the session, unique in its workshop
 * @param startedWall the wall clock at zero of the monotonic axis; kept to the nanosecond
 * @param zone where it was recorded, for printing local times
 * @param rehearsal true when the bench was a virtual one
 * @param programVersion version of the program that recorded it
 * @param acknowledgedBy who acknowledged cautions and checklist; empty when nobody was asked
 * @param unitName name of the unit under test
 * @param unitSerial its serial number; empty when it has none
 * @param unitCondition its condition as received or now, in words
 */
public record SessionHead(
        String id,
        Instant startedWall,
        ZoneId zone,
        boolean rehearsal,
        String programVersion,
        String acknowledgedBy,
        String unitName,
        String unitSerial,
        String unitCondition) {
    public SessionHead {
        Objects.requireNonNull(startedWall, "startedWall");
        Objects.requireNonNull(zone, "zone");
        Objects.requireNonNull(programVersion, "programVersion");
        Objects.requireNonNull(acknowledgedBy, "acknowledgedBy");
        Objects.requireNonNull(unitName, "unitName");
        Objects.requireNonNull(unitSerial, "unitSerial");
        Objects.requireNonNull(unitCondition, "unitCondition");
        if (id.isBlank()) {
            throw new IllegalArgumentException("a session's id must not be blank");
        }
    }
}
