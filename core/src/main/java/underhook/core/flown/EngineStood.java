package underhook.core.flown;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;

/**
 * Times in which the engine was off, told afterwards. Each counts as if it had been tapped off and on then; one that
 * cannot have been does not count, whoever insists: then the engine counts as running.
 */
final class EngineStood {
    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private static final Set<TapKind> TOLD = EnumSet.of(TapKind.ENGINE_ON, TapKind.ENGINE_OFF);
    private static final Set<TapKind> MOVES = EnumSet.of(TapKind.TAKE_OFF, TapKind.LANDING);

    private final List<Tap> others;
    private final List<FlownLift> lifts;
    private final List<Tap> engine = new ArrayList<>();

    /** From a time to another. */
    private record Span(Instant from, Instant to) {}

    /**
     * @param others what else was tapped and counts, in order
     * @param lifts what they add up to
     */
    EngineStood(List<Tap> others, List<FlownLift> lifts) {
        this.others = others;
        this.lifts = lifts;
        others.stream().filter(tap -> TOLD.contains(tap.kind())).forEach(engine::add);
    }

    static Optional<Report.EngineOff> of(Tap tap) {
        return Report.of(tap)
                .filter(Report.EngineOff.class::isInstance)
                .map(Report.EngineOff.class::cast);
    }

    /** Why it cannot have been, all of it; empty when it counts from now on. */
    Optional<Finding> refusal(Tap tap) {
        Report.EngineOff told = of(tap).orElseThrow();
        List<String> why = new ArrayList<>();
        if (!told.from().isBefore(told.to())) {
            why.add("it ends before it begins");
        }
        if (told.to().isAfter(tap.at())) {
            why.add("it is not over yet");
        }
        for (FlownLift lift : lifts) {
            Optional<Instant> over = over(lift);
            boolean isOver = over.filter(end -> !end.isAfter(told.from())).isPresent();
            if (lift.hookedAt().isBefore(told.to()) && !isOver) {
                why.add(
                        Refusals.named(lift.loads())
                                + " hung from "
                                + clock(told, lift.hookedAt())
                                + over.map(end -> " to " + clock(told, end)).orElse(" on"));
            }
        }
        flights().stream()
                .filter(one -> one.from().isBefore(told.to()) && told.from().isBefore(one.to()))
                .forEach(
                        one ->
                                why.add(
                                        "the machine was in the air from "
                                                + clock(told, one.from())
                                                + (one.to().equals(Instant.MAX)
                                                        ? " on"
                                                        : " to " + clock(told, one.to()))));
        told(told).forEach(why::add);
        if (why.isEmpty()) {
            engine.addAll(asTaps(tap));
            engine.sort(FlownDay.IN_ORDER);
            return Optional.empty();
        }
        return Refusals.of(
                FindingCode.TAP_OUT_OF_ORDER,
                tap,
                "The engine cannot have been off from "
                        + clock(told, told.from())
                        + " to "
                        + clock(told, told.to())
                        + ": "
                        + String.join("; ", why)
                        + ".");
    }

    /** By the clock of whoever told it. */
    private static String clock(Report.EngineOff told, Instant at) {
        return CLOCK.format(at.atOffset(told.since().getOffset()));
    }

    /** When nothing of it hung any more; empty where nobody told. */
    private Optional<Instant> over(FlownLift lift) {
        Optional<Instant> down =
                lift.offAt().size() == lift.loads().size()
                        ? lift.offAt().stream().map(FlownLift.Off::at).max(Instant::compareTo)
                        : Optional.empty();
        Optional<Instant> givenUp =
                lift.aborted()
                        ? others.stream()
                                .filter(tap -> tap.kind() == TapKind.ABORTED)
                                .map(Tap::at)
                                .filter(at -> !at.isBefore(lift.hookedAt()))
                                .findFirst()
                        : Optional.empty();
        return givenUp.or(() -> down);
    }

    /** From take-off to landing, as far as both were told; a landing alone or a take-off alone is a moment. */
    private List<Span> flights() {
        List<Span> all = new ArrayList<>();
        Optional<Instant> since = Optional.empty();
        for (Tap tap : others) {
            if (!MOVES.contains(tap.kind())) {
                continue;
            }
            if (tap.kind() == TapKind.LANDING) {
                all.add(new Span(since.orElse(tap.at()), tap.at()));
                since = Optional.empty();
            } else {
                since.ifPresent(from -> all.add(new Span(from, from)));
                since = Optional.of(tap.at());
            }
        }
        since.ifPresent(from -> all.add(new Span(from, Instant.MAX)));
        return all;
    }

    /** What else was told of the engine in that time. */
    private List<String> told(Report.EngineOff told) {
        List<String> all = new ArrayList<>();
        Optional<Instant> off = Optional.empty();
        for (Tap tap : engine) {
            boolean within = tap.at().isAfter(told.from()) && tap.at().isBefore(told.to());
            if (tap.kind() == TapKind.ENGINE_OFF) {
                off = off.or(() -> Optional.of(tap.at()));
            } else {
                Optional<Instant> since = off.filter(from -> from.isBefore(told.to()));
                if (since.isPresent() && told.from().isBefore(tap.at())) {
                    all.add(
                            "it was told to be off from "
                                    + clock(told, since.get())
                                    + " to "
                                    + clock(told, tap.at()));
                } else if (within) {
                    all.add("it was told to be on at " + clock(told, tap.at()));
                }
                off = Optional.empty();
            }
        }
        off.filter(from -> from.isBefore(told.to()))
                .ifPresent(from -> all.add("it was told to be off from " + clock(told, from)));
        return all;
    }

    /** Off and on again, as it would have been tapped. */
    static List<Tap> asTaps(Tap tap) {
        Report.EngineOff told = of(tap).orElseThrow();
        return List.of(
                at(tap, told.from(), TapKind.ENGINE_OFF), at(tap, told.to(), TapKind.ENGINE_ON));
    }

    private static Tap at(Tap tap, Instant at, TapKind kind) {
        return new Tap(
                tap.id() + "/" + kind.name(),
                at,
                tap.by(),
                tap.device(),
                kind,
                List.of(),
                tap.place(),
                Tap.Amount.NONE,
                Optional.empty(),
                tap.note());
    }
}
