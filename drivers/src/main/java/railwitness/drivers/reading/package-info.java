/**
 * What an instrument said, and when. A reading is a number, an overload, or a silence with its reason; it is never
 * altered after it was taken.
 */
package railwitness.drivers.reading;
