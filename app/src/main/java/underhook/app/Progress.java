package underhook.app;

/** Hears what long work is doing. */
public interface Progress {
    /** Nobody listens. */
    Progress SILENT = (doing, doneFraction) -> {};

    /**
     * Tells where the work stands.
     *
     * @param doing what is being done, in a few words
     * @param doneFraction part of the whole that is done, in [0, 1]
     */
    void at(String doing, double doneFraction);

    /** Hears a part of the whole: from so far on, so much of it. */
    default Progress part(double fromFraction, double ofFraction) {
        Progress whole = this;
        return new Progress() {
            @Override
            public void at(String doing, double doneFraction) {
                whole.at(doing, fromFraction + ofFraction * doneFraction);
            }

            @Override
            public void hasDay() {
                whole.hasDay();
            }
        };
    }

    /** Hears the same with words ahead of what is done. */
    default Progress named(String before) {
        Progress whole = this;
        return new Progress() {
            @Override
            public void at(String doing, double doneFraction) {
                whole.at(before + doing, doneFraction);
            }

            @Override
            public void hasDay() {
                whole.hasDay();
            }
        };
    }

    /** From now on there is a result: who stops the work now has that at least. */
    default void hasDay() {}
}
