package underhook.planner.search;

import java.util.List;

/**
 * What the comforts cost that a way in refuses: those of the wind the whole hour, those of the sun as it stands.
 *
 * @param steadyCents at any time of the hour
 * @param fromS start of the hour, s
 * @param sunCents besides, for each {@link #STEP_S} of the clock that the hour touches, the first first
 */
public record SetDownPrice(long steadyCents, long fromS, List<Long> sunCents) {
    /** The sun counts as it stands at the last full five minutes of the clock, s. */
    public static final long STEP_S = 300;

    /** Nothing is refused that costs anything. */
    public static final SetDownPrice NONE = new SetDownPrice(0, 0, List.of());

    public SetDownPrice {
        sunCents = List.copyOf(sunCents);
    }

    /** Cents when the last load is let go then, within the hour. */
    long centsAt(long releasedS) {
        if (sunCents.isEmpty()) {
            return steadyCents;
        }
        long step = Math.floorDiv(releasedS, STEP_S) - Math.floorDiv(fromS, STEP_S);
        return steadyCents + sunCents.get(Math.toIntExact(step));
    }
}
