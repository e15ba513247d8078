package underhook.core.learn;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Estimates of the ratio of flown to planned for groups of flights, each shrunk by its credibility.
 *
 * <p>With w the weights, x the ratios, i the group: {@code z = w_i / (w_i + s2 / a)}, s2 the variance
 * within groups and a that between them, both estimated without bias; a that comes out negative is 0, and
 * then all groups are held to be alike.
 *
 * @param meanRatio the mean of all groups, weighted by credibility
 * @param withinFactor variance within groups of a sample of weight 1
 * @param betweenFactor variance between the groups' true ratios, not negative
 * @param groups one for each group handed in, in that order
 * @source BUHLMANN-STRAUB estimators without bias
 */
public record Credibility(
        double meanRatio, double withinFactor, double betweenFactor, List<Estimate> groups) {
    /**
     * One observation.
     *
     * @param flownRatio flown over planned, above 0
     * @param weightFactor how much it counts, above 0
     */
    public record Sample(double flownRatio, double weightFactor) {
        public Sample {
            if (!(flownRatio > 0 && flownRatio < Double.POSITIVE_INFINITY)
                    || !(weightFactor > 0 && weightFactor < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(
                        "a sample must have a ratio and weight above 0.");
            }
        }

        /** Of weight 1. */
        public static Sample of(double flownRatio) {
            return new Sample(flownRatio, 1);
        }
    }

    /** Observations that belong together: one kind of load, place and line. */
    public record Group(String name, List<Sample> samples) {
        public Group {
            Objects.requireNonNull(name, "name");
            samples = List.copyOf(samples);
            if (samples.isEmpty()) {
                throw new IllegalArgumentException("group " + name + " has no sample.");
            }
        }

        double weightFactor() {
            return samples.stream().mapToDouble(Sample::weightFactor).sum();
        }

        double meanRatio() {
            double sum = samples.stream().mapToDouble(s -> s.weightFactor() * s.flownRatio()).sum();
            return sum / weightFactor();
        }
    }

    /**
     * What is believed of a group now.
     *
     * @param ownRatio the group's own mean
     * @param credibilityFactor how far its own mean is believed, in [0, 1]
     * @param believedRatio to multiply a plan's figure with
     * @param samples how many it stands on
     */
    public record Estimate(
            String group,
            double ownRatio,
            double credibilityFactor,
            double believedRatio,
            int samples) {}

    public Credibility {
        groups = List.copyOf(groups);
    }

    /**
     * Estimates every group.
     *
     * @throws IllegalArgumentException without a group
     */
    public static Credibility of(List<Group> groups) {
        if (groups.isEmpty()) {
            throw new IllegalArgumentException("groups must not be empty.");
        }
        double all = groups.stream().mapToDouble(Group::weightFactor).sum();
        double plainMeanRatio =
                groups.stream().mapToDouble(g -> g.weightFactor() * g.meanRatio()).sum() / all;
        double within = withinFactor(groups);
        double between = betweenFactor(groups, plainMeanRatio, within);
        List<Double> z = new ArrayList<>();
        double sumZ = 0;
        double sumZMean = 0;
        for (Group group : groups) {
            double own =
                    between > 0
                            ? group.weightFactor() / (group.weightFactor() + within / between)
                            : 0;
            z.add(own);
            sumZ += own;
            sumZMean += own * group.meanRatio();
        }
        double mean = sumZ > 0 ? sumZMean / sumZ : plainMeanRatio;
        List<Estimate> estimates = new ArrayList<>();
        for (int i = 0; i < groups.size(); i++) {
            Group group = groups.get(i);
            double own = group.meanRatio();
            double ratio = z.get(i) * own + (1 - z.get(i)) * mean;
            estimates.add(new Estimate(group.name(), own, z.get(i), ratio, group.samples().size()));
        }
        return new Credibility(mean, within, between, estimates);
    }

    private static double withinFactor(List<Group> groups) {
        double sum = 0;
        int freedom = 0;
        for (Group group : groups) {
            double mean = group.meanRatio();
            for (Sample sample : group.samples()) {
                double off = sample.flownRatio() - mean;
                sum += sample.weightFactor() * off * off;
            }
            freedom += group.samples().size() - 1;
        }
        return freedom > 0 ? sum / freedom : 0;
    }

    private static double betweenFactor(
            List<Group> groups, double plainMeanRatio, double withinFactor) {
        double all = 0;
        double squares = 0;
        double sum = 0;
        for (Group group : groups) {
            double weight = group.weightFactor();
            double off = group.meanRatio() - plainMeanRatio;
            all += weight;
            squares += weight * weight;
            sum += weight * off * off;
        }
        double scale = all * all - squares;
        if (!(scale > 0)) {
            return 0;
        }
        return Math.max(0, all / scale * (sum - (groups.size() - 1) * withinFactor));
    }

    /**
     * The estimates held towards the plan's own figures, which count as so many samples.
     *
     * <p>A week's flights say little about a season: the mean of all is drawn towards 1 as if the plan
     * itself had been seen that often, and no group's own mean counts for more than its samples beside
     * those.
     *
     * @param planSamplesFactor how many samples the plan's own figures are worth, not negative
     * @source PRACTICE a guard against variances estimated from a handful of flights
     */
    public Credibility towardsPlan(double planSamplesFactor) {
        if (!(planSamplesFactor >= 0 && planSamplesFactor < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("planSamplesFactor must not be negative.");
        }
        int seen = groups.stream().mapToInt(Estimate::samples).sum();
        double mean = 1 + seen / (seen + planSamplesFactor) * (meanRatio - 1);
        List<Estimate> held = new ArrayList<>();
        for (Estimate estimate : groups) {
            double most = estimate.samples() / (estimate.samples() + planSamplesFactor);
            double z = Math.min(estimate.credibilityFactor(), most);
            double ratio = z * estimate.ownRatio() + (1 - z) * mean;
            held.add(
                    new Estimate(
                            estimate.group(), estimate.ownRatio(), z, ratio, estimate.samples()));
        }
        return new Credibility(mean, withinFactor, betweenFactor, held);
    }
}
