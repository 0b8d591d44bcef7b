package railwitness.logger.recording.event;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;

/**
 * Events as they stand in a session's file: a line of JSON with the number of its form, the event's name ({@code is}) and
 * its parts under their names. What is in another form, or in none, is taken as an event of an earlier session: a word and
 * a sentence.
 */
public final class EventForm {
    /** The form that is written; the first was a bare sentence. */
    public static final int FORM = 2;

    private static final String IS = "is";
    private static final ObjectMapper JSON = new ObjectMapper();

    private EventForm() {}

    /** The event's text in the file. */
    public static String text(SessionEvent event) {
        if (event instanceof SessionEvent.Earlier earlier) {
            return earlier.said();
        }
        ObjectNode node = JsonNodeFactory.instance.objectNode().put("form", FORM);
        return parts(node, event).toString();
    }

    /** Reads an event back; whatever the text is, it becomes one. */
    public static SessionEvent event(String what, String text) {
        SessionEvent earlier = EarlierTrace.of(what, text).orElseGet(() -> new SessionEvent.Earlier(what, text));
        if (!text.startsWith("{\"form\":" + FORM + ",")) {
            return earlier;
        }
        try {
            SessionEvent event = (SessionEvent) sealed(SessionEvent.class, JSON.readTree(text));
            return event.what().equals(what) && !(event instanceof SessionEvent.Earlier) ? event : earlier;
        } catch (JsonProcessingException | ReflectiveOperationException | RuntimeException e) {
            return earlier; // no event of this program's: shown as it stands
        }
    }

    private static ObjectNode parts(ObjectNode node, Object value) {
        if (value.getClass().getInterfaces().length > 0) {
            node.put(IS, name(value.getClass()));
        }
        try {
            for (RecordComponent part : value.getClass().getRecordComponents()) {
                JsonNode written = written(part.getAccessor().invoke(value));
                if (!written.isNull()) {
                    node.set(part.getName(), written);
                }
            }
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the parts of an event can be read", e);
        }
        return node;
    }

    private static JsonNode written(Object value) {
        JsonNodeFactory nodes = JsonNodeFactory.instance;
        if (value instanceof Optional<?> optional) {
            return optional.isPresent() ? written(optional.get()) : nodes.nullNode();
        } else if (value instanceof OptionalDouble optional) {
            return optional.isPresent() ? written(optional.getAsDouble()) : nodes.nullNode();
        } else if (value instanceof Double number) {
            return Double.isFinite(number) ? nodes.numberNode(number) : nodes.textNode(number.toString());
        } else if (value instanceof Boolean yes) {
            return nodes.booleanNode(yes);
        } else if (value instanceof List<?> list) {
            ArrayNode array = nodes.arrayNode();
            list.forEach(one -> array.add(written(one)));
            return array;
        }
        return value instanceof Record && !(value instanceof Channel)
                ? parts(nodes.objectNode(), value)
                : nodes.textNode(word(value));
    }

    private static String word(Object value) {
        return value instanceof Enum<?> constant ? constant.name() : value.toString();
    }

    private static Object sealed(Class<?> type, JsonNode node) throws ReflectiveOperationException {
        String is = node.path(IS).asText();
        Class<?> found = Arrays.stream(type.getPermittedSubclasses())
                .filter(one -> name(one).equals(is))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("'" + is + "' is no event"));
        return made(found, node);
    }

    private static Object made(Class<?> type, JsonNode node) throws ReflectiveOperationException {
        RecordComponent[] parts = type.getRecordComponents();
        Object[] values = new Object[parts.length];
        for (int i = 0; i < parts.length; i++) {
            values[i] = read(parts[i].getGenericType(), node.path(parts[i].getName()));
        }
        return type.getDeclaredConstructor(
                        Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new))
                .newInstance(values);
    }

    private static Object read(Type type, JsonNode node) throws ReflectiveOperationException {
        if (type == OptionalDouble.class) {
            return node.isMissingNode() ? OptionalDouble.empty() : OptionalDouble.of(number(node));
        }
        if (type instanceof ParameterizedType many) {
            return several(many, node);
        }
        Class<?> plain = (Class<?>) type;
        if (node.isMissingNode()) {
            throw new IllegalArgumentException("a part is missing");
        }
        if (plain == double.class) {
            return number(node);
        } else if (plain == boolean.class) {
            return node.asBoolean();
        } else if (plain == String.class) {
            return node.asText();
        } else if (plain == Channel.class) {
            return Channel.of(node.asText());
        } else if (plain.isEnum()) {
            return constant(plain, node.asText());
        }
        return plain.isSealed() ? sealed(plain, node) : made(plain, node);
    }

    private static Object several(ParameterizedType type, JsonNode node) throws ReflectiveOperationException {
        Type of = type.getActualTypeArguments()[0];
        if (type.getRawType() == Optional.class) {
            return node.isMissingNode() ? Optional.empty() : Optional.of(read(of, node));
        }
        List<Object> list = new ArrayList<>();
        for (JsonNode one : node) {
            list.add(read(of, one));
        }
        return list;
    }

    private static double number(JsonNode node) {
        return node.isNumber() ? node.asDouble() : Double.parseDouble(node.asText());
    }

    private static Object constant(Class<?> type, String name) {
        return Arrays.stream(type.getEnumConstants())
                .filter(one -> ((Enum<?>) one).name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("'" + name + "' is not known"));
    }

    /** A class's name as words of lower case with hyphens: {@code first-power-ended}. */
    static String name(Class<?> type) {
        return type.getSimpleName().replaceAll("(?<!^)([A-Z])", "-$1").toLowerCase(java.util.Locale.ROOT);
    }
}
