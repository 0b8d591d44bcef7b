/**
 * May the output stay on? Limits, ages and a trip that latches, worked out as the next state from an event. There is no
 * thread, port, file or clock here: times come with the events, so every case can be replayed.
 */
package railwitness.safety.interlock;
