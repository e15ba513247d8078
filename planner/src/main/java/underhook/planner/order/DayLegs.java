package underhook.planner.order;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadKind;
import underhook.core.plan.Leg;
import underhook.core.site.Rig;
import underhook.planner.route.Cargo;
import underhook.planner.route.ClearLegs;
import underhook.planner.route.FlownLeg;
import underhook.planner.route.LegFinder;
import underhook.planner.route.Memo;
import underhook.planner.route.RankedWays;
import underhook.planner.route.WayIn;
import underhook.planner.route.WayMap;
import underhook.planner.search.EmptyWay;

/**
 * The legs of a day by trip, line and hour: found when first asked for, and what a plan tells of them. What
 * was once found is kept. Safe for threads: ways are found side by side, and which thread finds one makes no
 * difference.
 */
final class DayLegs {
    /** What hangs under a machine without a line when it moves people, for clearance, m. */
    private static final double CABIN_UNDER_M = 25;

    /** A leg against a wind that leaves less than this over the ground is not flown. */
    private static final double LEAST_GROUND_SPEED_M_PER_S = 1;

    /**
     * A leg at an hour.
     *
     * @param leg path and heights
     * @param durationS whole seconds, headwind counted, tailwind not
     * @param wayIn at the place it goes to
     * @param wayOut at the place it comes from
     * @param request what was asked for
     * @param wind as it counts
     * @param arrivalS of the duration, what coming to rest takes beyond flying on
     * @param closed what was closed when it was looked for
     */
    record LegAt(
            FlownLeg leg,
            long durationS,
            WayIn wayIn,
            WayIn wayOut,
            LegFinder.Request request,
            WayMap.Wind wind,
            long arrivalS,
            ZoneHours.Then closed) {
        /** The same with other words about its ends. */
        LegAt with(WayIn outWords, WayIn inWords) {
            return new LegAt(leg, durationS, inWords, outWords, request, wind, arrivalS, closed);
        }
    }

    /**
     * A leg to look for: between which places and hours, and what hangs there.
     *
     * @param slotComes the first hour in which it may come over the set-down
     * @param closed what is closed meanwhile
     */
    record Way(
            int from,
            int to,
            int slotFrom,
            int slotComes,
            int slotTo,
            double lineM,
            @Nullable Rig rig,
            double underM,
            List<String> kinds,
            double speedMPerS,
            List<Cargo> cargos,
            long arrivalS,
            ZoneHours.Then closed) {
        /** The same that may come in any hour up to another. */
        Way comingUntil(int slot) {
            return with(slot, closed);
        }

        /** The same with something else closed. */
        Way with(ZoneHours.Then other) {
            return with(slotTo, other);
        }

        private Way with(int slot, ZoneHours.Then other) {
            return new Way(
                    from,
                    to,
                    slotFrom,
                    slotComes,
                    slot,
                    lineM,
                    rig,
                    underM,
                    kinds,
                    speedMPerS,
                    cargos,
                    arrivalS,
                    other);
        }
    }

    private record Ends(WayIn out, WayIn in) {}

    private final DayModel day;
    private final Memo<ZoneHours.Then, ClearLegs> clearLegs;
    private final Cargos cargos;
    private final Refusals refusals;
    private final Ceiling ceiling;

    /** What a plan says of legs, by the leg itself: the next plan of the day mostly flies the same. */
    private final Memo<LegAt, Optional<ClearLegs.Seen>> looks;

    private final Memo<LegAt, Double> boundsS;
    private final Memo<LegAt, Leg.Exposure> exposures;
    private final Memo<LegAt, Leg> told;

    /** What was found by other jobs that are this one but for hours and masses. */
    private final LegMemory memory;

    /** For each hour the number of its air there. */
    private final int[] airs;

    private final Memo<Trip, Boolean> unlooked = Memo.byIdentity();
    private final Memo<Trip, Memo<Integer, Optional<LegAt>>> loadedLegs = Memo.byIdentity();

    /** By a number made of places, line and hour. */
    private final Memo<Integer, Optional<LegAt>> emptyLegs;

    /**
     * @param day of which air, finder and carriage are known
     * @param stop says true when no more ways may be looked for
     */
    DayLegs(DayModel day, BooleanSupplier stop) {
        this.day = day;
        this.ceiling = new Ceiling(stop);
        this.clearLegs = Memo.byIdentity();
        this.cargos = new Cargos(day);
        this.refusals = new Refusals();
        this.looks = Memo.byIdentity();
        this.boundsS = Memo.byIdentity();
        this.exposures = Memo.byIdentity();
        this.told = Memo.byIdentity();
        this.memory = new LegMemory();
        this.airs = airs();
        this.emptyLegs = Memo.of();
    }

    /** Of the same places with other hours or masses: legs in hours that are the same are kept. */
    DayLegs(DayModel day, DayLegs before) {
        boolean sameHours = day.air() == before.day.air();
        this.day = day;
        this.ceiling = before.ceiling;
        this.clearLegs = before.clearLegs;
        this.cargos = before.cargos;
        this.refusals = before.refusals;
        this.looks = before.looks;
        this.boundsS = before.boundsS;
        this.exposures = before.exposures;
        this.told = before.told;
        this.memory = before.memory;
        this.airs = airs();
        this.emptyLegs = sameHours ? before.emptyLegs : Memo.of();
        for (Trip trip : before.loadedLegs.questions()) {
            loadedLegs.get(
                    trip,
                    same -> sameHours ? before.loadedLegs.get(same, none -> Memo.of()) : Memo.of());
        }
    }

    /** Whether the air of no hour differs from that of another day that shares its memory. */
    boolean isInAirOf(DayLegs other) {
        return Arrays.equals(airs, other.airs);
    }

    /** A loaded leg; empty when there is no way, and when the ceiling came before one was found. */
    Optional<LegAt> loadedLeg(Trip trip, int line, int slotFrom, int slotTo) {
        int count = day.air().slots.size();
        Memo<Integer, Optional<LegAt>> known = loadedLegs.get(trip, unused -> Memo.of());
        int at = (line * count + slotFrom) * count + slotTo;
        Optional<LegAt> found = known.find(at);
        if (found == null && !isHung(trip, line)) {
            found = known.keep(at, Optional.empty());
        }
        if (found == null) {
            int cuts = ceiling.cuts();
            found = computeLeg(trip, line, loadedWay(trip, line, slotFrom, slotTo));
            if (ceiling.cuts() > cuts) {
                unlooked.keep(trip, true);
                return found;
            }
            found = known.keep(at, found);
        }
        return found;
    }

    /** Whether a trip is worth flying on a line, its gear holds, and the line may come back empty. */
    boolean isHung(Trip trip, int line) {
        return day.carriage().isWorthFlying(trip, line)
                && day.gear().holds(trip, line)
                && day.carriage().lackingBallastKg(line) <= 0;
    }

    private ClearLegs clearLegs(ZoneHours.Then closed) {
        return clearLegs.get(
                closed,
                then -> new ClearLegs(then.job, day.ground, then.finder, ceiling::isReached));
    }

    private Way loadedWay(Trip trip, int line, int slotFrom, int slotTo) {
        double lineM = day.machine.lines().get(line).lengthM();
        Carriage.Carried carried = day.carriage().of(trip, line);
        return new Way(
                trip.from(),
                trip.to(),
                slotFrom,
                day.air().slotComes(trip.setDownS(), slotFrom, slotTo),
                slotTo,
                lineM,
                trip.rig(lineM),
                trip.underM(),
                trip.kindNames(),
                carried.speedMPerS(),
                cargos.of(trip, line),
                carried.arrivalS(),
                day.air().closedFrom(slotFrom, slotTo));
    }

    /** A leg with the empty line; with the line off the machine flies as with people. */
    Optional<LegAt> emptyLeg(int from, int to, int line, int slot) {
        int at =
                ((from * day.places.size() + to) * (day.machine.lines().size() + 1) + line + 1)
                                * day.air().slots.size()
                        + slot;
        Optional<LegAt> found = emptyLegs.find(at);
        if (found == null) {
            int cuts = ceiling.cuts();
            found = computeEmptyLeg(from, to, line, slot);
            if (ceiling.cuts() > cuts) {
                return found;
            }
            found = emptyLegs.keep(at, found);
        }
        return found;
    }

    /**
     * On a way in that keeps the limits until the end of the last hour in which it may come, where there is one; else
     * on one that keeps them in its own hour: {@link #holdsUntil} says when that will not do.
     */
    private Optional<LegAt> computeEmptyLeg(int from, int to, int line, int slot) {
        Way own = emptyWay(from, to, line, slot);
        Optional<LegAt> found = computeOpenLeg(line, own);
        int last = found.map(leg -> lastSlot(slot, leg.durationS())).orElse(slot);
        if (found.isEmpty() || isKept(found.get(), to, slot, last)) {
            return found;
        }
        Optional<LegAt> holding = computeOpenLeg(line, own.comingUntil(last));
        return holding.isPresent() ? holding : found;
    }

    /** A leg that keeps off what closes before it is flown to its end, whenever in its hour it is begun. */
    private Optional<LegAt> computeOpenLeg(int line, Way way) {
        Optional<LegAt> found = computeLeg(null, line, way);
        Way open = way;
        long longestS = 0;
        while (found.isPresent()) {
            longestS = Math.max(longestS, found.get().durationS());
            ZoneHours.Then closed = closedUntil(way.slotFrom(), longestS);
            if (closed == open.closed()) {
                break;
            }
            open = way.with(closed);
            found = computeLeg(null, line, open);
        }
        return found;
    }

    /** What closes until a leg begun in an hour is flown, and people have boarded and left, or it has turned in. */
    private ZoneHours.Then closedUntil(int slot, long durationS) {
        DayAir.Slot hour = day.air().slots.get(slot);
        return day.air().closed(hour.fromS(), hour.untilS() + durationS + turnsS());
    }

    private long turnsS() {
        return (long)
                Math.ceil(
                        Math.max(
                                day.rules.times().returnExtraS(),
                                2 * day.rules.times().boardingS()));
    }

    /** The last hour in which a machine that leaves in one may still hover over the next load. */
    private int lastSlot(int slot, long durationS) {
        List<DayAir.Slot> slots = day.air().slots;
        double hookUpS = day.rules.kinds().stream().mapToDouble(LoadKind::hookUpS).max().orElse(0);
        double endS = slots.get(slot).untilS() + durationS + turnsS() + hookUpS;
        int last = slot;
        while (last + 1 < slots.size() && slots.get(last + 1).fromS() < endS) {
            last++;
        }
        return last;
    }

    private boolean isKept(LegAt leg, int place, int slot, int slotEnd) {
        return IntStream.rangeClosed(slot, slotEnd)
                .allMatch(
                        hour ->
                                day.finder()
                                        .approaches()
                                        .isKept(
                                                leg.wayIn().approachFromGridRad(),
                                                day.air().winds(place, hour)));
    }

    /** Whether the way in of an empty way that leaves in one hour keeps the limits until the end of another. */
    boolean holdsUntil(EmptyWay way, int slotEnd) {
        return emptyLeg(way.from(), way.to(), way.line(), way.slot())
                .map(leg -> isKept(leg, way.to(), way.slot(), slotEnd))
                .orElse(false);
    }

    private Way emptyWay(int from, int to, int line, int slot) {
        double lineM = line < 0 ? 0 : day.machine.lines().get(line).lengthM();
        double speedMPerS =
                line < 0
                        ? day.machine.cabinSpeedMPerS()
                        : day.carriage().ofEmpty(line).speedMPerS();
        return new Way(
                from,
                to,
                slot,
                slot,
                slot,
                lineM,
                lineM > 0 ? Rig.empty(lineM) : null,
                0,
                List.of(),
                speedMPerS,
                line < 0 ? List.of() : cargos.ofEmpty(line),
                line < 0 ? 0 : day.carriage().ofEmpty(line).arrivalS(),
                day.air().slots.get(slot).closed());
    }

    private Optional<LegAt> computeLeg(@Nullable Trip trip, int line, Way way) {
        if (!day.isKnown(way.from()) || !day.isKnown(way.to()) || isTooLow(way)) {
            return Optional.empty();
        }
        LegEnds.Asked asked = asked(way);
        LegMemory.Ends ends = new LegMemory.Ends(asked.out(Map.of()), asked.in(Map.of()));
        LegMemory.Asked key =
                new LegMemory.Asked(
                        way.from(),
                        way.to(),
                        line,
                        airs[way.slotFrom()],
                        airs[way.slotTo()],
                        way.closed());
        LegMemory.Known known = memory.find(trip, key, ends);
        if (known != null) {
            return known.leg();
        }
        int cuts = ceiling.cuts();
        Optional<LegAt> found = new LegEnds(asked).find();
        if (ceiling.cuts() == cuts) {
            memory.keep(trip, key, ends, found);
        }
        return found;
    }

    /** A leg as its ends are chosen for it. */
    private LegEnds.Asked asked(Way way) {
        Rig rig = way.rig();
        Rig rigAtStart = rig == null ? null : rig.withoutCredit();
        return new LegEnds.Asked() {
            @Override
            public Optional<RankedWays> out(Map<Long, List<String>> shut) {
                return day.ways()
                        .rankWays(
                                new WaysIn.Hung(
                                        way.from(),
                                        way.slotFrom(),
                                        way.slotFrom(),
                                        way.kinds(),
                                        rigAtStart,
                                        !way.kinds().isEmpty(),
                                        way.closed()),
                                shut);
            }

            @Override
            public Optional<RankedWays> in(Map<Long, List<String>> shut) {
                return day.ways()
                        .rankWays(
                                new WaysIn.Hung(
                                        way.to(),
                                        way.slotComes(),
                                        way.slotTo(),
                                        way.kinds(),
                                        rig,
                                        false,
                                        way.closed()),
                                shut);
            }

            @Override
            public ClearLegs.Found leg(WayIn out, WayIn in) {
                LegFinder.Request request = request(way, out, in);
                return way.lineM() <= 0
                        ? unslung(way, request)
                        : clearLegs(way.closed()).find(request, carried(way));
            }

            @Override
            public Optional<LegAt> timed(FlownLeg leg, WayIn out, WayIn in) {
                return DayLegs.this.timed(way, leg, request(way, out, in), new Ends(out, in));
            }

            @Override
            public boolean isOver() {
                return ceiling.isReached();
            }

            @Override
            public boolean isSlung() {
                return way.lineM() > 0;
            }

            @Override
            public void refused(ClearLegs.Found found) {
                refusals.add(way.from(), way.to(), found);
            }

            @Override
            public double priceS(LegAt leg) {
                return way.kinds().isEmpty()
                        ? 0
                        : leg.closed().finder.prices().priceS(leg.leg(), way.kinds());
            }

            @Override
            public double priceAnyhowS(LegAt leg) {
                return leg.closed().finder.priceAnyhowS(leg.request());
            }

            @Override
            public double leastS(LegAt leg) {
                return leg.closed().finder.least().leastS(leg.request(), leg.wind())
                        + leg.arrivalS();
            }
        };
    }

    private boolean isTooLow(Way way) {
        Rig rig = way.rig();
        return rig != null
                && !way.kinds().isEmpty()
                && (isTooLow(way, way.from(), rig.withoutCredit()) || isTooLow(way, way.to(), rig));
    }

    private boolean isTooLow(Way way, int place, Rig rig) {
        return way.closed()
                .places
                .findTooLow(day.places.get(place), way.kinds(), rig.hookAglM())
                .isPresent();
    }

    /** With the line off nothing hangs there that could be let go. */
    private ClearLegs.Found unslung(Way way, LegFinder.Request request) {
        return new ClearLegs.Found(
                way.closed().finder.findLeg(request), List.of(), false, ClearLegs.Side.NEITHER);
    }

    private LegFinder.Request request(Way way, WayIn out, WayIn in) {
        boolean cabin = way.lineM() <= 0;
        double endHookM = cabin ? 0 : way.lineM() + way.underM();
        return new LegFinder.Request(
                new LegFinder.End(
                        day.points.get(way.from()),
                        out.departureTrackGridRad(),
                        day.elevationAmslM[way.from()] + endHookM),
                new LegFinder.End(
                        day.points.get(way.to()),
                        in.approachFromGridRad(),
                        day.elevationAmslM[way.to()] + endHookM),
                way.kinds(),
                cabin ? CABIN_UNDER_M : way.lineM() + way.underM(),
                way.speedMPerS(),
                !cabin);
    }

    private Optional<LegAt> timed(Way way, FlownLeg leg, LegFinder.Request request, Ends ends) {
        WayMap.Wind wind = day.air().wind(way);
        long durationS = durationS(leg, wind);
        if (durationS >= DayModel.NEVER_S) {
            refusals.addWind(way.from(), way.to());
            return Optional.empty();
        }
        return Optional.of(
                new LegAt(
                        leg,
                        durationS + way.arrivalS(),
                        ends.in(),
                        ends.out(),
                        request,
                        wind,
                        way.arrivalS(),
                        way.closed()));
    }

    private ClearLegs.Carried carried(Way way) {
        return new ClearLegs.Carried(
                way.cargos(),
                day.air().driftWind(way.from(), way.to(), way.slotFrom(), way.slotTo()));
    }

    /** Whole seconds; never where the wind holds the machine nearly still. */
    private static long durationS(FlownLeg leg, WayMap.Wind wind) {
        double sumS = leg.verticalS() + leg.turnLossS();
        for (int i = 0; i + 1 < leg.points().size(); i++) {
            PlanePoint a = leg.points().get(i);
            PlanePoint b = leg.points().get(i + 1);
            double pieceS = wind.durationS(b.eastM() - a.eastM(), b.northM() - a.northM());
            if (pieceS > a.distanceToM(b) / LEAST_GROUND_SPEED_M_PER_S) {
                return DayModel.NEVER_S;
            }
            sumS += pieceS;
        }
        return (long) Math.ceil(sumS);
    }

    /** A leg as a plan says it. */
    Leg told(LegAt at, Supplier<Leg> written) {
        return told.get(at, unused -> written.get());
    }

    /** What letting go means on a loaded leg; empty over unknown ground. */
    Optional<ClearLegs.Seen> look(Trip trip, DayState.Flown flown) {
        return looks.get(
                flown.loaded(),
                leg ->
                        clearLegs(leg.closed())
                                .look(
                                        leg.leg(),
                                        trip.kindNames(),
                                        new ClearLegs.Carried(
                                                cargos.of(trip, flown.line()),
                                                day.air()
                                                        .driftWind(
                                                                trip.from(),
                                                                trip.to(),
                                                                flown.slotFrom(),
                                                                flown.slotTo()))));
    }

    private long boundS(Way way) {
        WayIn anyhow = new WayIn(0, 0, 0, 0, 0, List.of(), List.of(), List.of());
        return day.isKnown(way.from()) && day.isKnown(way.to())
                ? (long)
                                Math.ceil(
                                        way.closed()
                                                .finder
                                                .least()
                                                .leastS(
                                                        request(way, anyhow, anyhow),
                                                        day.air().wind(way)))
                        + way.arrivalS()
                : 0;
    }

    /** What no legal leg between the same ends on the same ways in and out goes below at that hour, s. */
    double boundS(LegAt at) {
        return boundsS.get(
                at,
                leg ->
                        leg.closed().finder.least().leastAsDirectedS(leg.request(), leg.wind())
                                + leg.arrivalS());
    }

    /** What a loaded leg passes over at a price, and its bound with that; nothing where it is empty. */
    Leg.Exposure exposure(LegAt at) {
        List<String> kinds = at.request().kinds();
        return kinds.isEmpty()
                ? Leg.Exposure.NONE
                : exposures.get(
                        at,
                        leg ->
                                new Leg.Exposure(
                                        leg.closed().finder.prices().priceS(leg.leg(), kinds),
                                        leg.closed()
                                                        .finder
                                                        .least()
                                                        .leastCostAsDirectedS(
                                                                leg.request(), leg.wind())
                                                + leg.arrivalS(),
                                        leg.closed().finder.prices().overM(leg.leg(), kinds)));
    }

    /** What a loaded leg passes over at a price, and the price of each, s. */
    Map<String, Double> pricesS(LegAt at) {
        return at.closed().finder.prices().pricesS(at.leg(), at.request().kinds());
    }

    /** What no way of a trip goes below in an hour, with any line, s. */
    double loadedBoundS(Trip trip, int slot) {
        long leastS = DayModel.NEVER_S;
        for (int line = 0; line < day.machine.lines().size(); line++) {
            if (isHung(trip, line)) {
                leastS = Math.min(leastS, boundS(loadedWay(trip, line, slot, slot)));
            }
        }
        return leastS;
    }

    /**
     * What no empty way between two places goes below in an hour, s: with any line; or with none, which is fitted
     * and taken off at laydowns only.
     */
    double emptyBoundS(int from, int to, int slot) {
        boolean slung = day.places.get(from).isSite() || day.places.get(to).isSite();
        long leastS = slung ? DayModel.NEVER_S : boundS(emptyWay(from, to, -1, slot));
        for (int line = 0; line < day.machine.lines().size(); line++) {
            leastS = Math.min(leastS, boundS(emptyWay(from, to, line, slot)));
        }
        return leastS;
    }

    /** The trip that was known before where it is the same. */
    Trip known(Trip made) {
        for (Trip one : loadedLegs.questions()) {
            if (one.equals(made)) {
                return one;
            }
        }
        return made;
    }

    /** Why ways between two places were refused. */
    Refusals refusals() {
        return refusals;
    }

    /** Whether the ceiling came before all ways that were asked for were looked at. */
    boolean isCut() {
        return ceiling.cuts() > 0;
    }

    /** Whether it came before all ways of a trip were. */
    boolean isCut(Trip trip) {
        return unlooked.find(trip) != null;
    }

    /** How often a way was given up because the time was over. */
    int cuts() {
        return ceiling.cuts();
    }

    private int[] airs() {
        return day.air().slots.stream().mapToInt(memory::air).toArray();
    }
}
