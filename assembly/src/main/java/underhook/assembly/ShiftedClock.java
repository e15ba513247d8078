package underhook.assembly;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/** A clock that can be set to another day, so that a day can be rehearsed before it is flown. */
final class ShiftedClock implements InstantSource {
    private final InstantSource clock;
    private volatile Duration shift = Duration.ZERO;

    ShiftedClock(InstantSource clock) {
        this.clock = clock;
    }

    /** From now on it is that time, and goes on from there. */
    void setTo(Instant at) {
        shift = Duration.between(clock.instant(), at);
    }

    @Override
    public Instant instant() {
        return clock.instant().plus(shift);
    }
}
