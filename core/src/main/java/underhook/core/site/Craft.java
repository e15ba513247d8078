package underhook.core.site;

import java.util.Objects;
import underhook.core.job.Machine;

/**
 * The shape of the machine.
 *
 * @param rotorRadiusM main rotor, m, above 0
 * @param tailReachM from the mast to the tail's end, m, above 0
 */
public record Craft(double rotorRadiusM, double tailReachM, Machine.Body body) {
    public Craft {
        if (!(rotorRadiusM > 0 && rotorRadiusM < 50 && tailReachM > 0 && tailReachM < 50)) {
            throw new IllegalArgumentException(
                    "rotorRadiusM ("
                            + rotorRadiusM
                            + ") and tailReachM ("
                            + tailReachM
                            + ") must lie in (0, 50).");
        }
        Objects.requireNonNull(body, "body");
    }

    public static Craft of(Machine machine) {
        return new Craft(machine.rotorRadiusM(), machine.tailReachM(), machine.body());
    }
}
