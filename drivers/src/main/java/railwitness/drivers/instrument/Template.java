package railwitness.drivers.instrument;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.drivers.scpi.Numeric;

/** Values for the names in braces in a dialect's messages. */
final class Template {
    private static final Pattern NAME = Pattern.compile("\\{([a-z_]+)}");
    private final Map<String, String> values = new TreeMap<>();

    Template with(String name, String value) {
        values.put(name, value);
        return this;
    }

    Template with(String name, double value) {
        return with(name, Numeric.write(value));
    }

    Template with(String name, int value) {
        return with(name, Integer.toString(value));
    }

    /** @throws IllegalArgumentException when the message names a value that is not there */
    String fill(String message) {
        return NAME.matcher(message).replaceAll(name -> Matcher.quoteReplacement(value(name.group(1), message)));
    }

    /** All messages whose values are there. */
    List<String> fillKnown(List<String> messages) {
        return messages.stream().filter(this::knows).map(this::fill).toList();
    }

    private boolean knows(String message) {
        return NAME.matcher(message).results().allMatch(name -> values.containsKey(name.group(1)));
    }

    private String value(String name, String message) {
        String value = values.get(name);
        if (value == null) {
            throw new IllegalArgumentException("the dialect's '" + message + "' needs a value for " + name);
        }
        return value;
    }
}
