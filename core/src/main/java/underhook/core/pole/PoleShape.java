package underhook.core.pole;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * A round solid pole that tapers evenly.
 *
 * @param lengthM m, above 0
 * @param buttDiameterM m, above 0
 * @param topDiameterM m, above 0
 */
public record PoleShape(double lengthM, double buttDiameterM, double topDiameterM) {
    /** Top circumference of classes 1 to 7, inches. @source ANSI-O5-1 as printed by SREF-HANDBOOK */
    private static final int[] TOP_INCHES = {27, 25, 23, 21, 19, 17, 15};

    public PoleShape {
        Ranges.requirePositive(lengthM, "lengthM");
        Ranges.requirePositive(buttDiameterM, "buttDiameterM");
        Ranges.requirePositive(topDiameterM, "topDiameterM");
    }

    /**
     * From what is printed of classed poles: girths at the top and at a gauge line near the butt; the
     * taper goes on to the butt.
     *
     * @param topGirthM circumference at the top, m
     * @param gaugeGirthM circumference at the gauge line, m
     * @param gaugeFromButtM the line from the butt, m, in [0, length)
     * @source DERIVED even taper
     */
    public static PoleShape ofGirths(
            double lengthM, double topGirthM, double gaugeGirthM, double gaugeFromButtM) {
        Ranges.requirePositive(lengthM, "lengthM");
        if (!(gaugeFromButtM >= 0 && gaugeFromButtM < lengthM)) {
            throw new IllegalArgumentException(
                    "gaugeFromButtM (" + gaugeFromButtM + ") must lie in [0, lengthM).");
        }
        double taper = (gaugeGirthM - topGirthM) / (lengthM - gaugeFromButtM);
        double buttGirth = gaugeGirthM + taper * gaugeFromButtM;
        return new PoleShape(lengthM, buttGirth / Math.PI, topGirthM / Math.PI);
    }

    /**
     * Least top diameter of a class, m.
     *
     * @param poleClass 1 (strongest) to 7
     */
    public static double classTopDiameterM(int poleClass) {
        if (poleClass < 1 || poleClass > TOP_INCHES.length) {
            throw new IllegalArgumentException("poleClass (" + poleClass + ") must lie in [1, 7].");
        }
        return Units.inchToM(TOP_INCHES[poleClass - 1]) / Math.PI;
    }

    /**
     * How deep a classed pole stands in the ground, m: for poles of 40 ft and more a tenth and 2 ft,
     * shorter ones as tabled.
     *
     * @param lengthM m, in [7.5, 40]
     * @source SREF-HANDBOOK 5, 5.5, 6, 6 ft for 25, 30, 35, 40 ft
     */
    public static double settingDepthM(double lengthM) {
        if (!(lengthM >= 7.5 && lengthM <= 40)) {
            throw new IllegalArgumentException("lengthM (" + lengthM + ") must lie in [7.5, 40].");
        }
        double feet = Units.mToFt(lengthM);
        double depth = feet <= 35 ? Math.max(5, 5 + (feet - 25) / 10) : Math.max(6, feet / 10 + 2);
        return Units.ftToM(depth);
    }

    /** Volume of the frustum, m³. @source DERIVED */
    public double volumeM3() {
        return Math.PI
                / 12
                * lengthM
                * (buttDiameterM * buttDiameterM
                        + buttDiameterM * topDiameterM
                        + topDiameterM * topDiameterM);
    }

    /** Centre of gravity from the butt, m, the density being even. @source DERIVED */
    public double centreFromButtM() {
        double butt2 = buttDiameterM * buttDiameterM;
        double both = buttDiameterM * topDiameterM;
        double top2 = topDiameterM * topDiameterM;
        return lengthM / 4 * (butt2 + 2 * both + 3 * top2) / (butt2 + both + top2);
    }
}
