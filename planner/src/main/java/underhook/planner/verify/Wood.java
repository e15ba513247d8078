package underhook.planner.verify;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import underhook.core.job.Load;
import underhook.core.load.DensityBand;
import underhook.core.load.Material;

/** Woods that the job may name, with their moisture behind. */
final class Wood {
    private static final Pattern WOOD =
            Pattern.compile(
                    "(wood|spruce|pine|larch|oak|treated[ -]fir)(?:\\s*,?\\s*([0-9]{1,3})\\s*%.*)?",
                    Pattern.CASE_INSENSITIVE);

    /** A mass within so much of an end of its band is not surely outside, kg. */
    private static final double END_KG = 1;

    private Wood() {}

    static boolean isNamed(Load load) {
        return WOOD.matcher(load.material().strip()).matches();
    }

    /** Whether a pole of this size and wood surely weighs less or more than is stated. */
    static boolean isImplausible(Load load) {
        double[] endsKgPerM3 = bands(load).flatMapToDouble(Wood::ends).sorted().toArray();
        if (load.massKg().isEmpty() || endsKgPerM3.length == 0) {
            return false;
        }
        double massKg = load.massKg().getAsDouble();
        double volumeM3 = volumeM3(load);
        return massKg < volumeM3 * endsKgPerM3[0] - END_KG
                || massKg > volumeM3 * endsKgPerM3[endsKgPerM3.length - 1] + END_KG;
    }

    private static Stream<DensityBand> bands(Load load) {
        Matcher words = WOOD.matcher(load.material().strip());
        if (!words.matches()) {
            return Stream.empty();
        }
        String name = words.group(1).toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
        if (name.equals("WOOD")) {
            return Stream.of(Material.values()).filter(Material::isWood).map(Material::band);
        }
        Material wood = Material.valueOf(name);
        if (words.group(2) == null) {
            return Stream.of(wood.band());
        }
        return Stream.of(wood.band(Math.min(2.5, Integer.parseInt(words.group(2)) / 100.0)));
    }

    private static DoubleStream ends(DensityBand band) {
        return DoubleStream.of(band.lightestKgPerM3(), band.heaviestKgPerM3());
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
