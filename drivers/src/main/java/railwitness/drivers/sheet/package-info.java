/**
 * Reading a sheet (TOML) with the place of every key. Every key that is asked for says its type, range and meaning; all
 * faults of a sheet are found in one reading and named by file, line, key, value and what is allowed.
 */
package railwitness.drivers.sheet;
