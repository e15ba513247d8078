package underhook.planner.search;

import java.util.function.BooleanSupplier;

/** How much of the time for something has gone: 0 as it begins, 1 and more when it is over. Safe for threads. */
@FunctionalInterface
public interface TimeGone {
    /** In so much of the time nobody is hurried: the first orders ask for many ways, those that follow for few. @source PRACTICE own choice */
    double UNHURRIED_RATIO = 0.5;

    /** So much longer than its share one may take: the same work does not take the same time. @source PRACTICE own measure */
    double SHARE_FACTOR = 1.5;

    /** From 0 on. */
    double goneRatio();

    /** Of a time without an end, until somebody ends it. */
    static TimeGone once(BooleanSupplier ended) {
        return () -> ended.getAsBoolean() ? 1 : 0;
    }

    default boolean isOver() {
        return goneRatio() >= 1;
    }

    /** The same of what comes first in this time. */
    default TimeGone first(double ofItRatio) {
        return () -> goneRatio() / ofItRatio;
    }

    /** Of a share of what is left from now on, half as much again; but the first half of the time is there for whoever asks. */
    default TimeGone ofWhatIsLeft(double shareRatio) {
        double fromRatio = Math.max(goneRatio(), UNHURRIED_RATIO);
        double toRatio = fromRatio + Math.min(1, SHARE_FACTOR * shareRatio) * (1 - fromRatio);
        return () -> {
            double nowRatio = goneRatio();
            return nowRatio >= toRatio || nowRatio >= 1
                    ? 1
                    : Math.max(0, (nowRatio - fromRatio) / (toRatio - fromRatio));
        };
    }
}
