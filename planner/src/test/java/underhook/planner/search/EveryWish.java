package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** Every order of a tiny day's trips, each with every team that may work at each place. */
final class EveryWish {
    private final TinyDay day;
    private final int trips;

    EveryWish(TinyDay day) {
        this.day = day;
        this.trips = day.table().trips();
    }

    /** What is built from each that leaves nothing out. */
    void built(Consumer<Ordered> use) {
        Decoder decoder = new Decoder(day.table());
        each(
                wish -> {
                    DayLog log = new DayLog();
                    long cents = decoder.decode(wish, log);
                    if (decoder.run().countDropped() == 0) {
                        use.accept(Ordered.of(decoder.run(), log, cents));
                    }
                });
    }

    void each(Consumer<Wish> use) {
        for (int teams = 0; teams < 1 << TinyDay.SITES; teams++) {
            int[] teamOf = new int[TinyDay.PLACES];
            for (int site = 0; site < TinyDay.SITES; site++) {
                teamOf[2 + site] = teams >> site & 1;
            }
            permute(
                    new ArrayList<>(),
                    tokens -> use.accept(new Wish(tokens, teamOf.clone(), trips)));
        }
    }

    private void permute(List<Integer> begun, Consumer<int[]> use) {
        if (begun.size() == trips) {
            use.accept(begun.stream().mapToInt(token -> token).toArray());
            return;
        }
        for (int k = 0; k < trips; k++) {
            if (!begun.contains(k)) {
                begun.add(k);
                permute(begun, use);
                begun.remove(Integer.valueOf(k));
            }
        }
    }
}
