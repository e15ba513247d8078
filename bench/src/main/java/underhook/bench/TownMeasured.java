package underhook.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.StringJoiner;
import underhook.app.PlanDay;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

/**
 * The demo day with an invented town and its wires round it, against the demo day alone, stage by stage.
 *
 * <p>The town fills 20 by 20 km but for the ground that is flown over, so that the day stays the same.
 */
final class TownMeasured implements Measured {
    private static final int FEATURES = 20_000;
    private static final int WIRES = 500;
    private static final LocalFrame FRAME = LocalFrame.of(new GeoPoint(46.8, -12.0));

    @Override
    public String name() {
        return "town";
    }

    @Override
    public String measure() {
        try {
            Path folder = Files.createTempDirectory("town");
            Underhook program =
                    new Underhook(
                            Settings.from(Map.of("UNDERHOOK_HOME", folder + "/data"), folder));
            Path alone = folder.resolve("alone");
            program.writeDemo(alone);
            plan(program, alone, folder.resolve("warm-up"));
            Map<String, Double> aloneS = plan(program, alone, folder.resolve("out"));
            Path town = folder.resolve("town");
            program.writeDemo(town);
            Random random = new Random(5);
            append(town.resolve("map.geojson"), FEATURES, i -> feature(random, i));
            append(town.resolve("wires.geojson"), WIRES, i -> wire(random, i));
            Map<String, Double> townS = plan(program, town, folder.resolve("out"));
            StringJoiner told = new StringJoiner("\n");
            told.add(
                    "town: "
                            + FEATURES
                            + " features and "
                            + WIRES
                            + " wires round the demo day, against the demo day alone");
            townS.forEach(
                    (stage, stageS) ->
                            told.add(
                                    String.format(
                                            Locale.ROOT,
                                            "  %s: %.2f s, %.2f s alone",
                                            stage,
                                            stageS,
                                            aloneS.getOrDefault(stage, 0.0))));
            return told.toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private interface Drawn {
        String at(int number);
    }

    private static void append(Path file, int count, Drawn drawn) throws IOException {
        String text = Files.readString(file).stripTrailing();
        StringBuilder out = new StringBuilder(text.substring(0, text.lastIndexOf(']')));
        for (int i = 0; i < count; i++) {
            out.append(",\n").append(drawn.at(i));
        }
        Files.writeString(file, out.append("\n]}\n"));
    }

    /** Seconds by stage. */
    private static Map<String, Double> plan(Underhook program, Path job, Path out)
            throws IOException {
        Map<String, Double> stagesS = new LinkedHashMap<>();
        String[] stage = {""};
        long[] since = {System.nanoTime()};
        PlanDay.Request request = new PlanDay.Request(job, out, 1, Duration.ofSeconds(10));
        PlanDay.Result result =
                program.planDay()
                        .plan(
                                request,
                                (doing, share) -> {
                                    stagesS.merge(
                                            stage[0],
                                            (System.nanoTime() - since[0]) / 1e9,
                                            Double::sum);
                                    since[0] = System.nanoTime();
                                    stage[0] = doing;
                                });
        stagesS.merge(stage[0], (System.nanoTime() - since[0]) / 1e9, Double::sum);
        stagesS.remove("");
        boolean planned = result.fold(faults -> false, none -> false, bad -> false, made -> true);
        if (!planned) {
            throw new IllegalStateException("no plan for " + job + ": " + result);
        }
        return stagesS;
    }

    private static String feature(Random random, int number) {
        if (number % 4 == 0) {
            return "{\"type\":\"Feature\",\"properties\":{\"id\":\"TR"
                    + number
                    + "\",\"kind\":\"road\",\"crossing\":\"guarded\"},\"geometry\":"
                    + line(random, 5, 120)
                    + "}";
        }
        return "{\"type\":\"Feature\",\"properties\":{\"id\":\"TH"
                + number
                + "\",\"kind\":\"house\",\"buffer_m\":"
                + (60 + 30 * random.nextInt(4))
                + ",\"crossing\":\"never\"},\"geometry\":{\"type\":\"Point\",\"coordinates\":"
                + position(outside(random, 200))
                + "}}";
    }

    private static String wire(Random random, int number) {
        return "{\"type\":\"Feature\",\"properties\":{\"id\":\"TW"
                + number
                + "\",\"highest_m\":18,\"lateral_m\":5,\"live\":\"yes\",\"voltage_v\":22000,"
                + "\"crossing\":\"allowed\",\"crossing_above_m\":30,"
                + "\"crossing_off_square_deg\":15,\"registered\":\"yes\"},\"geometry\":"
                + line(random, 4, 250)
                + "}";
    }

    private static String line(Random random, int pieces, double pieceM) {
        PlanePoint at = outside(random, pieces * pieceM + 200);
        double bearingRad = 2 * Math.PI * random.nextDouble();
        StringJoiner points = new StringJoiner(",", "[", "]");
        points.add(position(at));
        for (int i = 0; i < pieces; i++) {
            bearingRad += random.nextDouble() - 0.5;
            at = at.towards(bearingRad, pieceM);
            points.add(position(at));
        }
        return "{\"type\":\"LineString\",\"coordinates\":" + points + "}";
    }

    /** A point of the town's square so far off the ground that is flown over. */
    private static PlanePoint outside(Random random, double offM) {
        while (true) {
            double eastM = -7000 + 20_000 * random.nextDouble();
            double northM = -9000 + 20_000 * random.nextDouble();
            boolean flown =
                    eastM > -800 - offM
                            && eastM < 7600 + offM
                            && northM > -700 - offM
                            && northM < 3200 + offM;
            if (!flown) {
                return new PlanePoint(eastM, northM);
            }
        }
    }

    private static String position(PlanePoint point) {
        GeoPoint at = FRAME.toGeo(point);
        return String.format(Locale.ROOT, "[%.9f,%.9f]", at.lonDeg(), at.latDeg());
    }
}
