/**
 * Arming, switching on, first power, and the order of switching off, with everything read back. This is the only
 * place that commands the supply's output. All of it runs on the scheduler; only {@code Power.cutOff} may come from any
 * thread.
 */
package railwitness.safety.power;
