package underhook.app;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import underhook.app.port.ReadJob;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.LoadId;
import underhook.core.plan.DayPrice;
import underhook.core.plan.Plan;
import underhook.core.plan.Summary;
import underhook.core.plan.Trade;
import underhook.planner.odds.DayOdds;
import underhook.planner.order.OpenDay;
import underhook.planner.order.PlanSettings;
import underhook.planner.search.Aim;
import underhook.planner.search.Effort;
import underhook.planner.search.TimeGone;

/**
 * Looks for a day that is in time on as many replayed days as is wished.
 *
 * <p>First an order with all loads is looked for near the known one: one that counts flying otherwise, as the days of
 * the front do, or is over earlier. Where none is sure enough, one lift after the other is taken off, each time the one
 * that gives the most time for each load that is lost with it. What stays is planned anew; where that day is not sure
 * enough, a surer order of the same loads is it. Then lifts are put back one at a time as long as the day stays so. That
 * is a way of choosing, not the least that could be left. All work is counted, so the same plan gives the same day.
 */
public final class SurerDay {
    /** How often loads are left at most: a day searched anew may be less sure than the one it was looked for on. */
    private static final int ROUNDS = 3;

    /** Days drawn to compare lifts; all are compared over the same ones. */
    private static final int COMPARED = 400;

    /** Lifts that are tried again at most once the day is sure enough; each is planned anew. */
    private static final int PUT_BACK_TRIES = 3;

    /** An order is looked for that is over earlier by so much of what is missing, in percent. @source PRACTICE own measure */
    private static final List<Integer> EARLIER_PERCENT = List.of(60, 100);

    /** And by this more, as what is drawn is not the same for every lift, s. */
    private static final long EARLIER_S = 60;

    /** A second too late counts as one where all loads are to be flown, as more where some may be left. */
    private static final int ALL_RATIO = 1;

    private static final int LEAVING_RATIO = 3;

    private final Wish wish;
    private final Planning planning;
    private final OpenDay all;
    private final Map<Set<LoadId>, OpenDay> opened = new HashMap<>();

    /** With each lift that was to be put back, how often the surest day found then is in time. */
    private final Map<LoadId, Double> triedFraction = new TreeMap<>();

    /**
     * What is wished.
     *
     * @param plan with all loads, its day replayed
     * @param planId of the day that is found, made then
     * @param inTimeFraction share of the replayed days that are to be in time, in (0, 1)
     * @param stop says true when it must end with what it has
     */
    public record Wish(
            ReadJob job,
            Plan plan,
            String planId,
            Instant plannedAt,
            double inTimeFraction,
            BooleanSupplier stop) {
        /** Of a plan made just now, of which nobody heard yet. */
        Wish(ReadJob job, Plan plan, double inTimeFraction, BooleanSupplier stop) {
            this(job, plan, plan.id(), plan.plannedAt(), inTimeFraction, stop);
        }
    }

    /** Plans a day by price alone. */
    public interface Planning {
        /** Empty where none is possible. */
        Optional<Plan> plan(ReadJob job, Progress progress);
    }

    /**
     * A surer day.
     *
     * @param plan not yet re-checked, without its odds
     * @param left loads left for another day for it; what waits for them is not named
     */
    public record Found(Plan plan, Set<LoadId> left) {
        public Found {
            left = Set.copyOf(left);
        }
    }

    /**
     * A day with some loads left.
     *
     * @param cheapest of the same loads that is known
     */
    private record Day(Plan plan, Plan cheapest, Set<LoadId> left, double inTimeFraction) {}

    /** Opens the day; takes as long as finding its ways does. */
    private SurerDay(Wish wish, Planning planning) {
        this.wish = wish;
        this.planning = planning;
        this.all = new OpenDay(wish.job().job(), wish.job().ground());
    }

    /** A surer day than the known one, as sure as is wished if one was found; else empty. */
    public static Optional<Found> find(Wish wish, Planning planning, Progress progress) {
        double knownFraction = inTimeFraction(wish.plan());
        if (knownFraction >= wish.inTimeFraction() || wish.stop().getAsBoolean()) {
            return Optional.empty();
        }
        Day known = new Day(wish.plan(), wish.plan(), Set.of(), knownFraction);
        progress.at("looking for a surer order of all loads", 0);
        SurerDay search = new SurerDay(wish, planning);
        return Optional.of(search.find(known, progress))
                .filter(day -> day.inTimeFraction() > knownFraction)
                .map(day -> new Found(search.told(day), day.left()));
    }

    static double inTimeFraction(Plan plan) {
        return plan.odds().map(odds -> odds.allInTime().leastFraction()).orElse(1.0);
    }

    private Day find(Day known, Progress progress) {
        Day best = surest(known, known.plan());
        Set<LoadId> left = new TreeSet<>();
        for (int round = 0; round < ROUNDS && !isSure(best) && !isStopped(); round++) {
            Progress part = progress.part(0.1 + 0.15 * round, 0.15);
            part.at("looking for loads to leave for another day", 0);
            Thinned thinned = thin(best.plan(), left);
            if (thinned.off.equals(left)) {
                break;
            }
            left = new TreeSet<>(thinned.off);
            String without =
                    left.size() == 1 ? "without 1 load: " : "without " + left.size() + " loads: ";
            Optional<Day> day = planned(left, List.of(thinned.plan), part.named(without));
            if (day.isEmpty()) {
                break;
            }
            best = surer(best, day.get());
        }
        return isSure(best) ? withPutBack(best, progress.part(0.55, 0.45)) : best;
    }

    private static Day surer(Day one, Day other) {
        return other.inTimeFraction() > one.inTimeFraction() ? other : one;
    }

    private boolean isSure(Day day) {
        return day.inTimeFraction() >= wish.inTimeFraction();
    }

    private boolean isStopped() {
        return wish.stop().getAsBoolean();
    }

    /**
     * With some loads left the day planned by price alone where that is sure enough, else the surest order near it and
     * near others that are known; empty where nothing can be planned.
     */
    private Optional<Day> planned(Set<LoadId> left, List<Plan> others, Progress progress) {
        Optional<Plan> anew = planning.plan(wish.job().leaving(left), progress);
        if (anew.isEmpty()) {
            return Optional.empty();
        }
        Day cheapest = day(anew.get(), anew.get(), left);
        List<Plan> from = new ArrayList<>(others);
        from.add(cheapest.plan());
        Day best = cheapest;
        for (Plan order : from) {
            if (!isSure(best)) {
                progress.at("looking for a surer order", 0.95);
                best = surer(best, surest(cheapest, order));
            }
        }
        return Optional.of(best);
    }

    private Day day(Plan plan, Plan cheapest, Set<LoadId> left) {
        double fraction = DayOdds.allInTime(wish.job().job(), plan).leastFraction();
        return new Day(plan, cheapest, Set.copyOf(left), fraction);
    }

    /** The first day near an order that is as sure as is wished, with no fewer loads than the cheapest; else the surest. */
    private Day surest(Day cheapest, Plan order) {
        OpenDay open = open(cheapest.left());
        Day best = cheapest;
        for (Aim aim : aims(cheapest.plan(), order)) {
            if (isStopped() || isSure(best)) {
                break;
            }
            boolean searches = !aim.equals(Aim.CHEAPEST);
            Optional<Plan> found =
                    near(open, order, aim, new OpenDay.Effort(searches, false, wish.stop()))
                            .filter(plan -> flown(plan).containsAll(flown(cheapest.plan())));
            if (found.isPresent()) {
                best = surer(best, day(found.get(), cheapest.cheapest(), cheapest.left()));
            }
        }
        return best;
    }

    /** The known order as it is, then what the days of the front count, then to be over earlier. */
    private Set<Aim> aims(Plan cheapest, Plan order) {
        Set<Aim> aims = new LinkedHashSet<>();
        if (!order.equals(cheapest)) {
            aims.add(Aim.CHEAPEST);
        }
        int ownPercent = wish.job().job().rules().costs().flyingCountsPercent();
        for (Trade trade : cheapest.summary().front()) {
            if (!trade.chosen()) {
                aims.add(Aim.counting(Math.max(1, trade.flyingRatePercent() * 100 / ownPercent)));
            }
        }
        aims.addAll(earlier(slackS(order, DayOdds.REPLAYS), ALL_RATIO));
        return aims;
    }

    private static List<Aim> earlier(double slackS, int laterRatio) {
        double missingS = Math.max(0, -slackS);
        return EARLIER_PERCENT.stream()
                .map(
                        percent ->
                                new Aim(
                                        100,
                                        (long) Math.ceil(missingS * percent / 100) + EARLIER_S,
                                        laterRatio))
                .toList();
    }

    private OpenDay open(Set<LoadId> left) {
        return left.isEmpty()
                ? all
                : opened.computeIfAbsent(
                        Set.copyOf(left), loads -> all.with(wish.job().leaving(loads).job()));
    }

    private Optional<Plan> near(OpenDay open, Plan order, Aim aim, OpenDay.Effort effort) {
        return open.whole(order, settings(), effort, aim)
                .fold((plan, said) -> Optional.of(plan), refused -> Optional.empty());
    }

    private PlanSettings settings() {
        Plan plan = wish.plan();
        return new PlanSettings(
                wish.planId(),
                wish.plannedAt(),
                new Effort(plan.seed(), plan.effort()),
                plan.program(),
                () -> false,
                () -> false,
                TimeGone.once(() -> false),
                () -> false);
    }

    /** A day with some lifts taken off. */
    private record Thinned(Plan plan, Set<LoadId> off, double slackS) {
        /** What is gained for each load that is lost against another one. */
        double worthS(Thinned before) {
            int lost = plan.leftOut().size() - before.plan.leftOut().size();
            return (slackS - before.slackS) / Math.max(1, lost);
        }
    }

    /** With lifts taken off until the day is as sure as is wished, or nothing that is taken off makes it surer. */
    private Thinned thin(Plan plan, Set<LoadId> left) {
        Thinned now = new Thinned(plan, Set.copyOf(left), slackS(plan, DayOdds.REPLAYS));
        while (now.slackS < 0 && !isStopped()) {
            Optional<Thinned> next = next(now);
            if (next.isEmpty()) {
                break;
            }
            now = next.get();
        }
        return now.slackS < 0 ? now : withPutBack(plan, now, left);
    }

    /** What went first was chosen when least was known: each lift is put back that the day is sure enough with. */
    private Thinned withPutBack(Plan plan, Thinned taken, Set<LoadId> left) {
        Thinned now = taken;
        for (List<LoadId> hung : lifts(plan)) {
            Set<LoadId> less = new HashSet<>(now.off);
            hung.forEach(less::remove);
            // With nothing more left the same day would be planned as before.
            if (isStopped() || !now.off.containsAll(hung) || less.equals(left)) {
                continue;
            }
            Optional<Thinned> with = searched(plan, less);
            if (with.filter(day -> day.slackS >= 0 && day.off.equals(less)).isPresent()) {
                now = with.get();
            }
        }
        return now;
    }

    private Optional<Thinned> searched(Plan plan, Set<LoadId> off) {
        return searched(plan, off, earlier(slackS(plan, DayOdds.REPLAYS), ALL_RATIO).get(0));
    }

    /** The search may leave more for what it aims at; then those are off too. */
    private Optional<Thinned> searched(Plan plan, Set<LoadId> off, Aim aim) {
        OpenDay.Effort effort = new OpenDay.Effort(true, false, wish.stop());
        OpenDay open = all.with(wish.job().leaving(off).job());
        return near(open, plan, aim, effort)
                .map(
                        less ->
                                new Thinned(
                                        less,
                                        withLost(plan, less, off),
                                        slackS(less, DayOdds.REPLAYS)));
    }

    /** With what a day flew and another does not, but for what only waits for that. */
    private Set<LoadId> withLost(Plan plan, Plan less, Set<LoadId> off) {
        Set<LoadId> gone = new TreeSet<>(off);
        gone.addAll(flown(plan));
        gone.removeAll(flown(less));
        Set<LoadId> all = new TreeSet<>(off);
        for (LoadId load : gone) {
            boolean waits =
                    wish.job().job().getLoad(load).after().stream()
                            .anyMatch(one -> gone.contains(one.load()));
            if (!waits) {
                all.add(load);
            }
        }
        return all;
    }

    /** What gives the most time for each load that is lost: one lift less, or another order that may leave some. */
    private Optional<Thinned> next(Thinned now) {
        List<Thinned> found = new ArrayList<>();
        oneLess(now).ifPresent(found::add);
        for (Aim aim : earlier(now.slackS, LEAVING_RATIO)) {
            if (!isStopped()) {
                searched(now.plan, now.off, aim).ifPresent(found::add);
            }
        }
        return found.stream()
                .filter(one -> one.worthS(now) > 0)
                .max(Comparator.comparingDouble(one -> one.worthS(now)));
    }

    private Optional<Thinned> oneLess(Thinned now) {
        Thinned base = new Thinned(now.plan, now.off, slackS(now.plan, COMPARED));
        Optional<Thinned> best = Optional.empty();
        for (List<LoadId> hung : lifts(now.plan)) {
            if (isStopped()) {
                break;
            }
            Set<LoadId> off = new HashSet<>(now.off);
            off.addAll(hung);
            OpenDay open = all.with(wish.job().leaving(off).job());
            Optional<Thinned> less =
                    near(open, now.plan, Aim.CHEAPEST, OpenDay.Effort.FIRST)
                            .map(plan -> new Thinned(plan, off, slackS(plan, COMPARED)));
            double leastWorthS = best.map(one -> one.worthS(base)).orElse(0.0);
            if (less.filter(day -> day.worthS(base) > leastWorthS).isPresent()) {
                best = less;
            }
        }
        return best.map(
                one -> {
                    Thinned first =
                            new Thinned(one.plan, one.off, slackS(one.plan, DayOdds.REPLAYS));
                    return searched(one.plan, one.off)
                            .filter(better -> better.worthS(now) >= first.worthS(now))
                            .orElse(first);
                });
    }

    /** Lifts put back one at a time, the day planned anew with each, as long as it is as sure as is wished. */
    private Day withPutBack(Day sure, Progress progress) {
        Day now = sure;
        int tries = 0;
        for (List<LoadId> hung : lifts(wish.plan())) {
            Set<LoadId> less = new TreeSet<>(now.left());
            hung.forEach(less::remove);
            // All of them together were tried first of all.
            boolean isTried = now.left().containsAll(hung) && !less.isEmpty();
            if (!isTried || tries >= PUT_BACK_TRIES || isStopped()) {
                continue;
            }
            Progress part = progress.part((double) tries / PUT_BACK_TRIES, 1.0 / PUT_BACK_TRIES);
            tries++;
            String loads = hung.stream().map(LoadId::value).collect(Collectors.joining(", "));
            Optional<Day> with =
                    planned(less, List.of(now.plan()), part.named("with " + loads + " put back: "));
            with.ifPresent(day -> tried(hung, day));
            if (with.filter(this::isSure).isPresent()) {
                now = with.get();
            }
        }
        return now;
    }

    private void tried(List<LoadId> hung, Day day) {
        hung.forEach(load -> triedFraction.merge(load, day.inTimeFraction(), Math::max));
    }

    /** The day with what it costs against the cheapest, and what putting loads back would have come to. */
    private Plan told(Day day) {
        List<Finding> said = new ArrayList<>();
        boolean isCheapest = day.plan().equals(day.cheapest());
        if (!isCheapest) {
            said.add(
                    Finding.of(
                            FindingCode.SURER_DAY,
                            Severity.NOTE,
                            wish.job().job().name(),
                            "rules",
                            against(day)));
        }
        triedFraction.forEach(
                (load, fraction) -> {
                    if (day.left().contains(load)) {
                        said.add(putBack(load, fraction));
                    }
                });
        return (isCheapest ? day.plan() : bounded(day)).withFindings(said);
    }

    private Finding putBack(LoadId load, double fraction) {
        String reached = of100(fraction);
        String asked = String.valueOf(Math.round(100 * wish.inTimeFraction()));
        return new Finding(
                FindingCode.SURER_DAY,
                Severity.NOTE,
                load.value(),
                reached,
                asked,
                "",
                "rules",
                "Put back, "
                        + reached
                        + " of 100 replayed days would be in time; asked for were "
                        + asked
                        + ".");
    }

    private String against(Day day) {
        Plan cheapest = day.cheapest();
        double fraction = DayOdds.allInTime(wish.job().job(), cheapest).leastFraction();
        Summary mine = day.plan().summary();
        Summary other = cheapest.summary();
        String currency = mine.price().map(DayPrice::currency).orElse("");
        long moreCents = cents(day.plan()) - cents(cheapest);
        double laterS = Duration.between(other.finishAt(), mine.finishAt()).toMillis() / 1000.0;
        return String.format(
                Locale.ROOT,
                "The order of these loads searched by price alone is in time on %s of 100 replayed"
                        + " days, this one on %s; this one costs %d.%02d %s %s, flies %s and ends %s.",
                of100(fraction),
                of100(day.inTimeFraction()),
                Math.abs(moreCents) / 100,
                Math.abs(moreCents) % 100,
                currency,
                moreCents < 0 ? "less" : "more",
                minutes(mine.flightS() - other.flightS(), "less", "more"),
                minutes(laterS, "earlier", "later"));
    }

    private static String of100(double fraction) {
        return String.valueOf((long) Math.floor(100 * fraction));
    }

    /** In tenths, away from nothing. */
    private static String minutes(double differenceS, String less, String more) {
        return String.format(
                Locale.ROOT,
                "%.1f min %s",
                Math.ceil(Math.abs(differenceS) / 6) / 10,
                differenceS < 0 ? less : more);
    }

    /**
     * The same day with what no order goes below: as proven of the cheapest where that was planned of the same loads, else
     * where it is told the same when it is read back. The plan that was known may be of files as they were.
     */
    private Plan bounded(Day day) {
        Summary.Bounds known = day.cheapest().summary().bounds();
        if (!day.left().isEmpty()
                && flown(day.cheapest()).equals(flown(day.plan()))
                && known.provenFor().filter(Summary.Bounds.ALL_COMBINATIONS::equals).isPresent()) {
            return day.plan().withBounds(known);
        }
        OpenDay.Effort effort = new OpenDay.Effort(false, true, wish.stop());
        return near(open(day.left()), day.plan(), Aim.CHEAPEST, effort)
                .filter(again -> again.steps().equals(day.plan().steps()))
                .orElse(day.plan());
    }

    private double slackS(Plan plan, int replays) {
        return DayOdds.slackS(wish.job().job(), plan, replays, wish.inTimeFraction());
    }

    private static long cents(Plan plan) {
        return plan.summary().price().map(DayPrice::totalCents).orElse(0L);
    }

    private static Set<LoadId> flown(Plan plan) {
        return lifts(plan).stream().flatMap(List::stream).collect(Collectors.toSet());
    }

    private static List<List<LoadId>> lifts(Plan plan) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .map(rotation -> rotation.loads())
                .toList();
    }
}
