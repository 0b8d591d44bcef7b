package railwitness.logger.recording.store;

/** Anything a session keeps besides its readings. Entries are added and never altered. */
public sealed interface Entry
        permits SheetEntry, InstrumentEntry, StepEntry, EventEntry, ExchangeEntry, WaveformEntry, NoteEntry {}
