package underhook.core.job;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import underhook.core.finding.Finding;
import underhook.core.geo.GeoPoint;

/**
 * One day's job as read.
 *
 * @param origin centre of the local plane
 * @param magneticVariationRad east positive, rad
 * @param confirmations the register of hazards
 * @param readingFindings what was found while reading that is no fault
 * @param waivers findings that somebody answers for
 */
public record Job(
        String name,
        LocalDate date,
        ZoneId zone,
        GeoPoint origin,
        double magneticVariationRad,
        PlaceId machineStart,
        List<Place> places,
        List<Load> loads,
        Machine machine,
        Weather weather,
        List<Crew> crews,
        List<Walk> walks,
        Rules rules,
        List<MapFeature> features,
        List<Wire> wires,
        List<Zone> zones,
        List<ReleaseArea> releaseAreas,
        List<Confirmation> confirmations,
        List<InputFile> inputs,
        List<Finding> readingFindings,
        List<Waiver> waivers) {
    public Job {
        Objects.requireNonNull(name, "name");
        places = List.copyOf(places);
        loads = List.copyOf(loads);
        crews = List.copyOf(crews);
        walks = List.copyOf(walks);
        features = List.copyOf(features);
        wires = List.copyOf(wires);
        zones = List.copyOf(zones);
        releaseAreas = List.copyOf(releaseAreas);
        confirmations = List.copyOf(confirmations);
        inputs = List.copyOf(inputs);
        readingFindings = List.copyOf(readingFindings);
        waivers = List.copyOf(waivers);
    }

    public Optional<Place> findPlace(PlaceId id) {
        for (Place place : places) {
            if (place.id().equals(id)) {
                return Optional.of(place);
            }
        }
        return Optional.empty();
    }

    /** The place; throws when the job has none of that id. */
    public Place getPlace(PlaceId id) {
        return findPlace(id)
                .orElseThrow(() -> new IllegalArgumentException("no place " + id + " in the job."));
    }

    public Optional<Load> findLoad(LoadId id) {
        for (Load load : loads) {
            if (load.id().equals(id)) {
                return Optional.of(load);
            }
        }
        return Optional.empty();
    }

    /** The load; throws when the job has none of that id. */
    public Load getLoad(LoadId id) {
        return findLoad(id)
                .orElseThrow(() -> new IllegalArgumentException("no load " + id + " in the job."));
    }

    /** The rules for a kind of load; throws when the job has none of that name. */
    public LoadKind getKind(String name) {
        for (LoadKind kind : rules.kinds()) {
            if (kind.name().equals(name)) {
                return kind;
            }
        }
        throw new IllegalArgumentException("no kind " + name + " in the rules.");
    }

    /**
     * Whether a crew that never leaves a site guys the poles that are stood up there. It is then busy
     * with each, as a crew that moves would be.
     */
    public boolean isGuyingWhereItStays(Crew crew) {
        return crew.stays()
                && crew.roles().contains(Crew.Role.GUY)
                && (crew.serves().isEmpty() || crew.serves().contains(crew.start()))
                && getPlace(crew.start()).isSite()
                && loads.stream()
                        .anyMatch(
                                load ->
                                        load.to().equals(crew.start())
                                                && getKind(load.kind()).standsUp());
    }

    /** Whether a zone's rule holds at some time of a flight that begins and ends then. */
    public boolean isInForce(Zone of, Instant begin, Instant end) {
        return of.listSpells(date, zone).stream().anyMatch(spell -> spell.touches(begin, end));
    }

    /** What of a job is ever other than it was read. */
    private record Parts(
            List<Place> places,
            List<Load> loads,
            Machine machine,
            Weather weather,
            List<Crew> crews,
            Rules rules,
            List<MapFeature> features,
            List<Zone> zones) {}

    /** The same with other rules. */
    public Job withRules(Rules other) {
        return with(new Parts(places, loads, machine, weather, crews, other, features, zones));
    }

    /** The same with other loads. */
    public Job withLoads(List<Load> other) {
        return with(new Parts(places, other, machine, weather, crews, rules, features, zones));
    }

    /** The same with another machine. */
    public Job withMachine(Machine other) {
        return with(new Parts(places, loads, other, weather, crews, rules, features, zones));
    }

    /** The same with other weather. */
    public Job withWeather(Weather other) {
        return with(new Parts(places, loads, machine, other, crews, rules, features, zones));
    }

    /** The same with other crews. */
    public Job withCrews(List<Crew> other) {
        return with(new Parts(places, loads, machine, weather, other, rules, features, zones));
    }

    /** The same with other places. */
    public Job withPlaces(List<Place> other) {
        return with(new Parts(other, loads, machine, weather, crews, rules, features, zones));
    }

    /** The same with other things on the ground. */
    public Job withFeatures(List<MapFeature> other) {
        return with(new Parts(places, loads, machine, weather, crews, rules, other, zones));
    }

    /** The same with other zones. */
    public Job withZones(List<Zone> other) {
        return with(new Parts(places, loads, machine, weather, crews, rules, features, other));
    }

    private Job with(Parts parts) {
        return new Job(
                name,
                date,
                zone,
                origin,
                magneticVariationRad,
                machineStart,
                parts.places,
                parts.loads,
                parts.machine,
                parts.weather,
                parts.crews,
                walks,
                parts.rules,
                parts.features,
                wires,
                parts.zones,
                releaseAreas,
                confirmations,
                inputs,
                readingFindings,
                waivers);
    }
}
