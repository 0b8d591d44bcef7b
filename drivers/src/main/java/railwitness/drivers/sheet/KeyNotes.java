package railwitness.drivers.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Every key that was asked for, in the order of asking. Several readings may share one, so that all branches are seen. */
public final class KeyNotes {
    private final Map<String, KeyNote> notes = new LinkedHashMap<>();

    void add(KeyNote note) {
        notes.putIfAbsent(note.table() + " " + note.key(), note);
    }

    /** All keys, each once. */
    public List<KeyNote> all() {
        return new ArrayList<>(notes.values());
    }
}
