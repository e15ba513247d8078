package underhook.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import underhook.core.plan.Leg;
import underhook.core.plan.ReleaseLook;

/**
 * Where nothing may be let go over something, merged as on the pilot's card: each thing over all stretches that it has a
 * part in, and those with the same ends together.
 *
 * @param what ids, with commas between them
 * @param fromM along the leg, whole metres, rounded down
 * @param toM along the leg, whole metres, rounded up
 */
record ClosedOver(String what, long fromM, long toM) {
    /** The card tells tenths of a kilometre: stretches that share one are told as one. */
    private static final double CARD_STEP_M = 100;

    static List<ClosedOver> of(Leg leg) {
        Map<String, List<ClosedOver>> byThing = new LinkedHashMap<>();
        for (ReleaseLook.Stretch part :
                leg.release().map(ReleaseLook::stretches).orElse(List.of())) {
            if (part.use() == ReleaseLook.Use.CLOSED) {
                List<String> things = part.what().isEmpty() ? List.of("") : part.what();
                for (String thing : things) {
                    join(
                            byThing.computeIfAbsent(thing, unused -> new ArrayList<>()),
                            new ClosedOver(
                                    thing,
                                    (long) Math.floor(part.fromM()),
                                    (long) Math.ceil(part.toM())));
                }
            }
        }
        Map<List<Long>, ClosedOver> alike = new LinkedHashMap<>();
        byThing.values().stream()
                .flatMap(List::stream)
                .forEach(one -> alike.merge(List.of(one.fromM, one.toM), one, ClosedOver::with));
        return alike.values().stream().sorted(Comparator.comparingLong(ClosedOver::fromM)).toList();
    }

    private static void join(List<ClosedOver> parts, ClosedOver next) {
        int last = parts.size() - 1;
        if (last >= 0 && parts.get(last).touches(next)) {
            ClosedOver before = parts.get(last);
            parts.set(
                    last, new ClosedOver(next.what, before.fromM, Math.max(before.toM, next.toM)));
        } else {
            parts.add(next);
        }
    }

    private boolean touches(ClosedOver next) {
        return Math.floor(next.fromM / CARD_STEP_M) <= Math.ceil(toM / CARD_STEP_M);
    }

    private ClosedOver with(ClosedOver other) {
        return new ClosedOver(what + ", " + other.what, fromM, toM);
    }
}
