package underhook.assembly;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import underhook.core.air.report.ReportField;
import underhook.core.air.report.WeatherReport;
import underhook.core.air.report.WeatherReports;
import underhook.core.finding.Outcome;

/** Weather reports as the calculation by hand shows them. */
final class Reports {
    /** Names of numbers end in their unit. */
    private static final Pattern NUMBER_NAME =
            Pattern.compile(".*(Deg|Kt|MPerS|M|Mi|C|Hpa|InHg|Ft|In)");

    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");

    private Reports() {}

    static Outcome<Map<String, Object>> decode(String text) {
        return WeatherReports.parse(text)
                .fold(
                        (report, findings) -> Outcome.done(fields(report), findings),
                        Outcome::refused);
    }

    /** What a report says twice, as layers of cloud, stands in one text. */
    private static Map<String, Object> fields(WeatherReport report) {
        Map<String, Object> fields = new LinkedHashMap<>();
        for (ReportField field : report.fields()) {
            fields.merge(field.name(), value(field), (one, other) -> one + " " + other);
        }
        return fields;
    }

    private static Object value(ReportField field) {
        boolean isNumber =
                NUMBER_NAME.matcher(field.name()).matches()
                        && NUMBER.matcher(field.value()).matches();
        return isNumber ? Double.valueOf(field.value()) : field.value();
    }
}
