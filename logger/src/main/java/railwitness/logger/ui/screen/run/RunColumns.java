package railwitness.logger.ui.screen.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import railwitness.analysis.design.Rail;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * Which columns the sheet of this unit on this bench has.
 *
 * @param rails in the order of the design sheet
 * @param ripple rails of which the ripple is read
 * @param temperatures nodes of which the temperature is read
 */
record RunColumns(List<String> rails, List<String> ripple, List<String> temperatures) {
    static RunColumns of(Sheets sheets) {
        List<String> rails =
                sheets.design().content().rails().stream().map(Rail::name).toList();
        Set<Channel> read = sheets.bench().content().readBy().keySet();
        List<String> temperatures = read.stream()
                .filter(channel -> channel.quantity() == Quantity.TEMPERATURE)
                .map(Channel::node)
                .filter(node -> !node.equals("ambient"))
                .toList();
        List<String> ripple = rails.stream()
                .filter(rail -> read.contains(new Channel(rail, Quantity.RIPPLE)))
                .toList();
        return new RunColumns(rails, ripple, temperatures);
    }

    List<Column> columns() {
        List<Column> all = new ArrayList<>();
        all.add(Column.words(Words.of("run.step")));
        all.add(Column.numbers(Words.of("run.load"), "A").givingWay(2));
        all.add(Column.numbers(Words.of("run.input"), "V").givingWay(3));
        all.add(Column.numbers(Words.of("run.input"), "A").givingWay(1));
        rails.forEach(rail -> all.add(Column.numbers(RailNames.full(rail), "V")));
        ripple.forEach(rail -> all.add(Column.numbers(Words.of("run.ripple", RailNames.sign(rail)), "mV rms")
                .givingWay(5)));
        all.add(Column.numbers(Words.of("run.efficiency"), "%").givingWay(4));
        temperatures.forEach(node -> all.add(
                Column.numbers(Words.orElse("node." + node, node), "\u00b0C").givingWay(6)));
        return all;
    }
}
