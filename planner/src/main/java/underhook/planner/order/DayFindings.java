package underhook.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Hours;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.PlaceKind;
import underhook.core.job.Rules;
import underhook.core.job.Weather;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.StepKind;
import underhook.core.site.Fit;
import underhook.core.site.Margin;
import underhook.core.site.Rig;
import underhook.core.unit.Units;
import underhook.planner.route.FlownLeg;
import underhook.planner.route.WayIn;

/** What a person must know of the day besides the loads: what it avoids is said too, as a note. */
final class DayFindings {
    /**
     * Wires and masts as near as this to a place are looked at on the day.
     *
     * @source PRACTICE about twice the longest line with rotor and a way in turned away
     */
    private static final double LOOKED_AT_WITHIN_M = 200;

    private final DayModel model;
    private final People people;
    private final TripMaker maker;
    private final DayState day;
    private final Confirmations confirmations;
    private final List<Finding> all = new ArrayList<>();

    /** Load and line of which it was said that the line is short or only just does. */
    private final Set<String> linesSaid = new TreeSet<>();

    DayFindings(DayModel model, People people, TripMaker maker, DayState day) {
        this.model = model;
        this.people = people;
        this.maker = maker;
        this.day = day;
        this.confirmations = Confirmations.of(model.job);
    }

    List<Finding> list() {
        weather();
        wires();
        hoverExit();
        places();
        lines();
        rooms();
        detours();
        flown();
        unconfirmed();
        Flights flights = Flights.of(model, maker.trips(), day);
        all.addAll(new Glares(flights).list());
        all.addAll(new Relief(flights).list());
        all.addAll(new Descents(flights).list());
        return List.copyOf(all);
    }

    /** What is said of the places, also where no day is flown: perhaps one of them is why. */
    List<Finding> listOfPlaces() {
        places();
        return List.copyOf(all);
    }

    private void note(FindingCode code, String subject, String source, String message) {
        all.add(Finding.of(code, Severity.NOTE, subject, source, message));
    }

    private void weather() {
        Weather weather = model.job.weather();
        if (weather.between() == Weather.Between.HOLD) {
            note(
                    FindingCode.WEATHER_HELD,
                    model.job.name(),
                    "weather",
                    "Each weather row is held until the next. On a rising wind this is optimistic.");
        }
        note(
                FindingCode.WEATHER_LAPSE_ASSUMED,
                model.job.name(),
                "weather",
                "Temperatures are taken "
                        + Figures.text(weather.lapseKPerM() * 100, 2)
                        + " °C colder for each 100 m. In a morning inversion it is warmer on the"
                        + " ridge, so there is less lift.");
    }

    private void wires() {
        for (Wire wire : model.job.wires()) {
            if (!wire.registered()) {
                all.add(
                        Finding.of(
                                FindingCode.WIRE_UNREGISTERED,
                                Severity.CAUTION,
                                wire.id(),
                                wire.source(),
                                "This wire stands in no official obstacle file. Look for it, and for"
                                        + " others like it."));
            }
        }
    }

    private void hoverExit() {
        Rules.Landing landing = model.rules.landing();
        if (landing.hoverExit()) {
            note(
                    FindingCode.HOVER_EXIT_UNPLANNED,
                    model.job.name(),
                    "rules",
                    "The rules let people leave in the hover; no plan makes use of it: they are"
                            + " landed on ground of at most "
                            + Figures.text(Math.toDegrees(landing.landingSlopeRad()), 0)
                            + "°, or walk.");
        }
    }

    private void inTrees(Place place) {
        String within = Figures.text(people.treesOffM(), 1) + " m";
        note(
                FindingCode.LANDING_IN_TREES,
                place.id().value(),
                place.canopyM().isPresent() ? "places" : "canopy",
                "Refused for landing people: "
                        + (place.canopyM().isPresent()
                                ? "trees are stated around it, and no clearing of " + within
                                : "the canopy raster has trees within " + within)
                        + ", which rotor or tail with rotor-clearance-m take. Who saw none states"
                        + " the place's canopy_m and clearing_radius_m.");
    }

    private void unseen(Place place) {
        String within = Figures.text(people.treesOffM(), 1) + " m";
        all.add(
                Finding.of(
                        FindingCode.LANDING_UNSEEN,
                        Severity.CAUTION,
                        place.id().value(),
                        "canopy",
                        "People may be landed here, but "
                                + (model.ground.canopy().isPresent()
                                        ? "the canopy raster does not reach over all"
                                        : "nothing says what stands")
                                + " within "
                                + within
                                + ", which rotor or tail with rotor-clearance-m take. Look, and state"
                                + " canopy_m and clearing_radius_m."));
    }

    private void places() {
        Job job = model.job;
        for (int i = 0; i < model.places.size(); i++) {
            Place place = model.places.get(i);
            String id = place.id().value();
            if (!place.agreed()) {
                note(FindingCode.PLACE_UNUSED, id, "places", "Not used: its owner has not agreed.");
            }
            if (!model.isKnown(i)) {
                continue;
            }
            boolean asked = place.landingAsked() || place.kind() == PlaceKind.LANDING;
            if (asked && people.canLand(i) && !people.isSeenRound(i)) {
                unseen(place);
            }
            if (asked && people.isInTrees(i)) {
                inTrees(place);
            } else if (asked && place.isSite() && !people.isSteep(i)) {
                note(
                        FindingCode.LANDING_AT_SITE,
                        id,
                        "places",
                        "Nobody is landed at a site, level as this one is: loads come down here."
                                + " Perhaps a place of kind landing beside it, with a way on foot.");
            } else if (asked && people.isSteep(i)) {
                steep(i, true);
            } else if (people.wouldBoardAt(i) && people.isSteep(i)) {
                steep(i, false);
            }
            for (MapFeature feature : job.features()) {
                if (feature.kind() != MapFeature.Kind.TRAIL || !place.isSite()) {
                    continue;
                }
                double distanceM = distanceM(model, feature.outline(), model.points.get(i));
                if (distanceM <= model.rules.distances().trailNearM()) {
                    all.add(
                            new Finding(
                                    FindingCode.PLACE_NEAR_TRAIL,
                                    Severity.CAUTION,
                                    id,
                                    Figures.text(Math.floor(distanceM), 0),
                                    Figures.text(model.rules.distances().trailNearM(), 0),
                                    "m",
                                    feature.source(),
                                    "The trail "
                                            + feature.id()
                                            + " passes "
                                            + Figures.text(Math.floor(distanceM), 0)
                                            + " m away: a guard and a rope are needed."));
                }
            }
        }
    }

    private void steep(int i, boolean asked) {
        all.add(
                new Finding(
                        FindingCode.LANDING_TOO_STEEP,
                        Severity.NOTE,
                        model.places.get(i).id().value(),
                        Figures.text(Math.ceil(Math.toDegrees(people.slopeRad(i))), 0),
                        Figures.text(Math.toDegrees(model.rules.landing().landingSlopeRad()), 0),
                        "°",
                        "rules",
                        (asked ? "Refused for landing people: " : "No crew is flown from here: ")
                                + new Boarding(model, people).steepness(i)
                                + ". Perhaps another place, on level ground."));
    }

    /** From a point to a line drawn through others, or to the one point. */
    static double distanceM(DayModel model, List<GeoPoint> outline, PlanePoint point) {
        List<PlanePoint> line =
                outline.stream().map(at -> model.ground.frame().toPlane(at)).toList();
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i + 1 < line.size(); i++) {
            PlanePoint a = line.get(i);
            PlanePoint b = line.get(i + 1);
            double dx = b.eastM() - a.eastM();
            double dy = b.northM() - a.northM();
            double square = dx * dx + dy * dy;
            double t =
                    square <= 0
                            ? 0
                            : ((point.eastM() - a.eastM()) * dx
                                            + (point.northM() - a.northM()) * dy)
                                    / square;
            t = Math.max(0, Math.min(1, t));
            best =
                    Math.min(
                            best,
                            Math.hypot(
                                    a.eastM() + t * dx - point.eastM(),
                                    a.northM() + t * dy - point.northM()));
        }
        return line.size() == 1 ? line.get(0).distanceToM(point) : best;
    }

    /** Lines too short into the wind, and lines that only just do, where loads come from and go to. */
    private void lines() {
        for (Trip trip : maker.trips()) {
            for (int index : model.linesByLength()) {
                LineItem line = model.machine.lines().get(index);
                lineAt(trip, trip.from(), line, line.lengthM());
                lineAt(trip, trip.to(), line, model.lengthAtDropM(trip, index));
            }
        }
    }

    private static String lineKey(Trip trip, Place place, LineItem line) {
        return trip.ids().get(0) + " " + place.id() + " " + line.name();
    }

    private void lineAt(Trip trip, int at, LineItem line, double hasM) {
        Place place = model.places.get(at);
        if (!place.isSite()) {
            return;
        }
        double heading = model.air().wind(at, middleSlot()).fromGridRad();
        double needM = model.lineNeedM(at, heading);
        double leftM = hasM - needM;
        boolean near = leftM >= 0 && leftM < place.canopySpreadM();
        boolean shortButClose = leftM < 0 && leftM > -place.canopySpreadM();
        if (!(near || shortButClose) || !linesSaid.add(lineKey(trip, place, line))) {
            return;
        }
        double roundedM = near ? Math.floor(leftM * 10) / 10 : Math.ceil(-leftM * 10 - 1e-6) / 10;
        all.add(
                new Finding(
                        near ? FindingCode.LINE_NEAR : FindingCode.LINE_SHORT,
                        near ? Severity.CAUTION : Severity.NOTE,
                        trip.ids().get(0).value(),
                        Figures.text(Math.floor(hasM * 10) / 10, 1),
                        Figures.text(Math.ceil(needM * 10 - 1e-6) / 10, 1),
                        "m",
                        "places",
                        "With the line "
                                + line.name()
                                + " at "
                                + place.id()
                                + " into the wind "
                                + Figures.text(roundedM, 1)
                                + (near
                                        ? " m are to spare, less than the trees' uncertainty."
                                        : " m are missing: refused, a longer one is used.")));
    }

    /** Lines with which no heading at a place has room: the longest of them for each place. */
    private void rooms() {
        PlaceRooms rooms = model.placeRooms();
        List<Load> loads = maker.trips().stream().flatMap(trip -> trip.loads().stream()).toList();
        for (Place place : model.places) {
            Optional<PlaceRoom> found = rooms.find(place.id(), loads);
            List<PlaceRoom.LineRoom> refused =
                    found.map(PlaceRoom::lines).orElse(List.of()).stream()
                            .filter(line -> line.standsM() <= 0)
                            .filter(
                                    line ->
                                            line.sectors().stream()
                                                    .allMatch(
                                                            sector ->
                                                                    sector.fit()
                                                                            == PlaceRoom.Fit
                                                                                    .REFUSED))
                            .toList();
            if (!refused.isEmpty()) {
                PlaceRoom.LineRoom line = refused.get(refused.size() - 1);
                PlaceRoom.Tightest worst = line.tightest();
                all.add(
                        new Finding(
                                FindingCode.ROOM_REFUSED,
                                Severity.NOTE,
                                place.id().value(),
                                Double.isFinite(worst.marginM())
                                        ? Figures.text(Math.floor(worst.marginM() * 10) / 10, 1)
                                        : "",
                                Figures.text(worst.neededM(), 1),
                                "m",
                                "rules",
                                "With the line "
                                        + line.line()
                                        + " or a shorter one no heading has room: "
                                        + worst.part()
                                        + " to "
                                        + worst.cause()
                                        + " on the worst. A longer one is used."));
            }
        }
    }

    /** A hover that is flown with less to spare than is not known. */
    private void roomNear(Trip trip, DayState.Flown flown, Set<String> said) {
        double lineM = model.machine.lines().get(flown.line()).lengthM();
        DayLegs.LegAt leg = flown.loaded();
        Rig rig = trip.rig(lineM);
        roomNear(
                new Hover(
                        trip,
                        flown.line(),
                        trip.from(),
                        leg.wayOut().departureTrackGridRad(),
                        rig.withoutCredit()),
                said);
        roomNear(
                new Hover(
                        trip,
                        flown.line(),
                        trip.to(),
                        leg.wayIn().approachFromGridRad() + Math.PI,
                        rig),
                said);
    }

    /** What hangs over a place on a heading. */
    private record Hover(Trip trip, int line, int place, double headingGridRad, Rig rig) {}

    private void roomNear(Hover hover, Set<String> said) {
        LineItem line = model.machine.lines().get(hover.line());
        Place at = model.places.get(hover.place());
        Margin worst = model.room(hover.place()).at(hover.headingGridRad(), hover.rig()).tightest();
        String place = at.id().value();
        boolean isNews =
                worst.fit() == Fit.NEAR
                        && !linesSaid.contains(lineKey(hover.trip(), at, line))
                        && said.add(place + line.name() + worst.part() + worst.cause());
        if (!isNews) {
            return;
        }
        double headingTrueRad =
                Units.wrapTwoPiRad(
                        hover.headingGridRad()
                                + model.ground
                                        .frame()
                                        .convergenceRad(model.points.get(hover.place())));
        all.add(
                new Finding(
                        FindingCode.ROOM_NEAR,
                        Severity.CAUTION,
                        place,
                        Figures.text(Math.floor(worst.marginM() * 10) / 10, 1),
                        Figures.text(worst.neededM(), 1),
                        "m",
                        "rules",
                        "With the line "
                                + line.name()
                                + " on heading "
                                + Figures.text(Math.rint(Math.toDegrees(headingTrueRad)), 0)
                                + "° TRUE the "
                                + worst.part().word()
                                + " is near to "
                                + (worst.id().isEmpty() ? worst.cause().word() : worst.id())
                                + ": what is not known comes to "
                                + Figures.text(Math.ceil(worst.unknownM() * 10) / 10, 1)
                                + " m."));
    }

    private int middleSlot() {
        return model.air().slots.size() / 2;
    }

    /** The hours of a zone that does not hold all day; empty for whatever else closes a way. */
    private Optional<Hours> hoursOf(String id) {
        return model.zoneHours().timed().stream()
                .filter(zone -> zone.id().equals(id))
                .map(Zone::hours)
                .findFirst();
    }

    /** Straight ways that the plan does not take, and why. */
    private void detours() {
        Set<String> said = new TreeSet<>();
        for (Load load : model.job.loads()) {
            int from = model.place(load.from());
            int to = model.place(load.to());
            if (!model.isKnown(from) || !model.isKnown(to)) {
                continue;
            }
            String leg = load.from() + "-" + load.to();
            for (String blocker :
                    model.finder()
                            .closed()
                            .blockers(
                                    model.points.get(from),
                                    model.points.get(to),
                                    List.of(load.kind()))) {
                boolean wire = model.job.wires().stream().anyMatch(one -> one.id().equals(blocker));
                boolean zone = isZoneFor(blocker, load.kind());
                String subject = zone ? load.id().value() : leg;
                if (!wire && said.add(subject + blocker)) {
                    note(
                            FindingCode.DETOUR,
                            subject,
                            blocker,
                            "The straight way "
                                    + leg
                                    + " passes "
                                    + blocker
                                    + hoursOf(blocker)
                                            .map(
                                                    hours ->
                                                            " too near while that holds, "
                                                                    + hours.say()
                                                                    + "; refused then.")
                                            .orElse(" too near; refused, the way goes round it."));
                }
            }
        }
    }

    private boolean isZoneFor(String id, String kind) {
        return model.job.zones().stream()
                .anyMatch((Zone zone) -> zone.id().equals(id) && zone.kinds().contains(kind));
    }

    private void flown() {
        Crossings crossings = new Crossings(model);
        Set<String> approaches = new TreeSet<>();
        Set<String> near = new TreeSet<>();
        Set<String> turns = new TreeSet<>();
        long refuelEndS = -1;
        int refuelPlace = -1;
        for (DayState.Event event : day.events()) {
            if (event.kind() == StepKind.REFUEL) {
                refuelEndS = event.endS();
                refuelPlace = event.from();
            }
            DayState.Flown flown = event.flown();
            if (flown == null) {
                continue;
            }
            Trip trip = maker.trips().get(flown.trip());
            crossings.add(trip, flown.loaded().leg());
            tightTurns(trip, flown.loaded().leg(), turns);
            approaches(trip, flown.line(), approaches);
            roomNear(trip, flown, near);
            boolean busy =
                    refuelPlace == trip.from()
                            && refuelEndS >= 0
                            && flown.hookedS() - trip.hookUpS() - refuelEndS
                                    <= 2 * (long) model.rules.refuelling().refuelHandlerBusyS();
            if (busy && people.refuellerAloneHooks(trip.from())) {
                note(
                        FindingCode.REFUELLING_CONFLICT,
                        trip.ids().get(0).value(),
                        "crews",
                        "Whoever refuels at "
                                + model.places.get(trip.from()).id()
                                + " is the only one there trained to hook: the hook-up waits until "
                                + afterRefuelling());
                refuelEndS = -1;
            }
        }
        all.addAll(crossings.list());
    }

    private String afterRefuelling() {
        long minutes = (long) Math.ceil(model.rules.refuelling().refuelHandlerBusyS() / 60);
        return minutes == 0
                ? "the refuelling is over."
                : minutes + (minutes == 1 ? " minute" : " minutes") + " after refuelling.";
    }

    /** Corners of a loaded leg without room for the planned turn, the tightest of them. */
    private void tightTurns(Trip trip, FlownLeg leg, Set<String> said) {
        String name = model.places.get(trip.from()).id() + "-" + model.places.get(trip.to()).id();
        Optional<FlownLeg.Tight> worst =
                leg.tight().stream().max(Comparator.comparingDouble(FlownLeg.Tight::bankRad));
        if (worst.isEmpty() || !said.add(name)) {
            return;
        }
        double bankDeg = Math.ceil(Units.radToDeg(worst.get().bankRad()));
        double plannedDeg = Units.radToDeg(model.rules.margins().bankRad());
        all.add(
                new Finding(
                        FindingCode.TURN_TIGHT,
                        Severity.NOTE,
                        name,
                        Figures.text(bankDeg, 0),
                        Figures.text(plannedDeg, 0),
                        "°",
                        "rules",
                        "A turn is tighter than the planned bank allows: at "
                                + Figures.text(Units.mPerSToKt(worst.get().speedMPerS()), 0)
                                + " kt it takes "
                                + Figures.text(bankDeg, 0)
                                + "°. Planned as a stop and a turn on the spot."));
    }

    /** Ways in straight into the wind that some hour of the day would refuse, flown then or not. */
    private void approaches(Trip trip, int line, Set<String> said) {
        String place = model.places.get(trip.to()).id().value();
        for (int slot = 0; slot < model.air().slots.size(); slot++) {
            Optional<WayIn> way =
                    model.ways()
                            .wayIn(
                                    trip.to(),
                                    slot,
                                    trip.kindNames(),
                                    trip.rig(model.machine.lines().get(line).lengthM()));
            List<String> refused = way.map(WayIn::refusedInto).orElse(List.of());
            if (!refused.isEmpty() && said.add(place + refused)) {
                String list = String.join(", ", refused);
                note(
                        FindingCode.APPROACH_REFUSED,
                        place,
                        list,
                        "With the wind from "
                                + Figures.text(
                                        Math.toDegrees(
                                                model.air().slots.get(slot).windFromTrueRad()),
                                        0)
                                + "° TRUE the last part straight into it would pass "
                                + list
                                + ": refused, another way in is chosen.");
            }
        }
    }

    /** Wires and masts near the places of the loads that are flown, each said at its nearest. */
    private void unconfirmed() {
        Set<Integer> used = new TreeSet<>();
        for (DayState.Event event : day.events()) {
            DayState.Flown flown = event.flown();
            if (flown != null) {
                used.add(maker.trips().get(flown.trip()).from());
                used.add(maker.trips().get(flown.trip()).to());
            }
        }
        for (Wire wire : model.job.wires()) {
            unconfirmed(used, new Hazard(wire.id(), wire.source(), wire.supports()));
        }
        for (MapFeature feature : model.job.features()) {
            if (feature.kind() == MapFeature.Kind.MAST) {
                unconfirmed(used, new Hazard(feature.id(), feature.source(), feature.outline()));
            }
        }
    }

    private record Hazard(String id, String source, List<GeoPoint> outline) {}

    private void unconfirmed(Set<Integer> places, Hazard hazard) {
        int nearest = -1;
        double leastM = LOOKED_AT_WITHIN_M;
        for (int place : places) {
            double distanceM = distanceM(model, hazard.outline, model.points.get(place));
            if (distanceM <= leastM) {
                leastM = distanceM;
                nearest = place;
            }
        }
        if (nearest >= 0) {
            String near =
                    model.places.get(nearest).id()
                            + " is "
                            + Figures.text(Math.floor(leastM), 0)
                            + " m away";
            confirmations.findUnconfirmed(hazard.id, hazard.source, near).ifPresent(all::add);
        }
    }
}
