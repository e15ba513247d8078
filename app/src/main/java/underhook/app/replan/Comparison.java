package underhook.app.replan;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** A new plan beside the plan of record, from now on. */
final class Comparison {
    private static final int SENTENCES = 3;
    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private final Plan record;
    private final Plan plan;
    private final int frozenSteps;
    private final ZoneId zone;

    /** A lift whose hook-up comes at another time. */
    private record Shift(Rotation rotation, Duration later) {}

    Comparison(Plan record, Plan plan, int frozenSteps, ZoneId zone) {
        this.record = record;
        this.plan = plan;
        this.frozenSteps = frozenSteps;
        this.zone = zone;
    }

    Duration later() {
        return Duration.between(record.summary().finishAt(), plan.summary().finishAt());
    }

    /** What was to be flown and stays behind now. */
    List<LeftOut> leftOut() {
        return plan.leftOut().stream()
                .filter(
                        out ->
                                record.leftOut().stream()
                                        .noneMatch(old -> old.load().equals(out.load())))
                .toList();
    }

    /** The three that matter: what stays behind, when the day ends, what moves farthest. */
    List<String> sentences() {
        List<String> all = new ArrayList<>();
        List<LeftOut> out = leftOut();
        if (!out.isEmpty()) {
            all.add(
                    out.stream().map(one -> one.load().value()).collect(Collectors.joining(", "))
                            + (out.size() == 1 ? " stays behind: " : " stay behind: ")
                            + out.get(0).message());
        }
        if (Math.abs(later().toMinutes()) >= 1) {
            all.add(
                    "The day ends "
                            + apart(later())
                            + ", at "
                            + clock(plan.summary().finishAt())
                            + ".");
        }
        shifts().stream()
                .sorted(Comparator.comparing((Shift one) -> one.later().abs()).reversed())
                .limit(SENTENCES - Math.min(SENTENCES, all.size()))
                .forEach(
                        one ->
                                all.add(
                                        names(one.rotation())
                                                + " to "
                                                + one.rotation().drops().get(0).place()
                                                + " is "
                                                + apart(one.later())
                                                + ", at "
                                                + clock(one.rotation().hookedAt())
                                                + "."));
        return all;
    }

    private static String names(Rotation rotation) {
        return rotation.loads().stream().map(LoadId::value).collect(Collectors.joining("+"));
    }

    private String clock(Instant at) {
        return CLOCK.format(at.atZone(zone));
    }

    private static String apart(Duration later) {
        return later.abs().toMinutes() + " min " + (later.isNegative() ? "earlier" : "later");
    }

    private List<Shift> shifts() {
        Map<LoadId, Instant> before = new HashMap<>();
        for (Step step : record.steps()) {
            step.rotation()
                    .ifPresent(one -> one.loads().forEach(id -> before.put(id, one.hookedAt())));
        }
        List<Shift> all = new ArrayList<>();
        for (Rotation rotation : toCome()) {
            Instant was = before.get(rotation.loads().get(0));
            if (was != null) {
                Duration later = Duration.between(was, rotation.hookedAt());
                if (later.abs().toMinutes() >= 1) {
                    all.add(new Shift(rotation, later));
                }
            }
        }
        return all;
    }

    private List<Rotation> toCome() {
        return plan.steps().stream()
                .skip(frozenSteps)
                .flatMap(step -> step.rotation().stream())
                .toList();
    }

    /** All to come but a longest row of lifts whose order is kept. */
    List<LoadId> moved() {
        List<LoadId> old =
                record.steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .map(one -> one.loads().get(0))
                        .toList();
        List<LoadId> now =
                toCome().stream().map(one -> one.loads().get(0)).filter(old::contains).toList();
        int[] longest = new int[now.size()];
        int[] before = new int[now.size()];
        int best = -1;
        for (int i = 0; i < now.size(); i++) {
            Arrays.fill(before, i, i + 1, -1);
            for (int j = 0; j < i; j++) {
                if (old.indexOf(now.get(j)) < old.indexOf(now.get(i))
                        && longest[j] > longest[i] - 1) {
                    longest[i] = longest[j] + 1;
                    before[i] = j;
                }
            }
            best = best < 0 || longest[i] > longest[best] ? i : best;
        }
        List<LoadId> moved = new ArrayList<>(now);
        for (int i = best; i >= 0; i = before[i]) {
            moved.remove(now.get(i));
        }
        return moved;
    }
}
