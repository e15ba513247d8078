package underhook.adapter.job.text;

import java.time.LocalDate;
import java.time.ZoneId;

/** The day that times without a date are on. */
public record JobDay(LocalDate date, ZoneId zone) {}
