package underhook.adapter.mapfile;

import java.io.IOException;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import underhook.adapter.mapfile.MapItem.Kind;
import underhook.adapter.mapfile.MapItem.Vertex;
import underhook.app.port.Attribution;
import underhook.app.port.OutputWriter;
import underhook.app.port.Written;
import underhook.core.job.Job;

/** Writes plan.gpx, GPX 1.1: places as waypoints, legs as routes with the hook's altitude. */
public final class GpxWriter implements OutputWriter {
    private static final String NAMESPACE = "http://www.topografix.com/GPX/1/1";

    @Override
    public String fileName() {
        return "plan.gpx";
    }

    @Override
    public void write(Output output, Path file) throws IOException {
        List<MapItem> items = MapItems.of(output);
        XmlText.write(
                file,
                xml -> {
                    xml.open(
                            "gpx",
                            "xmlns",
                            NAMESPACE,
                            "version",
                            "1.1",
                            "creator",
                            output.plan().program());
                    metadata(xml, output);
                    // The schema wants all waypoints before all routes.
                    for (MapItem item : items) {
                        if (item.kind() == Kind.PLACE) {
                            waypoint(xml, item);
                        }
                    }
                    for (MapItem item : items) {
                        if (item.kind() == Kind.LEG) {
                            route(xml, item);
                        }
                    }
                    xml.close();
                });
    }

    private static void metadata(XmlText xml, Output output) throws XMLStreamException {
        Job job = output.readJob().job();
        xml.open("metadata");
        xml.leaf("name", output.plan().job());
        xml.leaf(
                "desc",
                "Plan " + output.plan().id() + ". " + String.join(" ", Attribution.notice(job)));
        List<String> attribution = Attribution.lines(job);
        if (!attribution.isEmpty()) {
            xml.open("copyright", "author", String.join("; ", attribution));
            if (Attribution.shareAlike(job).isPresent()) {
                xml.leaf("license", Attribution.ODBL_ADDRESS);
            }
            xml.close();
        }
        xml.leaf("time", output.plan().plannedAt().truncatedTo(ChronoUnit.SECONDS).toString());
        xml.close();
    }

    private static void waypoint(XmlText xml, MapItem place) throws XMLStreamException {
        point(xml, "wpt", place.vertices().get(0), place.hasHeights());
        xml.leaf("name", place.id());
        xml.leaf("cmt", place.text("remarks"));
        xml.leaf("desc", place.text("name"));
        xml.leaf("type", place.text("placeKind"));
        xml.close();
    }

    private static void route(XmlText xml, MapItem leg) throws XMLStreamException {
        String carrying = leg.text("carrying");
        xml.open("rte");
        xml.leaf(
                "name",
                leg.text("step")
                        + "."
                        + leg.text("leg")
                        + " "
                        + leg.text("from")
                        + "-"
                        + leg.text("to"));
        xml.leaf("cmt", carrying.isEmpty() ? "no load" : "carrying " + carrying);
        xml.leaf(
                "desc",
                leg.text("minutes")
                        + " min, "
                        + leg.text("distanceM")
                        + " m, "
                        + leg.text("speedKt")
                        + " kt"
                        + (leg.text("leastClearanceM").isEmpty()
                                ? ""
                                : ", least clearance " + leg.text("leastClearanceM") + " m")
                        + (leg.text("crossings").isEmpty() ? "" : ", " + leg.text("crossings")));
        xml.leaf("type", leg.text("stepKind"));
        for (Vertex vertex : leg.vertices()) {
            point(xml, "rtept", vertex, true);
            xml.close();
        }
        xml.close();
    }

    private static void point(XmlText xml, String name, Vertex vertex, boolean hasHeight)
            throws XMLStreamException {
        xml.open(
                name,
                "lat",
                Written.nearest(vertex.position().latDeg(), 7).toPlainString(),
                "lon",
                Written.nearest(vertex.position().lonDeg(), 7).toPlainString());
        if (hasHeight) {
            xml.leaf("ele", Written.nearest(vertex.altitudeAmslM(), 1).toPlainString());
        }
    }
}
