package underhook.core.air.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.core.air.report.Conditions.Collector;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;

/**
 * Reads METAR, SPECI and TAF text.
 *
 * @source FAA-AIM section 7-1, key to aerodrome forecast and routine weather report
 */
public final class WeatherReports {
    private static final int LONGEST = 5000;
    private static final Pattern ISSUED = Pattern.compile("([0-9]{2})([0-9]{2})([0-9]{2})Z");
    private static final Pattern PERIOD =
            Pattern.compile("([0-9]{2})([0-9]{2})/([0-9]{2})([0-9]{2})");
    private static final Pattern FROM = Pattern.compile("FM([0-9]{2})([0-9]{2})([0-9]{2})");
    private static final Pattern TREND_TIME = Pattern.compile("(FM|TL|AT)([0-9]{2})([0-9]{2})");

    private WeatherReports() {}

    /**
     * Decodes one report.
     *
     * @return the report, with whatever was not understood listed in it, and REPORT_UNREADABLE for each
     *     group that cannot be meant as it stands; refused with it when nothing at all was understood
     */
    public static Outcome<WeatherReport> parse(String text) {
        String raw = text.strip();
        String line = raw.toUpperCase(Locale.ROOT).replace("=", " ").strip();
        if (line.isEmpty() || line.length() > LONGEST) {
            return refuse(line.isEmpty() ? "there is no text" : "the text is too long");
        }
        Reading reading = new Reading(List.of(line.split("\\s+")));
        WeatherReport report = reading.read(raw);
        if (!reading.understood) {
            return refuse("no group of it is known");
        }
        return Outcome.done(report, report.doubts());
    }

    private static Outcome<WeatherReport> refuse(String why) {
        return Outcome.refused(
                Finding.of(
                        FindingCode.REPORT_UNREADABLE,
                        Severity.STOP,
                        "report",
                        "",
                        "The report cannot be read: " + why + "."));
    }

    /** One reading of one report. Mutable. */
    private static final class Reading {
        private final List<String> groups;
        private final List<ReportField> head = new ArrayList<>();
        private final List<DayTime> issued = new ArrayList<>();
        private final List<DayTime> valid = new ArrayList<>();
        private final List<String> unparsed = new ArrayList<>();
        private final List<ReportPart> parts = new ArrayList<>();
        private final Collector main = new Collector();
        private Collector now = main;
        private String change = "";
        private List<DayTime> during = new ArrayList<>();
        private List<ReportField> times = new ArrayList<>();
        private boolean understood;
        private int at;

        Reading(List<String> groups) {
            this.groups = groups;
        }

        WeatherReport read(String raw) {
            boolean isTaf = readHead();
            while (at < groups.size()) {
                String group = groups.get(at);
                at++;
                if (group.equals("RMK")) {
                    readRemarks();
                } else if (!readChange(group, isTaf) && !readBody(group)) {
                    unparsed.add(group);
                }
            }
            closePart();
            return new WeatherReport(
                    isTaf ? WeatherReport.Kind.TAF : WeatherReport.Kind.METAR,
                    raw,
                    head,
                    issued,
                    valid,
                    main.toConditions(),
                    parts,
                    unparsed);
        }

        private boolean readHead() {
            String kind = groups.get(0);
            boolean isNamed = kind.matches("METAR|SPECI|TAF");
            at = isNamed ? 1 : 0;
            String report = isNamed ? kind : "METAR";
            head.add(new ReportField("report", report));
            readMarks();
            boolean isStation = at < groups.size() && groups.get(at).matches("[A-Z][A-Z0-9]{3}");
            boolean isTimeNext =
                    at + 1 < groups.size() && ISSUED.matcher(groups.get(at + 1)).matches();
            if (isStation && (isNamed || isTimeNext)) {
                head.add(new ReportField("station", groups.get(at)));
                understood = true;
                at++;
            }
            Matcher time = ISSUED.matcher(at < groups.size() ? groups.get(at) : "");
            if (time.matches() && addTime(issued, time, 1)) {
                head.add(new ReportField("issued", show(issued.get(0))));
                understood = true;
                at++;
            }
            readMarks();
            Matcher period = PERIOD.matcher(at < groups.size() ? groups.get(at) : "");
            boolean isTaf = report.equals("TAF");
            if (isTaf && period.matches() && addPeriod(valid, period)) {
                head.add(new ReportField("validFrom", show(valid.get(0))));
                head.add(new ReportField("validUntil", show(valid.get(1))));
                at++;
            }
            return isTaf;
        }

        private void readMarks() {
            while (at < groups.size() && groups.get(at).matches("COR|AMD|AUTO|NIL|CNL")) {
                head.add(new ReportField("mark", groups.get(at)));
                understood = true;
                at++;
            }
        }

        private boolean readBody(String group) {
            if (group.matches("/+|/+(KT|MPS)|NOSIG|AUTO|COR|NIL")) {
                if (!group.startsWith("/")) {
                    now.say("mark", group);
                }
                return true;
            }
            boolean isMixed =
                    group.matches("[0-9]{1,2}")
                            && at < groups.size()
                            && groups.get(at).matches("[0-9]{1,2}/[0-9]{1,2}SM");
            if (isMixed && Groups.read(group + " " + groups.get(at), now)) {
                at++;
                understood = true;
                return true;
            }
            boolean isKnown = Groups.read(group, now);
            understood |= isKnown;
            return isKnown;
        }

        private boolean readChange(String group, boolean isTaf) {
            Matcher from = FROM.matcher(group);
            if (from.matches() && isTaf) {
                openPart("FM");
                return addTimes(from);
            }
            if (group.matches("BECMG|TEMPO|PROB[0-9]{2}|INTER")) {
                boolean isDouble =
                        group.equals("TEMPO") && change.startsWith("PROB") && during.isEmpty();
                openPart(isDouble ? change + " TEMPO" : group);
                return true;
            }
            Matcher period = PERIOD.matcher(group);
            if (period.matches() && !change.isEmpty() && addPeriod(during, period)) {
                times.add(new ReportField("from", show(during.get(0))));
                times.add(new ReportField("until", show(during.get(1))));
                return true;
            }
            Matcher trend = TREND_TIME.matcher(group);
            if (trend.matches() && !change.isEmpty()) {
                return addTrendTime(trend);
            }
            return false;
        }

        private boolean addTimes(Matcher from) {
            if (!addTime(during, from, 1)) {
                return false;
            }
            times.add(new ReportField("from", show(during.get(0))));
            return true;
        }

        private boolean addTrendTime(Matcher trend) {
            int hour = Integer.parseInt(trend.group(2));
            int minute = Integer.parseInt(trend.group(3));
            if (hour > 24 || minute > 59) {
                return false;
            }
            String name =
                    switch (trend.group(1)) {
                        case "FM" -> "from";
                        case "TL" -> "until";
                        default -> "at";
                    };
            times.add(new ReportField(name, show(new DayTime(0, hour, minute))));
            return true;
        }

        private void openPart(String words) {
            boolean isGrowing = !change.isEmpty() && words.startsWith(change + " ");
            if (!isGrowing) {
                closePart();
                now = new Collector();
                during = new ArrayList<>();
                times = new ArrayList<>();
            }
            change = words;
            understood = true;
        }

        private void closePart() {
            if (!change.isEmpty()) {
                parts.add(new ReportPart(change, during, times, now.toConditions()));
                change = "";
            }
        }

        private void readRemarks() {
            closePart();
            List<String> rest = groups.subList(at, groups.size());
            rest.forEach(group -> Groups.remark(group, main));
            main.say("remarks", String.join(" ", rest));
            at = groups.size();
        }

        private static boolean addTime(List<DayTime> into, Matcher match, int first) {
            int day = Integer.parseInt(match.group(first));
            int hour = Integer.parseInt(match.group(first + 1));
            int minute = Integer.parseInt(match.group(first + 2));
            if (day < 1 || day > 31 || hour > 24 || minute > 59) {
                return false;
            }
            into.add(new DayTime(day, hour, minute));
            return true;
        }

        private static boolean addPeriod(List<DayTime> into, Matcher match) {
            int[] n = new int[4];
            for (int i = 0; i < 4; i++) {
                n[i] = Integer.parseInt(match.group(i + 1));
            }
            if (!into.isEmpty() || n[0] < 1 || n[0] > 31 || n[1] > 24 || n[2] < 1 || n[2] > 31) {
                return false;
            }
            if (n[3] > 24) {
                return false;
            }
            into.add(new DayTime(n[0], n[1], 0));
            into.add(new DayTime(n[2], n[3], 0));
            return true;
        }

        private static String show(DayTime time) {
            String clock = String.format(Locale.ROOT, "%02d:%02dZ", time.hour(), time.minute());
            return time.day() == 0
                    ? clock
                    : String.format(Locale.ROOT, "day %02d %s", time.day(), clock);
        }
    }
}
