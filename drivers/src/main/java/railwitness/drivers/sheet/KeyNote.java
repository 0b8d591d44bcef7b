package railwitness.drivers.sheet;

/**
 * What a sheet's reader said of one key when it asked for it.
 *
 * @param table where the key stands: {@code [input]}, {@code [[rail]]}, {@code [[instrument]] accuracy.voltage}
 * @param key its name
 * @param type number, whole number, text, yes or no, date, numbers, texts, table, tables
 * @param unit from the end of the name: V, A, ohm, pct; empty where there is none
 * @param allowed range or list of words, empty when anything goes
 * @param otherwise what is taken when it is left out: {@code required}, {@code optional}, or the value
 * @param meaning in a technician's words
 */
public record KeyNote(
        String table, String key, String type, String unit, String allowed, String otherwise, String meaning) {}
