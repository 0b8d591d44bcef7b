package railwitness.logger.ui.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;

/** What a command said and how it ended. */
record Said(int exitCode, String out, String err) {
    static Said by(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exitCode = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
        return new Said(exitCode, out.toString(), err.toString());
    }

    JsonNode json() {
        try {
            return new ObjectMapper().readTree(out);
        } catch (JsonProcessingException e) {
            throw new AssertionError("not JSON: " + out + err, e);
        }
    }
}
