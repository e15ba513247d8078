package underhook.app.replan;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import underhook.core.finding.FindingCode;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** A new plan beside the plan of record, from now on. */
final class Comparison {
    private static final int SENTENCES = 3;

    /** Less is the way of flying, not another way, m. */
    private static final double OTHER_WAY_M = 20;

    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private final Plan record;
    private final Plan plan;
    private final int frozenSteps;
    private final Job job;

    /** A lift whose hook-up comes at another time. */
    private record Shift(Rotation rotation, Duration later) {}

    Comparison(Plan record, Plan plan, int frozenSteps, Job job) {
        this.record = record;
        this.plan = plan;
        this.frozenSteps = frozenSteps;
        this.job = job;
    }

    Duration later() {
        return Duration.between(record.summary().finishAt(), plan.summary().finishAt());
    }

    /** What was to be flown and stays behind now. */
    List<LeftOut> leftOut() {
        return plan.leftOut().stream().filter(out -> !isIn(record.leftOut(), out)).toList();
    }

    private static boolean isIn(List<LeftOut> all, LeftOut one) {
        return all.stream().anyMatch(other -> other.load().equals(one.load()));
    }

    /**
     * The three that matter: what stays behind, what is flown after all, when the day ends, what may be hooked with
     * less fuel, what moves farthest, which ways are others.
     */
    List<String> sentences() {
        List<String> all = new ArrayList<>();
        List<LeftOut> out = leftOut();
        if (!out.isEmpty()) {
            all.add(staysBehind(out));
        }
        List<LeftOut> again =
                record.leftOut().stream().filter(old -> !isIn(plan.leftOut(), old)).toList();
        if (!again.isEmpty()) {
            all.add(names(again) + (again.size() == 1 ? " is" : " are") + " flown after all.");
        }
        if (Math.abs(later().toMinutes()) >= 1) {
            all.add(
                    "The day ends "
                            + apart(later())
                            + ", at "
                            + clock(plan.summary().finishAt())
                            + ".");
        }
        lessFuel().ifPresent(all::add);
        shifts().stream()
                .sorted(Comparator.comparing((Shift one) -> one.later().abs()).reversed())
                .map(this::words)
                .forEach(all::add);
        all.addAll(otherWays());
        return all.stream().limit(SENTENCES).toList();
    }

    /**
     * Whatever waits for something that stays behind is told after that: it is not why. What stays behind for
     * another reason is named, and tells its own below.
     */
    static String staysBehind(List<LeftOut> out) {
        List<LeftOut> waiting =
                out.stream().filter(one -> one.code() == FindingCode.ORDER_RULE).toList();
        List<LeftOut> own = out.stream().filter(one -> !waiting.contains(one)).toList();
        String why = (own.isEmpty() ? out : own).get(0).message();
        List<LeftOut> first = out.stream().filter(one -> one.message().equals(why)).toList();
        List<LeftOut> others = own.stream().filter(one -> !first.contains(one)).toList();
        List<LeftOut> with = waiting.stream().filter(one -> !first.contains(one)).toList();
        return names(first)
                + (first.size() == 1 ? " stays behind: " : " stay behind: ")
                + why
                + (with.isEmpty() ? "" : " With it " + names(with) + ".")
                + (others.isEmpty() ? "" : " For other reasons " + names(others) + ".");
    }

    private static String names(List<LeftOut> out) {
        return out.stream().map(one -> one.load().value()).collect(Collectors.joining(", "));
    }

    private String words(Shift one) {
        return to(one.rotation())
                + " is "
                + apart(one.later())
                + ", at "
                + clock(one.rotation().hookedAt())
                + ".";
    }

    private static String to(Rotation rotation) {
        return names(rotation) + " to " + rotation.drops().get(0).place();
    }

    /** The lift that may be hooked with so much less fuel than before. */
    private Optional<String> lessFuel() {
        Rotation tightest = null;
        for (Rotation rotation : toCome()) {
            if (lessKg(rotation) >= 1
                    && (tightest == null || lessKg(rotation) > lessKg(tightest))) {
                tightest = rotation;
            }
        }
        return Optional.ofNullable(tightest)
                .map(
                        one ->
                                String.format(
                                        Locale.ROOT,
                                        "%s may be hooked with at most %.0f kg of fuel read, %.0f less.",
                                        to(one),
                                        Math.floor(job.machine().mostReadKg(one.fuelMaxKg())),
                                        Math.ceil(lessKg(one))));
    }

    private double lessKg(Rotation rotation) {
        return before(rotation).map(old -> old.fuelMaxKg() - rotation.fuelMaxKg()).orElse(0.0);
    }

    /** Lifts that keep their time and are flown along another way. */
    private List<String> otherWays() {
        List<String> all = new ArrayList<>();
        for (Rotation rotation : toCome()) {
            double nowM = rotation.legs().get(0).distanceM();
            before(rotation)
                    .map(old -> old.legs().get(0).distanceM())
                    .filter(wasM -> Math.abs(nowM - wasM) >= OTHER_WAY_M)
                    .ifPresent(
                            wasM ->
                                    all.add(
                                            String.format(
                                                    Locale.ROOT,
                                                    "The way of %s is %.2f km long, %.2f before.",
                                                    to(rotation),
                                                    nowM / 1000,
                                                    wasM / 1000)));
        }
        return all;
    }

    private Optional<Rotation> before(Rotation rotation) {
        return record.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .filter(one -> one.loads().equals(rotation.loads()))
                .findFirst();
    }

    private static String names(Rotation rotation) {
        return rotation.loads().stream().map(LoadId::value).collect(Collectors.joining("+"));
    }

    private String clock(Instant at) {
        return CLOCK.format(at.atZone(job.zone()));
    }

    /** Whole minutes, up: as much later or more, as much earlier or less; as the sums beside it. */
    private static String apart(Duration later) {
        long minutes = -Math.floorDiv(-later.toSeconds(), 60L);
        return Math.abs(minutes) + " min " + (later.isNegative() ? "earlier" : "later");
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
