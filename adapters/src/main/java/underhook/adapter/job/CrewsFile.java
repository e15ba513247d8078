package underhook.adapter.job;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.JobDay;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Language;
import underhook.core.job.PlaceId;
import underhook.core.job.Walk;
import underhook.core.unit.Units;

/**
 * Reads crews and their ways on foot.
 *
 * @param crews every crew without a fault
 * @param walks every way without a fault
 */
record CrewsFile(List<Crew> crews, List<Walk> walks) {
    static CrewsFile read(Fields fields, JobDay day, Mentions mentions) {
        Versions.check(fields);
        List<Crew> crews = new ArrayList<>();
        List<Walk> walks = new ArrayList<>();
        if (fields.findNode("crews").isEmpty()) {
            fields.missing("crews");
        }
        for (Fields row : fields.mappings("crews")) {
            readCrew(row, day, mentions, crews);
        }
        for (Fields row : fields.mappings("walks")) {
            readWalk(row, mentions, walks);
        }
        fields.refuseUnknown();
        return new CrewsFile(crews, walks);
    }

    private static void readCrew(Fields row, JobDay day, Mentions mentions, List<Crew> crews) {
        int before = row.source().faults().count();
        String id = row.id("id");
        mentions.declare(Family.CREW, row, "id", id);
        int people = row.whole("people", Range.of(1, 200, "a whole number from 1 to 200"));
        double massKg =
                row.quantity(
                        "mass_each", Quantity.MASS, Range.of(30, 300, "between 30 and 300 kg"));
        String start = row.id("start");
        mentions.mention(Family.PLACE, row, "start", start);
        Instant from = row.time("from", day);
        List<Crew.Role> listed = row.choices("roles", Crew.Role.class);
        boolean stays = row.yesNo("stays", false);
        List<String> serves = row.ids("serves");
        serves.forEach(place -> mentions.mention(Family.PLACE, row, "serves", place));
        Language language = row.findChoice("language", Language.class).orElse(Language.EN);
        row.refuseUnknown();
        if (row.source().faults().count() == before) {
            Set<Crew.Role> roles =
                    listed.isEmpty() ? EnumSet.noneOf(Crew.Role.class) : EnumSet.copyOf(listed);
            crews.add(
                    new Crew(
                            new CrewId(id),
                            people,
                            massKg,
                            new PlaceId(start),
                            from,
                            roles,
                            stays,
                            serves.stream().map(PlaceId::new).toList(),
                            language));
        }
    }

    private static void readWalk(Fields row, Mentions mentions, List<Walk> walks) {
        int before = row.source().faults().count();
        List<String> between = row.ids("between");
        between.forEach(place -> mentions.mention(Family.PLACE, row, "between", place));
        double minutes = row.number("minutes", Range.above(0, 1439, "above 0, below a day"));
        row.refuseUnknown();
        if (between.size() != 2) {
            row.fault(
                    FindingCode.FIELD_UNREADABLE,
                    "between",
                    "is no pair",
                    new Found(String.join(", ", between), "two places such as [S14, S13]"));
        }
        if (between.size() == 2 && between.get(0).equals(between.get(1))) {
            row.fault(
                    FindingCode.FIELD_UNREADABLE,
                    "between",
                    "is one place",
                    new Found(String.join(", ", between), "two places such as [S14, S13]"));
        }
        if (row.source().faults().count() > before) {
            return;
        }
        PlaceId one = new PlaceId(between.get(0));
        PlaceId other = new PlaceId(between.get(1));
        // Two times for one way: nobody could say which of them is walked.
        if (walks.stream().anyMatch(walk -> isBetween(walk, one, other))) {
            row.fault(
                    FindingCode.ID_DUPLICATE,
                    "between",
                    "is a way that stands there already",
                    new Found(String.join(", ", between), "each way once; it counts both ways"));
            return;
        }
        walks.add(new Walk(one, other, Units.minutesToS(minutes)));
    }

    private static boolean isBetween(Walk walk, PlaceId one, PlaceId other) {
        return (walk.one().equals(one) && walk.other().equals(other))
                || (walk.one().equals(other) && walk.other().equals(one));
    }
}
