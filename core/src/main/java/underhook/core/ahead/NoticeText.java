package underhook.core.ahead;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import underhook.core.ahead.Notice.Circle;
import underhook.core.ahead.Notice.Kind;
import underhook.core.ahead.Notice.Unread;
import underhook.core.ahead.Notice.Validity;
import underhook.core.geo.GeoPoint;
import underhook.core.unit.Units;

/**
 * Reads notices as a person pastes them, one after the other, with whatever stands between them.
 *
 * <p>Nothing is lost: what has no notice's head, or an item that cannot be read, is kept as unread.
 *
 * @source ICAO-ANNEX-15 appendix with the notice's format; items Q, A to G and their letters
 */
public final class NoticeText {
    private static final Pattern HEAD =
            Pattern.compile(
                    "(?:\\(\\s*)?\\b([A-Z]\\d{4}/\\d{2})\\s+NOTAM([NRC])\\b(?:[ \\t]+([A-Z]\\d{4}/\\d{2}))?");
    private static final Pattern ITEM = Pattern.compile("(?<![A-Z0-9(])([QABCDEFG])\\)\\s*");
    private static final Pattern CIRCLE =
            Pattern.compile("(\\d{2})(\\d{2})([NS])(\\d{3})(\\d{2})([EW])(\\d{3})");
    private static final Pattern TIME =
            Pattern.compile("(\\d{2})(\\d{2})(\\d{2})(\\d{2})(\\d{2})(?:\\s*(EST))?");
    private static final Pattern NAMED =
            Pattern.compile(
                    "(?<!\\d)(\\d{2})(\\d{2})(\\d{2}(?:\\.\\d+)?)?\\s?([NS])[\\s,/]{0,2}"
                            + "(\\d{3})(\\d{2})(\\d{2}(?:\\.\\d+)?)?\\s?([EW])(?![A-Z])");
    private static final String ORDER = "QABCDEFG";

    private static final String CIRCLE_ALLOWED =
            "a place as 4701N01105E with a radius of three digits";
    private static final String TIME_ALLOWED = "ten digits as 2609080600";

    private final String text;
    private final int[] lineEnds;
    private final List<Notice> notices = new ArrayList<>();

    private NoticeText(String text) {
        this.text = text;
        this.lineEnds =
                IntStream.range(0, text.length()).filter(i -> text.charAt(i) == '\n').toArray();
    }

    /** Every notice in the order of the text, and every piece of text that is none. */
    public static List<Notice> read(String text) {
        return new NoticeText(text).read();
    }

    private List<Notice> read() {
        List<int[]> heads = new ArrayList<>();
        Matcher head = HEAD.matcher(text);
        while (head.find()) {
            heads.add(new int[] {head.start(), head.end()});
        }
        keepLoose(0, heads.isEmpty() ? text.length() : heads.get(0)[0]);
        for (int i = 0; i < heads.size(); i++) {
            int next = i + 1 < heads.size() ? heads.get(i + 1)[0] : text.length();
            int end = endOf(heads.get(i)[0], next);
            readOne(heads.get(i)[0], end);
            keepLoose(end, next);
        }
        return List.copyOf(notices);
    }

    /** A notice in brackets ends with its bracket, any other at a blank line behind which no item begins. */
    private int endOf(int start, int next) {
        if (text.charAt(start) == '(') {
            int depth = 0;
            for (int i = start; i < next; i++) {
                char letter = text.charAt(i);
                boolean isItem =
                        letter == ')'
                                && i > 0
                                && ORDER.indexOf(text.charAt(i - 1)) >= 0
                                && (i < 2 || !Character.isLetterOrDigit(text.charAt(i - 2)))
                                && depth == 1;
                depth += letter == '(' ? 1 : letter == ')' && !isItem ? -1 : 0;
                if (depth == 0) {
                    return i + 1;
                }
            }
        }
        Matcher blank = Pattern.compile("\\n[ \\t\\r]*\\n\\s*").matcher(text).region(start, next);
        while (blank.find()) {
            if (!Pattern.compile("[A-G]\\)").matcher(text).region(blank.end(), next).lookingAt()) {
                return blank.start();
            }
        }
        return next;
    }

    private void keepLoose(int start, int end) {
        String loose = text.substring(start, end);
        if (loose.chars().noneMatch(Character::isLetterOrDigit)) {
            return;
        }
        int from = start + loose.indexOf(loose.strip().charAt(0));
        notices.add(
                new Notice(
                        "",
                        Kind.NONE,
                        "",
                        "",
                        "",
                        Optional.empty(),
                        Optional.empty(),
                        "",
                        named(loose),
                        List.of(
                                new Unread(
                                        lineAt(from),
                                        "head",
                                        firstWords(loose),
                                        "a number as A0123/26 and NOTAMN, NOTAMR or NOTAMC")),
                        loose.strip()));
    }

    private void readOne(int start, int end) {
        Matcher head = HEAD.matcher(text).region(start, end);
        if (!head.lookingAt()) {
            throw new IllegalStateException("a notice without its head.");
        }
        Map<Character, Item> items = items(head.end(), end);
        List<Unread> unread = new ArrayList<>();
        Kind kind =
                switch (head.group(2)) {
                    case "R" -> Kind.REPLACES;
                    case "C" -> Kind.CANCELS;
                    default -> Kind.NEW;
                };
        String[] scope = item(items, 'Q').text.replaceAll("\\s+", "").split("/", -1);
        Optional<Circle> circle = circle(scope[scope.length - 1]);
        if (circle.isEmpty()) {
            unread.add(unread(items, 'Q', head.start(), CIRCLE_ALLOWED));
        }
        Optional<Validity> validity = validity(items, kind);
        if (validity.isEmpty()) {
            boolean begins = time(item(items, 'B').text).isPresent();
            unread.add(
                    begins
                            ? unread(
                                    items,
                                    'C',
                                    head.start(),
                                    TIME_ALLOWED + " after item B, EST behind it, or PERM")
                            : unread(items, 'B', head.start(), TIME_ALLOWED));
        }
        if (item(items, 'E').text.isBlank()) {
            unread.add(unread(items, 'E', head.start(), "the text of the notice"));
        }
        notices.add(
                new Notice(
                        head.group(1),
                        kind,
                        Optional.ofNullable(head.group(3)).orElse(""),
                        scope.length > 1 && scope[1].matches("Q[A-Z]{4}") ? scope[1] : "",
                        scope.length > 7 && (scope[5] + scope[6]).matches("\\d{6}")
                                ? scope[5] + "/" + scope[6]
                                : "",
                        circle,
                        validity,
                        item(items, 'D').text,
                        named(item(items, 'E').text),
                        unread,
                        text.substring(start, end).strip()));
    }

    /** The letters of items come in their order; a letter out of it belongs to the text before. */
    private Map<Character, Item> items(int start, int end) {
        Map<Character, Item> items = new LinkedHashMap<>();
        Matcher item = ITEM.matcher(text).region(start, end);
        item.useTransparentBounds(true);
        char open = 0;
        int from = start;
        int at = start;
        while (item.find()) {
            char letter = item.group(1).charAt(0);
            if (open != 0 && ORDER.indexOf(letter) <= ORDER.indexOf(open)) {
                continue;
            }
            if (open != 0) {
                items.put(open, new Item(at, text.substring(from, item.start()).strip()));
            }
            open = letter;
            at = item.start();
            from = item.end();
        }
        if (open != 0) {
            items.put(open, new Item(at, text.substring(from, end).strip().replaceAll("\\)$", "")));
        }
        return items;
    }

    private record Item(int at, String text) {}

    private static Item item(Map<Character, Item> items, char letter) {
        return items.getOrDefault(letter, new Item(-1, ""));
    }

    private Unread unread(Map<Character, Item> items, char letter, int head, String allowed) {
        Item item = item(items, letter);
        return new Unread(
                lineAt(item.at < 0 ? head : item.at),
                String.valueOf(letter),
                firstWords(item.text),
                allowed);
    }

    private int lineAt(int at) {
        int found = Arrays.binarySearch(lineEnds, at);
        return 1 + (found >= 0 ? found : -found - 1);
    }

    private static String firstWords(String of) {
        String words = of.strip().replaceAll("\\s+", " ");
        return words.length() > 60 ? words.substring(0, 60) + "…" : words;
    }

    private static Optional<Circle> circle(String written) {
        Matcher found = CIRCLE.matcher(written);
        if (!found.matches()) {
            return Optional.empty();
        }
        double latRad = angleRad(found.group(1), found.group(2), "0");
        double lonRad = angleRad(found.group(4), found.group(5), "0");
        return point(
                        found.group(3).equals("S") ? -latRad : latRad,
                        found.group(6).equals("W") ? -lonRad : lonRad)
                .map(
                        centre ->
                                new Circle(
                                        centre, Units.nmiToM(Double.parseDouble(found.group(7)))));
    }

    private static List<Circle> named(String text) {
        List<Circle> points = new ArrayList<>();
        Matcher found = NAMED.matcher(text);
        while (found.find()) {
            double latRad = angleRad(found.group(1), found.group(2), seconds(found.group(3)));
            double lonRad = angleRad(found.group(5), found.group(6), seconds(found.group(7)));
            boolean isToSeconds = found.group(3) != null && found.group(7) != null;
            point(
                            found.group(4).equals("S") ? -latRad : latRad,
                            found.group(8).equals("W") ? -lonRad : lonRad)
                    .map(
                            at ->
                                    new Circle(
                                            at,
                                            isToSeconds
                                                    ? Circle.HALF_SECOND_M
                                                    : Circle.HALF_MINUTE_M))
                    .ifPresent(points::add);
        }
        return points;
    }

    private static String seconds(@Nullable String group) {
        return group == null ? "0" : group;
    }

    /** NaN where minutes or seconds are above 59: a slip of the pen, and no place. */
    private static double angleRad(String degrees, String minutes, String seconds) {
        double min = Double.parseDouble(minutes);
        double s = Double.parseDouble(seconds);
        return min < 60 && s < 60
                ? Units.degToRad(Double.parseDouble(degrees) + (min + s / 60) / 60)
                : Double.NaN;
    }

    private static Optional<GeoPoint> point(double latRad, double lonRad) {
        double latDeg = Units.radToDeg(latRad);
        double lonDeg = Units.radToDeg(lonRad);
        return Math.abs(latDeg) <= 90 && Math.abs(lonDeg) <= 180
                ? Optional.of(new GeoPoint(latDeg, lonDeg))
                : Optional.empty();
    }

    /** One that cancels has no end of its own. */
    private static Optional<Validity> validity(Map<Character, Item> items, Kind kind) {
        Optional<Instant> from = time(item(items, 'B').text);
        String end = item(items, 'C').text.strip();
        if (from.isEmpty()) {
            return Optional.empty();
        }
        if (end.equals("PERM") || (end.isEmpty() && kind == Kind.CANCELS)) {
            return Optional.of(new Validity(from.get(), Optional.empty(), false));
        }
        return time(end)
                .filter(until -> !until.isBefore(from.get()))
                .map(until -> new Validity(from.get(), Optional.of(until), end.endsWith("EST")));
    }

    /** Year, month, day, hour and minute in universal time; midnight may be written as 2400. */
    private static Optional<Instant> time(String written) {
        Matcher found = TIME.matcher(written.strip());
        if (!found.matches()) {
            return Optional.empty();
        }
        int hour = Integer.parseInt(found.group(4));
        int minute = Integer.parseInt(found.group(5));
        boolean isMidnight = hour == 24 && minute == 0;
        try {
            Instant at =
                    LocalDateTime.of(
                                    2000 + Integer.parseInt(found.group(1)),
                                    Integer.parseInt(found.group(2)),
                                    Integer.parseInt(found.group(3)),
                                    isMidnight ? 0 : hour,
                                    minute)
                            .toInstant(ZoneOffset.UTC);
            return Optional.of(isMidnight ? at.plusSeconds(86_400) : at);
        } catch (DateTimeException none) {
            return Optional.empty();
        }
    }
}
