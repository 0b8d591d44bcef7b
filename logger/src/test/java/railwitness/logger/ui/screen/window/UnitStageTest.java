package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.logger.recording.sheet.Sheets;

/** Unit and plan in their forms, driven by keys. */
class UnitStageTest extends OnDisplay {
    @Test
    void newUnitIsFilledInFieldByField() {
        driver.key(KeyEvent.VK_N, KeyEvent.VK_CONTROL);
        driver.until("its name can be typed", () -> driver.focused("[unit] name"));
        String before = driver.text("line head");
        assertThat(before).startsWith("Still to be filled in");
        driver.key(KeyEvent.VK_A, KeyEvent.VK_CONTROL);
        driver.type("galley sound supply");
        driver.until("it is read", () -> design().unit().name().equals("galley sound supply"));
        assertThat(sheets().design().text()).contains("name = \"galley sound supply\"\n");
        assertThat(driver.text("line head")).isNotEqualTo(before);
        driver.picture("unit-new");
    }

    @Test
    void requirementIsAddedChosenAndTakenOut() {
        int before = design().requirements().size();
        driver.press("add requirement");
        driver.focus("[[requirement]] figure " + before);
        driver.type("standby");
        driver.focus("[[requirement]] at_most " + before);
        driver.type("2");
        driver.until("it is read", () -> design().requirements().size() == before + 1);
        assertThat(design().requirements().get(before).figure()).isEqualTo(FigureName.STANDBY_CURRENT);
        assertThat(design().requirements().get(before).atMost()).hasValue(2);
        driver.picture("unit-requirement");
        driver.press("take out [[requirement]] " + before);
        driver.until("it has gone", () -> design().requirements().size() == before);
    }

    @Test
    void valueThatCannotBeKeepsThePowerAwayUntilItIsMended() {
        driver.focus("[input] nominal_V");
        driver.key(KeyEvent.VK_END);
        driver.type("x");
        driver.until("it is said", () -> driver.text("line head").startsWith("Faults in the design sheet"));
        driver.key(KeyEvent.VK_3, KeyEvent.VK_CONTROL);
        assertThat(driver.window().present()).isEqualTo("unit");
        assertThat(driver.text("line head")).startsWith("The design sheet has faults");
        driver.key(KeyEvent.VK_BACK_SPACE);
        driver.until("it is in order", () -> {
            driver.key(KeyEvent.VK_3, KeyEvent.VK_CONTROL);
            return driver.window().present().equals("cautions");
        });
    }

    @Test
    void planIsChangedAndItsTimeIsSaid() {
        driver.press("the plan");
        driver.until("the plan is shown", () -> driver.named("[plan] average_s") != null);
        String before = driver.text("plan time");
        driver.focus("[plan] average_s");
        driver.key(KeyEvent.VK_A, KeyEvent.VK_CONTROL);
        driver.type("60");
        driver.until("the time is another", () -> !driver.text("plan time").equals(before));
        assertThat(driver.text("plan time")).startsWith("13 steps, about 12 min 55 s");
        driver.press("take out [[stage]] 5");
        driver.until("three steps less", () -> driver.text("plan time").startsWith("10 steps"));
        driver.press("add stage");
        driver.until("another stage", () -> driver.named("[[stage]] kind 5") != null);
        driver.focus("[[stage]] kind 5");
        driver.type("h");
        driver.until("a hold needs its time", () -> driver.text("line head").startsWith("Faults in the plan"));
        driver.focus("[[stage]] duration_s 5");
        driver.type("600");
        driver.until("the hold is planned", () -> driver.text("plan time").startsWith("12 steps, about 21 min"));
        driver.picture("unit-plan");
    }

    @Test
    void whatWasNotSavedIsNotLostUnasked() throws IOException {
        Path file = Files.writeString(
                folder.resolve("other.toml"), Sheets.newDesign().text());
        driver.focus("[unit] serial");
        driver.type("9");
        driver.until("it is read", () -> design().unit().serial().orElse("").startsWith("9"));
        driver.key(KeyEvent.VK_O, KeyEvent.VK_CONTROL);
        driver.type(file.toString(), KeyEvent.VK_A, KeyEvent.VK_ENTER);
        driver.until("it asks", () -> driver.focused("answer Keep this one"));
        driver.picture("unit-unsaved");
        driver.key(KeyEvent.VK_TAB);
        driver.key(KeyEvent.VK_SPACE);
        driver.until("the other is open", () -> design().unit().name().equals("Name of the unit"));
    }

    private Sheets sheets() {
        return driver.ask(() -> driver.window().desk().sheets());
    }

    private Design design() {
        return sheets().design().content();
    }
}
