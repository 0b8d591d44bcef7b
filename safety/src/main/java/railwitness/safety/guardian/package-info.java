/**
 * The second small process that switches the supply off when the program dies or stands still. It holds ready-made
 * bytes and open ports, understands nothing of instruments, and needs nothing but the JDK, so that it starts fast and
 * stays small.
 */
package railwitness.safety.guardian;
