package underhook.web;

import java.io.IOException;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.compare.CompareDays;
import underhook.app.compare.DayFigures;
import underhook.app.desk.DeskJob;
import underhook.app.desk.SideBySide;
import underhook.app.desk.SideBySide.Offer;
import underhook.app.port.Written;
import underhook.core.unit.Units;

/** Sets the ways in which a job could be done side by side. */
final class WaysApi {
    private final SideBySide days;
    private final ReadingApi reading;

    WaysApi(SideBySide days, ReadingApi reading) {
        this.days = days;
        this.reading = reading;
    }

    void addTo(Routes routes) {
        routes.add("GET", "/api/jobs/{id}/ways", call -> tell(call, reading.job(call)))
                .add("POST", "/api/jobs/{id}/ways/stop", this::stop)
                .add("POST", "/api/jobs/{id}/ways/{number}", this::workOut);
    }

    private void stop(Call call) throws IOException {
        days.stop(reading.job(call));
        call.answer(Json.object());
    }

    private void workOut(Call call) throws IOException {
        DeskJob job = reading.job(call);
        String number = call.part("number");
        if (!number.matches("[0-9]{1,4}")) {
            throw Refused.unknown();
        }
        days.workOut(job, Integer.parseInt(number));
        tell(call, job);
    }

    private void tell(Call call, DeskJob job) throws IOException {
        List<Offer> offers = days.list(job);
        List<CompareDays.Row> rows =
                offers.stream().flatMap(offer -> offer.row().stream()).toList();
        Map<CompareDays.Row, CompareDays.Rank> ranks = CompareDays.rankLaydowns(rows);
        ZoneId zone = offers.get(0).way().job().job().zone();
        ArrayNode all = Json.array();
        for (Offer offer : offers) {
            ObjectNode node = json(offer, zone);
            Optional.ofNullable(ranks.get(offer.row().orElse(null)))
                    .ifPresent(
                            rank ->
                                    node.put("rankByMinutes", rank.byMinutes())
                                            .put("rankByGround", rank.byGround()));
            all.add(node);
        }
        call.answer(all);
    }

    private static ObjectNode json(Offer offer, ZoneId zone) {
        ObjectNode node = Json.object();
        node.put("kind", offer.way().kind().name().toLowerCase(Locale.ROOT));
        node.put("words", offer.way().words());
        node.set("asIf", Json.texts(offer.way().assumed()));
        node.put("known", offer.row().isPresent());
        offer.row().ifPresent(row -> node.put("why", row.why()));
        offer.row()
                .flatMap(CompareDays.Row::figures)
                .ifPresent(figures -> node.set("figures", json(figures, zone)));
        return node;
    }

    private static ObjectNode json(DayFigures one, ZoneId zone) {
        ObjectNode node = Json.object();
        node.put("flightMinutes", Units.sToMinutes(one.flightS()));
        node.put("finishAt", Written.time(one.finishAt(), zone));
        one.price()
                .ifPresent(
                        price ->
                                node.put("totalCents", price.totalCents())
                                        .put("comfortsCents", price.comfortsCents())
                                        .put("currency", price.currency()));
        node.put("refuels", one.refuels());
        node.put("lineChanges", one.lineChanges());
        node.set("leftOut", Json.texts(one.leftOut()));
        node.put("closedSeconds", Math.ceil(one.over().closedS()));
        node.put("guardedSeconds", Math.ceil(one.over().guardedS()));
        node.put("longestSeconds", Math.ceil(one.over().longestS()));
        ObjectNode crossings = node.putObject("crossings");
        one.over().crossings().forEach(crossings::put);
        node.put("cutShort", one.cutShort());
        return node;
    }
}
