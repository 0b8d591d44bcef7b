/**
 * What is done, in which order: a plan is a list of stages, each of which becomes steps once the unit's rating is
 * known. A step is one state of the bench that is held, settled and averaged.
 */
package railwitness.logger.recording.plan;
