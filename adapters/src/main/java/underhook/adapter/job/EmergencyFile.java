package underhook.adapter.job;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.JobDay;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.app.port.EmergencyPlan;
import underhook.core.job.PlaceId;

/** Reads whom to call and what to do when it goes wrong. */
final class EmergencyFile {
    private static final Range SILENCE = Range.of(60, 24 * 3600, "between 1 minute and 24 hours");

    private final EmergencyPlan plan;
    private final List<Named> named = new ArrayList<>();

    /** An id that must be the job's. */
    private record Named(Fields fields, Family family, String field, String id) {}

    private EmergencyFile(Fields fields, JobDay day) {
        Versions.check(fields);
        List<EmergencyPlan.Call> calls = new ArrayList<>();
        for (Fields row : fields.mappings("call")) {
            calls.add(
                    new EmergencyPlan.Call(
                            row.text("who"), row.text("number"), row.text("say", "")));
            row.refuseUnknown();
        }
        List<EmergencyPlan.Isolation> isolations = new ArrayList<>();
        for (Fields row : fields.mappings("isolation")) {
            String line = row.text("line");
            name(row, Family.WIRE, "line", line);
            isolations.add(
                    new EmergencyPlan.Isolation(
                            line, row.text("who"), row.text("number"), row.text("how", "")));
            row.refuseUnknown();
        }
        List<EmergencyPlan.RescueLanding> landings = new ArrayList<>();
        for (Fields row : fields.mappings("rescue_landings")) {
            readLanding(row).ifPresent(landings::add);
        }
        OptionalDouble overdueS = fields.findQuantity("overdue", Quantity.TIME, SILENCE);
        Optional<Instant> curfewAt = fields.findTime("curfew", day);
        fields.refuseUnknown();
        plan = new EmergencyPlan(calls, isolations, landings, overdueS, curfewAt);
    }

    /** Everything that can be read. */
    static EmergencyFile read(Fields fields, JobDay day) {
        return new EmergencyFile(fields, day);
    }

    private Optional<EmergencyPlan.RescueLanding> readLanding(Fields row) {
        int before = row.source().faults().count();
        String place = row.id("place");
        name(row, Family.PLACE, "place", place);
        List<String> serves = row.ids("serves");
        serves.forEach(id -> name(row, Family.PLACE, "serves", id));
        String remarks = row.text("remarks", "");
        row.refuseUnknown();
        return row.source().faults().count() == before
                ? Optional.of(
                        new EmergencyPlan.RescueLanding(
                                new PlaceId(place),
                                serves.stream().map(PlaceId::new).toList(),
                                remarks))
                : Optional.empty();
    }

    private void name(Fields row, Family family, String field, String id) {
        if (!id.isEmpty()) {
            named.add(new Named(row, family, field, id));
        }
    }

    EmergencyPlan plan() {
        return plan;
    }

    /** Says which ids must be the job's. */
    void mention(Mentions mentions) {
        named.forEach(one -> mentions.mention(one.family(), one.fields(), one.field(), one.id()));
    }
}
