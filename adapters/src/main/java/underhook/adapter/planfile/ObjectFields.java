package underhook.adapter.planfile;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import underhook.adapter.planfile.Located.Kind;
import underhook.app.port.NearestWord;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;

/**
 * Takes the fields of one object one after the other. A fault is noted and a harmless value returned, so
 * that the rest is still looked at; nobody uses what was read once there is a fault.
 */
final class ObjectFields {
    private static final long MOST_CENTS = 1_000_000_000_000L;

    /** Between these any two times can be taken from each other to the nanosecond in 64 bits. */
    private static final Instant EARLIEST = Instant.parse("1900-01-01T00:00:00Z");

    private static final Instant LATEST = Instant.parse("2190-01-01T00:00:00Z");

    private final String path;
    private final Located object;
    private final Faults faults;
    private final Set<String> asked = new HashSet<>();

    ObjectFields(String path, Located object, Faults faults) {
        this.path = path;
        this.object = object;
        this.faults = faults;
        if (object.kind() != Kind.OBJECT) {
            faults.add(path.isEmpty() ? "plan" : path, object, "an object");
        }
    }

    String text(String name) {
        return leaf(name, Kind.TEXT, "text").map(Located::text).orElse("");
    }

    /** Text, or null for none. */
    Optional<String> textOrNull(String name) {
        return valueOrNull(name, Kind.TEXT, "text or null").map(Located::text);
    }

    /** Text or number as it stands; empty for null. */
    String found(String name) {
        Optional<Located> value = member(name);
        if (value.isEmpty() || value.get().kind() == Kind.NULL) {
            return "";
        }
        Kind kind = value.get().kind();
        if (kind != Kind.TEXT && kind != Kind.NUMBER) {
            faults.add(at(name), value.get(), "text, a number or null");
        }
        return value.get().text();
    }

    boolean flag(String name) {
        return leaf(name, Kind.BOOLEAN, "true or false")
                .map(value -> Boolean.parseBoolean(value.text()))
                .orElse(false);
    }

    double number(String name) {
        return leaf(name, Kind.NUMBER, "a number")
                .map(value -> finite(at(name), value))
                .orElse(0.0);
    }

    /** What can be none, but not less. */
    double amount(String name) {
        return within(name, Double.MAX_VALUE, "a number from 0 on");
    }

    /** Degrees; 360 where a bearing just below it was rounded. */
    double bearingDeg(String name) {
        return within(name, 360, "degrees from 0 to 360");
    }

    private double within(String name, double mostNumber, String allowed) {
        double value = number(name);
        if (value >= 0 && value <= mostNumber) {
            return value;
        }
        member(name).ifPresent(found -> faults.add(at(name), found, allowed));
        return 0;
    }

    OptionalDouble numberOrNull(String name) {
        return valueOrNull(name, Kind.NUMBER, "a number or null")
                .map(value -> OptionalDouble.of(finite(at(name), value)))
                .orElse(OptionalDouble.empty());
    }

    private double finite(String where, Located value) {
        double number = Double.parseDouble(value.text());
        if (!Double.isFinite(number)) {
            faults.add(where, value, "a number below 1.8e308");
            return 0;
        }
        return number;
    }

    long whole(String name) {
        Optional<Located> value = leaf(name, Kind.NUMBER, "a whole number");
        if (value.isEmpty()) {
            return 0;
        }
        try {
            return Long.parseLong(value.get().text());
        } catch (NumberFormatException notWhole) {
            faults.add(at(name), value.get(), "a whole number of 64 bits");
            return 0;
        }
    }

    int count(String name) {
        return (int) whole(name, 0, Integer.MAX_VALUE, "a count");
    }

    /** So small that any file's sum of them, and each times a rate, fits into 64 bits. */
    long cents(String name) {
        return whole(name, 0, MOST_CENTS, "a whole number");
    }

    /** Of a difference. */
    long signedCents(String name) {
        return whole(name, -MOST_CENTS, MOST_CENTS, "a whole number");
    }

    long whole(String name, long least, long most, String what) {
        long value = whole(name);
        if (value < least || value > most) {
            String allowed = what + " from " + least + " to " + most;
            member(name).ifPresent(found -> faults.add(at(name), found, allowed));
            return least;
        }
        return value;
    }

    Instant time(String name) {
        return leaf(name, Kind.TEXT, "a time")
                .map(value -> instant(at(name), value))
                .orElse(Instant.EPOCH);
    }

    Optional<Instant> timeOrNull(String name) {
        return valueOrNull(name, Kind.TEXT, "a time or null").map(v -> instant(at(name), v));
    }

    private Instant instant(String where, Located value) {
        try {
            Instant read = OffsetDateTime.parse(value.text()).toInstant();
            if (!read.isBefore(EARLIEST) && read.isBefore(LATEST)) {
                return read;
            }
        } catch (DateTimeParseException notATime) {
            // Told below.
        }
        faults.add(where, value, "an ISO 8601 time with offset, of the years 1900 to 2189");
        return Instant.EPOCH;
    }

    /** An id, made by the constructor of its type. */
    <T> T id(String name, Function<String, T> toId) {
        return leaf(name, Kind.TEXT, "an id")
                .map(value -> toId(at(name), value, toId))
                .orElseGet(() -> toId.apply("?"));
    }

    <T> List<T> ids(String name, Function<String, T> toId) {
        return each(name, (where, value) -> toId(where, value, toId));
    }

    private <T> T toId(String where, Located value, Function<String, T> toId) {
        String text = value.text();
        if (value.kind() != Kind.TEXT || text.isBlank() || !text.equals(text.strip())) {
            faults.add(where, value, "an id without blanks around it");
            return toId.apply("?");
        }
        return toId.apply(text);
    }

    List<String> texts(String name) {
        return each(
                name,
                (where, value) -> {
                    if (value.kind() != Kind.TEXT) {
                        faults.add(where, value, "text");
                    }
                    return value.text();
                });
    }

    <E extends Enum<E>> E word(String name, Class<E> type) {
        E[] known = type.getEnumConstants();
        Optional<Located> value = leaf(name, Kind.TEXT, "a word");
        if (value.isEmpty()) {
            return known[0];
        }
        String text = value.get().text();
        Optional<E> match = Arrays.stream(known).filter(e -> e.name().equals(text)).findFirst();
        if (match.isEmpty()) {
            List<String> words = Arrays.stream(known).map(Enum::name).toList();
            faults.add(
                    at(name),
                    value.get(),
                    words.size() <= 5
                            ? "one of " + String.join(", ", words)
                            : "a known code. Perhaps " + NearestWord.of(text, words));
        }
        return match.orElse(known[0]);
    }

    /** Longitude, latitude and, where asked for, height. */
    List<Double> position(String where, Located value, int size) {
        List<Double> numbers = new ArrayList<>();
        for (Located item : value.items()) {
            numbers.add(item.kind() == Kind.NUMBER ? Double.parseDouble(item.text()) : Double.NaN);
        }
        boolean good =
                numbers.size() == size
                        && numbers.stream().allMatch(Double::isFinite)
                        && Math.abs(numbers.get(0)) <= 180
                        && Math.abs(numbers.get(1)) <= 90;
        if (!good) {
            faults.add(
                    where,
                    value,
                    "[longitude in -180 to 180, latitude in -90 to 90"
                            + (size == 3 ? ", altitude]" : "]"));
            return List.of(0.0, 0.0, 0.0);
        }
        return numbers;
    }

    /** Pairs of bearings, degrees: first below 360, second up to it. */
    List<List<Double>> sectors(String name) {
        return each(name, this::sector);
    }

    private List<Double> sector(String where, Located value) {
        List<Double> numbers = new ArrayList<>();
        for (Located item : value.items()) {
            numbers.add(item.kind() == Kind.NUMBER ? Double.parseDouble(item.text()) : Double.NaN);
        }
        boolean good =
                numbers.size() == 2
                        && numbers.get(0) >= 0
                        && numbers.get(0) < 360
                        && numbers.get(1) >= 0
                        && numbers.get(1) <= 360;
        if (!good) {
            faults.add(where, value, "[from in 0 to below 360, to in 0 to 360]");
            return List.of(0.0, 0.0);
        }
        return numbers;
    }

    GeoPoint point(String name) {
        return member(name)
                .map(value -> position(at(name), value, 2))
                .map(lonLat -> new GeoPoint(lonLat.get(1), lonLat.get(0)))
                .orElse(new GeoPoint(0, 0));
    }

    <T> List<T> objects(String name, Function<ObjectFields, T> read) {
        return each(
                name,
                (where, value) -> {
                    ObjectFields fields = new ObjectFields(where, value, faults);
                    T result = read.apply(fields);
                    fields.refuseOthers();
                    return result;
                });
    }

    <T> List<T> each(String name, BiFunction<String, Located, T> read) {
        List<T> results = new ArrayList<>();
        List<Located> items = leaf(name, Kind.LIST, "a list").map(Located::items).orElse(List.of());
        for (int i = 0; i < items.size(); i++) {
            results.add(read.apply(at(name) + "[" + i + "]", items.get(i)));
        }
        return results;
    }

    /** A field that is an object; without it, one that has no fields. */
    <T> T object(String name, Function<ObjectFields, T> read) {
        Located value =
                member(name).orElse(new Located(Kind.OBJECT, "", java.util.Map.of(), List.of(), 0));
        ObjectFields fields = new ObjectFields(at(name), value, faults);
        T result = read.apply(fields);
        fields.refuseOthers();
        return result;
    }

    <T> Optional<T> objectOrNull(String name, Function<ObjectFields, T> read) {
        return valueOrNull(name, Kind.OBJECT, "an object or null")
                .map(
                        value -> {
                            ObjectFields fields = new ObjectFields(at(name), value, faults);
                            T result = read.apply(fields);
                            fields.refuseOthers();
                            return result;
                        });
    }

    /** An object that older files do not have; null for none. */
    <T> Optional<T> objectIfThere(String name, Function<ObjectFields, T> read) {
        return object.members().containsKey(name) ? objectOrNull(name, read) : Optional.empty();
    }

    /** Objects that older files do not have. */
    <T> List<T> objectsIfThere(String name, Function<ObjectFields, T> read) {
        return object.members().containsKey(name) ? objects(name, read) : List.of();
    }

    /** Whether the object has a field that older files do not have. */
    boolean isThere(String name) {
        return object.members().containsKey(name);
    }

    /** Text that older files do not have. */
    Optional<String> textIfThere(String name) {
        return object.members().containsKey(name) ? textOrNull(name) : Optional.empty();
    }

    /** A day, or null for none. */
    Optional<LocalDate> dateOrNull(String name) {
        Optional<Located> value = valueOrNull(name, Kind.TEXT, "a date or null");
        if (value.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(value.get().text()));
        } catch (DateTimeParseException noDate) {
            faults.add(at(name), value.get(), "a date such as 2026-09-08");
            return Optional.empty();
        }
    }

    /** Fields that are there for people and say nothing about the plan. */
    void allow(String... names) {
        asked.addAll(List.of(names));
    }

    void refuse(String name, String allowed) {
        member(name).ifPresent(value -> faults.add(at(name), value, allowed));
    }

    /** Every field that nobody asked for is a fault. */
    void refuseOthers() {
        object.members()
                .forEach(
                        (name, value) -> {
                            if (!asked.contains(name)) {
                                faults.add(
                                        at(name),
                                        value.line(),
                                        new Faults.Problem(
                                                FindingCode.PLAN_UNREADABLE,
                                                name,
                                                "a known field. Perhaps "
                                                        + NearestWord.of(name, asked)));
                            }
                        });
    }

    private Optional<Located> valueOrNull(String name, Kind kind, String allowed) {
        Optional<Located> value = member(name);
        if (value.isPresent() && value.get().kind() == Kind.NULL) {
            return Optional.empty();
        }
        return ofKind(name, value, kind, allowed);
    }

    private Optional<Located> leaf(String name, Kind kind, String allowed) {
        return ofKind(name, member(name), kind, allowed);
    }

    private Optional<Located> ofKind(
            String name, Optional<Located> value, Kind kind, String allowed) {
        if (value.isPresent() && value.get().kind() != kind) {
            faults.add(at(name), value.get(), allowed);
            return Optional.empty();
        }
        return value;
    }

    private Optional<Located> member(String name) {
        boolean first = asked.add(name);
        Located value = object.members().get(name);
        if (value == null && first && object.kind() == Kind.OBJECT) {
            faults.add(
                    at(name),
                    object.line(),
                    new Faults.Problem(
                            FindingCode.PLAN_UNREADABLE, "", "this field, which is missing"));
        }
        return Optional.ofNullable(value);
    }

    private String at(String name) {
        return path.isEmpty() ? name : path + "." + name;
    }
}
