/** Text that came from outside, such as names, remarks and answers of instruments, on its way to people and tables. */
package railwitness.logger.text;
