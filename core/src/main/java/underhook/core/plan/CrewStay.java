package underhook.core.plan;

import java.time.Instant;
import java.util.Locale;
import underhook.core.job.CrewId;
import underhook.core.job.PlaceId;

/** Where a crew is and what it does: "waits", "receives L01", "guys L15", "walks to S13", "flown to H". */
public record CrewStay(CrewId crew, PlaceId place, Instant fromAt, Instant toAt, String doing) {
    /** Whether the crew only comes to its place, on foot or by air. */
    public boolean isOnTheWay() {
        String does = doing.toLowerCase(Locale.ROOT);
        return does.startsWith("walk") || does.startsWith("flown");
    }

    /** Whether the crew has come to a place and is there at a time. */
    public boolean isAt(PlaceId there, Instant at) {
        return place.equals(there) && !isOnTheWay() && !fromAt.isAfter(at) && !toAt.isBefore(at);
    }
}
