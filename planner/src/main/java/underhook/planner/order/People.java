package underhook.planner.order;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import underhook.core.geo.Slope;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Walk;
import underhook.core.plan.CrewStay;

/** Who is where by themselves, who can be moved, and the ways on foot. */
final class People {
    static final long NO_WALK_S = Long.MAX_VALUE / 8;

    /** Slope at a landing place is taken over this spacing, m. */
    private static final double SLOPE_SPACING_M = 5;

    /** What is no higher is grass and no tree, m. @source common practice, no source */
    private static final double GRASS_M = 0.3;

    /** Who rounds a place otherwise finds no tree that is not found here, m. */
    private static final double TREES_SPARE_M = 0.1;

    private final DayModel model;

    /** Crews that move, or guy where they stay, in the order of the file. */
    final List<Crew> teams = new ArrayList<>();

    /** Crews that stay and guy nothing there, by place. */
    private final List<List<Crew>> staying = new ArrayList<>();

    private final long[][] walkS;
    private final boolean[] landing;
    private final Map<CrewId, Away> away;

    /**
     * Somebody who stays at a place, but is not there for a time.
     *
     * @param before its lines up to then
     * @param until when it is there again
     */
    record Away(List<CrewStay> before, Instant until) {
        Away {
            before = List.copyOf(before);
        }
    }

    People(DayModel model) {
        this(model, Map.of());
    }

    /**
     * @param away who of those who stay somewhere is not there
     */
    People(DayModel model, Map<CrewId, Away> away) {
        this.model = model;
        this.away = Map.copyOf(away);
        int n = model.places.size();
        for (int i = 0; i < n; i++) {
            staying.add(new ArrayList<>());
        }
        for (Crew crew : model.job.crews()) {
            if (crew.stays() && !model.job.isGuyingWhereItStays(crew)) {
                staying.get(model.place(crew.start())).add(crew);
            } else {
                teams.add(crew);
            }
        }
        walkS = walks(n);
        landing = new boolean[n];
        for (int i = 0; i < n; i++) {
            landing[i] = isLanding(i);
        }
    }

    private long[][] walks(int n) {
        long[][] all = new long[n][n];
        for (long[] row : all) {
            Arrays.fill(row, NO_WALK_S);
        }
        for (int i = 0; i < n; i++) {
            all[i][i] = 0;
        }
        for (Walk walk : model.job.walks()) {
            int a = model.place(walk.one());
            int b = model.place(walk.other());
            long durationS = (long) Math.ceil(walk.durationS());
            all[a][b] = Math.min(all[a][b], durationS);
            all[b][a] = all[a][b];
        }
        for (int k = 0; k < n; k++) {
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    all[i][j] = Math.min(all[i][j], all[i][k] + all[k][j]);
                }
            }
        }
        return all;
    }

    private boolean isLanding(int place) {
        return mayStand(place) && !isSteep(place) && !isInTrees(place);
    }

    /** Whether the machine may stand there, whatever the slope and the trees. */
    boolean mayStand(int place) {
        Place at = model.places.get(place);
        return !at.isSite() && at.agreed() && at.standing() && model.isKnown(place);
    }

    /** Whether the ground is steeper than where people may get in or out. */
    boolean isSteep(int place) {
        return !(slopeRad(place) <= model.rules.landing().landingSlopeRad());
    }

    /** Whether a crew that may be flown can walk there from where it begins: there it would get in. */
    boolean wouldBoardAt(int place) {
        return mayStand(place)
                && teams.stream()
                        .filter(crew -> !crew.stays())
                        .anyMatch(crew -> walkS[model.place(crew.start())][place] < NO_WALK_S);
    }

    /**
     * Whether rotor or tail may come nearer to trees than the rules let them where the machine stands on a place,
     * whichever way it points: as surveyed, else as a raster has it as far as it reaches.
     */
    boolean isInTrees(int place) {
        Place at = model.places.get(place);
        if (at.canopyM().isPresent()) {
            return at.canopyM().getAsDouble() + at.canopySpreadM() > GRASS_M
                    && at.clearingRadiusM() < treesOffM();
        }
        return model.ground
                .canopy()
                .map(
                        raster ->
                                raster.findHighestKnownWithinM(
                                        model.points.get(place), treesOffM() + TREES_SPARE_M))
                .filter(highestM -> highestM.orElse(0) > GRASS_M)
                .isPresent();
    }

    /** Whether somebody surveyed the trees round a place, or a raster shows them all round. */
    boolean isSeenRound(int place) {
        return model.places.get(place).canopyM().isPresent()
                || model.ground
                        .canopy()
                        .filter(raster -> raster.coversDisc(model.points.get(place), treesOffM()))
                        .isPresent();
    }

    /** How far from a place where the machine stands there may be no trees, m. */
    double treesOffM() {
        return Math.max(model.machine.rotorRadiusM(), model.machine.tailReachM())
                + model.rules.distances().rotorClearanceM();
    }

    /** Slope of the ground at a place, rad; a right angle where the ground is not known. */
    double slopeRad(int place) {
        return Slope.find(model.ground.terrain(), model.points.get(place), SLOPE_SPACING_M)
                .map(Slope::slopeRad)
                .orElse(Math.PI / 2);
    }

    boolean canLand(int place) {
        return landing[place];
    }

    long walkS(int from, int to) {
        return walkS[from][to];
    }

    /**
     * From when somebody who stays there can do this; {@link DayModel#NEVER_S} when nobody. Where they stand up a pole
     * among themselves nobody hooks or receives before all are there: who guys does nothing else meanwhile.
     */
    long stayingFromS(int place, Crew.Role role) {
        long from = DayModel.NEVER_S;
        long allFrom = 0;
        for (Crew crew : staying.get(place)) {
            if (crew.roles().contains(role)) {
                from = Math.min(from, thereFromS(crew));
            }
            allFrom = Math.max(allFrom, thereFromS(crew));
        }
        boolean guyed = role != Crew.Role.REFUEL && guysAmongStaying(place);
        return guyed ? Math.max(from, allFrom) : from;
    }

    private boolean guysAmongStaying(int place) {
        Place at = model.places.get(place);
        return !at.isSite()
                && model.job.loads().stream()
                        .filter(load -> load.to().equals(at.id()))
                        .anyMatch(load -> model.job.getKind(load.kind()).standsUp());
    }

    private long thereFromS(Crew crew) {
        long fromS = model.seconds(crew.availableFrom());
        Away gone = away.get(crew.id());
        return gone == null ? fromS : Math.max(fromS, model.seconds(gone.until()));
    }

    /** Who of those who stay somewhere is not there, and until when. */
    Map<CrewId, Away> away() {
        return away;
    }

    /** Where somebody who stays at a place is until the end of the day. */
    List<CrewStay> lines(Crew crew, Instant end) {
        List<CrewStay> all = new ArrayList<>();
        Away gone = away.get(crew.id());
        if (gone != null) {
            all.addAll(gone.before());
        }
        Instant from = model.instant(thereFromS(crew));
        if (from.isBefore(end)) {
            all.add(new CrewStay(crew.id(), crew.start(), from, end, "stays"));
        }
        return all;
    }

    /** Whether whoever refuels there is the only one who may hook there. */
    boolean refuellerAloneHooks(int place) {
        return staying.get(place).stream()
                .filter(crew -> crew.roles().contains(Crew.Role.HOOK))
                .allMatch(crew -> crew.roles().contains(Crew.Role.REFUEL));
    }

    List<Crew> stayingAt(int place) {
        return List.copyOf(staying.get(place));
    }

    boolean serves(int team, int place) {
        Crew crew = teams.get(team);
        PlaceId id = model.places.get(place).id();
        return crew.stays()
                ? crew.start().equals(id)
                : crew.serves().isEmpty() || crew.serves().contains(id);
    }
}
