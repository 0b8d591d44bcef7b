package railwitness.logger.screen.live;

import java.util.function.Consumer;

/**
 * Something a person is to do or to read.
 *
 * @param number a number is wanted, not only a key
 * @param answer told what was typed, on the run's thread
 */
public record Prompt(String sentence, boolean number, Consumer<String> answer) {}
