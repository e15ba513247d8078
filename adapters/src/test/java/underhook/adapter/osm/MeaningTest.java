package underhook.adapter.osm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import underhook.core.job.WireKind;

/** What tags stand for: OSM wiki, page of each key, from memory. Heights: common practice, no source. */
class MeaningTest {
    private static Tagged tags(String text) {
        Map<String, String> tags = new HashMap<>();
        for (String tag : text.split(" ")) {
            String[] pair = tag.split("=", 2);
            tags.put(pair[0], pair[1]);
        }
        return new Tagged(tags);
    }

    private static String kinds(String text) {
        return Meaning.of(tags(text)).stream()
                .map(meaning -> meaning.kind().toString())
                .collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @CsvSource({
        "highway=motorway, ROAD",
        "highway=residential, ROAD",
        "highway=service, ROAD",
        "highway=construction construction=primary, ROAD",
        "highway=construction, ROAD",
        "highway=track, TRACK",
        "highway=path, TRAIL",
        "highway=steps, TRAIL",
        "highway=bridleway, TRAIL",
        "highway=path tunnel=yes, ''",
        "highway=primary tunnel=avalanche_protector, ROAD",
        "highway=proposed proposed=primary, ''",
        "railway=rail, RAILWAY",
        "railway=light_rail, RAILWAY",
        "railway=abandoned, ''",
        "railway=construction construction=rail, RAILWAY",
        "building=yes, HOUSE",
        "building=no, ''",
        "building=construction, HOUSE",
        "disused:building=barn, HOUSE",
        "building=yes location=underground, ''",
        "amenity=school building=yes, HOUSE PEOPLE",
        "amenity=kindergarten, PEOPLE",
        "amenity=bench, ''",
        "leisure=playground, PEOPLE",
        "leisure=pitch, PEOPLE",
        "tourism=camp_site, PEOPLE",
        "tourism=viewpoint, PEOPLE",
        "tourism=alpine_hut, PEOPLE",
        "tourism=information, ''",
        "man_made=mast, MAST",
        "man_made=chimney, MAST",
        "man_made=water_tower, MAST",
        "man_made=crane, MAST",
        "man_made=silo, MAST",
        "abandoned:man_made=tower, MAST",
        "power=tower, MAST",
        "power=generator generator:source=wind, MAST",
        "power=generator generator:source=solar, ''",
        "natural=water, WATER",
        "waterway=riverbank, WATER",
        "waterway=river, WATER",
        "waterway=river tunnel=culvert, ''",
        "natural=wood, FOREST",
        "landuse=forest, FOREST",
        "boundary=protected_area, PROTECTED",
        "boundary=national_park, PROTECTED",
        "boundary=administrative, ''",
        "leisure=nature_reserve, PROTECTED",
        "barrier=fence, ''",
        "HIGHWAY=path, ''",
        "highway=Path, TRAIL",
    })
    void tags_become_kinds(String text, String expected) {
        assertThat(kinds(text)).isEqualTo(expected);
    }

    @Test
    void a_stated_height_counts_and_a_tall_one_of_the_kind_stands_in_for_it() {
        assertThat(Meaning.of(tags("man_made=mast height=42")).get(0))
                .extracting(Meaning::heightM, Meaning::heightEstimated)
                .containsExactly(OptionalDouble.of(42), false);
        assertThat(Meaning.of(tags("man_made=mast height=high")).get(0))
                .extracting(Meaning::heightM, Meaning::heightEstimated)
                .containsExactly(OptionalDouble.of(300), true);
        assertThat(Meaning.of(tags("building=yes building:levels=40")).get(0))
                .extracting(Meaning::heightM, Meaning::heightEstimated)
                .containsExactly(OptionalDouble.of(168), true);
        assertThat(Meaning.of(tags("building=yes building:levels=900")).get(0).heightM())
                .hasValue(30);
        assertThat(Meaning.of(tags("highway=path height=3")).get(0).heightM()).isEmpty();
    }

    @Test
    void a_turbine_reaches_half_its_rotor_above_its_hub() {
        Meaning turbine =
                Meaning.of(tags("generator:source=wind height:hub=100 rotor:diameter=90")).get(0);
        Meaning half = Meaning.of(tags("generator:source=wind height=100")).get(0);
        Meaning unknown = Meaning.of(tags("generator:source=wind")).get(0);

        assertThat(turbine.heightM().orElseThrow()).isCloseTo(145, within(1e-9));
        assertThat(turbine.heightEstimated()).isFalse();
        assertThat(half.heightM().orElseThrow()).isCloseTo(190, within(1e-9));
        assertThat(List.of(half, unknown)).allMatch(Meaning::heightEstimated);
    }

    @ParameterizedTest
    @CsvSource({
        "power=line, POWER, 0, 90",
        "power=line voltage=110000;20000, POWER, 110000, 60",
        "power=line voltage=220000, POWER, 220000, 75",
        "power=line voltage=380000 cables=6, POWER, 380000, 90",
        "power=line line=busbar voltage=20000, POWER, 20000, 25",
        "power=minor_line, POWER, 0, 25",
        "power=minor_line voltage=400, POWER, 400, 15",
        "disused:power=line, POWER, 0, 90",
        "abandoned:power=minor_line, POWER, 0, 25",
        "power=construction construction=minor_line, POWER, 0, 25",
        "power=cable location=overhead, POWER, 0, 25",
        "railway=rail electrified=contact_line voltage=15000, POWER, 15000, 15",
        "communication=line, TELEPHONE, 0, 15",
        "telecom=line, TELEPHONE, 0, 15",
        "utility=telecom, TELEPHONE, 0, 15",
        "aerialway=cable_car, CABLEWAY, 0, 120",
        "aerialway=goods, CABLEWAY, 0, 60",
        "aerialway=chair_lift, CABLEWAY, 0, 40",
        "aerialway=t-bar, CABLEWAY, 0, 20",
        "disused:aerialway=goods, CABLEWAY, 0, 60",
        "power=line voltage=20000 height=70, POWER, 20000, 70",
    })
    void wires_hang_as_high_as_tall_ones_of_their_kind(
            String text, WireKind kind, double voltageV, double highestM) {
        assertThat(WireMeaning.of(tags(text)))
                .containsExactly(new WireMeaning(kind, voltageV, highestM));
    }

    @ParameterizedTest
    @CsvSource({
        "power=cable",
        "power=line location=underground",
        "power=line location=underwater",
        "power=substation",
        "proposed:power=line",
        "demolished:power=line",
        "aerialway=station",
        "communication=cable",
        "utility=telecom man_made=street_cabinet",
        "railway=rail electrified=contact_line tunnel=yes",
        "railway=rail electrified=rail",
    })
    void what_does_not_hang_is_no_wire(String text) {
        assertThat(WireMeaning.of(tags(text))).isEmpty();
    }

    @Test
    void higher_voltage_never_hangs_lower() {
        double beforeM = 0;
        for (int kv = 1; kv < 1200; kv++) {
            double highestM =
                    WireMeaning.of(tags("power=line voltage=" + kv + "000")).get(0).highestM();
            assertThat(highestM).isGreaterThanOrEqualTo(beforeM);
            beforeM = highestM;
        }
    }
}
