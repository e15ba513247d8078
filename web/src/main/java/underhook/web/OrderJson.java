package underhook.web;

import java.time.ZoneId;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.flying.NewOrder;
import underhook.app.port.Written;
import underhook.app.replan.Proposal;
import underhook.core.finding.Finding;
import underhook.core.plan.Anew;

/** A new order as it is offered. */
final class OrderJson {
    private OrderJson() {}

    static ObjectNode of(NewOrder.Offer offer) {
        Proposal proposal = offer.proposal();
        ObjectNode node = Json.object();
        node.put("plan", proposal.plan().id());
        node.set("because", Json.texts(offer.because()));
        node.set("differences", Json.texts(proposal.differences()));
        node.put("verified", proposal.isVerified());
        node.set(
                "violations",
                Json.texts(proposal.broken().stream().map(Finding::message).toList()));
        node.set("over", Json.texts(proposal.over().stream().map(Finding::message).toList()));
        node.set(
                "unhooked",
                Json.texts(proposal.unhooked().stream().map(Finding::message).toList()));
        node.set("moved", Json.texts(proposal.moved()));
        node.set(
                "leftOut",
                Json.array(
                        proposal.leftOut(),
                        one ->
                                Json.object()
                                        .put("load", one.load().value())
                                        .put("message", one.message())));
        node.put("flightMin", Written.up(proposal.flightS() / 60, 0));
        node.put("finishMin", Written.up(proposal.finishS() / 60, 0));
        node.set("costs", costs(proposal.costs(), proposal.job().job().zone()));
        node.put("tookMs", proposal.took().toMillis());
        return node;
    }

    private static ObjectNode costs(Anew anew, ZoneId zone) {
        ObjectNode node = Json.object();
        node.put("fromAt", Written.time(anew.fromAt(), zone));
        node.put("restCents", anew.rest().totalCents());
        node.put(
                "moreCents",
                anew.moreCents().isPresent() ? Long.valueOf(anew.moreCents().getAsLong()) : null);
        node.put("currency", anew.rest().currency());
        return node;
    }
}
