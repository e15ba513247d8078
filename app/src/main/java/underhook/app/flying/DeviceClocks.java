package underhook.app.flying;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.app.port.KeptTap;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;

/**
 * At which time taps count. A device's clock orders what is tapped on it, and as a rule what is tapped on others too.
 *
 * <p>Where a device sent what it tapped with a clock ahead of the server's by more than half a minute, or behind it by
 * more than five, its taps count that much earlier or later. Where a word on a free load answers another device's
 * word that the server had before, it counts after it, as far as the two clocks are known to differ; of one device the
 * clock alone says what came first, so nothing answers itself. The log keeps the device's time and the server's.
 * Not safe for threads.
 */
final class DeviceClocks {
    /** @source PRACTICE as the devices' pages tell whoever holds one that its clock is off */
    private static final Duration FAR = Duration.ofSeconds(30);

    /** What is sent takes longer at times; by more than this somebody has set the clock. @source PRACTICE */
    private static final Duration SET_ANEW = Duration.ofMinutes(1);

    /** No sending takes so long that it looks like a clock that is so far behind. @source PRACTICE */
    private static final Duration FAR_BEHIND = Duration.ofMinutes(5);

    private static final Duration JUST_AFTER = Duration.ofMillis(1);

    private static final Map<TapKind, TapKind> ANSWERS =
            Map.of(TapKind.FREE_SEEN, TapKind.OFF, TapKind.FREE_CONFIRMED, TapKind.FREE_SEEN);

    private final Map<String, Clock> clocks = new HashMap<>();
    private final List<Word> words = new ArrayList<>();

    /** A tap that may be answered, as it counts, and how far its device's clock is ahead then. */
    private record Word(Tap tap, Duration ahead) {}

    /**
     * What is known of a device's clock.
     *
     * @param ahead of the server's, as first heard; held, so that a slow network does not turn two taps round
     * @param nearest the most it was ahead, where the least time was lost on the way
     * @param last when its last tap counts
     */
    private record Clock(Duration ahead, Duration nearest, Instant last) {
        /** Told to the second: what is tapped is. */
        static Clock of(Duration now, Instant last) {
            return new Clock(Duration.ofSeconds(Math.round(now.toMillis() / 1000.0)), now, last);
        }

        Clock heard(Duration now) {
            return now.minus(nearest).abs().compareTo(SET_ANEW) > 0
                    ? of(now, last)
                    : new Clock(ahead, now.compareTo(nearest) > 0 ? now : nearest, last);
        }

        boolean isFarBehind() {
            return ahead.negated().compareTo(FAR_BEHIND) > 0;
        }

        boolean isFarOff() {
            return ahead.compareTo(FAR) > 0 || isFarBehind();
        }

        /** What is left of it after what is {@link #isFarOff} was taken off. */
        Duration leftAhead() {
            return isFarOff() ? nearest.minus(ahead) : nearest;
        }
    }

    /** What the taps of a log are counted as, in their order there. */
    static List<Tap> counted(List<KeptTap> rows) {
        DeviceClocks clocks = new DeviceClocks();
        return rows.stream().map(row -> clocks.take(row.tap(), row.arrival())).toList();
    }

    /** The tap as it counts after those that were taken. */
    Tap counted(Tap tap, KeptTap.Arrival arrival) {
        return at(tap, clock(tap, arrival), arrival.receivedAt());
    }

    /** The same, and remembers it. */
    Tap take(Tap tap, KeptTap.Arrival arrival) {
        Clock clock = clock(tap, arrival);
        Tap counted = at(tap, clock, arrival.receivedAt());
        clocks.put(tap.device(), new Clock(clock.ahead(), clock.nearest(), counted.at()));
        if (ANSWERS.containsValue(tap.kind())) {
            words.add(new Word(counted, clock.leftAhead()));
        }
        return counted;
    }

    private Clock clock(Tap tap, KeptTap.Arrival arrival) {
        Duration now = Duration.between(arrival.receivedAt(), arrival.sentAt());
        return Optional.ofNullable(clocks.get(tap.device()))
                .map(known -> known.heard(now))
                .orElseGet(() -> Clock.of(now, Instant.MIN));
    }

    private Tap at(Tap tap, Clock clock, Instant receivedAt) {
        Instant at = clock.isFarOff() ? tap.at().minus(clock.ahead()) : tap.at();
        // The clock was set between the tap and its sending: back, it was right before.
        if (at.isAfter(receivedAt.plus(FAR)) && clock.isFarBehind()) {
            at = tap.at();
        }
        if (at.isAfter(receivedAt.plus(FAR))) {
            Instant next = clock.last().plus(JUST_AFTER);
            at = next.isAfter(receivedAt) ? next : receivedAt;
        }
        Instant own = at;
        return tap.withAt(
                findAnswered(tap, own, clock).map(word -> word.at().plus(JUST_AFTER)).orElse(own));
    }

    private Optional<Tap> findAnswered(Tap tap, Instant at, Clock clock) {
        if (!ANSWERS.containsKey(tap.kind())) {
            return Optional.empty();
        }
        return words.stream()
                .filter(word -> word.tap().at().isAfter(at))
                .filter(word -> isAnsweredBy(word.tap(), tap))
                .filter(
                        word ->
                                !word.tap()
                                        .at()
                                        .isAfter(at.plus(word.ahead().minus(clock.leftAhead()))))
                .map(Word::tap)
                .reduce((earlier, later) -> later);
    }

    private static boolean isAnsweredBy(Tap word, Tap tap) {
        boolean isOfOne =
                word.loads().isEmpty()
                        || tap.loads().isEmpty()
                        || word.loads().stream().anyMatch(tap.loads()::contains);
        return isOfOne
                && word.kind() == ANSWERS.get(tap.kind())
                && !word.device().equals(tap.device());
    }
}
