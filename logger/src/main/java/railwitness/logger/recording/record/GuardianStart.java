package railwitness.logger.recording.record;

import java.util.ArrayList;
import java.util.List;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.line.SerialPorts;
import railwitness.safety.guardian.Guardian;
import railwitness.safety.guardian.GuardianException;
import railwitness.safety.guardian.GuardianTask;

/** Starts the guardian of a real bench with the ready-made bytes of its supply and loads. */
public final class GuardianStart {
    private GuardianStart() {}

    /**
     * Where it cannot be had, as on a system that gives a port to one program only, the bench sheet can accept in words
     * that nobody switches off when this program dies.
     *
     * @throws GuardianException when it cannot reach the ports and the sheet does not accept that; there is no power then
     */
    public static Guard of(Bench bench) {
        if (bench.sheet().isSetByHand()) {
            String accepted = bench.sheet()
                    .acceptedWithoutGuardian()
                    .orElseThrow(() -> new GuardianException(
                            "no guardian can switch off a supply that has only knobs;"
                                    + " without_guardian under [bench] on the bench sheet accepts that in words",
                            null));
            return Guard.none("nothing switches off when this program dies (the supply has only knobs); the bench sheet"
                    + " accepts it: " + accepted);
        }
        GuardianTask orders = orders(bench);
        try {
            return Guard.of(Guardian.start(orders));
        } catch (GuardianException e) {
            String accepted = bench.sheet()
                    .acceptedWithoutGuardian()
                    .orElseThrow(() -> new GuardianException(
                            e.getMessage() + "; where it cannot be had, without_guardian under [bench] on the bench"
                                    + " sheet accepts that in words",
                            e));
            return Guard.none("nothing switches off when this program dies (" + e.getMessage()
                    + "); the bench sheet accepts it: " + accepted);
        }
    }

    private static GuardianTask orders(Bench bench) {
        Supply supply = bench.supply().instrument();
        List<GuardianTask.Load> loads = new ArrayList<>();
        for (InstrumentWorker<Load> load : bench.loads().values()) {
            loads.add(new GuardianTask.Load(
                    port(bench, load.name()), load.instrument().offBytes()));
        }
        return new GuardianTask(
                bench.sheet().patience(),
                List.of(new GuardianTask.Supply(port(bench, supply.name()), supply.offBytes(), supply.askOnBytes())),
                loads);
    }

    private static String port(Bench bench, String instrument) {
        return SerialPorts.device(
                bench.sheet().instrument(instrument).orElseThrow().port().port());
    }
}
