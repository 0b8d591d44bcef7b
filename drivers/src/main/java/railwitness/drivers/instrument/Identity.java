package railwitness.drivers.instrument;

/** The four fields of {@code *IDN?} (IEEE 488.2); a field not known is "0". */
public record Identity(String maker, String model, String serial, String firmware) {}
