-- Schema 1 of a Railwitness session. See docs/session-file.md.
CREATE TABLE session (
  seq INTEGER PRIMARY KEY, id TEXT, started_wall TEXT, zone TEXT, rehearsal INTEGER, program_version TEXT,
  acknowledged_by TEXT, unit_name TEXT, unit_serial TEXT, unit_condition TEXT);
CREATE TABLE channel (seq INTEGER PRIMARY KEY, name TEXT, unit TEXT);
CREATE TABLE reason (seq INTEGER PRIMARY KEY, text TEXT);
CREATE TABLE sheet (seq INTEGER PRIMARY KEY, kind TEXT, file_name TEXT, text TEXT, digest BLOB);
CREATE TABLE instrument (
  seq INTEGER PRIMARY KEY, name TEXT, kind TEXT, port TEXT, dialect TEXT,
  maker TEXT, model TEXT, serial TEXT, firmware TEXT, accuracy TEXT);
CREATE TABLE step (
  seq INTEGER PRIMARY KEY, stage TEXT, step TEXT, begin_ns INTEGER, average_from_ns INTEGER, average_to_ns INTEGER,
  settled INTEGER, outcome TEXT, reason TEXT, input_volts REAL);
CREATE TABLE step_load (seq INTEGER PRIMARY KEY, step INTEGER, rail TEXT, amps REAL);
CREATE TABLE event (seq INTEGER PRIMARY KEY, at_ns INTEGER, what TEXT, text TEXT);
CREATE TABLE exchange (
  seq INTEGER PRIMARY KEY, at_ns INTEGER, instrument TEXT, sent TEXT, received TEXT, trouble TEXT);
CREATE TABLE waveform (
  seq INTEGER PRIMARY KEY, at_ns INTEGER, channel INTEGER, start_seconds REAL, step_seconds REAL, samples BLOB);
CREATE TABLE note (seq INTEGER PRIMARY KEY, at_ns INTEGER, author TEXT, text TEXT);
CREATE TABLE anchor (seq INTEGER PRIMARY KEY, at_ns INTEGER, wall TEXT);
CREATE TABLE ending (seq INTEGER PRIMARY KEY, at_ns INTEGER, state TEXT);
CREATE TABLE reading (
  seq INTEGER PRIMARY KEY, channel INTEGER, requested_ns INTEGER, replied_ns INTEGER, value, reason INTEGER);
CREATE TABLE block (
  first_seq INTEGER PRIMARY KEY, channel INTEGER, readings INTEGER, from_ns INTEGER, to_ns INTEGER, packed BLOB);
CREATE INDEX block_by_time ON block (channel, from_ns);
CREATE TABLE summary (
  channel INTEGER, span_s INTEGER, start_s INTEGER, readings INTEGER, measured INTEGER,
  lowest REAL, highest REAL, total REAL, mean REAL GENERATED ALWAYS AS (total / measured) VIRTUAL,
  PRIMARY KEY (channel, span_s, start_s)) WITHOUT ROWID;
CREATE TABLE link (last_seq INTEGER PRIMARY KEY, at_ns INTEGER, digest BLOB);
