/**
 * The evidence: one SQLite file for each session, written as it is recorded and read back at once. Nothing that was
 * recorded is ever altered; older minutes are packed without loss, summaries beside them let any SQLite tool plot a
 * session, and a hash chain says whether anything was touched. {@code docs/session-file.md} describes the file. This is
 * the only package that knows SQL.
 */
package railwitness.logger.recording.store;
