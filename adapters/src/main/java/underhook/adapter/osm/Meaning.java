package underhook.adapter.osm;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.core.job.MapFeature;

/**
 * What a thing on the ground is to us.
 *
 * @param kind our kind
 * @param form how it is drawn
 * @param heightM height above ground, m, where the kind stands up
 * @param heightEstimated whether that height is the kind's own and was never stated
 */
record Meaning(MapFeature.Kind kind, Form form, OptionalDouble heightM, boolean heightEstimated) {
    /** How a thing is drawn. */
    enum Form {
        /** A line even where it comes back to its start, unless it says that it is an area. */
        LINE,
        /** The area within, where it comes back to its start. */
        AREA,
        /** What carries a wire: it counts alone only where no wire runs over it. */
        SUPPORT
    }

    /** What one line of the table says. */
    private record Row(
            String key, Set<String> values, MapFeature.Kind kind, Form form, double heightM) {}

    /**
     * Key, values, kind, form, height where none is stated, and why. Any one that fits counts, so a thing
     * may mean several things.
     *
     * <p>Heights are tall ones of each kind, so that what has none stated is rather passed too high.
     *
     * @source OSM-WIKI page of each key; PRACTICE heights
     */
    private static final String TABLE =
            """
            highway|footway path cycleway bridleway steps pedestrian via_ferrata crossing platform corridor|TRAIL|LINE||people on foot, bicycle or horse
            highway|track|TRACK|LINE||farm and forest traffic
            highway|motorway motorway_link trunk trunk_link primary primary_link secondary secondary_link tertiary tertiary_link unclassified residential living_street service services rest_area road busway bus_guideway escape raceway yes|ROAD|LINE||vehicles; under construction, workers
            highway|bus_stop|PEOPLE|AREA||people wait there
            piste:type|*|TRAIL|LINE||skiers in winter
            railway|rail light_rail narrow_gauge tram subway funicular monorail preserved miniature rack yes|RAILWAY|LINE||trains; under construction, workers
            railway|station halt tram_stop platform|PEOPLE|AREA||people wait there
            public_transport|platform station stop_position|PEOPLE|AREA||people wait there
            building|*|HOUSE|AREA|30|somebody may be in it; under construction, workers
            building|church cathedral chapel basilica mosque temple minaret|HOUSE|AREA|100|steeples are taller than houses
            building|tower high_rise skyscraper|HOUSE|AREA|300|named for its height
            place|isolated_dwelling farm hamlet|HOUSE|AREA|30|somebody lives there; houses are not drawn everywhere
            landuse|residential retail commercial|PEOPLE|AREA||a settlement; houses are not drawn everywhere
            landuse|cemetery recreation_ground village_green allotments winter_sports education religious|PEOPLE|AREA||people gather
            amenity|school kindergarten college university childcare hospital clinic doctors nursing_home social_facility marketplace restaurant cafe pub bar biergarten fast_food ice_cream place_of_worship monastery grave_yard community_centre social_centre townhall library theatre cinema arts_centre events_venue conference_centre bus_station ferry_terminal prison refugee_site shelter bbq fuel public_bath fountain mountain_rescue|PEOPLE|AREA||people gather
            leisure|playground pitch sports_centre sports_hall stadium swimming_pool swimming_area water_park track park garden dog_park beach_resort marina horse_riding ice_rink summer_camp picnic_table firepit outdoor_seating bandstand fitness_station bird_hide golf_course miniature_golf resort common bathing_place|PEOPLE|AREA||people gather
            tourism|camp_site camp_pitch caravan_site viewpoint alpine_hut wilderness_hut picnic_site hotel guest_house hostel motel chalet apartment theme_park zoo attraction museum aquarium|PEOPLE|AREA||people gather
            sport|climbing climbing_adventure free_flying toboggan|PEOPLE|AREA||people in the terrain
            aerialway|station|PEOPLE|AREA||people wait there
            aerialway|magic_carpet|PEOPLE|LINE||people stand on it
            natural|beach|PEOPLE|AREA||people gather
            power|tower terminal|MAST|SUPPORT|90|as the wires of a line of unknown voltage
            power|portal|MAST|SUPPORT|40|H-shaped, lower than a tower
            power|pole catenary_mast connection insulator|MAST|SUPPORT|25|as the wires of a minor line
            aerialway|pylon|MAST|SUPPORT|120|as the ropes of a cable car
            communication|pole|MAST|SUPPORT|15|wooden poles
            telecom|pole|MAST|SUPPORT|15|wooden poles
            man_made|utility_pole|MAST|SUPPORT|25|as the wires of a minor line
            man_made|communications_tower|MAST|AREA|350|landmarks
            man_made|mast|MAST|AREA|300|guyed masts of broadcasting
            man_made|tower yes|MAST|AREA|150|bell towers to radio towers
            man_made|chimney|MAST|AREA|300|of power stations
            man_made|cooling_tower|MAST|AREA|200|of power stations
            man_made|crane|MAST|AREA|120|tower cranes
            man_made|antenna|MAST|AREA|100|on their own mast
            man_made|water_tower lighthouse gasometer obelisk|MAST|AREA|80|single tall works
            man_made|silo storage_tank windmill|MAST|AREA|60|single works
            man_made|cross flagpole windpump monitoring_station beacon telescope street_lamp|MAST|AREA|40|small single works
            man_made|offshore_platform petroleum_well|MAST|AREA|150|derricks and flares
            generator:source|wind|MAST|AREA|280|hub and blade of the largest on land
            tower:type|*|MAST|AREA|150|a tower, whatever its other tags
            natural|water bay coastline|WATER|AREA||open water
            waterway|riverbank dock boatyard|WATER|AREA||open water
            waterway|river canal tidal_channel|WATER|LINE||open water, drawn along its middle
            landuse|reservoir basin|WATER|AREA||open water
            natural|wood|FOREST|AREA|50|tall spruce and fir
            landuse|forest|FOREST|AREA|50|tall spruce and fir
            landcover|trees|FOREST|AREA|50|tall spruce and fir
            natural|tree_row|FOREST|LINE|50|tall poplars
            landuse|orchard|FOREST|AREA|15|fruit and nut trees
            natural|scrub|FOREST|AREA|10|bushes with single trees
            boundary|protected_area national_park|PROTECTED|AREA||agreement may be needed
            leisure|nature_reserve|PROTECTED|AREA||agreement may be needed
            """;

    private static final List<Row> ROWS = TABLE.lines().map(Meaning::row).toList();

    /** Half the largest rotor on land, m, where a turbine states none. @source PRACTICE */
    private static final double HALF_ROTOR_M = 90;

    /** Height of a storey and of a roof, m, both large. @source PRACTICE */
    private static final double STOREY_M = 4;

    private static final double ROOF_M = 8;

    /** More storeys than any house has are a slip of the pen. */
    private static final double MOST_STOREYS = 200;

    private static Row row(String line) {
        String[] cells = line.split("\\|");
        return new Row(
                cells[0],
                Set.of(cells[1].split(" ")),
                MapFeature.Kind.valueOf(cells[2]),
                Form.valueOf(cells[3]),
                cells[4].isEmpty() ? 0 : Double.parseDouble(cells[4]));
    }

    /** All that a thing means, one of each kind; empty when it does not matter. */
    static List<Meaning> of(Tagged tags) {
        if (tags.isBelowGround()) {
            return List.of();
        }
        Map<MapFeature.Kind, Row> found = new EnumMap<>(MapFeature.Kind.class);
        for (Row row : ROWS) {
            if (tags.has(row.key, row.values)) {
                found.merge(row.kind, row, Meaning::stronger);
            }
        }
        List<Meaning> meanings = new ArrayList<>();
        found.values().forEach(row -> meanings.add(meaning(row, tags)));
        return meanings;
    }

    /** A mast that also carries a wire stands for itself. */
    private static Row stronger(Row a, Row b) {
        Form form =
                a.form == Form.AREA || b.form == Form.AREA
                        ? Form.AREA
                        : a.form == Form.LINE ? a.form : b.form;
        return new Row(a.key, a.values, a.kind, form, Math.max(a.heightM, b.heightM));
    }

    private static Meaning meaning(Row row, Tagged tags) {
        Form form = row.form == Form.LINE && tags.get("area").equals("yes") ? Form.AREA : row.form;
        if (row.heightM == 0) {
            return new Meaning(row.kind, form, OptionalDouble.empty(), false);
        }
        if (tags.has("generator:source", Set.of("wind"))) {
            return turbine(form, row.heightM, tags);
        }
        Optional<Stated> stated = Stated.heightOf(tags.toMap());
        if (stated.isPresent()) {
            return new Meaning(
                    row.kind,
                    form,
                    OptionalDouble.of(stated.get().heightM()),
                    stated.get().isRough());
        }
        double heightM = Math.max(row.heightM, storeysM(tags));
        return new Meaning(row.kind, form, OptionalDouble.of(heightM), true);
    }

    /** Storeys say how tall a house is at least; they never make it lower than its kind. */
    private static double storeysM(Tagged tags) {
        Optional<Stated> storeys = Stated.length(tags.get("building:levels"));
        double count = storeys.map(Stated::heightM).orElse(0.0);
        return count > 0 && count <= MOST_STOREYS ? count * STOREY_M + ROOF_M : 0;
    }

    /** Some state the hub's height and some the blade's tip, so the stated one counts as the hub's. */
    private static Meaning turbine(Form form, double usualM, Tagged tags) {
        Optional<Stated> hub = Stated.length(tags.get("height:hub"));
        if (hub.isEmpty()) {
            hub = Stated.heightOf(tags.toMap());
        }
        Optional<Stated> rotor = Stated.length(tags.get("rotor:diameter"));
        double halfM = rotor.map(stated -> stated.heightM() / 2).orElse(HALF_ROTOR_M);
        double heightM = hub.map(stated -> stated.heightM() + halfM).orElse(usualM);
        boolean isStated =
                hub.isPresent()
                        && rotor.isPresent()
                        && !hub.get().isRough()
                        && !rotor.get().isRough();
        return new Meaning(MapFeature.Kind.MAST, form, OptionalDouble.of(heightM), !isStated);
    }
}
