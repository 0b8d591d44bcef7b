/** Every instrument at every moment of a whole session with every trouble: does it end off, told and kept? */
package railwitness.logger.campaign;
