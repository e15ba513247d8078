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

/** Devices whose clocks were off the server's, so that their taps count at other times than they say. */
public final class ClocksOff {
    /** A tap that answers another device's counts just after it: of that nothing need be said. */
    private static final Duration ANSWERED = Duration.ofMinutes(1);

    private ClocksOff() {}

    /** What must be said of it, one caution for each device and way, by the device's name. */
    public static List<Finding> findings(Tapped tapped) {
        Map<String, List<Duration>> ahead = new TreeMap<>();
        Map<String, List<Duration>> behind = new TreeMap<>();
        for (Tap tap : tapped.taps()) {
            Duration by =
                    Duration.between(tap.at(), tapped.deviceAt().getOrDefault(tap.id(), tap.at()));
            if (by.compareTo(Duration.ZERO) > 0) {
                ahead.computeIfAbsent(tap.device(), unused -> new ArrayList<>()).add(by);
            } else if (by.negated().compareTo(ANSWERED) > 0) {
                behind.computeIfAbsent(tap.device(), unused -> new ArrayList<>()).add(by.negated());
            }
        }
        List<Finding> all = new ArrayList<>();
        ahead.forEach(
                (device, by) ->
                        all.add(finding(FindingCode.CLOCK_AHEAD, device, " min ahead of", by)));
        behind.forEach(
                (device, by) ->
                        all.add(finding(FindingCode.CLOCK_BEHIND, device, " min behind", by)));
        return all;
    }

    private static Finding finding(FindingCode code, String device, String off, List<Duration> by) {
        long most = by.stream().mapToLong(ClocksOff::minutes).max().orElseThrow();
        return new Finding(
                code,
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
                        + off
                        + " the server's: "
                        + (by.size() == 1 ? "one tap counts" : by.size() + " taps count")
                        + " by the server's.");
    }

    private static long minutes(Duration by) {
        return by.plusSeconds(59).toMinutes();
    }
}
