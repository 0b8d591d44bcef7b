package railwitness.logger.reporting.chart;

import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.util.List;

/** Writes the number of a place as its name; nothing where there is none. */
final class PlaceNames extends NumberFormat {
    private final List<String> names;

    PlaceNames(List<String> names) {
        this.names = List.copyOf(names);
    }

    @Override
    public StringBuffer format(double number, StringBuffer to, FieldPosition at) {
        int place = (int) Math.round(number);
        boolean whole = Math.abs(number - place) < 1e-6;
        return to.append(whole && place >= 1 && place <= names.size() ? names.get(place - 1) : "");
    }

    @Override
    public StringBuffer format(long number, StringBuffer to, FieldPosition at) {
        return format((double) number, to, at);
    }

    @Override
    public Number parse(String text, ParsePosition at) {
        throw new UnsupportedOperationException("names of places are only written");
    }
}
