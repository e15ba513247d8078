package underhook.core.site;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * Room at one place for a machine, for any heading and line.
 *
 * <p>Two rules hold for rotor and tail. The line must reach over the trees, the operator's margin and the
 * rise of the ground behind the tail; and in space every part must keep its margin to every column. For
 * the first, the rotors' height over the hook gives no credit.
 *
 * @source PRACTICE trees plus margin plus rise behind the tail; DERIVED distances in space
 */
public final class Room {
    /** Headings of a table are this far apart: 5°. */
    public static final int HEADINGS = 72;

    /** Beyond the tail's end ground is looked at this much further, m. @source PRACTICE room to turn */
    private static final double BEHIND_TAIL_M = 2.5;

    private static final double BEHIND_STEP_M = 0.5;

    private final Surroundings around;
    private final Craft craft;
    private final Needs needs;

    private Room(Surroundings around, Craft craft, Needs needs) {
        this.around = around;
        this.craft = craft;
        this.needs = needs;
    }

    public static Room of(Surroundings around, Craft craft, Needs needs) {
        return new Room(around, craft, needs);
    }

    /** How a place is looked at for a machine under an operator's needs. */
    public static Surroundings.View view(Craft craft, Needs needs) {
        return new Surroundings.View(
                craft.tailReachM() + craft.rotorRadiusM(),
                needs.canopyElsewhereM(),
                needs.margins().underClearanceM());
    }

    /** What stands around. */
    public Surroundings around() {
        return around;
    }

    /**
     * Height of the hook that rotor and tail need on a heading, m above the ground at the place; infinite
     * where the ground is not known.
     */
    public double lineNeedM(double headingGridRad) {
        return around.canopyM() + needs.rotorClearanceM() + riseBehindM(headingGridRad);
    }

    /** How far the ground behind the tail rises over the place, m; infinite where it is not known. */
    public double riseBehindM(double headingGridRad) {
        return around.riseM(
                headingGridRad + Math.PI, craft.tailReachM() + BEHIND_TAIL_M, BEHIND_STEP_M);
    }

    /** Room on one heading, the last part of the way in along it included. */
    public HeadingRoom at(double headingGridRad, Rig rig) {
        return new Hover(around, craft, needs, rig).on(headingGridRad, riseBehindM(headingGridRad));
    }

    /**
     * Room on any heading with one line: the same as {@link #at}, quicker when asked often. Not safe for
     * threads.
     */
    public DoubleFunction<HeadingRoom> headings(Rig rig) {
        Hover hover = new Hover(around, craft, needs, rig);
        return headingGridRad -> hover.on(headingGridRad, riseBehindM(headingGridRad));
    }

    /** Room for each line on {@link #HEADINGS} headings, starting north; one list for each rig. */
    public List<List<HeadingRoom>> table(List<Rig> rigs) {
        List<Hover> hovers =
                rigs.stream().map(rig -> new Hover(around, craft, needs, rig)).toList();
        List<List<HeadingRoom>> all = new ArrayList<>();
        hovers.forEach(unused -> all.add(new ArrayList<>(HEADINGS)));
        for (int k = 0; k < HEADINGS; k++) {
            double headingGridRad = 2 * Math.PI * k / HEADINGS;
            double riseM = riseBehindM(headingGridRad);
            for (int i = 0; i < hovers.size(); i++) {
                all.get(i).add(hovers.get(i).on(headingGridRad, riseM));
            }
        }
        return all;
    }

    /** Whether the first part of a way out, the nose along its track, keeps its margins. */
    public Fit wayOut(double trackGridRad, Rig rig) {
        return new Hover(around, craft, needs, rig)
                .way(trackGridRad, trackGridRad)
                .map(Margin::fit)
                .orElse(Fit.FREE);
    }

    /** The least steepness of the last part of a way in on a heading. */
    public Straight straightIn(double headingGridRad, Rig rig) {
        return new Hover(around, craft, needs, rig)
                .straight(headingGridRad, headingGridRad + Math.PI);
    }

    /** The least steepness of the first part of a way out on a heading. */
    public Straight straightOut(double headingGridRad, Rig rig) {
        return new Hover(around, craft, needs, rig).straight(headingGridRad, headingGridRad);
    }
}
