/** The manual on paper: the same documents that the window shows, set as certificates are. */
package railwitness.logger.reporting.manual;
