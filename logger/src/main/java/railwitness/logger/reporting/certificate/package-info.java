/**
 * The paper that goes back with the unit: what was tested, how, with what, what was found, and the seal that ties it to
 * its session file. What a test report says is ISO/IEC 17025:2017, 7.8; the layout is our own.
 */
package railwitness.logger.reporting.certificate;
