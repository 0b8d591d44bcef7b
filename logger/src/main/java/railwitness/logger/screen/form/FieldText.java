package railwitness.logger.screen.form;

import java.math.BigDecimal;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import railwitness.logger.screen.paper.Numbers;
import railwitness.logger.sheet.SheetKeys;

/**
 * A value as it stands in a sheet and as a person reads and writes it: numbers in the person's locale, texts without
 * quotes, lists without brackets. What makes no sense goes into the sheet as a text, so that the sheet's reader says what
 * is wrong.
 */
final class FieldText {
    private static final Pattern QUOTED = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"|'([^']*)'");

    private FieldText() {}

    /** As it is read by a person. */
    static String shown(SheetKeys.Field field) {
        String literal = field.literal();
        return switch (field.note().type()) {
            case "text" -> unquoted(literal).stream().findFirst().orElse(literal);
            case "texts" -> String.join("; ", unquoted(literal));
            case "number", "whole number" -> number(literal);
            case "numbers" ->
                literal.startsWith("[")
                        ? parts(literal.replaceAll("[\\[\\]]", ""), ",").stream()
                                .map(FieldText::number)
                                .collect(Collectors.joining(separator() + " "))
                        : literal;
            default -> literal.replaceAll("^\"|\"$", "");
        };
    }

    /** As it is written into the sheet; empty for nothing. */
    static String literal(SheetKeys.Field field, String typed) {
        String text = typed.strip();
        if (text.isEmpty()) {
            return "";
        }
        return switch (field.note().type()) {
            case "texts" -> texts(text);
            case "number", "whole number" -> numberLiteral(text);
            case "numbers" -> numbers(text);
            case "true or false" -> text.matches("true|false") ? text : quoted(text);
            case "date" -> text.matches("\\d{4}-\\d{2}-\\d{2}") ? text : quoted(text);
            default -> quoted(text);
        };
    }

    private static String number(String literal) {
        OptionalDouble number = Numbers.parsed(literal.replace("_", ""));
        return number.isPresent() ? Numbers.plain(number.getAsDouble()) : literal.replaceAll("^\"|\"$", "");
    }

    private static String numberLiteral(String typed) {
        OptionalDouble number = Numbers.parsed(typed);
        return number.isPresent()
                ? BigDecimal.valueOf(number.getAsDouble()).stripTrailingZeros().toPlainString()
                : quoted(typed);
    }

    /** A point between digits is read by everybody, so a comma between numbers is taken unless the locale needs it. */
    private static String numbers(String typed) {
        return parts(typed, typed.contains(";") ? ";" : separator()).stream()
                .map(FieldText::numberLiteral)
                .collect(Collectors.joining(", ", "[", "]"));
    }

    private static String separator() {
        char point = DecimalFormatSymbols.getInstance(Locale.getDefault(Locale.Category.FORMAT))
                .getDecimalSeparator();
        return point == ',' ? ";" : ",";
    }

    private static String texts(String typed) {
        List<String> all = parts(typed, ";");
        return all.size() == 1
                ? quoted(all.get(0))
                : all.stream().map(FieldText::quoted).collect(Collectors.joining(", ", "[", "]"));
    }

    private static List<String> parts(String text, String separator) {
        return List.of(text.split(separator)).stream()
                .map(String::strip)
                .filter(part -> !part.isEmpty())
                .toList();
    }

    private static List<String> unquoted(String literal) {
        List<String> all = new ArrayList<>();
        Matcher matcher = QUOTED.matcher(literal);
        while (matcher.find()) {
            all.add(
                    matcher.group(2) != null
                            ? matcher.group(2)
                            : matcher.group(1).replaceAll("\\\\(.)", "$1"));
        }
        return all;
    }

    private static String quoted(String text) {
        return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
    }
}
