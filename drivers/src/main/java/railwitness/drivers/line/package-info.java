/**
 * A wire to an instrument: bytes out, one terminated reply in, always with a deadline. One file here knows serial
 * ports; the others stand in for it in the same process.
 */
package railwitness.drivers.line;
