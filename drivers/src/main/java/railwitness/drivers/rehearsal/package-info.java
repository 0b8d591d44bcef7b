/**
 * The virtual bench: a step-up converter worked out from its physics, with faults, behind virtual SCPI instruments. It
 * is reached in the same process or over real pseudo-terminals. It knows a {@link
 * railwitness.drivers.converter.Specimen}, never a design sheet.
 */
package railwitness.drivers.rehearsal;
