package railwitness.drivers.bench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.Peer;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.scpi.Exchange;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.VirtualScheduler;

/** A bench of scripted peers on a virtual scheduler; counts the lines left open. */
final class TestBench {
    final VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);
    final Map<String, ScriptedPeer> peers = new TreeMap<>();
    private final Map<String, Peer> deaf = new TreeMap<>();
    final List<PortSettings> opened = new ArrayList<>();
    final List<Exchange> log = new ArrayList<>();
    int open;

    TestBench peer(String port, ScriptedPeer peer) {
        peers.put(port, peer);
        return this;
    }

    /** Stands in the place of a scripted one on this port. */
    void deaf(String port, Peer peer) {
        deaf.put(port, peer);
    }

    Bench open(String toml) {
        return Bench.open(
                Sheet.of("bench.toml", toml).read(BenchSheet::from),
                this::line,
                scheduler,
                WorkerMaker.inline(scheduler),
                log::add);
    }

    private Line line(PortSettings settings) {
        Peer peer = deaf.getOrDefault(settings.port(), peers.get(settings.port()));
        if (peer == null) {
            throw new LineException(Trouble.NO_SUCH_PORT, settings.port() + ": no such port", "", "");
        }
        opened.add(settings);
        open++;
        return new CountedLine(new PeerLine(settings.port(), peer, scheduler), () -> open--);
    }
}
