package railwitness.logger.ui.screen.form;

import java.math.BigDecimal;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import railwitness.drivers.sheet.TomlLexer;
import railwitness.logger.recording.sheet.SheetKeys;
import railwitness.logger.ui.screen.widgets.Numbers;

/**
 * A value as it stands in a sheet and as a person reads and writes it: numbers in the person's locale, texts without
 * quotes, lists without brackets. What makes no sense goes into the sheet as a text, so that the sheet's reader says what
 * is wrong.
 */
final class FieldText {
    private FieldText() {}

    /** As it is read by a person. */
    static String shown(SheetKeys.Field field) {
        return shown(field, false);
    }

    /** @param percent a share is shown in per cent */
    static String shown(SheetKeys.Field field, boolean percent) {
        String literal = field.literal();
        return switch (field.note().type()) {
            case "text" ->
                TomlLexer.texts(literal).stream()
                        .findFirst()
                        .map(text -> controls(text) ? TomlLexer.quoted(text) : text)
                        .orElse(literal);
            case "texts" ->
                TomlLexer.texts(literal).stream()
                        .map(item -> hidden(item) ? TomlLexer.quoted(item) : item)
                        .collect(Collectors.joining("; "));
            case "number", "whole number" -> percent ? percent(literal) : number(literal);
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
        return literal(field, typed, false);
    }

    /** @param percent a share is written in per cent */
    static String literal(SheetKeys.Field field, String typed, boolean percent) {
        String text = typed.strip();
        if (text.isEmpty()) {
            return "";
        }
        return switch (field.note().type()) {
            case "texts" -> texts(text);
            case "number", "whole number" -> numberLiteral(text, field.note().unit(), percent);
            case "numbers" -> numbers(text, field.note().unit());
            case "true or false" -> text.matches("true|false") ? text : quoted(text);
            case "date" -> text.matches("\\d{4}-\\d{2}-\\d{2}") ? text : quoted(text);
            default -> quoted(text);
        };
    }

    private static String number(String literal) {
        OptionalDouble number = Numbers.parsed(literal.replace("_", ""));
        return number.isPresent() ? Numbers.plain(number.getAsDouble()) : literal.replaceAll("^\"|\"$", "");
    }

    private static String percent(String literal) {
        OptionalDouble number = Numbers.parsed(literal.replace("_", ""));
        return number.isPresent()
                ? Numbers.of(BigDecimal.valueOf(number.getAsDouble())
                        .scaleByPowerOfTen(2)
                        .stripTrailingZeros())
                : number(literal);
    }

    private static String numberLiteral(String typed, String unit, boolean percent) {
        OptionalDouble number = TypedNumber.of(typed, unit, percent);
        return number.isPresent()
                ? BigDecimal.valueOf(number.getAsDouble()).stripTrailingZeros().toPlainString()
                : quoted(typed);
    }

    /** A point between digits is read by everybody, so a comma between numbers is taken unless the locale needs it. */
    private static String numbers(String typed, String unit) {
        return parts(typed, typed.contains(";") ? ";" : separator()).stream()
                .map(part -> numberLiteral(part, unit, false))
                .collect(Collectors.joining(", ", "[", "]"));
    }

    private static String separator() {
        char point = DecimalFormatSymbols.getInstance(Locale.getDefault(Locale.Category.FORMAT))
                .getDecimalSeparator();
        return point == ',' ? ";" : ",";
    }

    private static String texts(String typed) {
        List<String> all = items(typed);
        return all.size() == 1
                ? TomlLexer.quoted(all.get(0))
                : all.stream().map(TomlLexer::quoted).collect(Collectors.joining(", ", "[", "]"));
    }

    private static List<String> parts(String text, String separator) {
        return List.of(text.split(separator)).stream()
                .map(String::strip)
                .filter(part -> !part.isEmpty())
                .toList();
    }

    /** Whether it must be shown in quotes so that it comes back as it is. */
    private static boolean hidden(String item) {
        return item.isEmpty()
                || item.contains(";")
                || item.startsWith("\"")
                || !item.equals(item.strip())
                || controls(item);
    }

    private static boolean controls(String text) {
        return text.chars().anyMatch(Character::isISOControl);
    }

    /** Items between semicolons; one in quotes may hold semicolons of its own. */
    private static List<String> items(String typed) {
        List<String> all = new ArrayList<>();
        String rest = typed.strip();
        while (!rest.isEmpty()) {
            int end = rest.startsWith("\"") ? TomlLexer.tokens(rest).get(0).to() : 0;
            boolean string = end > 1 && rest.substring(end).matches("\\s*(;(?s:.*))?");
            int next = rest.indexOf(';', string ? end : 0);
            String item = rest.substring(0, next < 0 ? rest.length() : next).strip();
            if (!item.isEmpty()) {
                all.add(string ? TomlLexer.texts(item).get(0) : item);
            }
            rest = next < 0 ? "" : rest.substring(next + 1).strip();
        }
        return all;
    }

    private static String quoted(String text) {
        boolean escaped = TomlLexer.tokens(text).size() == 1
                && TomlLexer.texts(text).stream().anyMatch(FieldText::controls);
        return escaped ? text : TomlLexer.quoted(text);
    }
}
