package railwitness.analysis.soak;

/**
 * One pair of time constants (or a single one) with what it makes of the record.
 *
 * @param slowSeconds time constant of the slow body, s
 * @param fastSeconds of the fast one, s; 0 where there is none
 * @param spacing width of the cell in the logarithm of the slow time constant
 * @param begins of the stretches, s
 * @param beta final value, then for each stretch what the slow and the fast part begin with, K
 * @param covariance of those, K2
 * @param squares sum of the squares about the curve, K2
 * @param logWeight logarithm of its weight, before all are brought to one in sum
 * @param weight share of the whole
 */
record WarmUpCell(
        double slowSeconds,
        double fastSeconds,
        double spacing,
        double[] begins,
        double[] beta,
        double[][] covariance,
        double squares,
        double logWeight,
        double weight) {
    WarmUpCell heavier(double byLog) {
        return new WarmUpCell(
                slowSeconds, fastSeconds, spacing, begins, beta, covariance, squares, logWeight + byLog, weight);
    }

    WarmUpCell weighing(double share) {
        return new WarmUpCell(slowSeconds, fastSeconds, spacing, begins, beta, covariance, squares, logWeight, share);
    }

    double finalValue() {
        return beta[0];
    }

    double uOfFinal() {
        return Math.sqrt(Math.max(0, covariance[0][0]));
    }

    /** A rectangle as wide as the cell. */
    double spacingSeconds() {
        return slowSeconds * spacing / Math.sqrt(12);
    }

    private double[] row(double seconds) {
        double[] row = new double[beta.length];
        row[0] = 1;
        int part = 0;
        while (part + 1 < begins.length && seconds >= begins[part + 1]) {
            part++;
        }
        int each = fastSeconds > 0 ? 2 : 1;
        double since = seconds - begins[part];
        row[1 + part * each] = Math.exp(-since / slowSeconds);
        if (fastSeconds > 0) {
            row[2 + part * each] = Math.exp(-since / fastSeconds);
        }
        return row;
    }

    double at(double seconds) {
        double[] row = row(seconds);
        double sum = 0;
        for (int j = 0; j < row.length; j++) {
            sum += row[j] * beta[j];
        }
        return sum;
    }

    double uAt(double seconds) {
        double[] row = row(seconds);
        double sum = 0;
        for (int i = 0; i < row.length; i++) {
            for (int j = 0; j < row.length; j++) {
                sum += row[i] * covariance[i][j] * row[j];
            }
        }
        return Math.sqrt(Math.max(0, sum));
    }

    /** From the begin of the record until the first stretch is within so many kelvin of its end for good. */
    double secondsUntil(double kelvin) {
        double begin = begins[begins.length - 1];
        double low = 0;
        double high = 40 * slowSeconds;
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            if (Math.abs(at(begin + middle) - beta[0]) > kelvin) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low < 1e-9 * slowSeconds ? 0 : begin - begins[0] + (low + high) / 2;
    }

    /** Standard uncertainty of the final value after so long, all five parameters free, by the curve's derivatives. */
    double uOfFinalAfter(double span, double readings, double sigma) {
        int each = fastSeconds > 0 ? 2 : 1;
        double slowKelvin = beta[1];
        double fastKelvin = fastSeconds > 0 ? beta[2] : 0;
        int p = 3 + 2 * (each - 1);
        double[][] normal = new double[p][p];
        int steps = 60;
        for (int i = 0; i < steps; i++) {
            double t = span * (i + 0.5) / steps;
            double e = Math.exp(-t / slowSeconds);
            double[] row = new double[p];
            row[0] = 1;
            row[1] = e;
            row[2] = slowKelvin * e * t / slowSeconds;
            if (each == 2) {
                double f = Math.exp(-t / fastSeconds);
                row[3] = f;
                row[4] = fastKelvin * f * t / fastSeconds;
            }
            for (int a = 0; a < p; a++) {
                for (int b = 0; b < p; b++) {
                    normal[a][b] += row[a] * row[b] * readings / steps;
                }
            }
        }
        double ridge = 1e-9 * normal[0][0];
        for (int a = 2; a < p; a++) {
            normal[a][a] += a == 3 ? sigma * sigma / Math.max(1e-9, slowKelvin * slowKelvin) : sigma * sigma + ridge;
        }
        double[][] inverse = WarmUpSums.inverse(normal);
        return inverse.length == 0 ? Double.POSITIVE_INFINITY : sigma * Math.sqrt(Math.max(0, inverse[0][0]));
    }
}
