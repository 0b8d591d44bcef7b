/**
 * The bench sheet and the bench it describes: which instrument stands on which port, what it reads and how well, and
 * what the person reads or switches by hand.
 */
package railwitness.drivers.bench;
