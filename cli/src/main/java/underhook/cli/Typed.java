package underhook.cli;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import underhook.app.port.ClockTime;
import underhook.core.unit.Units;

/** Reads what was typed for options; what cannot be read is kept, and refused all at once. */
final class Typed {
    private static final Pattern CLOCK = Pattern.compile("[0-9]{1,2}:[0-9]{2}(:[0-9]{2})?");
    private static final Pattern MASS = Pattern.compile("([0-9]+(?:\\.[0-9]+)?) ?(kg|lbs?)?");
    private static final Pattern THREE =
            Pattern.compile(
                    "([0-9]|[1-9][0-9]|[12][0-9]{2}|3[0-5][0-9]),([0-9]{1,3}),([0-9]{1,3})");

    private final Supplier<Optional<ZonedDateTime>> jobsDay;
    private final List<String> faults = new ArrayList<>();
    private boolean isAsked;
    private @Nullable ZonedDateTime day;

    /**
     * @param jobsDay finds the begin of the job's day in its zone; asked once, when a time without a date is typed
     */
    Typed(Supplier<Optional<ZonedDateTime>> jobsDay) {
        this.jobsDay = jobsDay;
    }

    /** Refuses everything that could not be read. */
    void requireAll(CommandLine line) {
        if (!faults.isEmpty()) {
            throw new ParameterException(line, String.join(System.lineSeparator(), faults));
        }
    }

    void refuse(String option, String text, String why) {
        faults.add(option + " (" + text + "): " + why);
    }

    /** A value, or nothing when it cannot be; then its fault is kept. */
    <T> Optional<T> read(String option, String text, Function<String, T> how) {
        try {
            return Optional.of(how.apply(text));
        } catch (IllegalArgumentException fault) {
            refuse(option, text, String.valueOf(fault.getMessage()));
            return Optional.empty();
        }
    }

    OptionalDouble number(String option, String text) {
        return read(option, text, Typed::number)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    }

    /** Values of the form ID=VALUE. */
    <T> List<T> readEach(
            String option, List<String> texts, BiFunction<String, String, ? extends T> how) {
        List<T> all = new ArrayList<>();
        for (String text : texts) {
            int equals = text.indexOf('=');
            if (equals < 1) {
                refuse(option, text, "an id, = and a value are allowed.");
                continue;
            }
            read(
                            option,
                            text,
                            id -> how.apply(text.substring(0, equals), text.substring(equals + 1)))
                    .ifPresent(all::add);
        }
        return all;
    }

    /** The same, of which one stands for each id: of two nobody can say which one holds. */
    <T> List<T> readOnce(
            String option, List<String> texts, BiFunction<String, String, ? extends T> how) {
        TreeSet<String> ids = new TreeSet<>();
        for (String text : texts) {
            int equals = text.indexOf('=');
            if (equals > 0 && !ids.add(text.substring(0, equals))) {
                refuse(option, text, "one for each id is allowed.");
            }
        }
        return readEach(option, texts, how);
    }

    /**
     * By the clock of the job's day, or with date and offset.
     *
     * @return the epoch for a time of the clock when the job cannot be read, whose faults are told then
     */
    Instant time(String text) {
        try {
            return CLOCK.matcher(text).matches()
                    ? onClock(LocalTime.parse(text.indexOf(':') == 1 ? "0" + text : text))
                    : OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeException noTime) {
            throw new IllegalArgumentException(
                    "a time on the job's day such as 10:15 is allowed, or one such as "
                            + LocalDate.EPOCH
                            + "T10:15:00+02:00.",
                    noTime);
        }
    }

    private Instant onClock(LocalTime time) {
        if (!isAsked) {
            isAsked = true;
            day = jobsDay.get().orElse(null);
        }
        if (day == null) {
            return Instant.EPOCH;
        }
        ClockTime there = new ClockTime(day.toLocalDate().atTime(time), day.getZone());
        return there.find()
                .orElseThrow(
                        () ->
                                new IllegalArgumentException(
                                        there.wrong() + "; allowed is " + there.allowed() + "."));
    }

    /** Kilograms, or pounds where lb stands behind the number. */
    static double massKg(String text) {
        Matcher mass = MASS.matcher(text);
        if (!mass.matches()) {
            throw new IllegalArgumentException("a mass is allowed such as 180, 180kg or 397lb.");
        }
        double value = Double.parseDouble(mass.group(1));
        String unit = mass.group(2);
        return unit != null && unit.startsWith("lb") ? Units.lbToKg(value) : value;
    }

    static long wholeNumber(String text) {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException none) {
            throw new IllegalArgumentException("a whole number is allowed.", none);
        }
    }

    /** Degrees, and two whole numbers of another unit. */
    static List<Integer> three(String text) {
        Matcher three = THREE.matcher(text);
        if (!three.matches()) {
            throw new IllegalArgumentException(
                    "degrees below 360 and two whole numbers below 1000 are allowed.");
        }
        return List.of(
                Integer.parseInt(three.group(1)),
                Integer.parseInt(three.group(2)),
                Integer.parseInt(three.group(3)));
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException none) {
            throw new IllegalArgumentException("a number is allowed.", none);
        }
    }
}
