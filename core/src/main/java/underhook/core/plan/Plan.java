package underhook.core.plan;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import underhook.core.finding.Finding;

/**
 * A day's plan as written.
 *
 * @param id the same in every file of one run
 * @param job name of the job
 * @param made how it came to be
 * @param rooms room at each place that placed loads use
 * @param poles how each placed pole is held up
 * @param kit gear that the placed loads need
 * @param odds how safe the finish is, where the day was replayed
 */
public record Plan(
        String id,
        String job,
        Made made,
        Summary summary,
        List<Step> steps,
        List<CrewStay> crews,
        List<LeftOut> leftOut,
        List<Finding> findings,
        List<PlaceRoom> rooms,
        List<PoleSetting> poles,
        List<KitItem> kit,
        Optional<Odds> odds) {
    /**
     * How a plan came to be.
     *
     * @param effort how much was searched: the same job, program, seed and effort give the same plan
     * @param program name and version of the program that made it
     */
    public record Made(Instant at, long seed, long effort, String program) {}

    public Plan {
        Objects.requireNonNull(id, "id");
        steps = List.copyOf(steps);
        crews = List.copyOf(crews);
        leftOut = List.copyOf(leftOut);
        findings = List.copyOf(findings);
        rooms = List.copyOf(rooms);
        poles = List.copyOf(poles);
        kit = List.copyOf(kit);
    }

    public Instant plannedAt() {
        return made.at();
    }

    public long seed() {
        return made.seed();
    }

    public long effort() {
        return made.effort();
    }

    public String program() {
        return made.program();
    }

    /** The same with how safe its finish is. */
    public Plan withOdds(Odds replayed) {
        return new Plan(
                id,
                job,
                made,
                summary,
                steps,
                crews,
                leftOut,
                findings,
                rooms,
                poles,
                kit,
                Optional.of(replayed));
    }

    /** The same with more said of it. */
    public Plan withFindings(List<Finding> more) {
        List<Finding> all = new ArrayList<>(findings);
        all.addAll(more);
        return new Plan(
                id, job, made, summary, steps, crews, leftOut, all, rooms, poles, kit, odds);
    }

    /** The same, said to be less than a whole search finds. */
    public Plan cutShort() {
        return withSummary(summary.cut());
    }

    /** The same with what is proven of every order of its loads. */
    public Plan withBounds(Summary.Bounds proven) {
        return withSummary(summary.with(proven));
    }

    private Plan withSummary(Summary other) {
        return new Plan(
                id, job, made, other, steps, crews, leftOut, findings, rooms, poles, kit, odds);
    }
}
