package underhook.web;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.port.Written;
import underhook.core.finding.Finding;
import underhook.core.geo.GeoPoint;
import underhook.core.job.Waiver;

/** Pieces of JSON. */
final class Json {
    private static final int DEGREE_DECIMALS = 7;

    private Json() {}

    static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }

    static ArrayNode array() {
        return JsonNodeFactory.instance.arrayNode();
    }

    static <T> ArrayNode array(Collection<T> all, Function<? super T, ? extends JsonNode> one) {
        ArrayNode array = array();
        all.forEach(each -> array.add(one.apply(each)));
        return array;
    }

    static ArrayNode texts(Collection<?> all) {
        ArrayNode array = array();
        all.forEach(each -> array.add(each.toString()));
        return array;
    }

    static ObjectNode error(String sentence) {
        return object().put("error", sentence);
    }

    static ArrayNode position(GeoPoint point) {
        return array().add(Written.nearest(point.lonDeg(), DEGREE_DECIMALS))
                .add(Written.nearest(point.latDeg(), DEGREE_DECIMALS));
    }

    static ArrayNode positions(List<GeoPoint> points) {
        return array(points, Json::position);
    }

    /** Rounded to the nearest tenth, or null where it is not known. */
    static void putTenths(ObjectNode node, String name, OptionalDouble value) {
        if (value.isPresent() && Double.isFinite(value.getAsDouble())) {
            node.put(name, Written.nearest(value.getAsDouble(), 1));
        } else {
            node.putNull(name);
        }
    }

    static String time(Instant at, ZoneId zone) {
        return Written.time(at, zone);
    }

    static ObjectNode finding(Finding finding) {
        return object().put("code", finding.code().name())
                .put("severity", finding.severity().name())
                .put("subject", finding.subject())
                .put("value", finding.value())
                .put("limit", finding.limit())
                .put("unit", finding.unit())
                .put("source", finding.source())
                .put("message", finding.message())
                .put("mayOverride", Waiver.canAnswer(finding));
    }
}
