package underhook.planner.verify;

import java.time.Instant;
import java.util.Optional;
import underhook.core.finding.FindingCode;
import underhook.core.job.Rules;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** Duty, engine time and daylight. */
final class DutyCheck {
    private final Day day;
    private final Rules rules;

    DutyCheck(Day day) {
        this.day = day;
        this.rules = day.job().rules();
    }

    void run() {
        checkEngine();
        checkDuty();
        checkLight();
    }

    private void checkEngine() {
        Rules.ShutDown shutDown = rules.duty().shutDown();
        double keptS = shutDown.isStated() ? shutDown.keptS() : 0;
        double stretch = 0;
        double total = 0;
        double off = 0;
        for (int i = 0; i < day.plan().steps().size(); i++) {
            Step step = day.plan().steps().get(i);
            if (!step.engineRunning()) {
                off += Day.durationS(step);
                continue;
            }
            if (off >= rules.duty().breakS() - Tolerance.TIME_S) {
                stretch = 0;
            }
            off = 0;
            stretch += Day.durationS(step);
            total += Day.durationS(step);
            atMost(
                    i + 1,
                    stretch,
                    rules.duty().engineOnS() - keptS,
                    keptS > 0 && stretch <= rules.duty().engineOnS() + Tolerance.TIME_S
                            ? "Too little is kept free to shut down before the engine's limit"
                            : "The engine runs too long without a break");
            atMost(i + 1, total, rules.duty().engineOnDayS(), "The engine runs too long this day");
        }
        for (int i = 0; i < day.plan().steps().size(); i++) {
            Step step = day.plan().steps().get(i);
            String name = Day.name(i + 1);
            day.ledger()
                    .demand(
                            step.kind() != StepKind.BREAK || !step.engineRunning(),
                            FindingCode.DUTY_LIMIT,
                            name,
                            () -> Told.of("rules", name + " is a break with the engine on."));
        }
    }

    private void atMost(int number, double lastsS, double limitS, String what) {
        day.ledger()
                .demand(
                        lastsS <= limitS + Tolerance.TIME_S,
                        FindingCode.DUTY_LIMIT,
                        Day.name(number),
                        () -> Told.of("rules", what + ".").figures(lastsS, limitS, "s"));
    }

    private void checkDuty() {
        for (int i = 0; i < day.plan().steps().size(); i++) {
            Step step = day.plan().steps().get(i);
            String name = Day.name(i + 1);
            double before = Day.betweenS(rules.duty().from(), step.startAt());
            double after = Day.betweenS(rules.duty().from(), step.endAt());
            day.ledger()
                    .demand(
                            before >= -Tolerance.TIME_S
                                    && after <= rules.duty().longestS() + Tolerance.TIME_S,
                            FindingCode.DUTY_LIMIT,
                            name,
                            () ->
                                    Told.of("rules", name + " lies outside the pilot's duty.")
                                            .figures(after, rules.duty().longestS(), "s"));
        }
    }

    private void checkLight() {
        Optional<Daylight> light = Daylight.from(rules.duty().from(), day.job().origin());
        if (light.isEmpty()) {
            day.ledger()
                    .demand(
                            day.plan().steps().isEmpty(),
                            FindingCode.NO_SUN,
                            day.job().name(),
                            () -> Told.of("NOAA-SOLAR", "The sun does not rise on this day."));
            return;
        }
        Instant rise = light.get().sunrise();
        Instant last =
                light.get()
                        .sunset()
                        .minusMillis(Math.round(rules.duty().dayEndBeforeSunsetS() * 1000));
        for (int i = 0; i < day.plan().steps().size(); i++) {
            Step step = day.plan().steps().get(i);
            String name = Day.name(i + 1);
            boolean inLight =
                    !Day.flies(step)
                            || (Day.betweenS(rise, step.startAt()) >= -Tolerance.SUN_S
                                    && Day.betweenS(step.endAt(), last) >= -Tolerance.SUN_S);
            day.ledger()
                    .demand(
                            inLight,
                            FindingCode.DAYLIGHT,
                            name,
                            () ->
                                    Told.of(
                                            "rules",
                                            name
                                                    + " is flown outside daylight, "
                                                    + rise
                                                    + " to "
                                                    + last
                                                    + "."));
        }
    }
}
