package underhook.adapter.osm;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader.Contents;

/** A small invented map, written as XML by hand. */
final class OsmText {
    /** About a kilometre each way. */
    static final MapBox BOX = new MapBox(46.80, 12.00, 46.81, 12.01);

    private final StringBuilder text =
            new StringBuilder("<?xml version='1.0' encoding='UTF-8'?>\n<osm version=\"0.6\">\n");

    OsmText node(long id, double lat, double lon, String... tags) {
        text.append(
                String.format(
                        Locale.ROOT,
                        "<node id=\"%d\" version=\"1\" lat=\"%.7f\" lon=\"%.7f\">%s</node>%n",
                        id,
                        lat,
                        lon,
                        tags(tags)));
        return this;
    }

    OsmText way(long id, long[] nodes, String... tags) {
        String refs =
                LongStream.of(nodes)
                        .mapToObj(n -> "<nd ref=\"" + n + "\"/>")
                        .collect(Collectors.joining());
        text.append(
                String.format(
                        Locale.ROOT,
                        "<way id=\"%d\" version=\"1\">%s%s</way>%n",
                        id,
                        refs,
                        tags(tags)));
        return this;
    }

    /** Members as {@code role:way}. */
    OsmText relation(long id, String members, String... tags) {
        String parts =
                Stream.of(members.split(" "))
                        .map(m -> m.split(":"))
                        .map(
                                m ->
                                        "<member type=\"way\" ref=\""
                                                + m[1]
                                                + "\" role=\""
                                                + m[0]
                                                + "\"/>")
                        .collect(Collectors.joining());
        text.append(
                String.format(
                        Locale.ROOT,
                        "<relation id=\"%d\" version=\"1\">%s%s</relation>%n",
                        id,
                        parts,
                        tags(tags)));
        return this;
    }

    private static String tags(String... tags) {
        return Stream.of(tags)
                .map(tag -> tag.split("=", 2))
                .map(
                        tag ->
                                "<tag k=\""
                                        + tag[0]
                                        + "\" v=\""
                                        + tag[1].replace("&", "&amp;")
                                                .replace("<", "&lt;")
                                                .replace("\"", "&quot;")
                                        + "\"/>")
                .collect(Collectors.joining());
    }

    static long[] ids(long... ids) {
        return ids;
    }

    @Override
    public String toString() {
        return text + "</osm>\n";
    }

    Path write(Path folder) throws IOException {
        return Files.writeString(folder.resolve("map.osm"), toString(), UTF_8);
    }

    Contents read(Path folder) throws IOException {
        return new OsmMapReader().read(write(folder), "map.osm", BOX);
    }
}
