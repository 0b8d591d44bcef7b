package railwitness.analysis.soak;

import java.util.SplittableRandom;

/**
 * A made-up unit of two bodies that exchange heat, worked out by small steps of its own, with the truth known: heat goes
 * into both, one of them is read.
 *
 * @param seconds of each reading
 * @param celsius as read, with scatter
 * @param end what the read body tends to
 * @param slowSeconds the slower of its two time constants
 */
record TwoBodies(double[] seconds, double[] celsius, double end, double slowSeconds) {
    /** @param readFirst whether the better-heated body is read; else the other */
    static TwoBodies of(
            SplittableRandom random, double timeConstants, int n, double sigma, double phi, boolean readFirst) {
        double c1 = 100 * Math.exp(random.nextDouble() * 2);
        double c2 = c1 * Math.exp(-2 + 3 * random.nextDouble());
        double r1 = 0.5 + 3 * random.nextDouble();
        double r2 = 1 + 8 * random.nextDouble();
        double r12 = 0.3 + 4 * random.nextDouble();
        double p1 = 5 + 20 * random.nextDouble();
        double p2 = p1 * random.nextDouble();
        double a = (1 / r1 + 1 / r12) / c1;
        double d = (1 / r2 + 1 / r12) / c2;
        double b = 1 / r12 / c1;
        double c = 1 / r12 / c2;
        double slow = 1 / ((a + d) / 2 - Math.sqrt((a - d) * (a - d) / 4 + b * c));
        double[] steady = steady(r1, r2, r12, p1, p2);
        double span = timeConstants * slow;
        double[] seconds = new double[n];
        double[] celsius = new double[n];
        double t1 = 0;
        double t2 = 0;
        double step = span / n / 20;
        double noise = sigma * random.nextGaussian();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < 20; k++) {
                double h1 = p1 / c1 - a * t1 + b * t2;
                double h2 = p2 / c2 - d * t2 + c * t1;
                double m1 = t1 + step / 2 * h1;
                double m2 = t2 + step / 2 * h2;
                t1 += step * (p1 / c1 - a * m1 + b * m2);
                t2 += step * (p2 / c2 - d * m2 + c * m1);
            }
            noise = phi * noise + Math.sqrt(1 - phi * phi) * sigma * random.nextGaussian();
            seconds[i] = (i + 1) * span / n;
            celsius[i] = 20 + (readFirst ? t1 : t2) + noise;
        }
        return new TwoBodies(seconds, celsius, 20 + (readFirst ? steady[0] : steady[1]), slow);
    }

    private static double[] steady(double r1, double r2, double r12, double p1, double p2) {
        double g11 = 1 / r1 + 1 / r12;
        double g22 = 1 / r2 + 1 / r12;
        double g12 = 1 / r12;
        double det = g11 * g22 - g12 * g12;
        return new double[] {(g22 * p1 + g12 * p2) / det, (g12 * p1 + g11 * p2) / det};
    }
}
