package railwitness.logger.ui.screen.stage;

/**
 * A bench that is watched before there is power.
 *
 * @param answering how many of its instruments answer
 * @param all how many it has
 * @param supplySaysOff true only where its supply answers and says itself that its output is off
 */
public record AtRest(int answering, int all, boolean supplySaysOff) {}
