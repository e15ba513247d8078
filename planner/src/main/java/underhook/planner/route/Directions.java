package underhook.planner.route;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Chooses a direction for the last part of a way in or the first part of a way out.
 *
 * <p>Every {@value #STEP_DEG}° from straight into the wind is judged. What refuses a direction refuses it
 * for good; the others are ranked by their price, a number without unit that only orders them: one stands
 * for ten degrees off the wind. Ties go to the smaller angle off the wind, then to the left.
 */
final class Directions {
    static final int STEP_DEG = 10;

    private Directions() {}

    /** Judges one direction. */
    interface Judge {
        /**
         * What it has to say.
         *
         * @param trackGridRad track flown, rad from grid north
         */
        Said judge(double trackGridRad);
    }

    /**
     * A judge's word.
     *
     * @param refusal why this direction is not flown; empty when it may be
     * @param priceRatio what speaks against it, not negative
     * @param words what speaks against it in words; empty when nothing does
     */
    record Said(Optional<String> refusal, double priceRatio, String words) {
        static final Said NOTHING = new Said(Optional.empty(), 0, "");

        static Said refused(String why) {
            return new Said(Optional.of(why), 0, "");
        }

        static Said priced(double priceRatio, String words) {
            return new Said(Optional.empty(), priceRatio, words);
        }
    }

    /**
     * A direction as judged.
     *
     * @param trackGridRad track flown, rad from grid north
     * @param offWindRad turned away from straight into the wind, rad, to the right positive
     * @param refusals the first judge's refusal, when there is one
     * @param words everything that speaks against it
     */
    record Judged(
            double trackGridRad,
            double offWindRad,
            List<String> refusals,
            double priceRatio,
            List<String> words) {
        Judged {
            refusals = List.copyOf(refusals);
            words = List.copyOf(words);
        }

        boolean isAllowed() {
            return refusals.isEmpty();
        }
    }

    /**
     * Neighbouring directions that are all refused.
     *
     * @param tracks which, as "240° to 250°"
     * @param left the nearest to the left of them that is not
     * @param right the nearest to the right; the same where it is the only one
     */
    record Gap(String tracks, Judged left, Judged right) {}

    /**
     * Every direction, allowed ones first, best first.
     *
     * @param all all directions in that order
     */
    record Ranked(List<Judged> all) {
        Ranked {
            all = List.copyOf(all);
        }

        Optional<Judged> best() {
            return all.stream().filter(Judged::isAllowed).findFirst();
        }

        /** The one straight into the wind. */
        Judged intoWind() {
            return all.stream()
                    .min(Comparator.comparingDouble(one -> Math.abs(one.offWindRad())))
                    .orElseThrow();
        }

        Optional<Judged> second() {
            return all.stream().filter(Judged::isAllowed).skip(1).findFirst();
        }

        /**
         * What refuses which directions, as "tracks 040° to 090°: reason", in the order of the compass.
         *
         * @param northTurnRad added to a grid bearing to show it from another north, rad
         */
        List<String> whyNot(double northTurnRad) {
            Map<String, List<Integer>> byReason = new LinkedHashMap<>();
            for (Judged one : compass(northTurnRad)) {
                for (String refusal : new TreeSet<>(one.refusals())) {
                    byReason.computeIfAbsent(refusal, unused -> new ArrayList<>())
                            .add(shownDeg(one, northTurnRad));
                }
            }
            return byReason.entrySet().stream()
                    .map(entry -> "tracks " + spans(entry.getValue()) + ": " + entry.getKey())
                    .toList();
        }

        /**
         * Stretches of the compass in which every direction is refused, each with its nearest neighbours
         * that are not; none when all are refused.
         *
         * @param northTurnRad added to a grid bearing to show it from another north, rad
         */
        List<Gap> gaps(double northTurnRad) {
            List<Judged> compass = compass(northTurnRad);
            int first = 0;
            while (first < compass.size() && !compass.get(first).isAllowed()) {
                first++;
            }
            if (first == compass.size()) {
                return List.of();
            }
            List<Gap> gaps = new ArrayList<>();
            List<Integer> refused = new ArrayList<>();
            Judged before = compass.get(first);
            for (int k = 1; k <= compass.size(); k++) {
                Judged now = compass.get((first + k) % compass.size());
                if (!now.isAllowed()) {
                    refused.add(shownDeg(now, northTurnRad));
                    continue;
                }
                if (!refused.isEmpty()) {
                    int[] ends = {refused.get(0), refused.get(refused.size() - 1)};
                    gaps.add(new Gap(span(ends), before, now));
                    refused.clear();
                }
                before = now;
            }
            return gaps;
        }

        private List<Judged> compass(double northTurnRad) {
            List<Judged> compass = new ArrayList<>(all);
            compass.sort(Comparator.comparingDouble(one -> shownDeg(one, northTurnRad)));
            return compass;
        }

        private static int shownDeg(Judged one, double northTurnRad) {
            double degrees = Math.toDegrees(one.trackGridRad() + northTurnRad);
            return Math.floorMod(Math.round(degrees), 360);
        }

        /** Neighbours run together, also over north. */
        private static String spans(List<Integer> sorted) {
            List<int[]> runs = new ArrayList<>();
            for (int degrees : sorted) {
                int[] last = runs.isEmpty() ? new int[] {-999, -999} : runs.get(runs.size() - 1);
                if (degrees - last[1] <= STEP_DEG + 1) {
                    last[1] = degrees;
                } else {
                    runs.add(new int[] {degrees, degrees});
                }
            }
            int count = runs.size();
            if (count > 1 && runs.get(0)[0] + 360 - runs.get(count - 1)[1] <= STEP_DEG + 1) {
                runs.get(0)[0] = runs.remove(count - 1)[0];
            }
            return String.join(", ", runs.stream().map(Ranked::span).toList());
        }

        private static String span(int[] run) {
            return run[0] == run[1]
                    ? String.format(Locale.ROOT, "%03d°", run[0])
                    : String.format(Locale.ROOT, "%03d° to %03d°", run[0], run[1]);
        }
    }

    /** Judges every direction round the compass. */
    static Ranked rank(double windFromGridRad, List<Judge> judges) {
        List<Judged> all = new ArrayList<>();
        int half = 180 / STEP_DEG;
        for (int k = -half + 1; k <= half; k++) {
            double off = Math.toRadians((double) k * STEP_DEG);
            all.add(judge(windFromGridRad + off, off, judges));
        }
        all.sort(
                Comparator.comparing((Judged one) -> !one.isAllowed())
                        .thenComparingLong(one -> Math.round(one.priceRatio() * 1000))
                        .thenComparingLong(one -> Math.round(Math.abs(one.offWindRad()) * 1000))
                        .thenComparingDouble(Judged::offWindRad));
        return new Ranked(all);
    }

    /** The same direction in [0, 2π). */
    static double normalRad(double bearingRad) {
        double turn = 2 * Math.PI;
        return ((bearingRad % turn) + turn) % turn;
    }

    private static Judged judge(double trackGridRad, double offWindRad, List<Judge> judges) {
        double track = normalRad(trackGridRad);
        List<String> refusals = new ArrayList<>();
        List<String> words = new ArrayList<>();
        double price = Math.abs(Math.toDegrees(offWindRad)) / STEP_DEG;
        for (Judge judge : judges) {
            Said said = judge.judge(track);
            if (said.refusal().isPresent()) {
                // What refuses first is said; the rest changes nothing and is dear to work out.
                refusals.add(said.refusal().get());
                break;
            }
            price += said.priceRatio();
            if (!said.words().isEmpty()) {
                words.add(said.words());
            }
        }
        return new Judged(track, offWindRad, refusals, price, words);
    }
}
