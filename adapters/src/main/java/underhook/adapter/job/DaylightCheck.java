package underhook.adapter.job;

import java.time.LocalDate;
import java.time.ZoneId;
import underhook.core.geo.GeoPoint;

/** Tells whether the sun rises on a day at all. */
@FunctionalInterface
public interface DaylightCheck {
    /** Whether the sun is above the horizon at some time of that local day. */
    boolean hasSun(GeoPoint position, LocalDate date, ZoneId zone);
}
