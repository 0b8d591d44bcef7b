package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A line that can be opened anew is, but for that, the line that it holds. */
class LastingLineTest {
    private static final Duration SOON = Duration.ofSeconds(1);

    private final List<String> told = new ArrayList<>();
    private int opened;

    /** Writes down what reaches it. */
    private Line line(PortSettings settings) {
        opened++;
        String number = opened + " ";
        return (Line)
                Proxy.newProxyInstance(Line.class.getClassLoader(), new Class<?>[] {Line.class}, (me, call, given) -> {
                    told.add(number
                            + call.getName()
                            + (given != null && given[0] instanceof String word ? " " + word : ""));
                    if (call.getReturnType() == boolean.class) {
                        return true;
                    }
                    return call.getReturnType() == List.class ? List.of("late") : null;
                });
    }

    private LastingLine lasting() {
        return new LastingLine(this::line, PortSettings.usual("A"));
    }

    @Test
    void everyCallReachesTheLineBehind() throws InvocationTargetException, IllegalAccessException {
        LastingLine lasting = lasting();
        for (Method call : Line.class.getMethods()) {
            if (List.of("reopen", "reopenAt", "elsewhere", "backTo").contains(call.getName())) {
                continue;
            }
            told.clear();
            Object[] given = new Object[call.getParameterCount()];
            for (int i = 0; i < given.length; i++) {
                Class<?> type = call.getParameterTypes()[i];
                given[i] = type == String.class ? "X?" : type == Duration.class ? SOON : new byte[0];
            }
            call.invoke(lasting, given);
            assertThat(told).as(call.getName()).anyMatch(words -> words.startsWith("1 " + call.getName()));
        }
        assertThat(lasting.thrownAway()).containsExactly("late");
    }

    @Test
    void behindANewPortItsInstrumentIsLearntAgainBeforeAnythingItSaysCounts() {
        LastingLine lasting = lasting();
        lasting.getToKnow("Staithe Works,L2", SOON);
        told.clear();
        lasting.reopen();
        lasting.ask("*IDN?", SOON);
        lasting.ask("OUTP?", SOON);
        lasting.ask("OUTP?", SOON);
        assertThat(told)
                .containsExactly(
                        "1 close", "2 ask *IDN?", "2 getToKnow Staithe Works,L2", "2 ask OUTP?", "2 ask OUTP?");
    }

    @Test
    void itMayComeBackUnderAnotherNameAndKeepsIt() {
        List<String> opened = new ArrayList<>();
        LineOpener opener = settings -> {
            opened.add(settings.port());
            return line(settings);
        };
        List<String> known = new ArrayList<>(List.of("/dev/ttyX0", "/dev/ttyX7"));
        LastingLine lasting = new LastingLine(opener, PortSettings.usual("/dev/ttyX0"), () -> known);
        known.add("/dev/ttyX1");

        assertThat(lasting.elsewhere()).containsExactly("/dev/ttyX1");
        lasting.reopenAt("/dev/ttyX1");
        lasting.reopen();
        lasting.backTo("/dev/ttyX0");
        lasting.reopen();

        assertThat(opened).containsExactly("/dev/ttyX0", "/dev/ttyX1", "/dev/ttyX1", "/dev/ttyX0");
    }

    /** The search for a lost port disturbs no instrument that was there before, and a newcomer three times at most. */
    @Test
    void strangersAreLeftAlone() {
        List<String> known = new ArrayList<>(List.of("/dev/ttyX0", "/dev/ttyX1"));
        LastingLine lasting = new LastingLine(this::line, PortSettings.usual("/dev/ttyX0"), () -> known);
        assertThat(lasting.elsewhere()).isEmpty();
        known.add("/dev/ttyX2");
        for (int i = 0; i < 3; i++) {
            assertThat(lasting.elsewhere()).containsExactly("/dev/ttyX2");
        }
        assertThat(lasting.elsewhere()).isEmpty();
    }

    /** Adapters that were pulled out together may come back with each other's names. */
    @Test
    void whatWentAndCameBackIsAskedAnewAndSoAreAllWhereNamesWereExchanged() {
        List<String> known = new ArrayList<>(List.of("/dev/ttyX0", "/dev/ttyX1"));
        LastingLine lasting = new LastingLine(this::line, PortSettings.usual("/dev/ttyX0"), () -> known);
        known.remove("/dev/ttyX1");
        assertThat(lasting.elsewhere()).isEmpty();
        known.add("/dev/ttyX1");
        assertThat(lasting.elsewhere()).containsExactly("/dev/ttyX1");

        LastingLine exchanged = new LastingLine(this::line, PortSettings.usual("/dev/ttyX0"), () -> known);
        assertThat(exchanged.elsewhere()).isEmpty();
        told.clear();
        exchanged.backTo("/dev/ttyX0");
        assertThat(told).containsExactly("2 close");
        assertThat(exchanged.elsewhere()).containsExactly("/dev/ttyX1");
    }

    @Test
    void aSocketStaysAtItsAddress() {
        assertThat(new LastingLine(this::line, PortSettings.usual("tcp://bench:5025"), () -> List.of("/dev/ttyX1"))
                        .elsewhere())
                .isEmpty();
    }
}
