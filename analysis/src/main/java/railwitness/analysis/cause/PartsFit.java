package railwitness.analysis.cause;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.IntFunction;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import railwitness.analysis.converter.Parts;
import railwitness.analysis.converter.Result;
import railwitness.analysis.expected.SheetParts;
import railwitness.analysis.expected.Tolerance;

/**
 * Fits parts, model errors and the size of a fault to a whole recording: least squares with the tolerances as priors
 * (maximum a posteriori, Gauss-Newton), and from it the evidence by Laplace's approximation (such as MacKay, Information
 * Theory, Inference, and Learning Algorithms, chapter 27): likelihood at the best, times the share of the prior's volume
 * that the readings leave.
 */
final class PartsFit {
    private static final int ROUNDS = 4;
    private static final double STEP = 0.25;
    private static final double FURTHEST = 4;
    private static final double ERROR_OF_FAULT = 3;
    private static final double WORTH_A_COLUMN = 0.5;

    /** A change of loss or rail by more than this (its logarithm) is beyond where the model was tried. */
    private static final double LARGE_FAULT = 1.2;

    /** Beyond this nothing is known of the model's error at a single point either. */
    private static final double HUGE_FAULT = 2;

    /** Faults that make the two half cycles unequal: the core's offset decides how the ripple divides. */
    private static final Set<CauseCode> UNEVEN =
            Set.of(CauseCode.WEAK_HALF, CauseCode.DEAD_DRIVE, CauseCode.DEAD_RECTIFIER, CauseCode.DEAD_PARALLEL_SWITCH);

    private final Recording recording;
    private final SheetParts sheet;
    private final List<Tolerance> tolerances;
    private final int count;
    private final double[] sigma;
    private final double[] measured;
    private final double[] sheetPredicted;

    PartsFit(Recording recording, SheetParts sheet) {
        this.recording = recording;
        this.sheet = sheet;
        this.tolerances = sheet.tolerances().stream()
                .filter(tolerance -> tolerance.relativeU() > 0)
                .toList();
        this.count = recording.sightings().size();
        this.sigma = recording.sightings().stream().mapToDouble(Sighting::sigma).toArray();
        this.measured =
                recording.sightings().stream().mapToDouble(Sighting::value).toArray();
        this.sheetPredicted = predict(Candidate.sound(1), nominal(), new Result[recording.states()]);
    }

    /**
     * A fit of one candidate.
     *
     * @param logEvidence natural logarithm, the same constant left out for all
     * @param squares sum of squared residuals and priors: about the number of sightings where it fits
     * @param size of the fault; 0 where it has none
     * @param predicted with parts and model errors as fitted
     * @param plain what the sheet's parts with this fault would give
     */
    record Fitted(
            Candidate candidate, double logEvidence, double squares, double size, double[] predicted, double[] state) {}

    /** Sensitivities of every sighting to parts, at some state of them, in standard uncertainties of both. */
    double[][] sensitivities(Candidate candidate, double[] state) {
        double[][] columns = new double[tolerances.size()][];
        Result[] near = new Result[recording.states()];
        predict(candidate, state, near);
        for (int i = 0; i < columns.length; i++) {
            double h = tolerances.get(i).relativeU() > 0.3 ? 0.5 : 1;
            double[] up = state.clone();
            double[] down = state.clone();
            up[i] += h;
            down[i] -= h;
            double[] above = predict(candidate, up, near.clone());
            double[] below = predict(candidate, down, near.clone());
            columns[i] = new double[count];
            for (int k = 0; k < count; k++) {
                columns[i][k] = (above[k] - below[k]) / (2 * h) / sigma[k];
            }
        }
        return columns;
    }

    /** A state with everything as the sheet says; the last number is the size of the fault. */
    double[] nominal() {
        return new double[tolerances.size() + 1];
    }

    private double[] predict(Candidate candidate, double[] state, Result[] near) {
        Parts parts = sheet.parts();
        for (int i = 0; i < tolerances.size(); i++) {
            if (state[i] != 0) {
                parts = tolerances.get(i).off(parts, state[i]);
            }
        }
        double size = candidate.size(state[tolerances.size()]);
        Parts all = parts;
        return switch (candidate.kind()) {
            case OF_PARTS, STOPPING -> recording.predict(same(candidate.fault().in(all, size)), all, 0, near);
            case BEFORE_TERMINALS -> recording.predict(same(candidate.fault().in(all, size)), all, size, near);
            case UNDER_LOAD ->
                recording.predict(
                        point -> recording.loaded(point) ? candidate.fault().in(all, size) : all, all, 0, near);
            case DOUBLING ->
                recording.predict(
                        point -> candidate.fault().in(all, size * Math.pow(2, recording.kelvin(point) / 10)),
                        all,
                        0,
                        near);
            case GROWING ->
                recording.predict(point -> candidate.fault().in(all, size * recording.progress(point)), all, 0, near);
        };
    }

    private static IntFunction<Parts> same(Parts parts) {
        return point -> parts;
    }

    /**
     * Fits a candidate.
     *
     * @param start state to begin with
     * @param sensitivities to the parts near there
     * @param errors columns of what else may be wrong
     */
    Fitted fit(Candidate candidate, double[] start, double[][] sensitivities, List<double[]> errors) {
        return fit(candidate, start, sensitivities, errors, ROUNDS);
    }

    /** A first look: parts and errors fitted in one linear step from the start. */
    Fitted glance(Candidate candidate, double[] start, double[][] sensitivities, List<double[]> errors) {
        return fit(candidate, start, sensitivities, errors, 0);
    }

    private Fitted fit(
            Candidate candidate, double[] start, double[][] sensitivities, List<double[]> known, int rounds) {
        List<double[]> errors = known;
        if (candidate.kind() == Candidate.Kind.STOPPING) {
            errors = new ArrayList<>(known);
            errors.addAll(recording.stopped());
        }
        double[] state = start.clone();
        if (candidate.sized() && start[tolerances.size()] == 0) {
            state[tolerances.size()] = bestSize(candidate, state, sensitivities, errors);
        }
        Result[] near = new Result[recording.states()];
        double[] predicted = predict(candidate, state, near);
        if (candidate.code().isPresent()) {
            List<double[]> more = new ArrayList<>(errors);
            more.addAll(errorsOfFault(
                    state,
                    predicted,
                    near,
                    UNEVEN.contains(candidate.code().get()) || candidate.place().isPresent()));
            errors = more;
        }
        int parts = tolerances.size();
        int sized = candidate.sized() ? 1 : 0;
        int all = parts + errors.size() + sized;
        double[] more = new double[errors.size()];
        double best = squares(state, more, predicted, errors, sized);
        for (int round = 0; round < rounds; round++) {
            double[][] columns = columns(candidate, state, predicted, near, sensitivities, errors);
            double[] residual = residual(predicted, more, errors);
            double[] step = solve(columns, residual, prior(state, more, sized), all);
            double factor = 1;
            boolean better = false;
            double before = best;
            for (int attempt = 0; attempt < 4 && !better; attempt++) {
                double[] tryState = state.clone();
                double[] tryMore = more.clone();
                for (int i = 0; i < parts; i++) {
                    tryState[i] = bounded(state[i] + factor * step[i]);
                }
                for (int i = 0; i < more.length; i++) {
                    tryMore[i] = more[i] + factor * step[parts + i];
                }
                if (sized == 1) {
                    tryState[parts] = bounded(state[parts] + factor * step[all - 1]);
                }
                Result[] there = near.clone();
                double[] tried = predict(candidate, tryState, there);
                double now = squares(tryState, tryMore, tried, errors, sized);
                if (now < best) {
                    best = now;
                    state = tryState;
                    more = tryMore;
                    predicted = tried;
                    near = there;
                    better = true;
                }
                factor /= 3;
            }
            if (!better || before - best < 0.05) {
                break;
            }
        }
        double[][] columns = columns(candidate, state, predicted, near, sensitivities, errors);
        if (rounds == 0) {
            double[] right = times(columns, residual(predicted, more, errors));
            double[] prior = prior(state, more, sized);
            for (int i = 0; i < all; i++) {
                right[i] -= prior[i];
            }
            double[] step = new CholeskyDecomposition(normal(columns, all), 1e-9, 1e-12)
                    .getSolver()
                    .solve(MatrixUtils.createRealVector(right))
                    .toArray();
            for (int i = 0; i < all; i++) {
                best -= right[i] * step[i];
            }
        }
        double logEvidence = -best / 2 - halfLogDeterminant(columns, all);
        double[] withErrors = predicted.clone();
        for (int e = 0; e < errors.size(); e++) {
            for (int k = 0; k < count; k++) {
                withErrors[k] += more[e] * errors.get(e)[k];
            }
        }
        double size = candidate.sized() ? candidate.size(state[parts]) : 0;
        return new Fitted(candidate, logEvidence, best, size, withErrors, state);
    }

    /** What the model may get wrong of the fault itself: the model's errors, grown with what the fault does. */
    private List<double[]> errorsOfFault(double[] state, double[] with, Result[] near, boolean uneven) {
        double[] without = predict(Candidate.sound(1), state, near.clone());
        double done = 0;
        double seen = 0; // the same for every fault, so that none is at a disadvantage
        for (int k = 0; k < count; k++) {
            Sighting.Kind kind = recording.sightings().get(k).kind();
            if (kind == Sighting.Kind.VOLTS || kind == Sighting.Kind.LOSS) {
                done = Math.max(done, Math.abs(with[k] - without[k]));
                seen = Math.max(seen, Math.abs(measured[k] - sheetPredicted[k]));
            }
        }
        List<double[]> columns = new ArrayList<>();
        double grown = ERROR_OF_FAULT * Math.min(3, done);
        if (grown >= WORTH_A_COLUMN) {
            recording
                    .modelErrors()
                    .forEach(column -> columns.add(java.util.Arrays.stream(column)
                            .map(value -> value * grown)
                            .toArray()));
        }
        if (uneven) {
            columns.addAll(recording.rippleOfUnevenHalves());
        }
        if (seen > LARGE_FAULT) {
            columns.addAll(recording.largeFault(seen > HUGE_FAULT));
        }
        return columns;
    }

    private static double bounded(double standardUncertainties) {
        return Math.max(-FURTHEST, Math.min(FURTHEST, standardUncertainties));
    }

    /** Tries sizes over their whole range, parts and errors each time fitted in one linear step. */
    private double bestSize(Candidate candidate, double[] start, double[][] sensitivities, List<double[]> errors) {
        int parts = tolerances.size();
        int all = parts + errors.size();
        double[][] columns = new double[all][];
        System.arraycopy(sensitivities, 0, columns, 0, parts);
        for (int e = 0; e < errors.size(); e++) {
            columns[parts + e] = whitened(errors.get(e));
        }
        RealMatrix normal = normal(columns, all);
        CholeskyDecomposition decomposition = new CholeskyDecomposition(normal, 1e-9, 1e-12);
        double bestSquares = Double.MAX_VALUE;
        double best = 0;
        Result[] near = new Result[recording.states()];
        for (double size = -2.5; size <= 2.5; size += 0.5) {
            double[] state = start.clone();
            state[parts] = size;
            double[] residual = residual(predict(candidate, state, near), new double[errors.size()], errors);
            double[] right = times(columns, residual);
            double squares = size * size;
            for (int i = 0; i < parts; i++) {
                right[i] -= start[i];
                squares += start[i] * start[i];
            }
            double[] solution = decomposition
                    .getSolver()
                    .solve(MatrixUtils.createRealVector(right))
                    .toArray();
            for (double r : residual) {
                squares += r * r;
            }
            for (int i = 0; i < all; i++) {
                squares -= right[i] * solution[i];
            }
            if (squares < bestSquares) {
                bestSquares = squares;
                best = size;
            }
        }
        return best == 0 ? 1e-3 : best;
    }

    private double[] whitened(double[] column) {
        double[] white = new double[count];
        for (int k = 0; k < count; k++) {
            white[k] = column[k] / sigma[k];
        }
        return white;
    }

    private double[][] columns(
            Candidate candidate,
            double[] state,
            double[] predicted,
            Result[] at,
            double[][] sensitivities,
            List<double[]> errors) {
        List<double[]> columns = new ArrayList<>(List.of(sensitivities));
        errors.forEach(error -> columns.add(whitened(error)));
        if (candidate.sized()) {
            int last = state.length - 1;
            double[] near = state.clone();
            near[last] += STEP;
            double[] there = predict(candidate, near, at.clone());
            double[] column = new double[count];
            for (int k = 0; k < count; k++) {
                column[k] = (there[k] - predicted[k]) / STEP / sigma[k];
            }
            columns.add(column);
        }
        return columns.toArray(double[][]::new);
    }

    private double[] residual(double[] predicted, double[] more, List<double[]> errors) {
        double[] residual = new double[count];
        for (int k = 0; k < count; k++) {
            double value = predicted[k];
            for (int e = 0; e < more.length; e++) {
                value += more[e] * errors.get(e)[k];
            }
            residual[k] = (measured[k] - value) / sigma[k];
        }
        return residual;
    }

    private double squares(double[] state, double[] more, double[] predicted, List<double[]> errors, int sized) {
        double sum = 0;
        for (double r : residual(predicted, more, errors)) {
            sum += r * r;
        }
        for (double p : prior(state, more, sized)) {
            sum += p * p;
        }
        return Double.isFinite(sum) ? sum : 1e12;
    }

    private double[] prior(double[] state, double[] more, int sized) {
        int parts = tolerances.size();
        double[] prior = new double[parts + more.length + sized];
        System.arraycopy(state, 0, prior, 0, parts);
        System.arraycopy(more, 0, prior, parts, more.length);
        if (sized == 1) {
            prior[prior.length - 1] = state[parts];
        }
        return prior;
    }

    private double[] solve(double[][] columns, double[] residual, double[] prior, int all) {
        double[] right = times(columns, residual);
        for (int i = 0; i < all; i++) {
            right[i] -= prior[i];
        }
        return new CholeskyDecomposition(normal(columns, all), 1e-9, 1e-12)
                .getSolver()
                .solve(MatrixUtils.createRealVector(right))
                .toArray();
    }

    private static double[] times(double[][] columns, double[] residual) {
        double[] product = new double[columns.length];
        for (int i = 0; i < columns.length; i++) {
            for (int k = 0; k < residual.length; k++) {
                product[i] += columns[i][k] * residual[k];
            }
        }
        return product;
    }

    private RealMatrix normal(double[][] columns, int all) {
        double[][] normal = new double[all][all];
        for (int i = 0; i < all; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = i == j ? 1 : 0;
                for (int k = 0; k < count; k++) {
                    sum += columns[i][k] * columns[j][k];
                }
                normal[i][j] = sum;
                normal[j][i] = sum;
            }
        }
        return MatrixUtils.createRealMatrix(normal);
    }

    private double halfLogDeterminant(double[][] columns, int all) {
        RealMatrix lower = new CholeskyDecomposition(normal(columns, all), 1e-9, 1e-12).getL();
        double sum = 0;
        for (int i = 0; i < all; i++) {
            sum += Math.log(lower.getEntry(i, i));
        }
        return sum;
    }
}
