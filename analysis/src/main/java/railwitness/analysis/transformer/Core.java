package railwitness.analysis.transformer;

import java.util.OptionalDouble;

/**
 * A toroid.
 *
 * @param outerMetres outer diameter, m
 * @param innerMetres inner diameter, m
 * @param heightMetres m
 * @param areaSquareMetres effective area where its data sheet gives one, m^2; else worked out from the edges
 * @param inductancePerTurnSquaredHenries AL where its data sheet gives one, H; else worked out from the material
 * @param material of it
 */
public record Core(
        double outerMetres,
        double innerMetres,
        double heightMetres,
        OptionalDouble areaSquareMetres,
        OptionalDouble inductancePerTurnSquaredHenries,
        CoreMaterial material) {
    private static final double MU_0 = 4e-7 * Math.PI;

    public Core {
        if (!(innerMetres > 0 && outerMetres > innerMetres && heightMetres > 0)) {
            throw new IllegalArgumentException(String.format(
                    java.util.Locale.ROOT,
                    "core %.3g x %.3g x %.3g mm: outer diameter must be above inner, both and the height above 0",
                    outerMetres * 1e3,
                    innerMetres * 1e3,
                    heightMetres * 1e3));
        }
    }

    /** Effective area, m^2 (sharp edges: IEC 60205 gives some 0.5 % less for the ring's curvature). */
    public double area() {
        return areaSquareMetres.orElse((outerMetres - innerMetres) / 2 * heightMetres);
    }

    /** Effective length of the path, m: {@code pi (D - d) / ln(D / d)} (IEC 60205, ring cores). */
    public double pathMetres() {
        return Math.PI * (outerMetres - innerMetres) / Math.log(outerMetres / innerMetres);
    }

    /** Effective volume, m^3. */
    public double volume() {
        return area() * pathMetres();
    }

    /** Hole through which all turns go, m^2. */
    public double windowSquareMetres() {
        return Math.PI / 4 * innerMetres * innerMetres;
    }

    /** Inductance of one turn, H. */
    public double inductancePerTurnSquared() {
        return inductancePerTurnSquaredHenries.orElse(MU_0 * material.permeability() * area() / pathMetres());
    }

    /** Copper that one turn takes on the bare core, m: once around its section. */
    public double turnMetres() {
        return (outerMetres - innerMetres) + 2 * heightMetres;
    }

    /** Surface of the wound core, m^2: bare surface, the hole counted half, as the winding fills it in part. */
    public double coolingSquareMetres() {
        double rings = Math.PI / 2 * (outerMetres * outerMetres - innerMetres * innerMetres);
        return rings + Math.PI * outerMetres * heightMetres + Math.PI * innerMetres * heightMetres / 2;
    }
}
