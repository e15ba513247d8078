package underhook.core.site;

import java.util.List;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;

/**
 * A line and what hangs on it while it is set down or hooked up.
 *
 * <p>A bag gives no credit for its height, because the line must go slack to let it go: the hook is one
 * line's length above the ground. A load that stands up (a pole) puts the hook higher by its length.
 *
 * @param lineLengthM from belly hook to remote hook, m, above 0
 * @param standsM length of a load that stands up under the line, m; 0 for all others
 * @param loadRadiusM half the load's diagonal in plan, m; 0 for the empty line
 * @param loadHeightM top of the load above the ground it stands on, m; 0 for the empty line
 */
public record Rig(double lineLengthM, double standsM, double loadRadiusM, double loadHeightM) {
    public Rig {
        if (!(lineLengthM > 0 && lineLengthM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "lineLengthM (" + lineLengthM + ") must be above 0.");
        }
        if (!(standsM >= 0 && loadRadiusM >= 0 && loadHeightM >= standsM)
                || !(loadHeightM + loadRadiusM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("the load under the line has a value out of range.");
        }
    }

    /** The line with nothing on it. */
    public static Rig empty(double lineLengthM) {
        return new Rig(lineLengthM, 0, 0, 0);
    }

    /**
     * The line with loads that ride together, side by side.
     *
     * @param kinds the kind of each load
     */
    public static Rig of(double lineLengthM, List<Load> loads, List<LoadKind> kinds) {
        double standsM = 0;
        double radiusM = 0;
        double heightM = 0;
        for (int i = 0; i < loads.size(); i++) {
            Load load = loads.get(i);
            boolean stands = kinds.get(i).standsUp();
            standsM = Math.max(standsM, stands ? load.lengthM() : 0);
            heightM = Math.max(heightM, stands ? load.lengthM() : load.heightM());
            radiusM += Math.hypot(load.widthM(), stands ? load.heightM() : load.lengthM()) / 2;
        }
        return new Rig(lineLengthM, standsM, radiusM, heightM);
    }

    /** The same while it is hooked up: nothing stands under the line yet. */
    public Rig withoutCredit() {
        return new Rig(lineLengthM, 0, loadRadiusM, loadHeightM);
    }

    /** Belly hook above the ground at the place, m. */
    public double hookAglM() {
        return lineLengthM + standsM;
    }

    /** From the belly hook to the load's lowest end while it is carried, m. */
    public double reachM() {
        return lineLengthM + loadHeightM;
    }
}
