package underhook.core.air.report;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.core.air.report.Conditions.Collector;
import underhook.core.air.report.Conditions.Collector.Figures;
import underhook.core.air.report.Conditions.Value;
import underhook.core.unit.Units;

/**
 * Reads single groups of a report.
 *
 * @source FAA-AIM section 7-1, key to aerodrome forecast and routine weather report
 */
final class Groups {
    private static final Pattern WIND =
            Pattern.compile(
                    "([0-9]{3}|VRB|///)(P?[0-9]{2,3}|//)(?:G(P?[0-9]{2,3}|//))?(KT|MPS|KMH)");
    private static final Pattern VARYING = Pattern.compile("([0-9]{3})V([0-9]{3})");
    private static final Pattern METRES = Pattern.compile("([0-9]{4})(NDV|[NESW]{1,2})?");
    private static final Pattern MILES =
            Pattern.compile("([PM]?)(?:([0-9]{1,2}) )?([0-9]{1,2})(?:/([0-9]{1,2}))?SM");
    private static final Pattern RUNWAY =
            Pattern.compile(
                    "R([0-9]{2}[LCR]?)/([PM]?)([0-9]{4})(?:V([PM]?)([0-9]{4}))?(FT)?/?([UDN]?)");
    private static final Pattern WEATHER =
            Pattern.compile(
                    "(?:RE)?(?:[+-]|VC)?(?:MI|BC|PR|DR|BL|SH|TS|FZ)?"
                            + "(?:DZ|RA|SN|SG|IC|PL|GR|GS|UP|BR|FG|FU|VA|DU|SA|HZ|PY|PO|SQ|FC|SS|DS"
                            + "|TS|SH)+(?:TS)?|[+-]?TS|VCTS|VCSH");
    private static final Pattern CLOUD =
            Pattern.compile("(FEW|SCT|BKN|OVC|VV|///)([0-9]{3}|///)(CB|TCU|///)?");
    private static final Pattern TEMPERATURES =
            Pattern.compile("(M?[0-9]{2}|//|XX)/(M?[0-9]{2}|//|XX)?");
    private static final Pattern QNH = Pattern.compile("([QA])([0-9]{4}|////)");
    private static final Pattern SHEAR = Pattern.compile("WS([0-9]{3})/([0-9]{3})([0-9]{2,3})KT");
    private static final Pattern TAF_TEMPERATURE =
            Pattern.compile("T([XN])(M?[0-9]{2})/(0[1-9]|[12][0-9]|3[01])([01][0-9]|2[0-4])Z");
    private static final Pattern SEA_LEVEL = Pattern.compile("SLP([0-9]{3})");
    private static final Pattern TENTHS = Pattern.compile("T([01])([0-9]{3})(?:([01])([0-9]{3}))?");
    private static final Pattern HOURLY_RAIN = Pattern.compile("P([0-9]{4})");

    private Groups() {}

    /** Reads a group of a report's body; false when it is not understood. */
    static boolean read(String group, Collector into) {
        return wind(group, into)
                || visibility(group, into)
                || runway(group, into)
                || temperatures(group, into)
                || pressure(group, into)
                || cloud(group, into)
                || shear(group, into)
                || weather(group, into);
    }

    private static boolean wind(String group, Collector into) {
        Matcher varying = VARYING.matcher(group);
        if (varying.matches()) {
            into.say("windVaryingFromDeg", whole(varying.group(1)));
            into.say("windVaryingToDeg", whole(varying.group(2)));
            return true;
        }
        Matcher wind = WIND.matcher(group);
        if (!wind.matches()) {
            return false;
        }
        boolean isCalm = wind.group(1).equals("000") && wind.group(2).equals("00");
        boolean isDirection = Character.isDigit(wind.group(1).charAt(0));
        if (isDirection && Integer.parseInt(wind.group(1)) > 360) {
            return false;
        }
        if (isCalm) {
            into.say("wind", "calm");
        } else if (isDirection) {
            into.say("windFromTrueDeg", whole(wind.group(1)));
            into.set(Value.WIND_FROM_TRUE_RAD, Units.degToRad(Double.parseDouble(wind.group(1))));
        } else if (wind.group(1).equals("VRB")) {
            into.say("wind", "variable");
        }
        speed("wind", Value.WIND_M_PER_S, new String[] {wind.group(2), wind.group(4)}, into);
        if (wind.group(3) != null) {
            speed("gust", Value.GUST_M_PER_S, new String[] {wind.group(3), wind.group(4)}, into);
            doubtGust(wind, into);
        }
        return true;
    }

    /** A gust is a peak of the wind whose mean is said. */
    private static void doubtGust(Matcher wind, Collector into) {
        String mean = wind.group(2).replace("P", "");
        String gust = wind.group(3).replace("P", "");
        boolean bothKnown = !mean.contains("/") && !gust.contains("/");
        if (bothKnown && Integer.parseInt(gust) < Integer.parseInt(mean)) {
            into.doubt(
                    new Figures(whole(gust), whole(mean), wind.group(4)),
                    "The gust in \"" + wind.group() + "\" is below the mean wind.");
        }
    }

    private static void speed(String name, Value value, String[] textAndUnit, Collector into) {
        String digits = textAndUnit[0].replace("P", "");
        if (digits.contains("/")) {
            return;
        }
        double typed = Double.parseDouble(digits);
        double mPerS =
                switch (textAndUnit[1]) {
                    case "KT" -> Units.ktToMPerS(typed);
                    case "KMH" -> Units.kmPerHourToMPerS(typed);
                    default -> typed;
                };
        if (!digits.equals(textAndUnit[0])) {
            into.say(name + "Above", "yes");
        }
        into.say(name + "Kt", text(Units.mPerSToKt(mPerS), 1));
        into.say(name + "MPerS", text(mPerS, 1));
        into.set(value, mPerS);
    }

    private static boolean visibility(String group, Collector into) {
        if (group.equals("CAVOK")) {
            into.say("visibilityM", "10000");
            into.say("visibilityBound", "above");
            into.say("cloud", "CAVOK");
            into.set(Value.VISIBILITY_M, 10_000);
            return true;
        }
        Matcher metres = METRES.matcher(group);
        if (metres.matches()) {
            boolean isMost = metres.group(1).equals("9999");
            boolean isFirst = !into.has(Value.VISIBILITY_M);
            double valueM = isMost ? 10_000 : Double.parseDouble(metres.group(1));
            into.say(isFirst ? "visibilityM" : "visibilityLeastM", text(valueM, 0));
            if (isMost) {
                into.say("visibilityBound", "above");
            }
            if (isFirst) {
                into.set(Value.VISIBILITY_M, valueM);
            }
            return true;
        }
        Matcher miles = MILES.matcher(group);
        boolean isMiles = miles.matches();
        if (!isMiles || (miles.group(4) != null && Integer.parseInt(miles.group(4)) == 0)) {
            return false;
        }
        double value = Double.parseDouble(miles.group(3));
        value /= miles.group(4) == null ? 1 : Double.parseDouble(miles.group(4));
        value += miles.group(2) == null ? 0 : Double.parseDouble(miles.group(2));
        double valueM = Units.statuteMileToM(value);
        into.say("visibilityMi", trimmed(value));
        into.say("visibilityM", text(valueM, 0));
        if (!miles.group(1).isEmpty()) {
            into.say("visibilityBound", miles.group(1).equals("P") ? "above" : "below");
        }
        into.set(Value.VISIBILITY_M, valueM);
        return true;
    }

    private static boolean runway(String group, Collector into) {
        Matcher runway = RUNWAY.matcher(group);
        if (!runway.matches()) {
            return false;
        }
        String name = "runway" + runway.group(1);
        String unit = runway.group(6) == null ? "M" : "Ft";
        into.say(name + "Visual" + unit, bound(runway.group(2)) + whole(runway.group(3)));
        if (runway.group(5) != null) {
            into.say(name + "VisualMost" + unit, bound(runway.group(4)) + whole(runway.group(5)));
        }
        if (!runway.group(7).isEmpty()) {
            String tendency = runway.group(7);
            into.say(
                    name + "Tendency",
                    tendency.equals("U") ? "upward" : tendency.equals("D") ? "downward" : "none");
        }
        return true;
    }

    private static String bound(String mark) {
        return mark.equals("P") ? "above " : mark.equals("M") ? "below " : "";
    }

    private static boolean temperatures(String group, Collector into) {
        Matcher tafTemperature = TAF_TEMPERATURE.matcher(group);
        if (tafTemperature.matches()) {
            boolean isMost = tafTemperature.group(1).equals("X");
            double valueC = celsius(tafTemperature.group(2));
            into.say(isMost ? "temperatureMaxC" : "temperatureMinC", text(valueC, 0));
            if (isMost) {
                into.setMost(Value.TEMPERATURE_K, Units.celsiusToKelvin(valueC));
                into.warmestAt(
                        new DayTime(
                                Integer.parseInt(tafTemperature.group(3)),
                                Integer.parseInt(tafTemperature.group(4)),
                                0));
            }
            return true;
        }
        Matcher pair = TEMPERATURES.matcher(group);
        if (!pair.matches()) {
            return false;
        }
        if (isKnown(pair.group(1))) {
            into.say("temperatureC", text(celsius(pair.group(1)), 0));
            into.set(Value.TEMPERATURE_K, Units.celsiusToKelvin(celsius(pair.group(1))));
        }
        if (pair.group(2) != null && isKnown(pair.group(2))) {
            into.say("dewpointC", text(celsius(pair.group(2)), 0));
            into.set(Value.DEWPOINT_K, Units.celsiusToKelvin(celsius(pair.group(2))));
            if (isKnown(pair.group(1))) {
                doubtDew(
                        group,
                        Units.celsiusToKelvin(celsius(pair.group(1))),
                        Units.celsiusToKelvin(celsius(pair.group(2))),
                        into);
            }
        }
        return true;
    }

    /**
     * Both are rounded alike, so that no rounding brings the one above the other.
     *
     * @source DERIVED air cooled to its dewpoint is saturated, so that it is at least as warm
     */
    private static void doubtDew(String group, double airK, double dewK, Collector into) {
        if (dewK > airK) {
            into.doubt(
                    new Figures(
                            trimmed(Units.kelvinToCelsius(dewK)),
                            trimmed(Units.kelvinToCelsius(airK)),
                            "°C"),
                    "The dewpoint in \""
                            + group
                            + "\" is above the temperature, which no air has. Perhaps the two are"
                            + " swapped, or a minus (M) is missing.");
        }
    }

    private static boolean isKnown(String text) {
        return !text.contains("/") && !text.contains("X");
    }

    private static double celsius(String text) {
        return text.startsWith("M")
                ? -Double.parseDouble(text.substring(1))
                : Double.parseDouble(text);
    }

    private static boolean pressure(String group, Collector into) {
        Matcher qnh = QNH.matcher(group);
        if (!qnh.matches()) {
            return false;
        }
        if (!qnh.group(2).contains("/")) {
            double typed = Double.parseDouble(qnh.group(2));
            boolean isHpa = qnh.group(1).equals("Q");
            double qnhPa = isHpa ? Units.hpaToPa(typed) : Units.inHgToPa(typed / 100);
            into.say("qnhHpa", text(Units.paToHpa(qnhPa), isHpa ? 0 : 1));
            into.say("qnhInHg", text(qnhPa / Units.inHgToPa(1), 2));
            into.set(Value.QNH_PA, qnhPa);
        }
        return true;
    }

    private static boolean cloud(String group, Collector into) {
        if (group.matches("SKC|CLR|NSC|NCD")) {
            into.say("cloud", group);
            return true;
        }
        Matcher cloud = CLOUD.matcher(group);
        if (!cloud.matches()) {
            return false;
        }
        String amount = cloud.group(1);
        if (!amount.equals("///")) {
            String base =
                    cloud.group(2).equals("///")
                            ? ""
                            : " " + 100 * Integer.parseInt(cloud.group(2)) + " ft";
            String kind =
                    cloud.group(3) == null || cloud.group(3).equals("///")
                            ? ""
                            : " " + cloud.group(3);
            into.say("cloud", amount + base + kind);
        }
        return true;
    }

    private static boolean shear(String group, Collector into) {
        Matcher shear = SHEAR.matcher(group);
        if (!shear.matches()) {
            return false;
        }
        into.say("windShearToFt", Integer.toString(100 * Integer.parseInt(shear.group(1))));
        into.say("windShearFromTrueDeg", whole(shear.group(2)));
        into.say("windShearKt", whole(shear.group(3)));
        return true;
    }

    private static boolean weather(String group, Collector into) {
        if (!group.equals("NSW") && !WEATHER.matcher(group).matches()) {
            return false;
        }
        into.say("weather", group);
        return true;
    }

    /** Reads a remark; what has no number that counts here is left to the remark's text. */
    static void remark(String group, Collector into) {
        Matcher seaLevel = SEA_LEVEL.matcher(group);
        Matcher tenths = TENTHS.matcher(group);
        Matcher rain = HOURLY_RAIN.matcher(group);
        if (seaLevel.matches()) {
            double tens = Double.parseDouble(seaLevel.group(1)) / 10;
            into.say("seaLevelPressureHpa", text(tens < 50 ? 1000 + tens : 900 + tens, 1));
        } else if (tenths.matches()) {
            double airC = tenths(tenths.group(1), tenths.group(2));
            into.say("temperaturePreciseC", text(airC, 1));
            into.set(Value.TEMPERATURE_K, Units.celsiusToKelvin(airC));
            if (tenths.group(4) != null) {
                double dewC = tenths(tenths.group(3), tenths.group(4));
                into.say("dewpointPreciseC", text(dewC, 1));
                into.set(Value.DEWPOINT_K, Units.celsiusToKelvin(dewC));
                doubtDew(group, Units.celsiusToKelvin(airC), Units.celsiusToKelvin(dewC), into);
            }
        } else if (rain.matches()) {
            into.say("precipitationIn", text(Double.parseDouble(rain.group(1)) / 100, 2));
        }
    }

    private static double tenths(String sign, String digits) {
        double value = Double.parseDouble(digits) / 10;
        return sign.equals("1") ? -value : value;
    }

    private static String whole(String digits) {
        return Integer.toString(Integer.parseInt(digits));
    }

    private static String trimmed(double value) {
        return text(value, 4).replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    static String text(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
