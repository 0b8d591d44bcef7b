package railwitness.drivers.instrument;

import java.util.function.Predicate;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.scpi.Dialogue;
import railwitness.drivers.scpi.Numeric;

/** Questions asked once when an instrument is introduced, to learn whether it knows them. */
final class Trial {
    private final Dialogue dialogue;

    Trial(Dialogue dialogue) {
        this.dialogue = dialogue;
    }

    /**
     * True when the reply fits. One that is refused, unanswered or unfit leaves no error behind in the instrument.
     *
     * @throws LineException when the port has gone or something more urgent was sent
     */
    boolean answers(String question, Predicate<String> fits) {
        try {
            if (fits.test(dialogue.ask(question).strip())) {
                return true;
            }
            dialogue.doubt();
        } catch (LineException e) {
            if (e.trouble() != Trouble.NO_ANSWER && e.trouble() != Trouble.GARBLED) {
                throw e;
            }
        }
        dialogue.drain();
        return false;
    }

    /** {@link #answers} for a number. */
    boolean answersNumber(String question) {
        return answers(question, Trial::isNumber);
    }

    private static boolean isNumber(String reply) {
        return isNumber(reply, ReplyForm.standard());
    }

    private static boolean isNumber(String reply, ReplyForm form) {
        try {
            Numeric.of(form.number(reply));
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** @throws LineException when it does not answer what no run can do without, saying what to do */
    void needs(String question, String what) {
        if (!answersNumber(question)) {
            throw essential(dialogue, question, what);
        }
    }

    /** {@link #needs} of a reply in that form. */
    void needs(String question, ReplyForm form, String what) {
        if (!answers(question, reply -> isNumber(reply, form))) {
            throw essential(dialogue, question, what);
        }
    }

    static LineException essential(Dialogue dialogue, String question, String what) {
        return new LineException(
                Trouble.WRONG_INSTRUMENT,
                dialogue.instrument() + " on " + dialogue.port() + ": it says who it is, but does not answer '"
                        + question
                        + "', and without " + what + " there is no run; is it the instrument that the bench sheet says?"
                        + " Where it is and only speaks otherwise, give its words in a dialect of its own"
                        + " (dialect = \"mine.toml\" on the bench sheet)",
                question,
                "");
    }
}
