package underhook.adapter.osm;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static underhook.adapter.osm.OsmText.ids;

import java.io.BufferedWriter;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader.Contents;

/** What osmium-tool writes, counts and cuts out is read as it was given, found and cut out. */
@Tag("slow")
class OsmOsmiumIT {
    private static final int WAYS = 30_000;
    private static final int NODES_OF_WAY = 10;
    private static final MapBox SMALL = new MapBox(46.48, 12.48, 46.52, 12.52);
    private static final List<String> TAGS =
            List.of(
                    "highway=path",
                    "highway=residential",
                    "highway=track",
                    "building=yes",
                    "landuse=forest",
                    "power=line",
                    "barrier=fence",
                    "aerialway=goods");

    @TempDir Path folder;

    @BeforeAll
    static void needOsmium() {
        boolean found;
        try {
            found = run(List.of("osmium", "--version")).contains("osmium");
        } catch (IOException e) {
            found = false;
        }
        Assumptions.assumeTrue(found, "missing package: osmium-tool");
    }

    @Test
    void every_form_of_a_map_has_the_same_contents() throws Exception {
        Path osm =
                new OsmText()
                        .node(1, 46.802, 12.002, "power=tower", "height=31")
                        .node(2, 46.8040001, 12.0040009, "power=tower", "name=ü\" & <é>")
                        .node(3, 46.806, 12.001, "tourism=viewpoint")
                        .node(4, 46.8075, 11.2, "amenity=bench")
                        .node(5, 46.8015, 13.3)
                        .node(6, -46.8015, -13.3)
                        .way(1, ids(1, 2, 3, 1), "landuse=forest")
                        .way(2, ids(1, 2), "power=line", "voltage=110000;20000")
                        .way(3, ids(4, 5), "aerialway=cable_car")
                        .way(4, ids(6, 5, 4), "highway=path")
                        .way(5, ids(2, 3))
                        .way(6, ids(3, 1, 2))
                        .relation(9, "outer:5 outer:6", "type=multipolygon", "building=yes")
                        .write(folder);
        Contents expected = new OsmMapReader().read(osm, "map.osm", OsmText.BOX);
        assertThat(expected.faults()).isEmpty();
        assertThat(expected.features()).hasSize(4);
        assertThat(expected.wires()).hasSize(2);

        for (List<String> form :
                List.of(
                        List.of("pbf", "osm.pbf"),
                        List.of("pbf,pbf_dense_nodes=false", "pbf"),
                        List.of("pbf,pbf_compression=none", "osm.pbf"),
                        List.of("pbf,pbf_compression=lz4", "osm.pbf"),
                        List.of("pbf,pbf_compression=lz4,pbf_dense_nodes=false", "osm.pbf"),
                        List.of("pbf,add_metadata=false", "osm.pbf"),
                        List.of("pbf,locations_on_ways=true", "osm.pbf"),
                        List.of("osm", "osm.xml"),
                        List.of("osm.gz", "osm.gz"),
                        List.of("osm.bz2", "osm.bz2"))) {
            String name = "other." + form.get(1);
            Path other = folder.resolve(name);
            run(
                    List.of(
                            "osmium",
                            "cat",
                            "--overwrite",
                            "-f",
                            form.get(0),
                            "-o",
                            other + "",
                            osm + ""));
            Contents contents = new OsmMapReader().read(other, name, OsmText.BOX);
            assertThat(contents.toString().replace(name, "map.osm"))
                    .as(form.toString())
                    .isEqualTo(expected.toString());
        }
    }

    @Test
    void counts_and_cuts_of_a_large_map_agree_with_osmium() throws Exception {
        Path pbf = large();
        assertThat(number(run(List.of("osmium", "fileinfo", "-e", pbf + "")), "Number of nodes"))
                .isEqualTo(WAYS * NODES_OF_WAY);

        Contents all = new OsmMapReader().read(pbf, "large.osm.pbf", MapBox.EARTH);

        assertThat(all.faults()).isEmpty();
        Map<String, Long> counts = new HashMap<>();
        for (String line : run(List.of("osmium", "tags-count", pbf + "", "*=*")).split("\n")) {
            String[] cells = line.replace("\"", "").split("\t");
            counts.put(cells[1] + "=" + cells[2], Long.parseLong(cells[0]));
        }
        assertThat(counts.keySet()).containsAll(TAGS);
        Map<String, Long> kinds =
                all.features().stream()
                        .collect(
                                Collectors.groupingBy(
                                        f -> f.kind() + " " + f.shape(), Collectors.counting()));
        assertThat(kinds)
                .isEqualTo(
                        Map.of(
                                "TRAIL LINE", counts.getOrDefault("highway=path", -1L),
                                "ROAD LINE", counts.getOrDefault("highway=residential", -1L),
                                "TRACK LINE", counts.getOrDefault("highway=track", -1L),
                                "HOUSE AREA", counts.getOrDefault("building=yes", -1L),
                                "FOREST AREA", counts.getOrDefault("landuse=forest", -1L)));
        assertThat((long) all.wires().size())
                .isEqualTo(
                        counts.getOrDefault("power=line", -1L)
                                + counts.getOrDefault("aerialway=goods", -1L));
        assertThat(all.passedOver()).isEqualTo(counts.getOrDefault("barrier=fence", -1L));
    }

    @Test
    void a_small_box_has_all_that_osmium_cuts_out_and_else_only_what_passes_through()
            throws Exception {
        Path pbf = large();
        Contents contents = new OsmMapReader().read(pbf, "large.osm.pbf", SMALL);

        Path cut = folder.resolve("cut.osm.pbf");
        run(
                List.of(
                        "osmium",
                        "extract",
                        "--overwrite",
                        "-s",
                        "complete_ways",
                        "-b",
                        "12.48,46.48,12.52,46.52",
                        "-o",
                        cut + "",
                        pbf + ""));
        String list = run(List.of("osmium", "cat", "-t", "way", "-f", "opl", cut + ""));
        Set<String> expected = new TreeSet<>();
        for (String line : list.split("\n")) {
            if (!line.contains("barrier=fence")) {
                expected.add(line.substring(0, line.indexOf(' ')));
            }
        }
        assertThat(expected).hasSizeGreaterThan(30);
        Set<String> found = new TreeSet<>();
        Set<String> passing = new TreeSet<>();
        contents.features()
                .forEach(
                        f -> {
                            boolean hasNode = f.outline().stream().anyMatch(SMALL::holds);
                            (hasNode ? found : passing).add(f.id().replaceAll("-.*", ""));
                        });
        contents.wires()
                .forEach(
                        w -> {
                            boolean hasNode = w.supports().stream().anyMatch(SMALL::holds);
                            (hasNode ? found : passing).add(w.id().replaceAll("-.*", ""));
                        });
        assertThat(found).isEqualTo(expected);
        assertThat(passing).hasSizeLessThan(expected.size() / 4);
    }

    @Test
    void a_large_map_is_read_within_64_mib() throws Exception {
        Path pbf = large();
        String said =
                run(
                        List.of(
                                Path.of(System.getProperty("java.home"), "bin", "java") + "",
                                "-Xmx64m",
                                "-cp",
                                System.getProperty(
                                        "surefire.test.class.path",
                                        System.getProperty("java.class.path")),
                                ReadOnce.class.getName(),
                                pbf + ""));

        assertThat(said).contains("faults 0").containsPattern("features [1-9]");
    }

    /** Paths, houses, forests and wires of ten nodes each, anywhere in a square degree. */
    private Path large() throws IOException {
        Path osm = folder.resolve("large.osm");
        Random random = new Random(7);
        try (BufferedWriter out = Files.newBufferedWriter(osm, UTF_8)) {
            out.write("<osm version=\"0.6\">\n");
            for (int way = 0; way < WAYS; way++) {
                double lat = 46 + random.nextDouble();
                double lon = 12 + random.nextDouble();
                for (int i = 0; i < NODES_OF_WAY; i++) {
                    lat += (random.nextDouble() - 0.3) * 0.001;
                    lon += (random.nextDouble() - 0.5) * 0.001;
                    long id = (long) way * NODES_OF_WAY + i + 1;
                    out.write(
                            String.format(
                                    Locale.ROOT,
                                    "<node id=\"%d\" version=\"1\" lat=\"%.7f\" lon=\"%.7f\"/>%n",
                                    id,
                                    lat,
                                    lon));
                }
            }
            for (int way = 0; way < WAYS; way++) {
                out.write(way(way));
            }
            out.write("</osm>\n");
        }
        Path pbf = folder.resolve("large.osm.pbf");
        run(List.of("osmium", "cat", "--overwrite", "-o", pbf + "", osm + ""));
        Files.delete(osm);
        return pbf;
    }

    private static String way(int way) {
        String[] tag = TAGS.get(way % TAGS.size()).split("=");
        StringBuilder out = new StringBuilder("<way id=\"" + (way + 1) + "\" version=\"1\">");
        long first = (long) way * NODES_OF_WAY + 1;
        for (int i = 0; i < NODES_OF_WAY; i++) {
            out.append("<nd ref=\"").append(first + i).append("\"/>");
        }
        if (tag[0].equals("building") || tag[0].equals("landuse")) {
            out.append("<nd ref=\"").append(first).append("\"/>");
        }
        return out.append("<tag k=\"" + tag[0] + "\" v=\"" + tag[1] + "\"/></way>\n").toString();
    }

    private static long number(String text, String label) {
        Matcher matcher = Pattern.compile(Pattern.quote(label) + ": (\\d+)").matcher(text);
        assertThat(matcher.find()).isTrue();
        return Long.parseLong(matcher.group(1));
    }

    private static String run(List<String> command) throws IOException {
        File said = File.createTempFile("said", ".txt");
        try {
            Process process =
                    new ProcessBuilder(new ArrayList<>(command))
                            .redirectErrorStream(true)
                            .redirectOutput(said)
                            .start();
            int code = process.waitFor();
            String text = Files.readString(said.toPath(), UTF_8);
            assertThat(code).as("%s: %s", command, text).isZero();
            return text;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        } finally {
            Files.delete(said.toPath());
        }
    }
}
