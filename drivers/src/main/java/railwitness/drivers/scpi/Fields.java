package railwitness.drivers.scpi;

import java.util.ArrayList;
import java.util.List;

/** Splits messages and responses at commas or semicolons, but not inside quotes or parentheses. */
public final class Fields {
    private Fields() {}

    /** The parts, stripped of blanks around them; an empty text has one empty part. */
    public static List<String> split(String text, char separator) {
        List<String> parts = new ArrayList<>();
        StringBuilder part = new StringBuilder();
        char quote = 0;
        int depth = 0;
        for (char c : text.toCharArray()) {
            if (quote != 0) {
                quote = c == quote ? 0 : quote;
            } else if (c == '"' || c == '\'') {
                quote = c;
            } else if (c == '(' || c == ')') {
                depth += c == '(' ? 1 : -1;
            } else if (c == separator && depth <= 0) {
                parts.add(part.toString().strip());
                part.setLength(0);
                continue;
            }
            part.append(c);
        }
        parts.add(part.toString().strip());
        return parts;
    }
}
