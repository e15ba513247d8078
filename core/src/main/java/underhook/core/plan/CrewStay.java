package underhook.core.plan;

import java.time.Instant;
import underhook.core.job.CrewId;
import underhook.core.job.PlaceId;

/** Where a crew is and what it does: "waits", "receives L01", "guys L15", "walks to S13", "flown to H". */
public record CrewStay(CrewId crew, PlaceId place, Instant fromAt, Instant toAt, String doing) {}
