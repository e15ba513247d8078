package underhook.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import underhook.app.port.Caution;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.PlaceRoom.Fit;
import underhook.core.plan.PlaceRoom.LineRoom;
import underhook.core.plan.PlaceRoom.Sector;
import underhook.core.unit.Units;

/** Room at a place as lines of text and as JSON. */
final class RoomWords {
    private RoomWords() {}

    /** A table by line, what each costs, and the advice. */
    static List<String> of(PlaceRoom room) {
        List<String> lines = new ArrayList<>();
        lines.add(room.place() + ": headings TRUE");
        lines.add(row("line", "free", "near", "refused", "decides on the worst heading"));
        for (LineRoom line : room.lines()) {
            lines.add(
                    row(
                            name(line),
                            sectors(line, Fit.FREE),
                            sectors(line, Fit.NEAR),
                            sectors(line, Fit.REFUSED),
                            tightest(line.tightest())));
        }
        for (LineRoom line : room.lines()) {
            lines.add(
                    String.format(
                            Locale.ROOT,
                            "  %s: estimates: settles in %.0f s, wind on the ground %.0f kt,"
                                    + " reaches %.1f m below the hook",
                            name(line),
                            Math.ceil(line.cost().settleS()),
                            Math.ceil(Units.mPerSToKt(line.cost().downwashMPerS())),
                            line.cost().reachM()));
        }
        lines.add("  take: " + room.advisedLine().orElse("none") + " (" + room.reason() + ")");
        lines.add("");
        return lines;
    }

    private static String row(String... cells) {
        return String.format(Locale.ROOT, "  %-14s %-22s %-22s %-22s %s", (Object[]) cells)
                .stripTrailing();
    }

    private static String name(LineRoom line) {
        return line.standsM() > 0
                ? line.line() + String.format(Locale.ROOT, " + %.1f", line.standsM())
                : line.line();
    }

    private static String sectors(LineRoom line, Fit fit) {
        String text =
                line.sectors().stream()
                        .filter(sector -> sector.fit() == fit)
                        .map(RoomWords::sector)
                        .collect(Collectors.joining(" "));
        return text.isEmpty() ? "-" : text;
    }

    /** Free and near ones are rounded inwards. */
    private static String sector(Sector sector) {
        double fromDeg = Math.toDegrees(sector.fromTrueRad());
        double toDeg = Math.toDegrees(sector.toTrueRad());
        boolean inwards = sector.fit() != Fit.REFUSED;
        long from = (long) (inwards ? Math.ceil(fromDeg - 1e-6) : Math.floor(fromDeg + 1e-6));
        long to = (long) (inwards ? Math.floor(toDeg + 1e-6) : Math.ceil(toDeg - 1e-6));
        return from == 0 && to == 360
                ? "all"
                : String.format(Locale.ROOT, "%03d-%03d", from % 360, to % 360);
    }

    private static String tightest(PlaceRoom.Tightest tightest) {
        return String.format(
                Locale.ROOT,
                "%s to %s %s of %.1f m, unknown %.1f m, on %03.0f",
                tightest.part(),
                tightest.cause(),
                Double.isFinite(tightest.marginM())
                        ? String.format(
                                Locale.ROOT, "%.1f", Math.floor(tightest.marginM() * 10) / 10)
                        : "not known",
                tightest.neededM(),
                Math.ceil(tightest.unknownM() * 10) / 10,
                Math.toDegrees(tightest.headingTrueRad()));
    }

    /** The same keys as in plan.json. */
    static Map<String, Object> json(List<PlaceRoom> rooms) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("version", 1);
        root.put("caution", Caution.TEXT);
        root.put("places", rooms.stream().map(RoomWords::json).toList());
        return root;
    }

    private static Map<String, Object> json(PlaceRoom room) {
        Map<String, Object> node = new LinkedHashMap<>();
        node.put("place", room.place().value());
        node.put("lines", room.lines().stream().map(RoomWords::json).toList());
        room.advisedLine().ifPresent(line -> node.put("advisedLine", line));
        node.put("reason", room.reason());
        return node;
    }

    private static Map<String, Object> json(LineRoom line) {
        Map<String, Object> node = new LinkedHashMap<>();
        node.put("line", line.line());
        node.put("lineLengthM", line.lineLengthM());
        node.put("standsM", line.standsM());
        node.put("freeTrueDeg", degrees(line, Fit.FREE));
        node.put("nearTrueDeg", degrees(line, Fit.NEAR));
        node.put("refusedTrueDeg", degrees(line, Fit.REFUSED));
        Map<String, Object> tightest = new LinkedHashMap<>();
        tightest.put("part", line.tightest().part());
        tightest.put("cause", line.tightest().cause());
        tightest.put("headingTrueDeg", Math.toDegrees(line.tightest().headingTrueRad()));
        if (Double.isFinite(line.tightest().marginM())) {
            tightest.put("marginM", line.tightest().marginM());
        }
        tightest.put("neededM", line.tightest().neededM());
        tightest.put("unknownM", line.tightest().unknownM());
        node.put("tightest", tightest);
        node.put("settleSeconds", line.cost().settleS());
        node.put("downwashKt", Units.mPerSToKt(line.cost().downwashMPerS()));
        node.put("reachM", line.cost().reachM());
        return node;
    }

    private static List<List<Double>> degrees(LineRoom line, Fit fit) {
        return line.sectors().stream()
                .filter(sector -> sector.fit() == fit)
                .map(
                        sector ->
                                List.of(
                                        Math.toDegrees(sector.fromTrueRad()),
                                        Math.toDegrees(sector.toTrueRad())))
                .toList();
    }
}
