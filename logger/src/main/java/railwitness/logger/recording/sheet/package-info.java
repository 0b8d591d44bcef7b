/** Design sheet and plan as they stand in their files, read into the words of the rooms that use them. */
package railwitness.logger.recording.sheet;
