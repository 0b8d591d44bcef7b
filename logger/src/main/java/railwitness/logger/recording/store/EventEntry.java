package railwitness.logger.recording.store;

import railwitness.logger.recording.event.EventForm;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;

/**
 * Something that happened.
 *
 * @param nanos when, ns on the session's axis
 */
public record EventEntry(long nanos, SessionEvent event) implements Entry {
    /** As the file holds it: the word of its kind, and its form or, in earlier sessions, a sentence. */
    public EventEntry(long nanos, String what, String text) {
        this(nanos, EventForm.event(what, text));
    }

    /** One word or two to sort by. */
    public String what() {
        return event.what();
    }

    /** In a technician's words. */
    public String text() {
        return event.words();
    }

    public boolean is(EventKind kind) {
        return event.is(kind);
    }
}
