package underhook.planner.verify;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import underhook.core.finding.FindingCode;
import underhook.core.job.Crew;
import underhook.core.job.PlaceId;
import underhook.core.plan.Anew;
import underhook.core.plan.CrewStay;
import underhook.core.plan.StepKind;

/**
 * What each crew reads of its ways: where to, how, and that it sets out soon enough. Of what is still to come, as
 * what is over went as it went.
 */
final class CrewLineCheck {
    private final Day day;
    private final Walks walks;
    private final Instant from;

    CrewLineCheck(Day day) {
        this.day = day;
        this.walks = new Walks(day.job().places(), day.job().walks());
        this.from = day.plan().summary().anew().map(Anew::fromAt).orElse(Instant.MIN);
    }

    void run() {
        for (Crew crew : day.job().crews()) {
            List<CrewStay> lines =
                    day.plan().crews().stream()
                            .filter(line -> line.crew().equals(crew.id()))
                            .sorted(Comparator.comparing(CrewStay::fromAt))
                            .toList();
            PlaceId at = crew.start();
            for (CrewStay line : lines) {
                if (!line.fromAt().isBefore(from)) {
                    check(line, at);
                }
                at = line.place();
            }
        }
    }

    private void check(CrewStay line, PlaceId at) {
        String doing = line.doing().toLowerCase(Locale.ROOT);
        if (doing.startsWith("walk")) {
            demandWords(line, "walks to " + line.place());
            checkWalk(line, at);
        } else if (doing.startsWith("flown")) {
            demandWords(line, "flown to " + line.place());
            demand(
                    line,
                    isFlown(line),
                    "Crew "
                            + line.crew()
                            + " is told to be flown to "
                            + line.place()
                            + ", and no flight of the plan takes it there then.");
        }
    }

    private void demandWords(CrewStay line, String words) {
        demand(
                line,
                line.doing().equals(words),
                "Crew " + line.crew() + " is not told that it comes to " + line.place() + ".");
    }

    private void checkWalk(CrewStay line, PlaceId at) {
        double needs = walks.durationS(at, line.place());
        double has = Day.betweenS(line.fromAt(), line.toAt());
        day.ledger()
                .demand(
                        has >= needs - Tolerance.TIME_S,
                        FindingCode.CREW_TOO_FAST,
                        line.crew().value(),
                        () ->
                                Told.of(
                                                "crews",
                                                "Crew "
                                                        + line.crew()
                                                        + " cannot come from "
                                                        + at
                                                        + " to "
                                                        + line.place()
                                                        + " in this time.")
                                        .figures(has, needs, "s"));
    }

    /** A flight with this crew to there, for which it is told no later than it leaves. */
    private boolean isFlown(CrewStay line) {
        return day.plan().steps().stream()
                .filter(step -> step.kind() == StepKind.CREW_MOVE)
                .filter(step -> step.crew().orElseThrow().equals(line.crew()))
                .filter(step -> step.to().equals(line.place()))
                .anyMatch(
                        step ->
                                Day.betweenS(line.fromAt(), step.startAt()) >= -Tolerance.TIME_S
                                        && Day.betweenS(step.startAt(), line.toAt()) > 0);
    }

    private void demand(CrewStay line, boolean holds, String what) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.STATED_WRONG,
                        line.crew().value(),
                        () -> Told.of("plan", what));
    }
}
