package railwitness.analysis.converter;

import java.util.LinkedHashMap;
import java.util.Map;

/** Works a push-pull step-up converter out at one operating point, from its parts. */
public final class Converter {
    private static final int ROUNDS = 12;
    private static final double SETTLED_AMPERES = 1e-5;

    /** Share of the energy in the leakage that is lost where the rectifier charges the capacitor. */
    private static final double LOST_AT_THE_PEAK = 1.0;

    /** Loads below this share of the rectifier's pulse leave the rail to the ringing, A over full-load scale. */
    private static final double IDLE_AMPERES = 0.02;

    /** Shares of what a hard transition takes that the parts' numbers for primary and secondary state. */
    private static final double PRIMARY_SHARE = 0.5;

    private static final double SECONDARY_SHARE = 0.73;

    private Converter() {}

    /**
     * The converter at rest.
     *
     * @param inputVolts at the unit's terminals, above 0
     * @param loads through each rail's load, A, 0 or more
     */
    public static Result at(Parts parts, double inputVolts, double[] loads) {
        return near(null, parts, inputVolts, loads);
    }

    /** The same, found faster from a result of nearly the same parts at the same point; null where there is none. */
    public static Result near(Result near, Parts parts, double inputVolts, double[] loads) {
        double duty = parts.get(Part.DUTY);
        Result free = at(parts, inputVolts, loads, duty, near);
        double held = held(parts);
        if (held == 0 || mean(free.volts()) <= held) {
            return free;
        }
        double low = 0.005;
        double high = duty;
        Result result = free;
        for (int round = 0; round < 30; round++) {
            double middle = (low + high) / 2;
            result = at(parts, inputVolts, loads, middle, result);
            if (mean(result.volts()) > held) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return result;
    }

    private static double held(Parts parts) {
        double sum = 0;
        for (int rail = 0; rail < parts.rails().size(); rail++) {
            sum += parts.get(Part.HELD_VOLTS, rail);
        }
        return sum / parts.rails().size();
    }

    private static double mean(double[] magnitudes) {
        double sum = 0;
        for (double value : magnitudes) {
            sum += value;
        }
        return sum / magnitudes.length;
    }

    private static Result at(Parts parts, double inputVolts, double[] loads, double duty, Result start) {
        double amperes = 0;
        for (int rail = 0; rail < loads.length; rail++) {
            amperes += parts.get(Part.RATIO, rail) * loads[rail] * (parts.choke() ? 2 * duty : 1);
        }
        double[] near = null;
        if (start != null) {
            near = start.free().clone();
            amperes = start.inputAmperes() - parts.get(Part.CONTROL_AMPERES) - parts.get(Part.STANDBY_AMPERES);
        }
        Result result = null;
        for (int round = 0; round < ROUNDS; round++) {
            double extra = (parts.get(Part.SQUARE_WATTS)) / inputVolts * square(parts, inputVolts);
            double behind = inputVolts
                    + parts.get(Part.INPUT_CAPACITOR_OHMS) * amperes
                    - extra * Math.min(1, (parts.sideOhms(0) + parts.get(Part.INPUT_CAPACITOR_OHMS)));
            Flow flow = parts.choke()
                    ? new MeanRectifier(parts, duty).at(behind, loads, near)
                    : new PeakRectifier(parts, duty).at(behind, loads, near);
            result = result(parts, inputVolts, loads, duty, flow);
            near = flow.volts();
            double converted =
                    result.inputAmperes() - parts.get(Part.CONTROL_AMPERES) - parts.get(Part.STANDBY_AMPERES);
            if (Math.abs(converted - amperes) < SETTLED_AMPERES + 1e-5 * amperes) {
                break;
            }
            amperes = converted;
        }
        return result;
    }

    private static double square(Parts parts, double volts) {
        double relative = volts / parts.get(Part.NOMINAL_INPUT);
        return relative * relative;
    }

    private static Result result(Parts parts, double inputVolts, double[] loads, double duty, Flow flow) {
        Map<String, Double> watts = new LinkedHashMap<>();
        double square = square(parts, inputVolts);
        double secondary = 0;
        double rectifier = 0;
        double chokes = 0;
        double capacitors = 0;
        double bleeders = 0;
        double output = 0;
        double[] volts = flow.volts().clone();
        for (int rail = 0; rail < loads.length; rail++) {
            double current = loads[rail] + volts[rail] * parts.get(Part.BLEEDER_SIEMENS, rail);
            rectifier += parts.get(Part.DIODE_OHMS) * flow.squares()[rail] + parts.drop(current) * current;
            secondary += (Math.min(parts.windingOhms(rail, 0), parts.windingOhms(rail, 1)) - parts.get(Part.DIODE_OHMS))
                    * flow.squares()[rail];
            chokes += parts.get(Part.CHOKE_OHMS, rail) * flow.chokeSquares()[rail];
            capacitors += parts.get(Part.CAPACITOR_OHMS, rail) * flow.alternating()[rail] * flow.alternating()[rail];
            double lift = 1 + parts.get(Part.IDLE_LIFT) * idleness(parts, loads[rail], inputVolts);
            volts[rail] *= lift;
            bleeders += volts[rail] * volts[rail] * parts.get(Part.BLEEDER_SIEMENS, rail);
            output += volts[rail] * loads[rail];
        }
        watts.put("control", parts.get(Part.CONTROL_AMPERES) * inputVolts);
        watts.put("standby", parts.get(Part.STANDBY_AMPERES) * inputVolts);
        watts.put("gate and switching", parts.get(Part.FIXED_WATTS));
        watts.put("core", parts.get(Part.CORE_WATTS) * square);
        watts.put("beyond the core", parts.get(Part.SQUARE_WATTS) * square);
        watts.put("snubbers", (parts.get(Part.SNUBBER_WATTS) + secondarySnubbers(parts, duty, flow.empty())) * square);
        watts.put("leakage", flow.leakageWatts() * (parts.choke() ? 1 : LOST_AT_THE_PEAK));
        watts.put("switches and primary", flow.sideWatts());
        double ripple = Math.max(0, flow.primarySquare() - flow.primaryMean() * flow.primaryMean());
        watts.put("input capacitor", parts.get(Part.INPUT_CAPACITOR_OHMS) * ripple);
        watts.put("secondary windings", secondary);
        watts.put("rectifier", rectifier);
        watts.put("chokes", chokes);
        watts.put("filter capacitors", capacitors);
        watts.put("bleeders", bleeders);
        watts.put("overlap", parts.get(Part.OVERLAP_WATTS_PER_AMPERE) * flow.primaryMean());
        watts.values().removeIf(value -> value == 0);
        double total = output;
        for (double value : watts.values()) {
            total += value;
        }
        return new Result(volts, flow.volts(), ripple(parts, flow), total / inputVolts, output, watts, duty);
    }

    /**
     * Where the chokes run empty nothing holds the winding in the pause: its magnetising current swings it towards the other
     * side before that side's switch closes, and the switch finds less to charge (resonant transition; such as Erickson and
     * Maksimovic, chapter 20).
     */
    private static double secondarySnubbers(Parts parts, double duty, double empty) {
        double held = parts.get(Part.SECONDARY_SNUBBER_WATTS);
        double henries = parts.get(Part.MAGNETISING);
        if (held == 0 || empty == 0 || henries == 0) {
            return held;
        }
        double primary = parts.get(Part.SNUBBER_WATTS);
        double input = parts.get(Part.NOMINAL_INPUT);
        double hertz = parts.get(Part.FREQUENCY);
        double hard = primary / PRIMARY_SHARE + held / SECONDARY_SHARE;
        double farads = hard / (4 * input * input * hertz);
        double angle = (0.5 - duty) / hertz / Math.sqrt(henries * farads);
        double current = duty / hertz / henries / 2 * Math.sqrt(henries / farads);
        double swing = Math.max(-1, Math.cos(Math.min(Math.PI, angle)) - current * Math.sin(Math.min(Math.PI, angle)));
        double left = (1 + swing) / 2;
        double free = Math.max(0, hard * left * left - primary);
        return held + empty * (Math.min(held, free) - held);
    }

    /** 1 without load, falling to 0 as the load outgrows what ringing and bleeder give. */
    private static double idleness(Parts parts, double load, double inputVolts) {
        double scale = IDLE_AMPERES;
        return 1 / (1 + load / scale);
    }

    private static double[] ripple(Parts parts, Flow flow) {
        double[] volts = new double[flow.volts().length];
        for (int rail = 0; rail < volts.length; rail++) {
            double farads = parts.get(Part.CAPACITOR, rail);
            double reactance = farads > 0 ? 1 / (2 * Math.PI * flow.rippleHz()[rail] * farads) : 0;
            volts[rail] = flow.alternating()[rail] * Math.hypot(parts.get(Part.CAPACITOR_OHMS, rail), reactance);
        }
        return volts;
    }
}
