package underhook.planner.route;

import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.WeatherHour;
import underhook.core.unit.Units;

/** What the job's rules and machine make of a leg asked for: straight parts, turns, heights. */
final class LegRules {
    /** Slowest over the ground in a turn, so that a turn is flown and not hovered. @source PRACTICE 20 kt */
    private static final double LEAST_TURN_M_PER_S = Units.ktToMPerS(20);

    private final Job job;
    private final double strongestWindMPerS;

    LegRules(Job job) {
        this.job = job;
        this.strongestWindMPerS = strongestWindMPerS(job);
    }

    /** Mean wind that may blow along any leg of the day from behind, m/s. */
    private static double strongestWindMPerS(Job job) {
        double windMPerS =
                job.weather().hours().stream().mapToDouble(WeatherHour::windMPerS).max().orElse(0);
        double exposure = job.places().stream().mapToDouble(Place::exposureFactor).max().orElse(1);
        return windMPerS * exposure;
    }

    /**
     * Whether a leg is flown with a straight first and last part, on the tracks that suit wind and ground.
     *
     * <p>With the line off two places nearer than such a part are flown straight from one to the other.
     */
    boolean hasFinals(LegFinder.Request request) {
        return job.rules().flying().finalM() > 0 && (request.slung() || isApart(request));
    }

    /** Whether the ends are no nearer than such a part; nearer ones a legal way may join straight. */
    boolean isApart(LegFinder.Request request) {
        return request.from().point().distanceToM(request.to().point())
                >= job.rules().flying().finalM();
    }

    RoundedWay.Turning turning(LegFinder.Request request) {
        return new RoundedWay.Turning(
                request.speedMPerS(),
                request.speedMPerS() + strongestWindMPerS,
                Math.min(LEAST_TURN_M_PER_S, request.speedMPerS()),
                job.rules().margins().bankRad(),
                hasFinals(request) ? job.rules().flying().finalM() : 0);
    }

    HeightProfile.Need need(LegFinder.Request request) {
        double groundSpeedMPerS = request.speedMPerS();
        return new HeightProfile.Need(
                request.underHookM(),
                job.rules().distances().clearanceM(),
                job.machine().climbMPerS() / groundSpeedMPerS,
                job.machine().descentMPerS() / groundSpeedMPerS,
                job.rules().distances().canopyLegM());
    }
}
