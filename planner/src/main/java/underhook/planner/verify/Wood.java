package underhook.planner.verify;

import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import underhook.core.job.Load;

/** Woods that the job may name, with their moisture behind. */
final class Wood {
    private static final Pattern NAME =
            Pattern.compile(
                    "(wood|spruce|pine|larch|oak|treated[ -]fir)(?:\\s*,?\\s*([0-9]{1,3})\\s*%.*)?",
                    Pattern.CASE_INSENSITIVE);

    /**
     * Dry to wet, kg/m³, and oven-dry mass over that of water in the green volume.
     *
     * @source WOOD-DENSITY-TABLE, POLE-SHEET-DOUGLAS-FIR; FPL-WOOD-HANDBOOK from memory
     */
    private static final Map<String, double[]> WOODS =
            Map.of(
                    "spruce", new double[] {350, 600, 0.37},
                    "pine", new double[] {310, 740, 0.43},
                    "larch", new double[] {440, 800, 0.47},
                    "oak", new double[] {690, 1030, 0.57},
                    "treated fir", new double[] {700, 900, 0.45});

    /** How far pieces of one wood spread about its mean. @source FPL-WOOD-HANDBOOK from memory */
    private static final double SPREAD_FRACTION = 0.1;

    /** More water than that wood does not hold, part of its dry mass. @source FPL-WOOD-HANDBOOK from memory */
    private static final double MOST_MOISTURE_FRACTION = 2.5;

    /** A mass within so much of an end of its band is not surely outside, kg. */
    private static final double END_KG = 1;

    private Wood() {}

    static boolean isNamed(Load load) {
        return NAME.matcher(load.material().strip()).matches();
    }

    /** Whether a pole of this size and wood surely weighs less or more than is stated. */
    static boolean isImplausible(Load load) {
        double[] endsKgPerM3 = endsKgPerM3(load).sorted().toArray();
        if (load.massKg().isEmpty() || endsKgPerM3.length == 0) {
            return false;
        }
        double massKg = load.massKg().getAsDouble();
        double volumeM3 = volumeM3(load);
        return massKg < volumeM3 * endsKgPerM3[0] - END_KG
                || massKg > volumeM3 * endsKgPerM3[endsKgPerM3.length - 1] + END_KG;
    }

    /** None for what is no wood. */
    private static DoubleStream endsKgPerM3(Load load) {
        Matcher words = NAME.matcher(load.material().strip());
        if (!words.matches()) {
            return DoubleStream.empty();
        }
        String name = words.group(1).toLowerCase(Locale.ROOT).replace('-', ' ');
        if (name.equals("wood")) {
            return WOODS.values().stream().flatMapToDouble(one -> DoubleStream.of(one[0], one[1]));
        }
        double[] wood = Objects.requireNonNull(WOODS.get(name));
        if (words.group(2) == null) {
            return DoubleStream.of(wood[0], wood[1]);
        }
        double moistureFraction =
                Math.min(MOST_MOISTURE_FRACTION, Integer.parseInt(words.group(2)) / 100.0);
        double meanKgPerM3 = 1000 * wood[2] * (1 + moistureFraction);
        return DoubleStream.of(
                meanKgPerM3 * (1 - SPREAD_FRACTION), meanKgPerM3 * (1 + SPREAD_FRACTION));
    }

    /** Width is the diameter at the butt, height that at the top. @source DERIVED prismoidal formula */
    private static double volumeM3(Load pole) {
        double middleM = (pole.widthM() + pole.heightM()) / 2;
        return pole.lengthM()
                / 6
                * (circleM2(pole.widthM()) + 4 * circleM2(middleM) + circleM2(pole.heightM()));
    }

    private static double circleM2(double diameterM) {
        return Math.PI / 4 * diameterM * diameterM;
    }
}
