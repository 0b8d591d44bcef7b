package railwitness.logger.ui.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Assumptions;
import railwitness.drivers.line.Peer;
import railwitness.drivers.line.PeerTerminal;
import railwitness.drivers.line.PseudoTerminal;

/** Ten test instruments on real pseudo-terminals around a {@link TableUnit}, with a bench sheet that fits them. */
final class TableBench implements AutoCloseable {
    private final List<PeerTerminal> terminals = new ArrayList<>();
    private final StringBuilder sheet = new StringBuilder("""
            [bench]
            name = "Table of a simulation"
            lead_resistance_ohm = 0.020
            interval_s = 0.25
            patience_s = 8
            """);
    private final Map<String, DoubleUnaryOperator> forged;
    final TableUnit unit;
    final TableInstrument supply;

    TableBench() throws IOException {
        this(Map.of());
    }

    /** @param forged what becomes of a meter's value, by channel */
    TableBench(Map<String, DoubleUnaryOperator> forged) throws IOException {
        this.forged = forged;
        if (!PseudoTerminal.available()) {
            System.out.println("skipped: this system has no pseudo-terminals");
        }
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        unit = new TableUnit(ReferenceConverter.table());
        supply = TableInstrument.supply(unit);
        instrument("supply", "supply", "drives_remote = true", supply);
        meter("input.voltage", "vin_avg_V");
        meter("input.current", "iin_avg_A");
        meter("plus.voltage", "vpos_avg_V");
        meter("minus.voltage", "vneg_avg_V");
        meter("plus.ripple", "ripple_pos_rms_V");
        meter("minus.ripple", "ripple_neg_rms_V");
        for (String rail : List.of("plus", "minus")) {
            instrument(rail + " load", "load", "rail = \"" + rail + "\"", TableInstrument.load(unit, rail));
        }
    }

    private void meter(String channel, String column) {
        instrument(
                channel.replace('.', ' ') + " meter",
                "meter",
                "reads = \"" + channel + "\"",
                TableInstrument.meter(() -> forged.getOrDefault(channel, v -> v).applyAsDouble(unit.shows(column))));
    }

    private void instrument(String name, String kind, String line, Peer peer) {
        PeerTerminal terminal = new PeerTerminal(name, peer, "\n");
        terminals.add(terminal);
        sheet.append("[[instrument]]\nname = \"")
                .append(name)
                .append("\"\nkind = \"")
                .append(kind)
                .append("\"\nport = \"")
                .append(terminal.device())
                .append("\"\nbaud = 115200\ndialect = \"scpi-1999\"\n")
                .append(line)
                .append('\n');
    }

    Path sheet(Path file) throws IOException {
        return Files.writeString(file, sheet);
    }

    @Override
    public void close() {
        terminals.forEach(PeerTerminal::close);
    }
}
