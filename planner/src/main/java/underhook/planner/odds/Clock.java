package underhook.planner.odds;

import java.time.Duration;
import java.time.Instant;

/** Seconds of the day, counted from the beginning of the pilot's duty. */
record Clock(Instant zero) {
    double timeS(Instant at) {
        return Duration.between(zero, at).toNanos() / 1e9;
    }

    Instant at(double timeS) {
        return zero.plusMillis(Math.round(timeS * 1000));
    }
}
