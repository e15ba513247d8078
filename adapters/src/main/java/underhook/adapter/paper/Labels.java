package underhook.adapter.paper;

import java.util.ArrayList;
import java.util.List;
import underhook.adapter.paper.Sheet.Dot;

/**
 * Finds room for the words of a map. Every label gets a place: nearest to what it names where it covers
 * nothing, else farther away, and in the worst case where it covers least.
 */
final class Labels {
    /** What a label names, and how big it is. */
    record Wish(String text, Face face, Dot anchor, Dot size) {}

    /** Where a label stands; top left corner. */
    record Placed(Wish wish, Dot corner, boolean away) {
        Box box() {
            return new Box(corner.x(), corner.y(), wish.size().x(), wish.size().y());
        }
    }

    /** A rectangle of the page. */
    record Box(double x, double y, double width, double height) {
        double overlap(Box other) {
            double across = Math.min(x + width, other.x + other.width) - Math.max(x, other.x);
            double down = Math.min(y + height, other.y + other.height) - Math.max(y, other.y);
            return across > 0 && down > 0 ? across * down : 0;
        }

        boolean holds(Box other) {
            return other.x >= x
                    && other.y >= y
                    && other.x + other.width <= x + width
                    && other.y + other.height <= y + height;
        }

        /** Point of the rectangle nearest to another point. */
        Dot nearest(Dot to) {
            return new Dot(
                    Math.max(x, Math.min(x + width, to.x())),
                    Math.max(y, Math.min(y + height, to.y())));
        }
    }

    private static final double[] DISTANCES = {6, 10, 16, 24, 34, 46, 60, 78, 100, 130, 165};
    private static final double NEEDS_LEADER = 15;
    private static final int DIRECTIONS = 16;

    private final Box frame;
    private final List<Box> taken = new ArrayList<>();

    Labels(Box frame) {
        this.frame = frame;
    }

    /** Keeps labels off a mark. */
    void keepFree(Box mark) {
        taken.add(mark);
    }

    /** Whether nothing stands there yet. */
    boolean isFree(Box box) {
        return frame.holds(box) && taken.stream().allMatch(one -> one.overlap(box) <= 0);
    }

    /** Whether it can stand so near that no line has to lead to it, and cover nothing. */
    boolean hasRoom(Wish wish) {
        for (double distance : DISTANCES) {
            for (int i = 0; i < DIRECTIONS && distance <= NEEDS_LEADER; i++) {
                if (isFree(candidate(wish, 2 * Math.PI * i / DIRECTIONS, distance).box())) {
                    return true;
                }
            }
        }
        return false;
    }

    Placed place(Wish wish) {
        Placed best = null;
        double least = Double.POSITIVE_INFINITY;
        for (double distance : DISTANCES) {
            List<Box> around = around(wish, distance);
            for (int i = 0; i < DIRECTIONS; i++) {
                // East first, as a reader expects it.
                double turn = 2 * Math.PI * i / DIRECTIONS;
                Placed candidate = candidate(wish, turn, distance);
                Box box = candidate.box();
                double covered = around.stream().mapToDouble(one -> one.overlap(box)).sum();
                if (frame.holds(box) && covered < least) {
                    least = covered;
                    best = candidate;
                }
            }
            if (least <= 0) {
                break;
            }
        }
        if (best == null) {
            best = new Placed(wish, inside(wish), true);
        }
        taken.add(best.box());
        return best;
    }

    /** What a candidate at this distance could cover: far less than a town has. */
    private List<Box> around(Wish wish, double distance) {
        double across = distance + wish.size().x();
        double down = distance + wish.size().y();
        Box reach =
                new Box(wish.anchor().x() - across, wish.anchor().y() - down, 2 * across, 2 * down);
        return taken.stream().filter(one -> one.overlap(reach) > 0).toList();
    }

    private Placed candidate(Wish wish, double turn, double distance) {
        double width = wish.size().x();
        double height = wish.size().y();
        double x = wish.anchor().x() + Math.cos(turn) * (distance + width / 2) - width / 2;
        double y = wish.anchor().y() - Math.sin(turn) * (distance + height / 2) - height / 2;
        return new Placed(wish, new Dot(x, y), distance > NEEDS_LEADER);
    }

    private Dot inside(Wish wish) {
        return new Dot(
                Math.max(
                        frame.x(),
                        Math.min(frame.x() + frame.width() - wish.size().x(), wish.anchor().x())),
                Math.max(
                        frame.y(),
                        Math.min(frame.y() + frame.height() - wish.size().y(), wish.anchor().y())));
    }
}
