package railwitness.drivers.scpi;

import java.util.regex.Pattern;

/** How responses are spelt. A unit may follow; one with a prefix (mV) is refused, as it would change the value. */
final class Form {
    static final Pattern NUMBER =
            Pattern.compile("([+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?: ?E ?[+-]?\\d{1,3})?)(?: ?(?:V|A|W|OHM|C|HZ))?");

    private Form() {}
}
