/**
 * The clock of a session and the queue of things due on it: real, or virtual in one thread without waiting. Whatever
 * decides the order of events runs on the scheduler, so the same code serves a bench and a rehearsal.
 */
package railwitness.drivers.time;
