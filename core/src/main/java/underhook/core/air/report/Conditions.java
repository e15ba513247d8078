package underhook.core.air.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;

/** What one report, trend or period says; what it does not say is absent. */
public final class Conditions {
    private final List<ReportField> fields;
    private final Map<Value, Double> values;
    private final List<Finding> doubts;
    private final List<DayTime> warmestAt;

    /** Values with a number, in SI. */
    enum Value {
        WIND_FROM_TRUE_RAD,
        WIND_M_PER_S,
        GUST_M_PER_S,
        VISIBILITY_M,
        TEMPERATURE_K,
        DEWPOINT_K,
        QNH_PA
    }

    private Conditions(Collector collected) {
        this.fields = List.copyOf(collected.fields);
        this.values = new EnumMap<>(collected.values);
        this.doubts = List.copyOf(collected.doubts);
        this.warmestAt = List.copyOf(collected.warmestAt);
    }

    /** Every decoded value in the order of the report. */
    public List<ReportField> fields() {
        return fields;
    }

    /** What is written there and cannot be: one REPORT_UNREADABLE for each group. */
    public List<Finding> doubts() {
        return doubts;
    }

    /** The times for which a highest temperature is forecast. */
    public List<DayTime> warmestAt() {
        return warmestAt;
    }

    /** Wind direction, rad from true north; absent when variable, calm or unknown. */
    public OptionalDouble findWindFromTrueRad() {
        return find(Value.WIND_FROM_TRUE_RAD);
    }

    /** Mean wind, m/s. */
    public OptionalDouble findWindMPerS() {
        return find(Value.WIND_M_PER_S);
    }

    /** Gust, m/s. */
    public OptionalDouble findGustMPerS() {
        return find(Value.GUST_M_PER_S);
    }

    /** Visibility, m; 10 km stands for 10 km or more. */
    public OptionalDouble findVisibilityM() {
        return find(Value.VISIBILITY_M);
    }

    /** Air temperature, K. */
    public OptionalDouble findTemperatureK() {
        return find(Value.TEMPERATURE_K);
    }

    /** Dew point, K. */
    public OptionalDouble findDewpointK() {
        return find(Value.DEWPOINT_K);
    }

    /** Altimeter setting, Pa. */
    public OptionalDouble findQnhPa() {
        return find(Value.QNH_PA);
    }

    private OptionalDouble find(Value value) {
        Double found = values.get(value);
        return found == null ? OptionalDouble.empty() : OptionalDouble.of(found);
    }

    /** Gathers conditions while a report is read. Mutable. */
    static final class Collector {
        private final List<ReportField> fields = new ArrayList<>();
        private final Map<Value, Double> values = new EnumMap<>(Value.class);
        private final List<Finding> doubts = new ArrayList<>();
        private final List<DayTime> warmestAt = new ArrayList<>();

        void say(String name, String value) {
            fields.add(new ReportField(name, value));
        }

        void set(Value value, double si) {
            values.put(value, si);
        }

        /** Of several for different hours the largest stands. */
        void setMost(Value value, double si) {
            values.merge(value, si, Math::max);
        }

        void warmestAt(DayTime time) {
            warmestAt.add(time);
        }

        /** A group that is decoded as it stands, though it cannot be meant so. */
        void doubt(Figures figures, String why) {
            doubts.add(
                    new Finding(
                            FindingCode.REPORT_UNREADABLE,
                            Severity.CAUTION,
                            "report",
                            figures.value,
                            figures.limit,
                            figures.unit,
                            "",
                            why));
        }

        /** What a doubted group says, and the most or least that could be. */
        record Figures(String value, String limit, String unit) {}

        boolean has(Value value) {
            return values.containsKey(value);
        }

        Conditions toConditions() {
            return new Conditions(this);
        }
    }
}
