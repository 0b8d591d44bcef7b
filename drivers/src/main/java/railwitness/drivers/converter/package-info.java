/**
 * The physics of a virtual unit: what flows and how warm it gets, second by second. Knows a {@link
 * railwitness.drivers.converter.Specimen}, no wire, no instrument, no sheet.
 */
package railwitness.drivers.converter;
