package underhook.planner.order;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.core.finding.Finding;
import underhook.core.job.Load;
import underhook.core.load.DensityBand;
import underhook.core.load.Material;
import underhook.core.pole.PoleMass;
import underhook.core.pole.PoleShape;

/**
 * What a pole of its size and material may weigh, against what the list states.
 *
 * <p>Of a pole the list's width is the diameter at the butt, its height that at the top. The material is a
 * wood, with its moisture if somebody measured it: "larch 28 %". Of "wood" alone every wood counts.
 */
final class PoleMasses {
    private static final Pattern WOOD =
            Pattern.compile("([a-z][a-z -]*?)(?:\\s*,?\\s*([0-9]{1,3})\\s*%.*)?");

    private PoleMasses() {}

    /** Whether the material is a wood. */
    static boolean isWood(Load load) {
        return findBand(load.material()).isPresent();
    }

    /** What must be said of the stated mass of a pole; nothing of materials that are not known. */
    static List<Finding> findings(Load load) {
        if (load.massKg().isEmpty()) {
            return List.of();
        }
        return find(load)
                .map(mass -> mass.findings(load.id().value(), load.massKg().getAsDouble()))
                .orElse(List.of());
    }

    /** In words, what an unweighed pole may weigh; empty where its material says too little. */
    static String band(Load load) {
        return find(load)
                .map(
                        mass ->
                                " As a pole of this size and wood it weighs "
                                        + Figures.text(Math.floor(mass.lightestKg()), 0)
                                        + " to "
                                        + Figures.text(Math.ceil(mass.heaviestKg()), 0)
                                        + " kg, its fittings on top.")
                .orElse("");
    }

    /** The spread of a pole of the load's size; empty for anything but wood. */
    static Optional<PoleMass> find(Load load) {
        return findBand(load.material())
                .map(
                        band ->
                                PoleMass.of(
                                        new PoleShape(
                                                load.lengthM(), load.widthM(), load.heightM()),
                                        band));
    }

    private static Optional<DensityBand> findBand(String material) {
        Matcher words = WOOD.matcher(material.strip().toLowerCase(Locale.ROOT));
        if (!words.matches()) {
            return Optional.empty();
        }
        String name = words.group(1).strip().replace(' ', '_').replace('-', '_');
        if (name.equals("wood")) {
            return Optional.of(anyWood());
        }
        for (Material known : Material.values()) {
            if (known.isWood() && known.name().toLowerCase(Locale.ROOT).equals(name)) {
                return Optional.of(
                        words.group(2) == null
                                ? known.band()
                                : known.band(
                                        Math.min(250, Integer.parseInt(words.group(2))) / 100.0));
            }
        }
        return Optional.empty();
    }

    /** From the lightest dry wood to the heaviest wet one. */
    private static DensityBand anyWood() {
        double lightest = Double.POSITIVE_INFINITY;
        double heaviest = 0;
        for (Material known : Material.values()) {
            if (known.isWood()) {
                lightest = Math.min(lightest, known.band().lightestKgPerM3());
                heaviest = Math.max(heaviest, known.band().heaviestKgPerM3());
            }
        }
        return new DensityBand(lightest, (lightest + heaviest) / 2, heaviest);
    }
}
