package railwitness.logger.recording.event;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;
import railwitness.safety.interlock.Limits;
import railwitness.safety.interlock.Trip;
import railwitness.safety.power.FirstPowerEnd;

class EventFormTest {
    private static final SessionEvent HIGH_RAIL = new SessionEvent.Tripped(
            Trip.Kind.OUTSIDE,
            "minus rail",
            Optional.of(new Trip.Beyond(
                    Optional.of(Channel.of("minus.voltage")), OptionalDouble.of(45.06), "V", Limits.atMost(42))),
            "");

    /** The line of {@code docs/session-file.md}. */
    @Test
    void aTripStandsInTheFileWithItsNumbers() {
        assertThat(EventForm.text(HIGH_RAIL))
                .isEqualTo("{\"form\":2,\"is\":\"tripped\",\"cause\":\"OUTSIDE\",\"subject\":\"minus rail\","
                        + "\"beyond\":{\"channel\":\"minus.voltage\",\"value\":45.06,\"unit\":\"V\","
                        + "\"allowed\":{\"low\":\"-Infinity\",\"high\":42.0}},\"said\":\"\"}");
        assertThat(HIGH_RAIL.words()).isEqualTo("minus rail is 45.06 V, allowed is at most 42 V");
    }

    @Test
    void whateverAnEventHoldsIsReadBack() throws ReflectiveOperationException {
        long seed = System.nanoTime();
        Random random = new Random(seed);
        for (int round = 0; round < 50; round++) {
            for (Class<?> type : SessionEvent.class.getPermittedSubclasses()) {
                SessionEvent event = (SessionEvent) made(type, random);
                if (!(event instanceof SessionEvent.Earlier)) {
                    assertThat(EventForm.event(event.what(), EventForm.text(event)))
                            .as("seed " + seed)
                            .isEqualTo(event);
                }
            }
        }
    }

    @Test
    void sentencesOfEarlierSessionsStayAsTheyAre() {
        SessionEvent earlier = EventForm.event("trip", "plus rail is 45 V, allowed is at most 42 V");
        assertThat(earlier.is(EventKind.TRIP)).isTrue();
        assertThat(earlier.words()).isEqualTo("plus rail is 45 V, allowed is at most 42 V");
        assertThat(EventForm.text(earlier)).isEqualTo(earlier.words());
    }

    @Test
    void whatIsNoEventOfThisFormIsShownAsItStands() {
        String good = EventForm.text(HIGH_RAIL);
        for (String text : List.of(
                good.substring(0, good.length() - 3),
                good.replace("tripped", "nobody"),
                good.replace("OUTSIDE", "BESIDE"),
                good.replace("\"high\":42.0", "\"high\":\"x\""),
                good.replace("\"value\":45.06", "\"value\":\"much\""),
                "{\"form\":2,}",
                "{\"form\":3,\"is\":\"tripped\"}",
                "{\"form\":2," + "\"end\":[".repeat(5000))) {
            assertThat(EventForm.event("trip", text)).isEqualTo(new SessionEvent.Earlier("trip", text));
        }
        assertThat(EventForm.event("off", good)).isInstanceOf(SessionEvent.Earlier.class);
    }

    @Test
    void everyPartOfEveryEventIsDocumented() throws IOException {
        String page = Files.readString(Path.of("docs", "session-file.md"));
        for (Class<?> sealed : List.of(SessionEvent.class, FirstPowerEnd.class)) {
            for (Class<?> type : sealed.getPermittedSubclasses()) {
                if (type != SessionEvent.Earlier.class) {
                    String parts = Arrays.stream(type.getRecordComponents())
                            .map(part -> "`" + part.getName() + "`")
                            .reduce((one, other) -> one + ", " + other)
                            .orElseThrow();
                    assertThat(page).contains("| `" + EventForm.name(type) + "` | " + parts + " |");
                }
            }
        }
        for (EventKind kind : EventKind.values()) {
            assertThat(page).contains("`" + kind.name() + "`");
        }
    }

    private static Object made(Type type, Random random) throws ReflectiveOperationException {
        if (type instanceof ParameterizedType many) {
            Type of = many.getActualTypeArguments()[0];
            if (many.getRawType() == Optional.class) {
                return random.nextBoolean() ? Optional.of(made(of, random)) : Optional.empty();
            }
            return List.of(made(of, random), made(of, random));
        } else if (type == OptionalDouble.class) {
            return random.nextBoolean() ? OptionalDouble.of(random.nextGaussian()) : OptionalDouble.empty();
        } else if (type == double.class) {
            return random.nextInt(5) == 0 ? Double.POSITIVE_INFINITY : random.nextGaussian() * 1e3;
        } else if (type == boolean.class) {
            return random.nextBoolean();
        } else if (type == String.class) {
            return IntStream.range(0, random.nextInt(9))
                    .mapToObj(i -> Character.toString("a\"\\\n\u00e4\u2126{}:,".charAt(random.nextInt(10))))
                    .reduce("", String::concat);
        } else if (type == Channel.class) {
            return Channel.of("plus.voltage");
        } else if (type == Limits.class) {
            return Limits.atMost(random.nextDouble());
        }
        Class<?> plain = (Class<?>) type;
        Object[] choice = plain.isEnum() ? plain.getEnumConstants() : plain.getPermittedSubclasses();
        if (choice != null) {
            Object chosen = choice[random.nextInt(choice.length)];
            return plain.isEnum() ? chosen : made((Class<?>) chosen, random);
        }
        RecordComponent[] parts = plain.getRecordComponents();
        Object[] values = new Object[parts.length];
        for (int i = 0; i < parts.length; i++) {
            values[i] = made(parts[i].getGenericType(), random);
        }
        return plain.getDeclaredConstructor(
                        Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new))
                .newInstance(values);
    }
}
