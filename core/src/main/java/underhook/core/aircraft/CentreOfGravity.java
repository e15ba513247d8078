package underhook.core.aircraft;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalInt;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.job.Balance;

/**
 * Longitudinal centre of gravity, and its way through the envelope as fuel burns.
 *
 * <p>Arms from the manual's datum, positive aft. The envelope is straight between its rows and ends with
 * them. The hook's load acts at the hook. The fuel's arm is one for all levels.
 *
 * @source DERIVED sum of moments over sum of masses; the envelope is the manual's
 */
public final class CentreOfGravity {
    /** Where a point lies. */
    public enum Standing {
        INSIDE,
        /** Inside, but within the margin of a limit. */
        NEAR,
        OUTSIDE
    }

    /**
     * What the machine carries besides fuel.
     *
     * @param emptyMassKg equipped empty mass, kg, above 0
     * @param crewMassKg pilot with kit, kg, not negative
     * @param cabinMassKg people and things in the cabin, kg, not negative
     * @param hookMassKg everything under the belly hook, kg, not negative
     */
    public record Burden(
            double emptyMassKg, double crewMassKg, double cabinMassKg, double hookMassKg) {
        public Burden {
            boolean good =
                    emptyMassKg > 0
                            && crewMassKg >= 0
                            && cabinMassKg >= 0
                            && hookMassKg >= 0
                            && Double.isFinite(emptyMassKg + crewMassKg + cabinMassKg + hookMassKg);
            if (!good) {
                throw new IllegalArgumentException(
                        "emptyMassKg must be above 0, the other masses not negative.");
            }
        }

        private double totalKg() {
            return emptyMassKg + crewMassKg + cabinMassKg + hookMassKg;
        }
    }

    /**
     * Mass and centre of gravity at one fuel state.
     *
     * @param marginM distance to the nearer limit, m; negative when outside
     */
    public record Point(
            double fuelKg, double massKg, double armM, double marginM, Standing standing) {}

    private final Balance balance;
    private final double nearMarginM;

    private CentreOfGravity(Balance balance, double nearMarginM) {
        this.balance = balance;
        this.nearMarginM = nearMarginM;
    }

    /**
     * For one machine.
     *
     * @param nearMarginM closer to a limit than this counts as near, m, not negative
     * @throws IllegalArgumentException if the margin is negative or the envelope has fewer than two rows
     *     or does not ascend
     */
    public static CentreOfGravity of(Balance balance, double nearMarginM) {
        Objects.requireNonNull(balance, "balance");
        if (!(nearMarginM >= 0)) {
            throw new IllegalArgumentException(
                    "nearMarginM (" + nearMarginM + ") must not be negative.");
        }
        List<Balance.Limit> rows = balance.envelope();
        if (rows.size() < 2) {
            throw new IllegalArgumentException("envelope needs at least two rows.");
        }
        for (int i = 1; i < rows.size(); i++) {
            if (!(rows.get(i).massKg() > rows.get(i - 1).massKg())) {
                throw new IllegalArgumentException("envelope must ascend in mass: " + rows + ".");
            }
        }
        return new CentreOfGravity(balance, nearMarginM);
    }

    /**
     * The point at one fuel state.
     *
     * @param fuelKg fuel on board, kg, not negative
     * @return the point, or refused with CHART_RANGE when the mass is outside the envelope's rows
     */
    public Outcome<Point> at(Burden burden, double fuelKg) {
        requireFuel(fuelKg);
        double mass = burden.totalKg() + fuelKg;
        List<Balance.Limit> rows = balance.envelope();
        double least = rows.get(0).massKg();
        double most = rows.get(rows.size() - 1).massKg();
        if (!(mass >= least && mass <= most)) {
            return Outcome.refused(outOfRows(mass, least, most));
        }
        return Outcome.done(point(burden, fuelKg));
    }

    /**
     * The point nearest to a limit while fuel burns from one state to another, found exactly: at an end,
     * at a row of the envelope, or where the curve runs level with a limit.
     *
     * @param fuelFromKg more fuel, kg
     * @param fuelToKg less fuel, kg, not negative
     * @return the worst point with its standing, a STOP finding beside it when it is outside and a CAUTION
     *     when near; refused with CHART_RANGE when the envelope does not cover all masses on the way
     */
    public Outcome<Point> worst(Burden burden, double fuelFromKg, double fuelToKg) {
        requireFuel(fuelToKg);
        if (!(fuelFromKg >= fuelToKg && fuelFromKg < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "fuelFromKg (" + fuelFromKg + ") must not be below fuelToKg.");
        }
        for (double end : new double[] {fuelFromKg, fuelToKg}) {
            Outcome<Point> there = at(burden, end);
            if (!there.isDone()) {
                return there;
            }
        }
        Point worst = point(burden, fuelFromKg);
        for (double fuel : candidates(burden, fuelFromKg, fuelToKg)) {
            Point here = point(burden, fuel);
            if (here.marginM() < worst.marginM()) {
                worst = here;
            }
        }
        return Outcome.done(worst, remarks(worst));
    }

    /**
     * The most fuel from which the point stays inside until so little is left.
     *
     * @param fuelFromKg no more than this, kg
     * @param fuelToKg less fuel, kg, not negative
     * @return whole kg; empty where it is outside, or outside the envelope's rows, with every whole kg from the least on
     */
    public OptionalInt mostFuelKg(Burden burden, double fuelFromKg, double fuelToKg) {
        requireFuel(fuelToKg);
        int least = (int) Math.ceil(fuelToKg);
        int most = (int) Math.floor(fuelFromKg);
        if (most < least || !keeps(burden, least, fuelToKg)) {
            return OptionalInt.empty();
        }
        // What stays inside from more fuel does so from less.
        int low = least;
        int high = most;
        while (low < high) {
            int middle = (low + high + 1) / 2;
            if (keeps(burden, middle, fuelToKg)) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return OptionalInt.of(low);
    }

    private boolean keeps(Burden burden, int fuelFromKg, double fuelToKg) {
        return worst(burden, fuelFromKg, fuelToKg)
                .fold((point, said) -> point.standing() != Standing.OUTSIDE, refused -> false);
    }

    private List<Double> candidates(Burden burden, double fuelFromKg, double fuelToKg) {
        double base = burden.totalKg();
        // arm(m) = fuelArm + k/m: as a function of the whole mass.
        double k = (armWithoutFuelM(burden) - balance.fuelArmM()) * base;
        List<Double> candidates = new ArrayList<>(List.of(fuelFromKg, fuelToKg));
        List<Balance.Limit> rows = balance.envelope();
        for (int i = 0; i < rows.size(); i++) {
            candidates.add(rows.get(i).massKg() - base);
            if (i > 0) {
                double run = rows.get(i).massKg() - rows.get(i - 1).massKg();
                double forward = rows.get(i).forwardArmM() - rows.get(i - 1).forwardArmM();
                double aft = rows.get(i).aftArmM() - rows.get(i - 1).aftArmM();
                // The margin is level where −k/m² equals the limit's slope.
                candidates.add(Math.sqrt(-k * run / forward) - base);
                candidates.add(Math.sqrt(-k * run / aft) - base);
            }
        }
        candidates.removeIf(fuel -> !(fuel >= fuelToKg && fuel <= fuelFromKg));
        return candidates;
    }

    private double armWithoutFuelM(Burden burden) {
        double moments =
                burden.emptyMassKg() * balance.emptyArmM()
                        + burden.crewMassKg() * balance.crewArmM()
                        + burden.cabinMassKg() * balance.cabinArmM()
                        + burden.hookMassKg() * balance.hookArmM();
        return moments / burden.totalKg();
    }

    private Point point(Burden burden, double fuelKg) {
        double base = burden.totalKg();
        double mass = base + fuelKg;
        double arm = (armWithoutFuelM(burden) * base + fuelKg * balance.fuelArmM()) / mass;
        List<Balance.Limit> rows = balance.envelope();
        int i = 0;
        while (i < rows.size() - 2 && mass > rows.get(i + 1).massKg()) {
            i++;
        }
        Balance.Limit low = rows.get(i);
        Balance.Limit high = rows.get(i + 1);
        double share = (mass - low.massKg()) / (high.massKg() - low.massKg());
        double forward = low.forwardArmM() + share * (high.forwardArmM() - low.forwardArmM());
        double aft = low.aftArmM() + share * (high.aftArmM() - low.aftArmM());
        double margin = Math.min(arm - forward, aft - arm);
        Standing standing =
                margin < 0
                        ? Standing.OUTSIDE
                        : margin < nearMarginM ? Standing.NEAR : Standing.INSIDE;
        return new Point(fuelKg, mass, arm, margin, standing);
    }

    private static List<Finding> remarks(Point worst) {
        return switch (worst.standing()) {
            case INSIDE -> List.of();
            case NEAR -> List.of(remark(worst, Severity.CAUTION, "is close to a limit"));
            case OUTSIDE -> List.of(remark(worst, Severity.STOP, "is outside the envelope"));
        };
    }

    private static Finding remark(Point worst, Severity severity, String what) {
        return new Finding(
                FindingCode.CENTRE_OF_GRAVITY,
                severity,
                "centre-of-gravity",
                String.format(Locale.ROOT, "%.3f", worst.marginM()),
                "0",
                "m",
                "MACHINE",
                String.format(
                        Locale.ROOT,
                        "The centre of gravity %s with %.0f kg of fuel, at %.0f kg and %.3f m.",
                        what,
                        worst.fuelKg(),
                        worst.massKg(),
                        worst.armM()));
    }

    private static Finding outOfRows(double massKg, double leastKg, double mostKg) {
        String value = String.format(Locale.ROOT, "%.0f", massKg);
        String limit = String.format(Locale.ROOT, "%.0f to %.0f", leastKg, mostKg);
        return new Finding(
                FindingCode.CHART_RANGE,
                Severity.STOP,
                "centre-of-gravity",
                value,
                limit,
                "kg",
                "MACHINE",
                "The envelope does not cover " + value + " kg; it runs from " + limit + " kg.");
    }

    private static void requireFuel(double fuelKg) {
        if (!(fuelKg >= 0 && fuelKg < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("fuelKg (" + fuelKg + ") must not be negative.");
        }
    }
}
