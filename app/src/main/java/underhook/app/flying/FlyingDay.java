package underhook.app.flying;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import underhook.app.desk.DayLooks;
import underhook.app.desk.DayLooks.Look;
import underhook.app.desk.DeskJob;
import underhook.app.evening.CloseDay;
import underhook.app.flying.TapLog.Given;
import underhook.app.flying.TapLog.Taken;
import underhook.app.port.ClosedDay;
import underhook.app.port.Content;
import underhook.app.port.EmergencyPlan;
import underhook.app.port.EveningFiles.Tapped;
import underhook.app.port.KeptJob.KeptPlan;
import underhook.app.port.KeptTap;
import underhook.app.port.ReadJob;
import underhook.app.port.ReferenceSystem;
import underhook.core.finding.Finding;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.flown.TrainedHands;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** One job's day while it is flown. Safe for threads. */
public final class FlyingDay {
    /** A plan that was just accepted may be told of taps so much later. */
    private static final long GOOD_FOR_NANOS = 1_000_000_000L;

    private final DeskJob job;
    private final DayLooks looks;
    private final TapLog log;
    private final GroundNow ground = new GroundNow();
    private final NewOrder newOrder = new NewOrder(this);
    private volatile Optional<Around> around = Optional.empty();

    /** Who may hook, and by which plan is flown, as it was a moment ago. */
    private record Around(long sinceNanos, TrainedHands hands, String plan) {}

    /**
     * A tap as a device hands it in.
     *
     * @param role what whoever tapped does on the day
     * @param sentAt when it was sent, by the device's clock
     * @param anyway keep it whether the day allows it or not: it has happened
     */
    public record Offer(Tap tap, String role, Instant sentAt, boolean anyway) {}

    /**
     * What became of an offered tap.
     *
     * @param row where it stands in the log; empty when it was refused
     * @param refusal why the day does not allow it; empty when it was kept
     * @param differs whether the log holds something else under its id
     */
    public record Answer(
            String id, Optional<KeptTap> row, Optional<Finding> refusal, boolean differs) {}

    /**
     * A device as far as it was heard of.
     *
     * @param clockAhead how far its clock runs ahead of the server's; negative behind
     */
    public record Device(
            String name, String by, String role, Instant lastAt, Duration clockAhead) {}

    /**
     * A tap that the day did not allow, and is kept.
     *
     * @param other the tap of another device that says something else of the same load
     */
    public record Disagreement(Tap tap, Finding why, Optional<Tap> other) {}

    FlyingDay(DeskJob job, DayLooks looks) throws IOException {
        this.job = job;
        this.looks = looks;
        this.log = new TapLog(job.kept(), () -> around().hands());
    }

    public DeskJob job() {
        return job;
    }

    /** Orders what is left of the day anew. */
    public NewOrder newOrder() {
        return newOrder;
    }

    /** Takes taps in; whatever is kept is on the disk when this returns. */
    public List<Answer> take(List<Offer> offers) throws IOException {
        List<Given> given =
                offers.stream()
                        .map(one -> new Given(one.tap(), one.role(), one.sentAt(), one.anyway()))
                        .toList();
        long before = rows().size();
        List<Taken> taken = log.take(given, new TapLog.Stamp(job.now(), around().plan()));
        long after = rows().size();
        if (after > before) {
            job.tellTapped(after, offers.get(offers.size() - 1).tap().kind().name());
            if (offers.stream().anyMatch(one -> one.tap().kind() == TapKind.HOOKED)) {
                newOrder.prepare();
            }
        }
        return taken.stream()
                .map(one -> new Answer(one.id(), one.row(), one.refusal(), one.differs()))
                .toList();
    }

    /** Worked out once for many taps: it costs more than taking one in. */
    private Around around() throws IOException {
        long nanos = System.nanoTime();
        Optional<Around> known = around;
        if (known.isEmpty() || nanos - known.get().sinceNanos() > GOOD_FOR_NANOS) {
            known = Optional.of(new Around(nanos, hands(), planId()));
            around = known;
        }
        return known.get();
    }

    private String planId() throws IOException {
        return job.kept().listPlans().isEmpty()
                ? ""
                : job.findPlan().map(plan -> plan.kept().id()).orElse("");
    }

    /** The log in the order in which taps came in. */
    public List<KeptTap> rows() {
        return log.rows();
    }

    /** The taps of these rows in their order, each at the time at which it counts. */
    public static Tapped tapped(List<KeptTap> rows) {
        List<Tap> counted = DeviceClocks.counted(rows);
        Map<String, Instant> deviceAt = new HashMap<>();
        for (int i = 0; i < rows.size(); i++) {
            Tap tap = rows.get(i).tap();
            if (!counted.get(i).equals(tap)) {
                deviceAt.put(tap.id(), tap.at());
            }
        }
        return new Tapped(counted, deviceAt);
    }

    /** The plan that is flown by, with the job it was made from; empty when there is none. */
    Optional<Look> findPlanned() throws IOException {
        return looks.find(job);
    }

    /** The plan that is flown by, over the ground as it was told to be; empty when there is none. */
    public Optional<Look> findLook() throws IOException {
        Optional<Look> planned = findPlanned();
        return planned.isEmpty()
                ? planned
                : Optional.of(ground.of(planned.get(), told(planned.get(), flown())));
    }

    /** What was told of a place's ground and the plan does not know, in words. */
    public List<String> unplanned(PlaceId place, FlownDay flown) throws IOException {
        Optional<Look> planned = findPlanned();
        return planned.isEmpty()
                ? List.of()
                : GroundNow.unplanned(planned.get(), rows(), told(planned.get(), flown), place);
    }

    /** What was told that changes the day of a plan. */
    ToldChanges told(Look planned, FlownDay flown) throws IOException {
        Set<String> plans =
                job.kept().listPlans().stream()
                        .filter(plan -> plan.revision() == planned.plan().kept().revision())
                        .map(KeptPlan::id)
                        .collect(Collectors.toSet());
        Set<String> ofTheseFiles =
                rows().stream()
                        .filter(row -> plans.contains(row.arrival().plan()))
                        .map(row -> row.tap().id())
                        .collect(Collectors.toSet());
        Map<String, Instant> cameAt = new HashMap<>();
        rows().forEach(row -> cameAt.put(row.tap().id(), row.arrival().receivedAt()));
        return ToldChanges.of(planned.job().job(), flown, ofTheseFiles, cameAt);
    }

    /** The job as the day knows it: as planned, else as it can be read. */
    public Optional<Job> findJob() throws IOException {
        Optional<Look> look = findLook();
        return look.isPresent()
                ? look.map(one -> one.job().job())
                : job.findReadable().map(ReadJob::job);
    }

    /** The day that the taps add up to. */
    public FlownDay flown() throws IOException {
        return flown(rows());
    }

    /** The day that these taps add up to. */
    public FlownDay flown(List<KeptTap> rows) throws IOException {
        return FlownDay.of(DeviceClocks.counted(rows), hands());
    }

    private TrainedHands hands() throws IOException {
        Optional<Look> planned = findPlanned();
        Optional<Job> known =
                planned.isPresent()
                        ? planned.map(one -> one.job().job())
                        : job.findReadable().map(ReadJob::job);
        return known.map(job -> hands(job, planned.map(one -> one.plan().plan())))
                .orElse(TrainedHands.UNNAMED);
    }

    /** Everybody of a crew that may hook, where each load waits, and on which line it was planned. */
    static TrainedHands hands(Job job, Optional<Plan> plan) {
        Set<String> names = new HashSet<>();
        job.crews().stream()
                .filter(crew -> crew.roles().contains(Crew.Role.HOOK))
                .forEach(crew -> names.addAll(crew.names()));
        return new TrainedHands(
                names,
                job.loads().stream().collect(Collectors.toMap(Load::id, Load::from)),
                plan.map(FlyingDay::lines).orElse(Map.of()));
    }

    private static Map<LoadId, Double> lines(Plan plan) {
        Map<LoadId, Double> linesM = new HashMap<>();
        for (Step step : plan.steps()) {
            step.rotation()
                    .ifPresent(
                            rotation ->
                                    rotation.loads()
                                            .forEach(id -> linesM.put(id, step.lineLengthM())));
        }
        return linesM;
    }

    /** What still comes before each lift that waits: fuel, line, people, moves, a break. */
    public static Map<Integer, List<Step>> before(Job job, Plan plan, FlownDay flown) {
        List<LiftState> lifts = LiftState.of(job, plan, flown);
        Map<Integer, List<Step>> before = new HashMap<>();
        Optional<LiftState> next = LiftState.next(lifts);
        for (LiftState lift : lifts) {
            int number = lift.lift().number();
            if (next.filter(lift::equals).isPresent()) {
                before.put(number, Between.stillBefore(plan.steps(), lift, flown));
            } else if (lift.isAhead()) {
                before.put(number, Between.before(plan.steps(), lift.lift().step()));
            }
        }
        return before;
    }

    /** Every device that ever tapped, by name. */
    public List<Device> listDevices() {
        Map<String, Device> devices = new TreeMap<>();
        for (KeptTap row : rows()) {
            Duration ahead = Duration.between(row.arrival().receivedAt(), row.arrival().sentAt());
            devices.put(
                    row.tap().device(),
                    new Device(
                            row.tap().device(),
                            row.tap().by(),
                            row.arrival().role(),
                            row.arrival().receivedAt(),
                            ahead));
        }
        return List.copyOf(devices.values());
    }

    /** Taps that the day did not allow, each with what another device says. */
    public static List<Disagreement> disagreements(FlownDay flown) {
        return flown.conflicts().stream()
                .map(
                        conflict ->
                                new Disagreement(
                                        conflict.tap(),
                                        conflict.finding(),
                                        findOther(flown, conflict.tap())))
                .toList();
    }

    private static Optional<Tap> findOther(FlownDay flown, Tap tap) {
        return flown.taps().stream()
                .filter(other -> !other.device().equals(tap.device()))
                .filter(other -> !other.at().isAfter(tap.at()))
                .filter(other -> other.loads().stream().anyMatch(tap.loads()::contains))
                .reduce((earlier, later) -> later);
    }

    /** Everything that can stop the day, the first first; empty without a plan. */
    public List<Stop> stops(FlownDay flown, Instant now) throws IOException {
        Optional<Look> look = findLook();
        if (look.isEmpty()) {
            return List.of();
        }
        Stops.Clock clock = new Stops.Clock(now, emergency());
        return Stops.of(look.get(), flown, clock);
    }

    /** The next lift as it would be flown now; empty when none is left. */
    public Optional<NextLook> findNext(FlownDay flown, Instant now) throws IOException {
        Optional<Look> look = findLook();
        return look.flatMap(
                one ->
                        LiftState.next(LiftState.of(one.job().job(), one.plan().plan(), flown))
                                .map(lift -> NextLook.of(one, lift, flown, now)));
    }

    /** The lifts of which something hangs on the hook, as they are flown now. */
    public List<NextLook> listHanging(FlownDay flown, Instant now) throws IOException {
        Optional<Look> look = findLook();
        return look.stream()
                .flatMap(
                        one ->
                                LiftState.of(one.job().job(), one.plan().plan(), flown).stream()
                                        .filter(lift -> lift.state() == LiftState.State.ON_HOOK)
                                        .map(lift -> NextLook.of(one, lift, flown, now)))
                .toList();
    }

    /** The emergency sheets of all places. */
    public List<EmergencySheet> emergencySheets(FlownDay flown, Instant now) throws IOException {
        Optional<Job> read = findJob();
        if (read.isEmpty()) {
            return List.of();
        }
        EmergencySheet.Asked asked =
                new EmergencySheet.Asked(
                        read.get(), findLook().map(look -> look.plan().plan()), flown, emergency());
        Optional<ReferenceSystem> system = findSystem();
        List<EmergencySheet> sheets = new ArrayList<>();
        for (Place place : read.get().places()) {
            sheets.add(EmergencySheet.of(asked, place, system, now));
        }
        return sheets;
    }

    private Optional<ReferenceSystem> findSystem() throws IOException {
        Optional<String> places =
                job.listFiles().stream()
                        .filter(file -> file.role().equals("places"))
                        .map(DeskJob.FileInfo::path)
                        .findFirst();
        return places.isPresent() ? job.findSystem(places.get()) : Optional.empty();
    }

    /** How much heavier than listed loads were, as far as they were weighed. */
    public Optional<Bias> findBias(FlownDay flown) throws IOException {
        Optional<Job> read = findJob();
        List<Rotation> planned =
                findPlanned().map(look -> Bias.rotations(look.plan().plan())).orElse(List.of());
        return read.isEmpty() ? Optional.empty() : Bias.of(read.get(), planned, flown);
    }

    /** Nothing when it states nothing or cannot be read. */
    private EmergencyPlan emergency() throws IOException {
        return job.tools()
                .inputs()
                .findEmergency(job.folder(job.head().id()))
                .orElse(EmergencyPlan.NONE);
    }

    /** What was flown beside what was planned; empty without a plan. */
    public Optional<ClosedDay> findBesidePlan() throws IOException {
        Tapped taps = tapped(rows());
        return findLook()
                .map(
                        look ->
                                CloseDay.beside(
                                        look.job(),
                                        look.plan().plan(),
                                        taps,
                                        hands(look.job().job(), Optional.of(look.plan().plan()))));
    }

    /** The same on paper, without what only the books say; empty without a plan. */
    public Optional<Content> findEveningPaper() throws IOException {
        Optional<ClosedDay> day = findBesidePlan();
        if (day.isEmpty()) {
            return Optional.empty();
        }
        Path file = Files.createTempFile("evening", ".pdf");
        try {
            job.tools().eveningPaper().write(day.get(), file);
            return Optional.of(Content.of(Files.readAllBytes(file)));
        } finally {
            Files.deleteIfExists(file);
        }
    }

    /** The log as the table that closes the day; what was taken back stands there too. */
    public Content tapsTable() throws IOException {
        Optional<Job> read = findJob();
        if (read.isEmpty()) {
            throw new IllegalArgumentException("The job has never been without faults yet.");
        }
        return job.tools().evening().tapsTable(tapped(rows()), read.get());
    }

    /** Newest report of a kind, with when it was made; those taken back do not count. */
    static <T> Optional<T> findNewest(FlownDay flown, Function<Tap, Optional<T>> reading) {
        return flown.taps().stream()
                .filter(tap -> tap.kind() == TapKind.REPORTED)
                .flatMap(tap -> reading.apply(tap).stream())
                .reduce((earlier, later) -> later);
    }
}
