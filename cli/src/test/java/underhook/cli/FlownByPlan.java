package underhook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tools.jackson.databind.JsonNode;

/** A day that was flown as planned, so many seconds late: its taps, and a track with noise and holes. */
final class FlownByPlan {
    /** Spread of a handheld receiver, degrees; about 4 m. */
    private static final double NOISE_DEG = 4 / 111_320.0;

    private final JsonNode plan;
    private final long lateS;
    private final List<String> taps = new ArrayList<>();
    private final List<String> track = new ArrayList<>();
    private final Random random = new Random(20260908);
    private boolean inTheAir;
    private int fixes;

    FlownByPlan(JsonNode plan, long lateS) {
        this.plan = plan;
        this.lateS = lateS;
    }

    void writeTaps(Path file) throws IOException {
        for (JsonNode step : plan.get("steps")) {
            tapStep(step);
        }
        if (inTheAir) {
            JsonNode last = plan.get("steps").get(plan.get("steps").size() - 1);
            tap(time(last, "endAt"), "pilot", "landing", "");
            tap(time(last, "endAt"), "pilot", "engine-off", "");
        }
        Files.writeString(
                file,
                "id,at,by,device,kind,loads,mass_kg,line_m,people\n" + String.join("", taps),
                UTF_8);
    }

    private void tapStep(JsonNode step) {
        Instant start = time(step, "startAt");
        Instant end = time(step, "endAt");
        boolean runs = step.get("engineRunning").asBoolean();
        if (runs && !inTheAir) {
            tap(start, "pilot", "engine-on", "");
            tap(start, "pilot", "take-off", "");
        } else if (!runs && inTheAir) {
            tap(start, "pilot", "landing", "");
            tap(start, "pilot", "engine-off", "");
        }
        inTheAir = runs;
        switch (step.get("kind").asString()) {
            case "lineChange" -> {
                double lineM = step.get("lineLengthM").asDouble();
                tap(
                        end,
                        "loader",
                        lineM > 0 ? "line-on" : "line-off",
                        ",," + (lineM > 0 ? lineM : ""));
                if (lineM > 0) {
                    tap(end, "loader", "line-checked", "");
                }
            }
            case "crewMove" -> {
                tap(start, "loader", "people-aboard", ",,,4");
                tap(end, "loader", "people-out", "");
            }
            case "rotation" -> tapRotation(step);
            default -> {}
        }
    }

    private void tapRotation(JsonNode step) {
        List<String> loads = new ArrayList<>();
        step.get("loads").forEach(load -> loads.add(load.asString()));
        tap(time(step, "hookedAt"), "loader", "hooked", String.join("|", loads));
        for (JsonNode drop : step.get("drops")) {
            Instant free = time(drop, "releasedAt");
            tap(free.minusSeconds(8), "crew", "off", drop.get("load").asString());
            tap(free.minusSeconds(4), "crew", "free-seen", "");
            tap(free, "pilot", "free-confirmed", "");
        }
    }

    private void tap(Instant at, String by, String kind, String rest) {
        String cells = rest + ",".repeat(3 - (int) rest.chars().filter(c -> c == ',').count());
        taps.add(
                "t%04d,%s,%s,%s's phone,%s,%s%n"
                        .formatted(taps.size(), at, by, by, kind, cells)
                        .replace("\r", ""));
    }

    private Instant time(JsonNode node, String name) {
        return OffsetDateTime.parse(node.get(name).asString()).toInstant().plusSeconds(lateS);
    }

    /** Only while something is carried or the machine comes back; a hole of 6 s in every 3 minutes. */
    void writeTrack(Path file) throws IOException {
        for (JsonNode step : plan.get("steps")) {
            if (step.get("kind").asString().equals("rotation")) {
                trackRotation(step);
            }
        }
        Files.writeString(file, "at,lat_deg,lon_deg\n" + String.join("", track), UTF_8);
    }

    private void trackRotation(JsonNode step) {
        JsonNode legs = step.get("legs");
        Instant hooked = time(step, "hookedAt");
        Instant now = time(step, "startAt");
        boolean isHooked = false;
        int drop = 0;
        for (JsonNode leg : legs) {
            JsonNode path = leg.get("path");
            boolean isEmpty = leg.get("carrying").isEmpty();
            if (!isEmpty && !isHooked) {
                hover(path.get(0), now, hooked);
                now = hooked;
                isHooked = true;
            }
            Instant there = now.plusMillis((long) (leg.get("minutes").asDouble() * 60_000));
            fly(path, now, there);
            now = there;
            while (!isEmpty && drop < step.get("drops").size() && isAt(step, drop, leg)) {
                Instant free = time(step.get("drops").get(drop), "releasedAt");
                hover(path.get(path.size() - 1), now, free);
                now = free;
                drop++;
            }
        }
    }

    private static boolean isAt(JsonNode step, int drop, JsonNode leg) {
        return step.get("drops").get(drop).get("place").equals(leg.get("to"));
    }

    private void hover(JsonNode point, Instant from, Instant to) {
        for (Instant at = from; !at.isAfter(to); at = at.plusSeconds(1)) {
            fix(at, point.get(1).asDouble(), point.get(0).asDouble());
        }
    }

    private void fly(JsonNode path, Instant from, Instant to) {
        double[] along = new double[path.size()];
        for (int i = 1; i < path.size(); i++) {
            double north = path.get(i).get(1).asDouble() - path.get(i - 1).get(1).asDouble();
            double east = path.get(i).get(0).asDouble() - path.get(i - 1).get(0).asDouble();
            double scale = Math.cos(Math.toRadians(path.get(i).get(1).asDouble()));
            along[i] = along[i - 1] + Math.hypot(north, east * scale);
        }
        long s = to.getEpochSecond() - from.getEpochSecond();
        for (long t = 1; t < s; t++) {
            double at = along[along.length - 1] * t / s;
            int i = 1;
            while (i < along.length - 1 && along[i] < at) {
                i++;
            }
            double part =
                    along[i] > along[i - 1] ? (at - along[i - 1]) / (along[i] - along[i - 1]) : 0;
            JsonNode a = path.get(i - 1);
            JsonNode b = path.get(i);
            fix(
                    from.plusSeconds(t),
                    a.get(1).asDouble() + part * (b.get(1).asDouble() - a.get(1).asDouble()),
                    a.get(0).asDouble() + part * (b.get(0).asDouble() - a.get(0).asDouble()));
        }
    }

    private void fix(Instant at, double latDeg, double lonDeg) {
        fixes++;
        if (fixes % 180 < 174) {
            track.add(
                    at
                            + ","
                            + (latDeg + NOISE_DEG * random.nextGaussian())
                            + ","
                            + (lonDeg + NOISE_DEG * random.nextGaussian())
                            + "\n");
        }
    }
}
