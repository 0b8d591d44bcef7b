package railwitness.drivers.winding;

/** A phasor. */
record Complex(double re, double im) {
    static Complex real(double re) {
        return new Complex(re, 0);
    }

    Complex plus(Complex other) {
        return new Complex(re + other.re, im + other.im);
    }

    Complex times(double factor) {
        return new Complex(re * factor, im * factor);
    }

    Complex times(Complex other) {
        return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    Complex inverse() {
        double square = re * re + im * im;
        return new Complex(re / square, -im / square);
    }

    Complex over(Complex other) {
        return times(other.inverse());
    }

    double abs() {
        return Math.hypot(re, im);
    }
}
