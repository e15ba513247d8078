package underhook.app.flying;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Report;
import underhook.core.flown.Tap;
import underhook.core.job.CrewId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.ToldPlace;

/** Where crews are by a plan and by what was said since: who said so is there, until more is said or ordered. */
public final class CrewsThere {
    private static final Duration WHOLE_DAY = Duration.ofDays(1);

    private CrewsThere() {}

    /**
     * The newest of what was said of each crew.
     *
     * @param now nobody is anywhere since later, whatever a device's clock says
     */
    public static Map<CrewId, ToldPlace> said(FlownDay flown, Instant now) {
        Map<CrewId, ToldPlace> all = new LinkedHashMap<>();
        for (Tap tap : flown.taps()) {
            if (Report.of(tap).orElse(null) instanceof Report.CrewHere here) {
                Instant at = tap.at().isAfter(now) ? now : tap.at();
                all.put(here.crew(), new ToldPlace(here.crew(), here.place(), at));
            }
        }
        return all;
    }

    /** Lines of all crews: as planned, and from where each was said to be. */
    public static List<CrewStay> lines(List<CrewStay> planned, FlownDay flown, Instant now) {
        List<CrewStay> all = new ArrayList<>(planned);
        said(flown, now)
                .forEach(
                        (crew, said) -> {
                            List<CrewStay> own = ofCrew(planned, crew);
                            all.removeAll(own);
                            all.addAll(said.in(own, said.before(own), now.plus(WHOLE_DAY)));
                        });
        return List.copyOf(all);
    }

    /** How what was said stands to a plan. */
    public static ToldPlace.Beside beside(List<CrewStay> planned, ToldPlace said) {
        return said.findIn(ofCrew(planned, said.crew())).beside();
    }

    private static List<CrewStay> ofCrew(List<CrewStay> planned, CrewId crew) {
        return planned.stream()
                .filter(stay -> stay.crew().equals(crew))
                .sorted(Comparator.comparing(CrewStay::fromAt))
                .toList();
    }
}
