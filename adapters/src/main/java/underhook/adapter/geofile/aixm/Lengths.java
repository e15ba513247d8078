package underhook.adapter.geofile.aixm;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamException;
import underhook.adapter.geofile.source.Decimals;
import underhook.adapter.geofile.source.Unreadable;
import underhook.adapter.geofile.source.XmlCursor;
import underhook.core.unit.Units;

/**
 * Lengths with the unit that stands beside them.
 *
 * @source AIXM-5.1.1 UomDistanceType, UomDistanceVerticalType; EUROCONTROL-OBS "Maximum height above ground
 *     level" in a note on verticalExtent
 */
final class Lengths {
    private static final Pattern IN_WORDS =
            Pattern.compile("([0-9]{1,5}(?:\\.[0-9]{1,3})?)\\s*(M|FT)\\b");

    private static final double FARTHEST_M = 1e6;

    private Lengths() {}

    /** The length of the current element, m; empty when it holds none. */
    static OptionalDouble read(XmlCursor cursor) throws XMLStreamException, Unreadable {
        String field = cursor.name();
        String unit = cursor.attribute("uom");
        String text = cursor.text();
        boolean isWord = !text.isEmpty() && Character.isLetter(text.charAt(0));
        if (text.isEmpty() || isWord) {
            return OptionalDouble.empty();
        }
        double lengthM = toM(field, Decimals.read(field, text), unit);
        if (!(Math.abs(lengthM) <= FARTHEST_M)) {
            throw Unreadable.range(field, "is out of any range").found(text + " " + unit);
        }
        return OptionalDouble.of(lengthM);
    }

    private static double toM(String field, double value, String unit) throws Unreadable {
        return switch (unit.toUpperCase(Locale.ROOT)) {
            case "M" -> value;
            case "FT", "[FT_I]" -> Units.ftToM(value);
            case "NM", "[NMI_I]" -> Units.nmiToM(value);
            case "KM" -> Units.kmToM(value);
            case "MI" -> Units.statuteMileToM(value);
            case "CM" -> Units.cmToM(value);
            default ->
                    throw Unreadable.field(field, "has no unit that is known")
                            .found(unit)
                            .allowing("uom M or FT");
        };
    }

    /** The greatest length that a sentence names with its unit, m. */
    static OptionalDouble inWords(String sentence) {
        OptionalDouble greatest = OptionalDouble.empty();
        Matcher matcher = IN_WORDS.matcher(sentence.toUpperCase(Locale.ROOT));
        while (matcher.find()) {
            double value = Double.parseDouble(matcher.group(1));
            double metres = matcher.group(2).equals("M") ? value : Units.ftToM(value);
            greatest = OptionalDouble.of(Math.max(greatest.orElse(0), metres));
        }
        return greatest;
    }
}
