package underhook.app.flying;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import underhook.app.desk.DayLooks.Look;
import underhook.app.evening.ClocksOff;
import underhook.app.port.OutputWriter;
import underhook.app.replan.Change;
import underhook.app.replan.Now;
import underhook.app.replan.Proposal;
import underhook.app.replan.RestOfDay;
import underhook.app.replan.RestOfDay.Patience;
import underhook.app.replan.SeenWind;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Job;
import underhook.core.job.Machine;
import underhook.core.plan.Plan;

/** A new order for what is left of a day, as a proposal that somebody accepts or not. Safe for threads. */
public final class NewOrder {
    private static final System.Logger LOG = System.getLogger(NewOrder.class.getName());

    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    /** Clocks of devices are no farther apart, as a rule; what was tapped is then just done. @source PRACTICE */
    private static final Duration CLOCKS_APART = Duration.ofMinutes(2);

    private static final Set<TapKind> MOVE_NOTHING =
            EnumSet.of(TapKind.BRIEFED, TapKind.COUNTED, TapKind.REPORTED);

    private static final String FILES_CHANGED =
            "the job's files were changed since this plan was made; the order keeps to them as they"
                    + " were. Plan anew where the change must count";

    private final FlyingDay day;
    private final AtomicBoolean preparing = new AtomicBoolean();
    private Optional<Open> open = Optional.empty();

    /** What was accepted with the last order, by the tap that told it. */
    private Map<String, Change> accepted = Map.of();

    /** Masses that were accepted without anybody telling them. */
    private List<Change> acceptedMasses = List.of();

    /** The day as opened for one plan. */
    private record Open(String plan, RestOfDay order) {}

    /**
     * What is proposed.
     *
     * @param changes what was told since the last order
     * @param because the same in words
     */
    public record Offer(Proposal proposal, List<Change> changes, List<String> because) {
        public Offer {
            changes = List.copyOf(changes);
            because = List.copyOf(because);
        }
    }

    /** Those of the last question: the known order, and the better one. */
    private final List<Offer> offers = new ArrayList<>();

    private Map<String, Change> offered = Map.of();
    private List<Change> offeredMasses = List.of();
    private List<Change> offeredReadings = List.of();

    NewOrder(FlyingDay day) {
        this.day = day;
    }

    /**
     * Opens the day and makes it ready for the first question, in the background; once for each plan that did not
     * come of an order of ours.
     */
    void prepare() {
        if (preparing.compareAndSet(false, true)) {
            Thread thread = new Thread(this::ready, "ready " + day.job().id());
            thread.setDaemon(true);
            thread.start();
        }
    }

    private void ready() {
        try {
            Optional<RestOfDay> order = openAnew();
            order.ifPresent(
                    made ->
                            made.prepare(
                                    () -> opened().filter(one -> one.order() == made).isEmpty()));
        } catch (IOException | RuntimeException failed) {
            // Whoever asks is told so then.
            LOG.log(System.Logger.Level.WARNING, "The day could not be made ready.", failed);
        } finally {
            preparing.set(false);
        }
    }

    /** The plan is looked up with the rest held still: one that is accepted meanwhile stays the one that is open. */
    private synchronized Optional<RestOfDay> openAnew() throws IOException {
        return day.findPlanned()
                .filter(look -> open.filter(one -> one.plan().equals(plan(look))).isEmpty())
                .map(this::order);
    }

    private synchronized Optional<Open> opened() {
        return open;
    }

    private static String plan(Look look) {
        return look.plan().kept().id();
    }

    /**
     * Proposes a new order after everything that was told.
     *
     * @param heavier whether loads not yet weighed are to count as heavy as those weighed so far
     * @param patience how long to look
     * @throws IllegalArgumentException when the job has no plan, or something was tapped that is still to come
     */
    public synchronized Offer propose(Instant asked, boolean heavier, Patience patience)
            throws IOException {
        Look look =
                day.findPlanned()
                        .orElseThrow(
                                () -> new IllegalArgumentException("The job has no plan yet."));
        FlownDay flown = day.flown();
        Instant now = notBeforeTaps(asked, flown, look.job().job().zone());
        RestOfDay order = order(look);
        ToldChanges all = day.told(look, flown);
        Map<String, Change> told = new LinkedHashMap<>();
        all.changes().stream()
                .filter(one -> !(one.change() instanceof Change.WindSeen wind) || wind.isNew(now))
                .forEach(one -> told.put(one.tap().id(), one.change()));
        Optional<Bias> bias = heavier ? day.findBias(flown) : Optional.empty();
        List<Change> masses =
                bias.map(known -> ToldChanges.heavier(look.job().job(), flown, known))
                        .orElse(acceptedMasses);
        // What was taken back holds no more, accepted or not.
        List<Change> changes = new ArrayList<>(masses);
        changes.addAll(told.values());
        List<Change> readings = readings(look.job().job(), flown, told.values());
        changes.addAll(readings);
        Proposal proposal = order.propose(asItIs(look, flown, now), changes, patience, () -> false);
        List<Change> news = new ArrayList<>();
        told.forEach((tap, change) -> addUnless(accepted.containsKey(tap), change, news));
        List<Change> gone = new ArrayList<>();
        accepted.forEach((tap, change) -> addUnless(told.containsKey(tap), change, gone));
        List<String> because = new ArrayList<>();
        if (day.job().isStale(look.plan().kept())) {
            because.add(FILES_CHANGED);
        }
        ZoneId zone = look.job().job().zone();
        ClocksOff.findings(FlyingDay.tapped(day.rows())).forEach(one -> because.add(one.message()));
        readings.forEach(change -> because.add(change.words(zone)));
        bias.ifPresent(known -> because.add(known.words()));
        engineUntold(look, flown, now).ifPresent(because::add);
        proposal.doubts().forEach(one -> because.add(one.message()));
        news.forEach(change -> because.add(change.words(zone)));
        news.forEach(change -> forecast(change, look.job().job(), now).ifPresent(because::add));
        gone.forEach(change -> because.add(change.words(zone) + gone(change, flown)));
        all.before().forEach(one -> because.add(before(one, look.job().job())));
        all.unread().forEach(tap -> because.add(unread(tap)));
        Offer made = new Offer(proposal, news, because);
        // The known order can still be accepted while the better one is shown.
        if (patience == Patience.FIRST
                || !told.equals(offered)
                || !masses.equals(offeredMasses)
                || !readings.equals(offeredReadings)) {
            offers.clear();
        }
        offered = told;
        offeredMasses = masses;
        offeredReadings = readings;
        offers.add(made);
        return made;
    }

    /** No order begins before what was done, and none is made of what cannot have been yet. */
    private static Instant notBeforeTaps(Instant asked, FlownDay flown, ZoneId zone) {
        Optional<Tap> last =
                flown.taps().stream()
                        .filter(tap -> !MOVE_NOTHING.contains(tap.kind()))
                        .filter(tap -> tap.at().isAfter(asked))
                        .reduce((earlier, later) -> later);
        if (last.filter(tap -> tap.at().isAfter(asked.plus(CLOCKS_APART))).isPresent()) {
            throw new IllegalArgumentException(
                    "Device "
                            + last.get().device()
                            + " tapped something at "
                            + CLOCK.format(last.get().at().atZone(zone))
                            + ", and it is "
                            + CLOCK.format(asked.atZone(zone))
                            + ": the server's clock was set back since. Set it right and ask"
                            + " again.");
        }
        return last.map(Tap::at).orElse(asked);
    }

    /** What the load cell read of loads that were given up, where nobody told of as much. */
    private static List<Change> readings(Job job, FlownDay flown, Collection<Change> told) {
        return ToldChanges.readHeavier(flown, load -> ToldChanges.countsKg(job, load)).stream()
                .filter(read -> told.stream().noneMatch(change -> isAsHeavy(change, read)))
                .toList();
    }

    private static boolean isAsHeavy(Change told, Change read) {
        return told instanceof Change.Weighed one
                && read instanceof Change.Weighed other
                && one.load().equals(other.load())
                && one.massKg() >= other.massKg();
    }

    private static Optional<String> engineUntold(Look look, FlownDay flown, Instant now) {
        Plan plan = look.plan().plan();
        List<LiftState> lifts = LiftState.of(look.job().job(), plan, flown);
        EngineUntold untold = EngineUntold.of(plan.steps(), lifts, flown, now);
        if (untold.assumedS() == 0) {
            return Optional.empty();
        }
        return Optional.of(
                EngineUntold.minutes(untold.assumedS())
                        + " min were planned with the engine off, and nobody tapped it off: they"
                        + " count as running. Tapped off and on, the longest of them gives back "
                        + EngineUntold.minutes(untold.longestS())
                        + " min");
    }

    private static void addUnless(boolean known, Change change, List<Change> all) {
        if (!known) {
            all.add(change);
        }
    }

    /** Why something that counted does no more. */
    private static String gone(Change change, FlownDay flown) {
        boolean isStillTold =
                change instanceof Change.WindSeen wind
                        && flown.taps().stream()
                                .anyMatch(tap -> WindThere.seen(tap).equals(Optional.of(wind)));
        return isStillTold
                ? " counts no more: it is old, or somebody saw it anew"
                : " was taken back";
    }

    /** What the forecast says of a wind that was seen. */
    private static Optional<String> forecast(Change change, Job job, Instant now) {
        if (!(change instanceof Change.WindSeen seen)) {
            return Optional.empty();
        }
        SeenWind wind = new SeenWind(seen, job.getPlace(seen.place()).exposureFactor());
        if (wind.isForecast(job.weather(), now)) {
            return Optional.of("the forecast has as much at " + seen.place() + " by now");
        }
        return Optional.of(
                wind.findForecast(job.weather(), now)
                        .map(
                                from ->
                                        "the forecast has as much at "
                                                + seen.place()
                                                + " from "
                                                + CLOCK.format(from.atZone(job.zone()))
                                                + " on; it counts for an hour. Does all of it come"
                                                + " earlier, report by how much")
                        .orElse(
                                "the forecast has as much at no later hour at "
                                        + seen.place()
                                        + "; it counts for an hour. Does it stay, report it again"));
    }

    private static String before(ToldChanges.Told told, Job job) {
        return told.change().words(job.zone())
                + " is not counted: it was told before the files were changed";
    }

    private static String unread(Tap tap) {
        return "'"
                + tap.note()
                + "', told by "
                + tap.by()
                + ", changes nothing: it names nothing of this job or cannot be read";
    }

    /** Opened anew for each plan that did not come of an order of ours. */
    private synchronized RestOfDay order(Look look) {
        String plan = plan(look);
        if (open.filter(one -> one.plan().equals(plan)).isEmpty()) {
            accepted = Map.of();
            acceptedMasses = List.of();
            open =
                    Optional.of(
                            new Open(
                                    plan,
                                    new RestOfDay(
                                            look.job(),
                                            look.plan().plan(),
                                            day.job().planDay()::check)));
        }
        return open.orElseThrow().order();
    }

    private static Now asItIs(Look look, FlownDay flown, Instant now) {
        Machine machine = look.job().job().machine();
        OptionalDouble fuelKg =
                FuelNow.find(flown, machine, now)
                        // The order counts with the gauge's spread itself.
                        .map(fuel -> fuel.leastKg() + machine.fuelGaugeSpreadKg())
                        .map(OptionalDouble::of)
                        .orElse(OptionalDouble.empty());
        return Now.asTapped(now, flown, fuelKg);
    }

    /**
     * Makes the proposal with this plan id the plan of record.
     *
     * @throws IllegalArgumentException when another one was made since, or the re-check refused it
     */
    public synchronized void accept(String id) throws IOException {
        Offer chosen =
                offers.stream()
                        .filter(one -> one.proposal().plan().id().equals(id))
                        .findFirst()
                        .orElseThrow(
                                () ->
                                        new IllegalArgumentException(
                                                "The day has moved on; ask for a new order again."));
        Proposal proposal = chosen.proposal();
        RestOfDay order = open.orElseThrow().order();
        order.accept(proposal);
        day.job()
                .keepOrder(
                        new OutputWriter.Output(
                                proposal.job(), proposal.plan(), proposal.report()));
        open = Optional.of(new Open(id, order));
        accepted = offered;
        acceptedMasses = offeredMasses;
        offers.clear();
    }
}
