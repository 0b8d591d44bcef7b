package railwitness.safety.guardian;

import java.io.FileOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A program that is to die: guarded, beating ten times a second. Arguments: how it ends (beat, exit, disarm, half),
 * MB of heap to touch, the supply's device, the loads' devices.
 */
final class Victim {
    private static final List<byte[]> HEAP = new ArrayList<>();

    private Victim() {}

    public static void main(String[] arguments) throws Exception {
        for (int i = 0; i < Integer.parseInt(arguments[1]); i++) {
            HEAP.add(new byte[1 << 20]);
            HEAP.get(i)[0] = 1;
        }
        List<GuardianTask.Load> loads = new ArrayList<>();
        for (int i = 3; i < arguments.length; i++) {
            loads.add(new GuardianTask.Load(arguments[i], ascii("\nINP OFF\n")));
        }
        GuardianTask.Supply supply = new GuardianTask.Supply(arguments[2], ascii("\nOUTP OFF\n"), ascii("OUTP?\n"));
        Guardian guardian = Guardian.start(new GuardianTask(GuardianTask.USUAL_PATIENCE, List.of(supply), loads));
        System.out.println("ready");
        end(arguments[0], guardian, arguments[2]);
        while (true) {
            guardian.beat();
            TimeUnit.MILLISECONDS.sleep(100);
        }
    }

    private static void end(String how, Guardian guardian, String device) throws Exception {
        switch (how) {
            case "exit" -> System.exit(1);
            case "disarm" -> {
                System.out.println("disarmed " + guardian.disarm());
                System.exit(0);
            }
            case "half" -> {
                try (FileOutputStream port = new FileOutputStream(device)) {
                    port.write(ascii("VOLT 1"));
                }
                Runtime.getRuntime().halt(9);
            }
            default -> {
                // it beats until it is killed
            }
        }
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
