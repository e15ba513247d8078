package underhook.app.port;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.job.PlaceId;

/**
 * Whom to call and what to do when it goes wrong, as the job states it.
 *
 * @param calls in the order to call
 * @param isolations who makes a line dead, and how
 * @param landings where a rescue machine may land, and for which places
 * @param overdueS silence after which a search begins, s
 * @param curfewAt when flying must end whatever the light
 */
public record EmergencyPlan(
        List<Call> calls,
        List<Isolation> isolations,
        List<RescueLanding> landings,
        OptionalDouble overdueS,
        Optional<Instant> curfewAt) {
    /** Nothing is stated. */
    public static final EmergencyPlan NONE =
            new EmergencyPlan(
                    List.of(), List.of(), List.of(), OptionalDouble.empty(), Optional.empty());

    /** Somebody to call. */
    public record Call(String who, String number, String say) {}

    /** Who makes which line dead. */
    public record Isolation(String line, String who, String number, String how) {}

    /**
     * Where a rescue machine may land.
     *
     * @param serves places that it is for; empty means all
     */
    public record RescueLanding(PlaceId place, List<PlaceId> serves, String remarks) {
        public RescueLanding {
            serves = List.copyOf(serves);
        }
    }

    public EmergencyPlan {
        calls = List.copyOf(calls);
        isolations = List.copyOf(isolations);
        landings = List.copyOf(landings);
    }
}
