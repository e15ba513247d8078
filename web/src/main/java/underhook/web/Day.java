package underhook.web;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import underhook.core.plan.Plan;

/**
 * A planned day to be shown.
 *
 * @param plan what is shown
 * @param zone the job's zone; all times are shown in it
 * @param attributions who must be named for the data that the plan was made from
 * @param folder where the plan's files lie; only regular files directly in it are offered
 */
public record Day(Plan plan, ZoneId zone, List<String> attributions, Path folder) {
    public Day {
        attributions = List.copyOf(attributions);
    }
}
