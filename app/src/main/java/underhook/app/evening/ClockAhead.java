package underhook.app.evening;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import underhook.app.port.EveningFiles.Tapped;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.flown.Tap;

/** Devices whose clocks ran ahead of the server's, so that their taps count earlier than they say. */
public final class ClockAhead {
    private ClockAhead() {}

    /** What must be said of it, one caution for each device, by its name. */
    public static List<Finding> findings(Tapped tapped) {
        Map<String, List<Duration>> ahead = new TreeMap<>();
        for (Tap tap : tapped.taps()) {
            Duration by =
                    Duration.between(tap.at(), tapped.deviceAt().getOrDefault(tap.id(), tap.at()));
            // A tap that answers another device's counts after it: of that nothing need be said.
            if (!by.isNegative() && !by.isZero()) {
                ahead.computeIfAbsent(tap.device(), unused -> new ArrayList<>()).add(by);
            }
        }
        List<Finding> all = new ArrayList<>();
        ahead.forEach((device, by) -> all.add(finding(device, by)));
        return all;
    }

    private static Finding finding(String device, List<Duration> by) {
        long most = by.stream().mapToLong(ClockAhead::minutes).max().orElseThrow();
        return new Finding(
                FindingCode.CLOCK_AHEAD,
                Severity.CAUTION,
                device,
                Long.toString(most),
                "",
                "min",
                "taps",
                "The clock of "
                        + device
                        + " was up to "
                        + most
                        + " min ahead of the server's: "
                        + (by.size() == 1 ? "one tap counts" : by.size() + " taps count")
                        + " by the server's.");
    }

    private static long minutes(Duration by) {
        return by.plusSeconds(59).toMinutes();
    }
}
