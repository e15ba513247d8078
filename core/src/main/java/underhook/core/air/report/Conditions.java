package underhook.core.air.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** What one report, trend or period says; what it does not say is absent. */
public final class Conditions {
    private final List<ReportField> fields;
    private final Map<Value, Double> values;

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

    private Conditions(List<ReportField> fields, Map<Value, Double> values) {
        this.fields = List.copyOf(fields);
        this.values = new EnumMap<>(values);
    }

    /** Every decoded value in the order of the report. */
    public List<ReportField> fields() {
        return fields;
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

        boolean has(Value value) {
            return values.containsKey(value);
        }

        Conditions toConditions() {
            return new Conditions(fields, values);
        }
    }
}
