package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.Fault;
import underhook.app.port.JobReading;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.job.Job;

/** A header alone says that there is nothing, where that may be. */
class EmptyTablesTest {
    @TempDir Path folder;

    private static SampleJob naming(String role, String text) {
        SampleJob sample = new SampleJob().file(role + ".csv", text);
        return switch (role) {
            case "release-areas" ->
                    sample.with(
                            "job.yaml",
                            "release-areas: release.geojson",
                            "release-areas: release-areas.csv");
            case "zones", "wires", "map" ->
                    sample.with(
                            "job.yaml",
                            role + ": " + role + ".geojson",
                            role + ": " + role + ".csv");
            default ->
                    sample.with(
                            "job.yaml",
                            "map: map.geojson\n",
                            "map: map.geojson\n" + role + ": " + role + ".csv\n");
        };
    }

    private static List<String> faults(JobReading reading) {
        return reading.faults().stream().map(Fault::toString).toList();
    }

    @Test
    void a_header_alone_states_that_there_is_nothing() {
        List.of(
                        List.of("zones", "id,rule,x_m,y_m,radius_m"),
                        List.of("wires", "id,x_m,y_m,highest_m"),
                        List.of("map", "\ufeffID;kind;x-m;y-m\r\n;;;"),
                        List.of("release-areas", "id\tlon_deg\tlat_deg"),
                        List.of("hazards", "subject,what,confirmed_by,confirmed_on"),
                        List.of("permits", "subject,activity,ruling,letter"),
                        List.of("learned", "quantity,group,samples,factor,spread"))
                .forEach(
                        one -> {
                            JobReading reading = naming(one.get(0), one.get(1)).readIn(folder);

                            assertThat(faults(reading)).as(one.get(0)).isEmpty();
                        });
    }

    @Test
    void nothing_of_the_kind_is_in_the_job_and_nobody_is_told_that_no_file_says_so() {
        Job job =
                naming("map", "id,kind,x_m,y_m\n")
                        .file("wires.csv", "id,x_m,y_m\n")
                        .with("job.yaml", "wires: wires.geojson", "wires: wires.csv")
                        .readIn(folder)
                        .job()
                        .orElseThrow()
                        .job();

        assertThat(job.features()).isEmpty();
        assertThat(job.wires()).isEmpty();
        assertThat(job.readingFindings())
                .filteredOn(one -> one.code() == FindingCode.FILE_ABSENT)
                .extracting(Finding::subject)
                .containsExactly("canopy");
    }

    /** A row of a table that lost its header would be taken for one, and what it states be lost. */
    @Test
    void a_row_is_not_taken_for_a_header() {
        assertThat(faults(naming("zones", "Z9,no-overflight,820,260,200\n").readIn(folder)))
                .containsExactly(
                        "zones.csv: has no rows, a header with id, alone where there is nothing to"
                                + " state");
        assertThat(faults(naming("hazards", "").readIn(folder))).hasSize(1);
    }

    @Test
    void the_header_may_have_names_of_its_own() {
        SampleJob sample =
                naming("zones", "No.,Rule,E,N\n")
                        .with(
                                "job.yaml",
                                "zones: zones.csv",
                                "zones: {file: zones.csv, columns: {id: No., rule: Rule, x-m: E, y-m: N}}");

        assertThat(faults(sample.readIn(folder))).isEmpty();
    }

    @Test
    void what_a_day_needs_and_what_promises_figures_has_rows() {
        List<JobReading> all =
                List.of(
                        new SampleJob().file("loads.csv", "id,kind,from,to\n").readIn(folder),
                        new SampleJob().file("places.csv", "id,kind,x_m,y_m\n").readIn(folder),
                        new SampleJob().file("weather.csv", "time,qnh_hpa,oat_c\n").readIn(folder),
                        naming("climate", "month,oat_p50_c,oat_p90_c,qnh_low_hpa\n").readIn(folder),
                        naming("archive", "time,wind_kt\n").readIn(folder));

        assertThat(all)
                .allSatisfy(
                        reading ->
                                assertThat(faults(reading))
                                        .anyMatch(
                                                fault ->
                                                        fault.endsWith(
                                                                "has no rows, a header and at least"
                                                                        + " one row")));
    }
}
