package underhook.adapter.osm;

import java.nio.file.Path;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader.Contents;

/** Reads one file in a JVM of its own, so that its memory can be bounded. */
final class ReadOnce {
    private ReadOnce() {}

    public static void main(String[] arguments) {
        Path file = Path.of(arguments[0]);
        long start = System.nanoTime();
        Contents contents =
                new OsmMapReader()
                        .read(file, "large.osm.pbf", new MapBox(46.48, 12.48, 46.52, 12.52));
        System.out.println(
                "faults "
                        + contents.faults().size()
                        + ", features "
                        + contents.features().size()
                        + ", wires "
                        + contents.wires().size()
                        + ", ms "
                        + (System.nanoTime() - start) / 1_000_000);
    }
}
