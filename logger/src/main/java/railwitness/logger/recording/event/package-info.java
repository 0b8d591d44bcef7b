/**
 * What happens in a session: each event with its numbers, its form in the file, and its words, which are made when it is
 * shown. It knows neither the file nor the run.
 */
package railwitness.logger.recording.event;
