/**
 * The hash chain that makes a touched session show itself: every record is fed in, in recording order, as bytes that do
 * not depend on how the record happens to be stored.
 */
package railwitness.logger.recording.store.chain;
