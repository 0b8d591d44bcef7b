package railwitness.logger.ui.command;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.DoubleSupplier;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Peer;

/** The far end of one serial port: just enough of plain SCPI, hand-written, with nothing of the program's own in it. */
final class TableInstrument implements Peer {
    private interface Command {
        String carryOut(String parameter);
    }

    private final Map<String, Command> commands = new HashMap<>();
    private final List<String> heard = new CopyOnWriteArrayList<>();
    private String eventEnable = "0";

    private TableInstrument(String identity) {
        commands.put("*IDN?", p -> identity);
        commands.put("SYST:ERR?", p -> "0,\"No error\"");
        commands.put("*ESE", p -> {
            eventEnable = p;
            return null;
        });
        commands.put("*ESE?", p -> eventEnable);
        commands.put("*RST", p -> null);
        commands.put("*CLS", p -> null);
    }

    static TableInstrument meter(DoubleSupplier value) {
        TableInstrument meter = new TableInstrument("Wharfside,M6,1,1.0");
        meter.commands.put("READ?", p -> number(value.getAsDouble()));
        return meter;
    }

    static TableInstrument supply(TableUnit unit) {
        TableInstrument supply = new TableInstrument("Wharfside,S40,1,1.0");
        int[] channel = {1};
        Map<String, String> settings = new HashMap<>();
        supply.commands.put("INST:NSEL", p -> {
            channel[0] = Integer.parseInt(p);
            return null;
        });
        supply.commands.put("OUTP", p -> {
            if (channel[0] == 1) {
                unit.outputOn = p.equals("ON");
            } else {
                unit.remoteOn = p.equals("ON");
            }
            return null;
        });
        supply.commands.put("OUTP?", p -> unit.outputOn ? "1" : "0");
        for (String setting : new String[] {"VOLT", "CURR", "VOLT:PROT", "CURR:PROT"}) {
            supply.commands.put(setting, p -> {
                if (channel[0] == 1) {
                    settings.put(setting, p);
                    unit.volts = Double.parseDouble(settings.getOrDefault("VOLT", "0"));
                }
                return null;
            });
            supply.commands.put(setting + "?", p -> settings.getOrDefault(setting, "0"));
        }
        supply.commands.put("MEAS:VOLT?", p -> number(unit.outputOn ? unit.volts : 0));
        supply.commands.put("MEAS:CURR?", p -> number(unit.shows("iin_avg_A")));
        supply.commands.put("STAT:QUES:COND?", p -> "0");
        return supply;
    }

    static TableInstrument load(TableUnit unit, String rail) {
        TableInstrument load = new TableInstrument("Wharfside,L5,1,1.0");
        String[] set = {"0"};
        boolean[] on = {false};
        Runnable draw = () -> unit.load(rail, on[0] ? Double.parseDouble(set[0]) : 0);
        load.commands.put("CURR", p -> {
            set[0] = p;
            draw.run();
            return null;
        });
        load.commands.put("CURR?", p -> set[0]);
        load.commands.put("INP", p -> {
            on[0] = p.equals("ON");
            draw.run();
            return null;
        });
        load.commands.put("INP?", p -> on[0] ? "1" : "0");
        load.commands.put("MEAS:CURR?", p -> number(unit.amps(rail)));
        load.commands.put("STAT:QUES:COND?", p -> "0");
        return load;
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%+.6E", value);
    }

    /** Every message so far, in its order. */
    List<String> heard() {
        return List.copyOf(heard);
    }

    @Override
    public synchronized Answer hear(String message) {
        heard.add(message);
        StringBuilder reply = new StringBuilder();
        for (String part : message.split(";")) {
            one(part.strip().replaceFirst("^:", ""))
                    .ifPresent(text -> reply.append(reply.isEmpty() ? "" : ";").append(text));
        }
        return reply.isEmpty() ? Answer.silence(Duration.ZERO) : Answer.of(reply.toString(), Duration.ofMillis(1));
    }

    private Optional<String> one(String part) {
        int space = part.indexOf(' ');
        String header = space < 0 ? part : part.substring(0, space);
        Command command = commands.getOrDefault(header, p -> null);
        return Optional.ofNullable(command.carryOut(space < 0 ? "" : part.substring(space + 1)));
    }
}
