/**
 * What a meter, a supply, a load and a scope can do, whatever their maker. The mnemonics in which models differ are
 * dialects, kept as data. Calls block until the instrument has answered or the deadline passed; a {@link
 * railwitness.drivers.instrument.InstrumentWorker} runs them on the instrument's own thread.
 */
package railwitness.drivers.instrument;
