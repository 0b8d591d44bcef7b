package railwitness.logger.record;

import java.util.ArrayList;
import java.util.List;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.Station;
import railwitness.drivers.instrument.Supply;
import railwitness.safety.guardian.Guardian;
import railwitness.safety.guardian.Orders;

/** Starts the guardian of a real bench with the ready-made bytes of its supply and loads. */
public final class GuardianStart {
    private GuardianStart() {}

    /** @throws railwitness.safety.guardian.GuardianException when it cannot reach the ports; there is no power then */
    public static Guard of(Bench bench) {
        Supply supply = bench.supply().instrument();
        List<Orders.Load> loads = new ArrayList<>();
        for (Station<Load> load : bench.loads().values()) {
            loads.add(
                    new Orders.Load(port(bench, load.name()), load.instrument().offBytes()));
        }
        Orders orders = new Orders(
                bench.sheet().patience(),
                List.of(new Orders.Supply(port(bench, supply.name()), supply.offBytes(), supply.askOnBytes())),
                loads);
        return Guard.of(Guardian.start(orders));
    }

    private static String port(Bench bench, String instrument) {
        return bench.sheet().instrument(instrument).orElseThrow().port().port();
    }
}
