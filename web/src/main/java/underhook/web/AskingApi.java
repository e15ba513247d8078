package underhook.web;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DeskChanges;
import underhook.app.desk.DeskJob;
import underhook.app.desk.Differences;
import underhook.app.desk.Question;
import underhook.app.desk.WhatIf;
import underhook.app.port.Archive;
import underhook.app.port.KeptJob.KeptPlan;
import underhook.app.port.KeptJob.Revision;
import underhook.core.finding.FindingCode;
import underhook.core.unit.Units;

/** Answers what would be if, what changed, and takes the word of whoever answers for a finding. */
final class AskingApi {
    private static final int MOST_REASON = 500;

    private final WhatIf whatIf;
    private final ReadingApi reading;

    AskingApi(WhatIf whatIf, ReadingApi reading) {
        this.whatIf = whatIf;
        this.reading = reading;
    }

    void addTo(Routes routes) {
        routes.add("POST", "/api/jobs/{id}/whatif", this::ask)
                .add("POST", "/api/jobs/{id}/whatif/stop", this::stop)
                .add("POST", "/api/jobs/{id}/whatif/accept", this::accept)
                .add("POST", "/api/jobs/{id}/overrides", this::override)
                .add("PATCH", "/api/jobs/{id}/features", this::feature)
                .add("GET", "/api/jobs/{id}/versions", this::versions)
                .add("GET", "/api/jobs/{id}/versions/{pair}", this::differences);
    }

    private void ask(Call call) throws IOException {
        WhatIf.Answer answer = whatIf.ask(reading.job(call), question(call.json()));
        ObjectNode node = Json.object();
        node.put("possible", answer.isPossible());
        node.put("why", answer.why());
        node.put("minutesDelta", Units.sToMinutes(answer.flightS()));
        node.put("finishDelta", Units.sToMinutes(answer.finishS()));
        node.put("fuelDelta", answer.fuelKg());
        node.set("findingsNew", Json.array(answer.appeared(), Json::finding));
        node.set("findingsGone", Json.array(answer.gone(), Json::finding));
        node.set("leftOutNew", Json.texts(answer.leftOut()));
        node.put("cutShort", answer.cutShort());
        answer.inTime()
                .ifPresent(
                        chance -> {
                            ObjectNode inTime = node.putObject("inTime");
                            inTime.put("countedPercent", 100 * chance.countedFraction());
                            inTime.put("leastPercent", 100 * chance.leastFraction());
                        });
        call.answer(node);
    }

    private void stop(Call call) throws IOException {
        whatIf.stop(reading.job(call));
        call.answer(Json.object());
    }

    private void accept(Call call) throws IOException {
        DeskJob job = reading.job(call);
        ObjectNode asked = call.json();
        whatIf.accept(job, question(asked), Asked.revision(asked));
        call.answer(reading.json(job));
    }

    private static Question question(ObjectNode asked) throws Refused {
        for (Question.What what : Question.What.values()) {
            JsonNode put = asked.path(what.name().toLowerCase(Locale.ROOT));
            if (put.isObject()) {
                String field = what == Question.What.MOVE ? "after" : "value";
                JsonNode value = put.path(field);
                if (!value.isValueNode() || value.asString("").isBlank()) {
                    throw new Refused(400, field + " is missing.");
                }
                return new Question(what, Asked.whole(put, "lift"), value.asString(""));
            }
        }
        throw new Refused(400, "Ask for move, line, machine, laydown, hour, fuel, rate or sure.");
    }

    private void override(Call call) throws IOException {
        DeskJob job = reading.job(call);
        ObjectNode asked = call.json();
        String word = Asked.text(asked, "code");
        FindingCode code =
                Arrays.stream(FindingCode.values())
                        .filter(one -> one.name().equals(word.split(" ", 2)[0]))
                        .findFirst()
                        .orElseThrow(
                                () -> new Refused(400, word + " can be overridden by nobody."));
        DeskChanges.Answered answered =
                new DeskChanges.Answered(
                        code,
                        Asked.text(asked, "subject", 100),
                        Asked.text(asked, "reason", MOST_REASON),
                        Asked.text(asked, "by", 100));
        new DeskChanges(job, Asked.revision(asked)).override(answered);
        call.answer(reading.json(job));
    }

    private void feature(Call call) throws IOException {
        DeskJob job = reading.job(call);
        new FeatureChange(job, call.json()).make();
        call.answer(reading.json(job));
    }

    private void versions(Call call) throws IOException {
        DeskJob job = reading.job(call);
        List<Revision> revisions = new ArrayList<>(job.kept().listRevisions());
        java.util.Collections.reverse(revisions);
        List<KeptPlan> plans = job.kept().listPlans();
        Archive archive = job.kept().readArchive();
        ArrayNode all = Json.array();
        for (Revision revision : revisions) {
            ObjectNode one = all.addObject();
            one.put("id", revision.id());
            one.put("revision", revision.id());
            one.put("at", revision.at().toString());
            one.put("what", revision.what());
            one.put("who", who(archive, revision));
            one.put("altered", archive.broken().orElse(""));
            Optional<String> plan =
                    plans.stream()
                            .filter(each -> each.revision() == revision.id())
                            .map(KeptPlan::id)
                            .reduce((first, second) -> second);
            one.put("plan", plan.orElse(null));
        }
        call.answer(all);
    }

    private static String who(Archive archive, Revision revision) {
        String number = Long.toString(revision.id());
        return archive.entries().stream()
                .filter(entry -> entry.kind() == Archive.Kind.REVISION)
                .filter(entry -> entry.subject().equals(number))
                .map(Archive.Entry::who)
                .findFirst()
                .orElse("");
    }

    private void differences(Call call) throws IOException {
        DeskJob job = reading.job(call);
        String[] pair = call.part("pair").split("\\.\\.", 2);
        if (pair.length != 2) {
            throw Refused.unknown();
        }
        long older = Asked.number(pair[0]);
        long newer = Asked.number(pair[1]);
        List<Long> known = job.kept().listRevisions().stream().map(Revision::id).toList();
        if (!known.contains(older) || !known.contains(newer)) {
            throw Refused.unknown();
        }
        List<String> words = Differences.between(job, older, newer);
        ObjectNode node = Json.object();
        node.set("differences", Json.texts(words));
        call.answer(node);
    }
}
