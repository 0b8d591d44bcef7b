package railwitness.logger.reporting.certificate;

import java.util.Locale;

/** What a certificate states that no session knows: people are asked for it, and 'not stated' stands where it is lacking. */
public enum Particular {
    WORKSHOP("Laboratory", true, "laboratory or workshop that tested"),
    ADDRESS("Address", true, "address of the laboratory"),
    PLACE("Place of test", true, "where it was tested, where that is not the address"),
    CUSTOMER("Customer", false, "whose unit it is"),
    CUSTOMER_ADDRESS("Customer's address", false, "address of the customer"),
    RECEIVED("Received", false, "day on which the unit was received, such as 2026-03-27"),
    AMBIENT("Ambient", false, "ambient temperature with its uncertainty, such as '21.3 degC, U 0.5'"),
    SPECIFICATION("Specification", false, "specification with its issue, where it is more than the design sheet"),
    AUTHORISED_BY("Authorised by", true, "who authorises the certificate"),
    FUNCTION("Function", true, "function of that person");

    private final String label;
    private final boolean remembered;
    private final String words;

    Particular(String label, boolean remembered, String words) {
        this.label = label;
        this.remembered = remembered;
        this.words = words;
    }

    /** As it stands on paper. */
    public String label() {
        return label;
    }

    /** Whether it stays the same from unit to unit. */
    public boolean isRemembered() {
        return remembered;
    }

    /** What it is, in words, for those who are asked. */
    public String words() {
        return words;
    }

    /** In options and files: lower case, a hyphen between words. */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
