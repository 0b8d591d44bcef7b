package railwitness.analysis.design;

/**
 * What a sheet says that cannot be, or that a person should look at, though each value by itself is allowed.
 *
 * @param weight whether power is refused
 * @param table header of the table concerned, such as {@code [input]} or {@code [[rail]]}
 * @param place which of several tables of one name, from 0
 * @param key the key concerned; its table may lack it
 * @param words one sentence with the numbers and what to do
 */
public record Remark(Weight weight, String table, int place, String key, String words) {
    /** How grave it is. */
    public enum Weight {
        /** No unit can be like this, or a sound one would be switched off: there is no power until it is put right. */
        CANNOT_BE("cannot be"),
        /** It may be meant, and it may be a slip. */
        LOOK("look at this");

        private final String word;

        Weight(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** Whether there is no power until it is put right. */
    public boolean refuses() {
        return weight == Weight.CANNOT_BE;
    }
}
