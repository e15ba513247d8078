package underhook.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import underhook.core.crew.Daylight;
import underhook.core.job.Crew;
import underhook.core.job.Load;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.job.Rules;
import underhook.planner.route.FuelGround;
import underhook.planner.search.DayRules;
import underhook.planner.search.DayTable;
import underhook.planner.search.EmptyWay;
import underhook.planner.search.FuelRules;
import underhook.planner.search.LegTimes;
import underhook.planner.search.Rates;
import underhook.planner.search.SetDownPrice;
import underhook.planner.search.SpotRow;
import underhook.planner.search.TeamRow;
import underhook.planner.search.TripRow;

/** Turns a job's day into the table that its order is searched on. */
final class DayTables {
    /** People who can walk all the way are flown only where they walk less than this from where they land, s. */
    private static final long LANDING_WALK_S = 40 * 60;

    private final DayModel model;
    private final TripMaker maker;
    private final People people;
    private final Boarding boarding;
    private final boolean[] isFuelled;

    DayTables(DayModel model, TripMaker maker, People people) {
        this.model = model;
        this.maker = maker;
        this.people = people;
        this.boarding = new Boarding(model, people);
        this.isFuelled = new boolean[model.places.size()];
        for (int i = 0; i < isFuelled.length; i++) {
            isFuelled[i] = isFuelled(i);
        }
    }

    /** The day's own trips. */
    List<Trip> trips() {
        return maker.trips();
    }

    DayTable table() {
        return table(trips());
    }

    /** From when the machine may fly, s. */
    long startS() {
        return rules().startS();
    }

    /** Of these trips; they need not all be flown. */
    DayTable table(List<Trip> trips) {
        List<SpotRow> spots = new ArrayList<>();
        for (int i = 0; i < model.places.size(); i++) {
            spots.add(spot(i));
        }
        List<TripRow> rows = new ArrayList<>();
        for (int k = 0; k < trips.size(); k++) {
            rows.add(row(trips, k));
        }
        List<TeamRow> teams = people.teams.stream().map(this::team).toList();
        List<Long> untilS = model.air().slots.stream().map(DayAir.Slot::untilS).toList();
        return new DayTable(
                spots,
                rows,
                new DayTable.Parts(
                        new DayTable.Constants(rules(), fuel(), rates()),
                        new DayTable.People(teams, walks()),
                        new DayTable.Hours(
                                model.air().slots.get(0).fromS(), untilS, model.linesByLength()),
                        new Legs(model, maker, trips)));
    }

    private SpotRow spot(int i) {
        Place at = model.places.get(i);
        boolean site = at.isSite();
        return new SpotRow(
                site,
                !site && at.agreed() && at.standing() && model.isKnown(i),
                isFuelled[i],
                people.stayingFromS(i, Crew.Role.REFUEL),
                people.refuellerAloneHooks(i),
                people.stayingFromS(i, Crew.Role.HOOK),
                people.stayingFromS(i, Crew.Role.RECEIVE),
                nearest(i, PlaceKind.LAYDOWN, false),
                nearestFuel(i));
    }

    /**
     * The nearest laydown with fuel; where no laydown has any, the nearest landing that has. Where nobody may fill
     * anywhere, the day is flown on the morning's fuel and ends where the machine may stand.
     */
    private int nearestFuel(int place) {
        int laydown = nearest(place, PlaceKind.LAYDOWN, true);
        int fuelled = laydown >= 0 ? laydown : nearest(place, PlaceKind.LANDING, true);
        return fuelled >= 0 ? fuelled : nearest(place, PlaceKind.LAYDOWN, false);
    }

    private boolean isFuelled(int i) {
        Place at = model.places.get(i);
        return at.fuel()
                && !at.isSite()
                && at.agreed()
                && at.standing()
                && model.isKnown(i)
                && people.stayingFromS(i, Crew.Role.REFUEL) < DayModel.NEVER_S
                && !FuelGround.isForbidden(model.job, model.ground, model.points.get(i));
    }

    /** The nearest place of a kind where the machine may stand; with fuel where that is asked. */
    private int nearest(int place, PlaceKind kind, boolean fuel) {
        int best = DayTable.NONE;
        for (int i = 0; i < model.places.size(); i++) {
            Place at = model.places.get(i);
            boolean fits =
                    at.kind() == kind
                            && at.agreed()
                            && at.standing()
                            && model.isKnown(i)
                            && (!fuel || isFuelled[i]);
            if (fits && (best < 0 || distanceM(place, i) < distanceM(place, best))) {
                best = i;
            }
        }
        return best;
    }

    private double distanceM(int one, int other) {
        return model.points.get(one).distanceToM(model.points.get(other));
    }

    private TripRow row(List<Trip> trips, int k) {
        Trip trip = trips.get(k);
        long nextS = (long) Math.ceil(model.rules.times().secondReleaseS());
        int releases = trip.loads().size();
        double firstS = trip.setDownS() - (releases - 1) * model.rules.times().secondReleaseS();
        List<TripRow.After> after = new ArrayList<>();
        boolean missing = false;
        for (Load load : trip.loads()) {
            for (Load.After one : load.after()) {
                int before = tripOf(trips, one);
                missing |= before < 0;
                if (before >= 0 && !trip.carries(one.load())) {
                    after.add(new TripRow.After(before, (long) Math.ceil(one.waitS())));
                }
            }
        }
        return new TripRow(
                trip.from(),
                trip.to(),
                trip.hookUpS(),
                (long) Math.ceil(firstS),
                nextS,
                releases,
                trip.standsUp(),
                trip.lastAtPlace(),
                trip.busyAfterS(),
                trip.readyAfterS(),
                after,
                missing,
                model.machine.lines().stream()
                        .map(
                                line ->
                                        trip.liftMassKg() <= line.limitKg()
                                                && trip.liftMassKg() + line.massKg()
                                                        <= model.machine.hookLimitKg())
                        .toList());
    }

    /** The trip that carries a load; where several could, the one with fewest, which is let go soonest. */
    private static int tripOf(List<Trip> trips, Load.After after) {
        int best = DayTable.NONE;
        for (int i = 0; i < trips.size(); i++) {
            boolean fewer =
                    best < 0 || trips.get(i).loads().size() < trips.get(best).loads().size();
            if (fewer && trips.get(i).carries(after.load())) {
                best = i;
            }
        }
        return best;
    }

    private TeamRow team(Crew crew) {
        List<PlaceId> listed = crew.stays() ? List.of(crew.start()) : crew.serves();
        List<Integer> serves = new ArrayList<>(listed.stream().map(model::place).toList());
        List<Integer> landing = new ArrayList<>();
        for (int i = 0; i < model.places.size(); i++) {
            if (listed.isEmpty()) {
                serves.add(i);
            }
            // Who stays is never flown.
            landing.add(crew.stays() ? DayTable.NONE : landingNear(i, crew));
        }
        return new TeamRow(
                model.place(crew.start()),
                model.seconds(crew.availableFrom()),
                crew.roles().contains(Crew.Role.GUY),
                crew.roles().contains(Crew.Role.HOOK),
                crew.roles().contains(Crew.Role.RECEIVE),
                serves,
                landing,
                boarding.mostFuelKg(crew));
    }

    private int landingNear(int place, Crew crew) {
        if (boarding.findUnflown(crew).isPresent()) {
            return DayTable.NONE;
        }
        boolean walks = people.walkS(model.place(crew.start()), place) < DayTable.NO_WALK_S;
        long nearS = walks ? LANDING_WALK_S : DayTable.NO_WALK_S;
        List<Integer> near =
                IntStream.range(0, model.places.size())
                        .filter(i -> people.canLand(i) && people.walkS(i, place) < nearS)
                        .boxed()
                        .sorted(Comparator.comparingLong(i -> people.walkS(i, place)))
                        .toList();
        if (near.isEmpty()) {
            return DayTable.NONE;
        }
        // To the nearest there may be no way.
        return near.stream()
                .filter(i -> near.size() == 1 || boarding.isFlownTo(crew, i))
                .findFirst()
                .orElse(near.get(0));
    }

    private List<List<Long>> walks() {
        List<List<Long>> all = new ArrayList<>();
        for (int i = 0; i < model.places.size(); i++) {
            List<Long> row = new ArrayList<>();
            for (int j = 0; j < model.places.size(); j++) {
                row.add(people.walkS(i, j));
            }
            all.add(row);
        }
        return all;
    }

    private DayRules rules() {
        Rules rules = model.rules;
        long dutyFromS = model.seconds(rules.duty().from());
        Optional<Daylight> light = Daylight.find(model.job.origin(), rules.duty().from());
        long sunUpS = light.map(day -> model.seconds(day.from()) + 60).orElse(DayModel.NEVER_S);
        long sunDownS =
                light.map(day -> model.seconds(day.until()) - 60).orElse(0L)
                        - (long) Math.ceil(rules.duty().dayEndBeforeSunsetS());
        return new DayRules(
                model.place(model.job.machineStart()),
                Math.max(dutyFromS, Math.max(sunUpS, model.air().slots.get(0).fromS())),
                Math.min(dutyFromS + (long) rules.duty().longestS(), sunDownS),
                Math.max(1, (long) rules.duty().stretchS()),
                (long) rules.duty().engineOnDayS(),
                (long) Math.ceil(rules.duty().breakS()),
                (long) Math.ceil(rules.times().boardingS()),
                (long) Math.ceil(rules.times().lineChangeS()),
                (long) Math.ceil(rules.times().returnExtraS()),
                (long) Math.ceil(rules.refuelling().refuelHandlerBusyS()));
    }

    private FuelRules fuel() {
        var machine = model.machine;
        return new FuelRules(
                fillKg(),
                machine.burnKgPerS(),
                machine.hoverBurnKgPerS(),
                machine.startFuelKg(),
                machine.fuelGaugeSpreadKg(),
                machine.reserveS(),
                model.rules.refuelling().contingencyS(),
                model.rules.refuelling().refuelS(),
                model.rules.refuelling().refuelKgPerS());
    }

    /** What may be filled up to, so that the machine may fly home with nothing on the hook. */
    private double fillKg() {
        BalancedFuel fuel = model.balancedFuel();
        return Math.max(1, fuel.readKg(fuel.emptyKg()));
    }

    private Rates rates() {
        var costs = model.rules.costs();
        return new Rates(
                Math.multiplyExact(costs.flyingCents(), costs.flyingCountsPercent()) / 100,
                costs.standingCents(),
                costs.peopleCents(),
                costs.comforts().walkMinuteCents());
    }

    /** Ways and limits as the model has them. */
    private record Legs(DayModel model, TripMaker maker, List<Trip> trips, Discomforts discomforts)
            implements LegTimes {
        Legs(DayModel model, TripMaker maker, List<Trip> trips) {
            this(model, maker, trips, new Discomforts(model));
        }

        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return seconds(model.legs().loadedLeg(trips.get(trip), line, slotFrom, slotTo));
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return seconds(model.legs().emptyLeg(from, to, line, slot));
        }

        @Override
        public boolean holdsUntil(EmptyWay way, int slotEnd) {
            return model.legs().holdsUntil(way, slotEnd);
        }

        @Override
        public SetDownPrice setDownPrice(int trip, int line, int slotFrom, int slotTo) {
            Trip one = trips.get(trip);
            return model.legs()
                    .loadedLeg(one, line, slotFrom, slotTo)
                    .map(leg -> discomforts.price(one.to(), slotTo, leg.wayIn()))
                    .orElse(SetDownPrice.NONE);
        }

        @Override
        public SetDownPrice guessedSetDownPrice(int trip, int line, int slotTo) {
            if (!model.rules.costs().comforts().countsWaysIn()) {
                return SetDownPrice.NONE;
            }
            Trip one = trips.get(trip);
            double lineM = model.machine.lines().get(line).lengthM();
            return model.ways()
                    .wayIn(one.to(), slotTo, one.kindNames(), one.rig(lineM))
                    .map(wayIn -> discomforts.price(one.to(), slotTo, wayIn))
                    .orElse(SetDownPrice.NONE);
        }

        private static int seconds(Optional<DayLegs.LegAt> leg) {
            return leg.map(at -> Math.toIntExact(at.durationS())).orElse(DayTable.NONE);
        }

        @Override
        public double leastLoadedS(int trip, int slot) {
            return model.legs().loadedBoundS(trips.get(trip), slot);
        }

        @Override
        public double leastEmptyS(int from, int to, int slot) {
            return model.legs().emptyBoundS(from, to, slot);
        }

        @Override
        public int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
            Trip one = trips.get(trip);
            boolean inChart = model.hoverMassKg(one, slotFrom, slotTo) > 0;
            return inChart ? (int) model.fuelMaxKg(one, line, slotFrom, slotTo) : 0;
        }

        @Override
        public int cuts() {
            return model.legs().cuts();
        }

        @Override
        public boolean isClosedByHours() {
            return !model.zoneHours().timed().isEmpty();
        }

        @Override
        public boolean isOpen(int trip, int slot) {
            Trip one = trips.get(trip);
            return model.air().isWindWithin(one, slot) && model.ways().isOpen(one, slot);
        }
    }
}
