package underhook.adapter.job;

import java.util.Optional;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.core.job.ComfortRates;

/** Reads what it costs to refuse a comfort. */
final class ComfortFields {
    private static final Range RATE = Range.of(0, 1000, "between 0 and 1000");
    private static final Range WIND = Range.of(0, 75, "between 0 and 75 m/s");

    private ComfortFields() {}

    /** The rates within the costs; what is not stated costs nothing. */
    static ComfortRates read(Fields costs) {
        Optional<Fields> mapping = costs.findMapping("refused_comforts");
        if (mapping.isEmpty()) {
            return ComfortRates.NONE;
        }
        Fields fields = mapping.get();
        ComfortRates rates =
                new ComfortRates(
                        cents(fields, "sun_ahead_per_set_down"),
                        cents(fields, "sun_beside_per_set_down"),
                        cents(fields, "tailwind_per_kt"),
                        cents(fields, "crosswind_per_kt"),
                        fields.findQuantity("crosswind_free", Quantity.SPEED, WIND).orElse(0),
                        cents(fields, "walk_per_min"));
        fields.refuseUnknown();
        return rates;
    }

    private static long cents(Fields fields, String name) {
        return fields.has(name) ? RulesFile.cents(fields, name, RATE) : 0;
    }
}
