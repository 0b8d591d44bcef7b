package railwitness.logger.ui.command;

/** Something the person gave cannot be used. The message is one line that says what to do. */
final class BadInput extends RuntimeException {
    BadInput(String message) {
        super(message);
    }
}
