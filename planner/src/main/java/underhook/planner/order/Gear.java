package underhook.planner.order;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;
import underhook.core.job.Rigging;
import underhook.core.job.Rigging.SlingSet;
import underhook.core.line.Hitch;
import underhook.core.line.HungBridle;
import underhook.core.line.RiggingChain;
import underhook.core.line.Sling;
import underhook.core.plan.KitItem;
import underhook.core.plan.Limit;
import underhook.core.plan.Step;
import underhook.core.unit.Units;
import underhook.planner.route.Memo;

/**
 * What a trip hangs in, from the load's sling to the belly hook, by the job's list of gear.
 *
 * <p>A load's mass is stated with its sling. In the chain the sling's own mass counts once more, which
 * errs heavy.
 */
final class Gear {
    /** Baskets are presumed to go round a bend of so many diameters at least; tables begin there. */
    private static final double BEND_RATIO = 25;

    /** Lines of a plan are told apart by their lengths alone. */
    private static final double SAME_LENGTH_M = 1e-3;

    private final DayModel model;
    private final Rigging rigging;
    private final Memo<Trip, Memo<Integer, Boolean>> known = Memo.byIdentity();

    Gear(DayModel model) {
        this.model = model;
        this.rigging = model.rules.handling().rigging();
    }

    /** Whether every item carries what hangs there, and none is past its dates. */
    boolean holds(Trip trip, int line) {
        return known.get(trip, unused -> Memo.of())
                .get(line, unused -> stops(trip, model.machine.lines().get(line)).isEmpty());
    }

    /** Why a trip hangs safely on no line in stock; empty when it does on one. */
    Optional<Finding> findStop(Trip trip) {
        List<List<Finding>> byLine =
                model.machine.lines().stream().map(line -> stops(trip, line)).toList();
        if (byLine.stream().anyMatch(List::isEmpty)) {
            return Optional.empty();
        }
        // A line that dates alone forbid is free once they are renewed; one that carries too little
        // is not.
        List<Finding> expired =
                byLine.stream()
                        .filter(stops -> stops.stream().allMatch(Gear::isExpired))
                        .flatMap(List::stream)
                        .toList();
        return expired.isEmpty() ? firstOf(byLine.get(0)) : Optional.of(all(expired));
    }

    /** Why a trip does not hang safely on a line. */
    Optional<Finding> findStop(Trip trip, LineItem line) {
        return firstOf(stops(trip, line));
    }

    /** The first; of items that are out of date it names each, for one that is mended alone frees nothing. */
    private static Optional<Finding> firstOf(List<Finding> stops) {
        return stops.stream()
                .findFirst()
                .map(
                        first ->
                                isExpired(first)
                                        ? all(stops.stream().filter(Gear::isExpired).toList())
                                        : first);
    }

    private static boolean isExpired(Finding stop) {
        return stop.code() == FindingCode.RIGGING_EXPIRED;
    }

    private static Finding all(List<Finding> expired) {
        Finding first = expired.get(0);
        List<String> words = expired.stream().map(Finding::message).distinct().toList();
        return words.size() == 1
                ? first
                : Finding.of(
                        first.code(),
                        first.severity(),
                        first.subject(),
                        first.source(),
                        "Out of date: " + String.join(" ", words).replace(". ", "; "));
    }

    private List<Finding> stops(Trip trip, LineItem line) {
        return findings(trip, line).stream()
                .filter(finding -> finding.severity() == Severity.STOP)
                .toList();
    }

    /** All that must be said of a trip's gear on a line, about its first load. */
    List<Finding> findings(Trip trip, LineItem line) {
        List<Finding> all = new ArrayList<>();
        LocalDate day = model.job.date();
        for (int i = 0; i < trip.loads().size(); i++) {
            Load load = trip.loads().get(i);
            Optional<SlingSet> set = rigging.findSet(load.kind());
            if (set.isPresent()) {
                all.addAll(bridleFindings(load, trip.kinds().get(i), set.get()));
                all.addAll(chain(load, set.get()).findings(load.id().value(), day));
            }
        }
        all.addAll(shortFindings(trip));
        above(trip, line)
                .ifPresent(
                        chain -> all.addAll(chain.findings(trip.loads().get(0).id().value(), day)));
        return all;
    }

    /** What one lift needs more of than there is. */
    private List<Finding> shortFindings(Trip trip) {
        List<Finding> all = new ArrayList<>();
        pieces(trip.loads())
                .forEach(
                        (name, pieces) -> {
                            int count = rigging.getGear(name).count();
                            if (pieces > count) {
                                all.add(
                                        kitShort(
                                                Severity.STOP,
                                                trip.loads().get(0).id().value(),
                                                new Wanting(name, count, pieces)));
                            }
                        });
        return all;
    }

    private record Wanting(String name, int count, int need) {}

    private static Finding kitShort(Severity severity, String subject, Wanting wanting) {
        return new Finding(
                FindingCode.KIT_SHORT,
                severity,
                subject,
                Integer.toString(wanting.count()),
                Integer.toString(wanting.need()),
                "",
                "rigging",
                wanting.name()
                        + ": "
                        + wanting.count()
                        + " in stock; "
                        + wanting.need()
                        + (severity == Severity.STOP
                                ? " are needed for one lift."
                                : " are needed when none comes back in between."));
    }

    /** Sling gear of one lift, by name. */
    private Map<String, Integer> pieces(List<Load> loads) {
        Map<String, Integer> pieces = new TreeMap<>();
        for (Load load : loads) {
            rigging.findSet(load.kind())
                    .ifPresent(
                            set -> {
                                pieces.merge(set.leg(), set.legs(), Integer::sum);
                                set.upward().forEach(name -> pieces.merge(name, 1, Integer::sum));
                            });
        }
        return pieces;
    }

    /** The item used furthest, as a limit of the lift; empty when the job lists no gear. */
    Optional<Limit> findLimit(Trip trip, LineItem line) {
        List<RiggingChain> chains = new ArrayList<>();
        for (Load load : trip.loads()) {
            rigging.findSet(load.kind()).ifPresent(set -> chains.add(chain(load, set)));
        }
        above(trip, line).ifPresent(chains::add);
        return chains.stream()
                .map(RiggingChain::governing)
                .max(java.util.Comparator.comparingDouble(RiggingChain.Use::usedRatio))
                .map(Gear::limit);
    }

    private static Limit limit(RiggingChain.Use use) {
        double limitKg = Math.floor(use.item().limitKg());
        double carriedKg = Math.ceil(use.carriedKg() - 1e-9);
        return new Limit(
                "RIGGING_LIMIT",
                carriedKg,
                limitKg,
                "kg",
                Math.floor((limitKg - carriedKg) / limitKg * 1000 + 1e-6) / 10,
                "rigging: " + use.item().name(),
                false);
    }

    /** From one load's legs up to the remote hook. */
    private RiggingChain chain(Load load, SlingSet set) {
        List<RiggingChain.Item> upward = new ArrayList<>();
        Rigging.Gear leg = rigging.getGear(set.leg());
        upward.add(
                item(
                        leg.name() + " (" + set.name() + ")",
                        legsLimitKg(load, set, leg),
                        set.legs() * leg.massKg(),
                        leg));
        set.upward().forEach(name -> upward.add(straight(name)));
        return RiggingChain.of(model.liftMassKg(load), upward);
    }

    /** From the remote hook up to the belly hook under all loads of a trip; empty when none is listed. */
    private Optional<RiggingChain> above(Trip trip, LineItem line) {
        List<RiggingChain.Item> upward = new ArrayList<>();
        line.make().gear().forEach(name -> upward.add(straight(name)));
        double listedKg = upward.stream().mapToDouble(RiggingChain.Item::massKg).sum();
        rigging.belly().forEach(name -> upward.add(straight(name)));
        // What the line weighs beyond its listed parts, as ballast, counts from the bottom.
        double besidesKg = Math.max(0, line.massKg() - listedKg);
        return upward.isEmpty()
                ? Optional.empty()
                : Optional.of(RiggingChain.of(trip.liftMassKg() + besidesKg, upward));
    }

    private RiggingChain.Item straight(String name) {
        Rigging.Gear gear = rigging.getGear(name);
        return item(gear.name(), straightLimitKg(gear), gear.massKg(), gear);
    }

    private static RiggingChain.Item item(
            String name, double limitKg, double massKg, Rigging.Gear gear) {
        return new RiggingChain.Item(
                name,
                limitKg,
                massKg,
                gear.material() != Rigging.Material.STEEL,
                gear.dates()
                        .map(
                                dates ->
                                        new RiggingChain.Tag(
                                                dates.firstUsedOn(),
                                                dates.dueOn(),
                                                dates.retireOn())));
    }

    /** The lower of the maker's limit and what the profile leaves of the breaking strength, kg. */
    private double straightLimitKg(Rigging.Gear gear) {
        double byStrengthKg =
                gear.breakingN().isPresent()
                        ? Sling.limitKg(gear.breakingN().getAsDouble(), rigging.breakingFactor())
                        : Double.POSITIVE_INFINITY;
        return Math.min(gear.limitKg().orElse(Double.POSITIVE_INFINITY), byStrengthKg);
    }

    /** Most mass under all legs of a set, kg. */
    private double legsLimitKg(Load load, SlingSet set, Rigging.Gear leg) {
        double oneKg = straightLimitKg(leg);
        return switch (set.hitch()) {
            case VERTICAL -> Sling.legsLimitKg(oneKg, set.legs(), set.angleRad(), set.rigid());
            case CHOKER ->
                    Sling.legsLimitKg(
                            oneKg
                                    * Hitch.CHOKER.limitFactor(
                                            material(leg), set.angleRad(), BEND_RATIO),
                            set.legs(),
                            set.angleRad(),
                            set.rigid());
            case BASKET ->
                    oneKg
                            * set.legs()
                            * Hitch.BASKET.limitFactor(material(leg), set.angleRad(), BEND_RATIO);
            case BRIDLE ->
                    hung(load, set)
                            .map(
                                    hung ->
                                            oneKg
                                                    * model.liftMassKg(load)
                                                    * Units.STANDARD_GRAVITY_M_PER_S2
                                                    / Math.max(hung.tension1N(), hung.tension2N()))
                            .orElse(oneKg);
        };
    }

    private static Hitch.Material material(Rigging.Gear gear) {
        return switch (gear.material()) {
            case WIRE_ROPE, STEEL -> Hitch.Material.WIRE_ROPE;
            case CHAIN -> Hitch.Material.CHAIN;
            case WEB -> Hitch.Material.WEB;
            case FIBRE_ROPE -> Hitch.Material.FIBRE_ROPE;
        };
    }

    /** How a load hangs on a bridle, the points lying along its top. */
    private Optional<HungBridle> hung(Load load, SlingSet set) {
        Rigging.Legs2 legs = set.bridle().orElseThrow();
        double centreM =
                Poles.centreFraction(model.rules.handling().guying(), load) * load.lengthM();
        return HungBridle.find(
                model.liftMassKg(load),
                new HungBridle.Attachments(
                        centreM - legs.at1Fraction() * load.lengthM(),
                        legs.at2Fraction() * load.lengthM() - centreM,
                        load.heightM() / 2),
                legs.length1M(),
                legs.length2M());
    }

    private List<Finding> bridleFindings(Load load, LoadKind kind, SlingSet set) {
        if (set.bridle().isEmpty()) {
            return List.of();
        }
        Optional<HungBridle> hung = hung(load, set);
        if (hung.isEmpty()) {
            return List.of(
                    Finding.of(
                            FindingCode.BRIDLE_TILT,
                            Severity.STOP,
                            load.id().value(),
                            "rigging",
                            "On the legs of "
                                    + set.name()
                                    + " it turns over or slides: its centre of gravity does not hang"
                                    + " between them."));
        }
        if (hung.get().isTooFlat()) {
            return List.of(tooFlat(load, set, hung.get()));
        }
        double tiltDeg = Math.toDegrees(Math.abs(hung.get().tiltRad()));
        String low = hung.get().tiltRad() > 0 ? "butt" : "top";
        return List.of(
                new Finding(
                        FindingCode.BRIDLE_TILT,
                        Severity.NOTE,
                        load.id().value(),
                        Figures.text(tiltDeg, 0),
                        "",
                        "deg",
                        "DERIVED",
                        "This "
                                + kind.name()
                                + " hangs "
                                + Figures.text(tiltDeg, 0)
                                + "° off level on "
                                + set.name()
                                + ", its "
                                + low
                                + " end low; the legs pull "
                                + Figures.text(Math.ceil(hung.get().tension1N()), 0)
                                + " and "
                                + Figures.text(Math.ceil(hung.get().tension2N()), 0)
                                + " N."));
    }

    private static Finding tooFlat(Load load, SlingSet set, HungBridle hung) {
        // Never shown as steep as the limit itself.
        double standsDeg = Math.floor(Math.toDegrees(hung.flatterRad()) * 10) / 10;
        double leastDeg = Math.toDegrees(HungBridle.LEAST_LEG_ANGLE_RAD);
        return new Finding(
                FindingCode.BRIDLE_TILT,
                Severity.STOP,
                load.id().value(),
                Figures.text(standsDeg, 1),
                Figures.text(leastDeg, 0),
                "deg",
                "PRACTICE",
                "On "
                        + set.name()
                        + " a leg stands "
                        + Figures.text(standsDeg, 1)
                        + "° above the level: its pull grows fast where it is a little flatter. Take"
                        + " longer legs, or points nearer together.");
    }

    /** Gear that these lifts need, and those that are done, by name. */
    List<KitItem> kit(Flights flights, List<Step> before) {
        Map<String, Counted> counted = new TreeMap<>();
        for (Step step : before) {
            step.rotation()
                    .ifPresent(
                            turn ->
                                    count(
                                            counted,
                                            turn.loads().stream().map(model.job::getLoad).toList(),
                                            lines(step)));
        }
        for (DayState.Flown one : flights.flown()) {
            count(
                    counted,
                    flights.trip(one).loads(),
                    List.of(model.machine.lines().get(one.line())));
        }
        List<KitItem> kit = new ArrayList<>();
        counted.forEach((name, count) -> kit.add(count.toItem(rigging.getGear(name))));
        return kit;
    }

    /** Lines as long as the one of a step: a plan tells no more of it. */
    private List<LineItem> lines(Step step) {
        return model.machine.lines().stream()
                .filter(line -> Math.abs(line.lengthM() - step.lineLengthM()) < SAME_LENGTH_M)
                .toList();
    }

    private void count(Map<String, Counted> counted, List<Load> loads, List<LineItem> lines) {
        pieces(loads).forEach((name, pieces) -> count(counted, name).add(pieces));
        for (Load load : loads) {
            rigging.findSet(load.kind())
                    .ifPresent(
                            set -> {
                                count(counted, set.leg()).uses.add(set.name());
                                set.upward()
                                        .forEach(name -> count(counted, name).uses.add(set.name()));
                            });
        }
        for (LineItem line : lines) {
            line.make().gear().forEach(name -> count(counted, name).stays("line " + line.name()));
        }
        rigging.belly().forEach(name -> count(counted, name).stays("belly hook"));
    }

    private static Counted count(Map<String, Counted> counted, String name) {
        return counted.computeIfAbsent(name, unused -> new Counted());
    }

    /** Counts of one item while the lifts are gone through. Mutable. */
    private static final class Counted {
        final TreeSet<String> uses = new TreeSet<>();
        int atOnce;
        int forDay;

        void add(int pieces) {
            atOnce = Math.max(atOnce, pieces);
            forDay += pieces;
        }

        /** One that hangs under the machine all day. */
        void stays(String where) {
            uses.add(where);
            atOnce = Math.max(atOnce, 1);
            forDay = Math.max(forDay, 1);
        }

        KitItem toItem(Rigging.Gear gear) {
            return new KitItem(
                    gear.name(),
                    gear.count(),
                    atOnce,
                    forDay,
                    gear.dates()
                            .map(
                                    dates ->
                                            dates.retireOn().isBefore(dates.dueOn())
                                                    ? dates.retireOn()
                                                    : dates.dueOn()),
                    List.copyOf(uses));
        }
    }

    /** What must be said of the kit, of tags that nobody read and of loads that hang askew. */
    List<Finding> kitFindings(Flights flights, List<Step> before) {
        List<Finding> all = new ArrayList<>();
        for (DayState.Flown one : flights.flown()) {
            Trip trip = flights.trip(one);
            for (int i = 0; i < trip.loads().size(); i++) {
                Load load = trip.loads().get(i);
                LoadKind kind = trip.kinds().get(i);
                rigging.findSet(load.kind())
                        .ifPresent(set -> all.addAll(bridleFindings(load, kind, set)));
            }
        }
        for (KitItem item : kit(flights, before)) {
            if (item.count() < item.forDay()) {
                all.add(
                        kitShort(
                                Severity.CAUTION,
                                item.name(),
                                new Wanting(item.name(), item.count(), item.forDay())));
            }
            if (item.isDueSoon(model.job.date())) {
                LocalDate due = item.dueOn().orElseThrow();
                all.add(
                        new Finding(
                                FindingCode.RIGGING_DUE,
                                Severity.NOTE,
                                item.name(),
                                Long.toString(ChronoUnit.DAYS.between(model.job.date(), due)),
                                Integer.toString(KitItem.SOON_DAYS),
                                "days",
                                "rigging",
                                item.name()
                                        + " may be used until "
                                        + due
                                        + ": then it is due for inspection or past its life. See to"
                                        + " it in time."));
            }
            if (item.dueOn().isEmpty()) {
                all.add(
                        Finding.of(
                                FindingCode.RIGGING_UNDATED,
                                Severity.CAUTION,
                                item.name(),
                                "rigging",
                                item.name() + " has no known inspection date. Read its tag."));
            }
        }
        return all;
    }
}
