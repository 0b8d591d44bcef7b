/** Readings written down elsewhere, brought into a session file so that everything else reads them like its own. */
package railwitness.logger.recording.importing;
