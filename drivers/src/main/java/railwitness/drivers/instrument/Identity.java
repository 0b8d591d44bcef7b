package railwitness.drivers.instrument;

/** The four fields of {@code *IDN?} (IEEE 488.2); a field not known is "0". */
public record Identity(String maker, String model, String serial, String firmware) {
    /** Reads the answer; commas beyond the third belong to the firmware, fields that are lacking or empty become "0". */
    public static Identity of(String answer) {
        String[] fields = answer.strip().split("\\s*,\\s*", 4);
        return new Identity(field(fields, 0), field(fields, 1), field(fields, 2), field(fields, 3));
    }

    private static String field(String[] fields, int index) {
        return index < fields.length && !fields[index].isBlank() ? fields[index].strip() : "0";
    }

    /** As an instrument sends it. */
    public String answer() {
        return String.join(",", maker, model, serial, firmware);
    }

    @Override
    public String toString() {
        return maker + " " + model + ", serial " + serial + ", firmware " + firmware;
    }
}
