package underhook.app.port;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.flown.Tap;

/**
 * A tap in the log, tied to the one before it.
 *
 * @param number from 1, without a gap
 * @param hash of all that stands in this row and of the hash before it
 */
public record KeptTap(long number, Tap tap, Arrival arrival, String hash) {
    /** Stands before the first row. */
    public static final String NO_HASH = "0".repeat(64);

    /**
     * How a tap came in.
     *
     * @param role what whoever tapped does on the day: pilot, loader, crew or desk
     * @param sentAt when it was sent, by the device's clock
     * @param receivedAt by the server's clock
     * @param anyway whether it was to be kept whether the day allows it or not
     * @param plan id of the plan that was flown by; empty without one
     */
    public record Arrival(
            String role, Instant sentAt, Instant receivedAt, boolean anyway, String plan) {}

    /** A tap that is not in the log yet. */
    public record Given(Tap tap, Arrival arrival) {}

    /** The row that follows one with this hash. */
    public static KeptTap after(String hashBefore, long number, Given given) {
        String hash = hash(hashBefore, number, given.tap(), given.arrival());
        return new KeptTap(number, given.tap(), given.arrival(), hash);
    }

    /** The first row of a log that is not what was once written there; empty when all are. */
    public static Optional<KeptTap> findBroken(List<KeptTap> log) {
        String before = NO_HASH;
        long number = 0;
        for (KeptTap row : log) {
            number++;
            if (row.number() != number
                    || !row.hash().equals(hash(before, number, row.tap(), row.arrival()))) {
                return Optional.of(row);
            }
            before = row.hash();
        }
        return Optional.empty();
    }

    private static String hash(String before, long number, Tap tap, Arrival arrival) {
        StringBuilder text = new StringBuilder();
        for (String field :
                List.of(
                        before,
                        Long.toString(number),
                        tap.id(),
                        tap.at().toString(),
                        tap.by(),
                        tap.device(),
                        tap.kind().name(),
                        String.join("|", tap.loads().stream().map(load -> load.value()).toList()),
                        tap.place().map(place -> place.value()).orElse(""),
                        text(tap.amount().massKg()),
                        text(tap.amount().lengthM()),
                        Integer.toString(tap.amount().people()),
                        tap.undoes().orElse(""),
                        tap.note(),
                        arrival.role(),
                        arrival.sentAt().toString(),
                        arrival.receivedAt().toString(),
                        Boolean.toString(arrival.anyway()),
                        arrival.plan())) {
            // With its length before it no field can pass for two.
            text.append(field.length()).append(':').append(field).append(',');
        }
        return sha256(text.toString());
    }

    private static String text(OptionalDouble value) {
        return value.isPresent() ? Double.toString(value.getAsDouble()) : "";
    }

    private static String sha256(String text) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] hash = digest.digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every platform has SHA-256.", impossible);
        }
    }
}
