package underhook.adapter.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.unit.Units;

/** Reads the places of a job. */
final class PlacesFile {
    private static final double OPEN_M = 1000;
    private static final Range ELEVATION = Range.of(-500, 9000, "between -500 and 9000 m");
    private static final Range TREES = Range.of(0, 120, "between 0 and 120 m");

    private final Source source;
    private final Mentions mentions;
    private final List<PlaceRow> rows = new ArrayList<>();

    /** A place with its position as stated. */
    record PlaceRow(Place place, Position position) {}

    private PlacesFile(Source source, Mentions mentions) {
        this.source = source;
        this.mentions = mentions;
    }

    /** Every place whose row has no fault. */
    static List<PlaceRow> read(
            FileReference file, Source source, FeatureFiles files, Mentions mentions) {
        PlacesFile reader = new PlacesFile(source, mentions);
        files.read(file, source, reader::readFeature);
        return reader.rows;
    }

    private void readFeature(Feature feature) {
        boolean isPoint = feature.shape() == Feature.Shape.POINT;
        if (!isPoint) {
            source.fault(
                    FindingCode.FIELD_UNREADABLE,
                    new At(feature.line(), "geometry"),
                    "is no point",
                    new Found(feature.shape().word(), "one point for each place"));
        }
        int before = source.faults().count();
        readPlace(
                feature.properties(),
                isPoint ? feature.outline().stream().findFirst() : Optional.empty(),
                before);
        feature.refuseUnknown();
    }

    private void readPlace(Fields fields, Optional<Position> position, int faultsBefore) {
        String id = fields.id("id");
        mentions.declare(Family.PLACE, fields, "id", id);
        PlaceKind kind = fields.choice("kind", PlaceKind.class);
        String name = fields.text("name", "");
        OptionalDouble elevationM = fields.findQuantity("elevation", Quantity.LENGTH, ELEVATION);
        OptionalDouble canopyM = fields.findQuantity("canopy", Quantity.LENGTH, TREES);
        double canopySpreadM =
                fields.findQuantity("canopy_spread", Quantity.LENGTH, TREES).orElse(0);
        double clearingM = readClearing(fields);
        double exposureFactor =
                fields.number("exposure", Range.above(0, 5, "above 0 and at most 5"), 1);
        boolean agreed = fields.yesNo("agreed", true);
        boolean standing = fields.yesNo("standing", kind != PlaceKind.SITE);
        boolean fuel = fields.yesNo("fuel", false);
        boolean landingAsked = fields.yesNo("landing_asked", false);
        List<Double> guysDeg =
                fields.numbers("guy_azimuths_deg", Range.of(0, 360, "between 0 and 360"));
        String remarks = fields.text("remarks", "");
        if (position.isPresent() && source.faults().count() == faultsBefore) {
            Place place =
                    new Place(
                            new PlaceId(id),
                            kind,
                            name,
                            position.get().point(),
                            elevationM,
                            canopyM,
                            canopySpreadM,
                            clearingM,
                            exposureFactor,
                            agreed,
                            standing,
                            fuel,
                            landingAsked,
                            guysDeg.stream().map(Units::degToRad).toList(),
                            remarks);
            rows.add(new PlaceRow(place, position.get()));
        }
    }

    private static double readClearing(Fields fields) {
        if (fields.isWord("clearing_radius_m", "open")
                || fields.isWord("clearing_radius_ft", "open")) {
            return OPEN_M;
        }
        return fields.findQuantity(
                        "clearing_radius",
                        Quantity.LENGTH,
                        Range.of(0, 10_000, "between 0 and 10000 m, or open"))
                .orElse(0);
    }
}
