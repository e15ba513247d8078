package underhook.core.ode;

/**
 * Adaptive Runge-Kutta integration, fifth order with fourth-order error and an interpolant.
 *
 * <p>Each step's error estimate is held below a tolerance times the larger of 1 and the value, in every
 * place of the state. The last rate of a step is the first of the next, so a good step costs six
 * evaluations. All room is taken once: following a system makes no new objects.
 *
 * <p>Changeable; one thread at a time.
 *
 * @source DORMAND-PRINCE-1980 table 2, RK5(4)7M; HAIRER-1993 section II.6 for the interpolant
 */
public final class DormandPrince {
    /** A step shrinks at most to this part, and grows at most to the other. */
    private static final double SHRINK_FRACTION = 0.2;

    private static final double GROW_FACTOR = 5;
    private static final double SAFETY_FACTOR = 0.9;

    private final Motion motion;
    private final double toleranceRatio;
    private final double[] state;
    private final double[] before;
    private final double[] trial;

    /** Rates at the start of a step. After a good step these are the first of the next. */
    private double[] rates1;

    private final double[] rates2;
    private final double[] rates3;
    private final double[] rates4;
    private final double[] rates5;
    private final double[] rates6;

    /** Rates at the end of a step; after a good step, those at its start. */
    private double[] rates7;

    private double time;
    private double timeBefore;
    private double nextStep;
    private double largestStep = Double.POSITIVE_INFINITY;

    /**
     * For a system of so many numbers.
     *
     * @param places length of the state, at least 1
     * @param toleranceRatio error of a step over the larger of 1 and the value, above 0
     * @throws IllegalArgumentException if an argument is out of range
     */
    public DormandPrince(Motion motion, int places, double toleranceRatio) {
        if (places < 1) {
            throw new IllegalArgumentException("places (" + places + ") must be at least 1.");
        }
        if (!(toleranceRatio > 0 && toleranceRatio < 1)) {
            throw new IllegalArgumentException(
                    "toleranceRatio (" + toleranceRatio + ") must lie in (0, 1).");
        }
        this.motion = motion;
        this.toleranceRatio = toleranceRatio;
        this.rates1 = new double[places];
        this.rates2 = new double[places];
        this.rates3 = new double[places];
        this.rates4 = new double[places];
        this.rates5 = new double[places];
        this.rates6 = new double[places];
        this.rates7 = new double[places];
        this.state = new double[places];
        this.before = new double[places];
        this.trial = new double[places];
    }

    /**
     * Sets the system to where it starts.
     *
     * @param start one number for each place
     * @param firstStep first step to try, above 0
     */
    public void start(double startTime, double[] start, double firstStep) {
        if (start.length != state.length || !(firstStep > 0)) {
            throw new IllegalArgumentException("start or firstStep do not fit.");
        }
        System.arraycopy(start, 0, state, 0, state.length);
        System.arraycopy(start, 0, before, 0, state.length);
        time = startTime;
        timeBefore = startTime;
        nextStep = firstStep;
        motion.rates(time, state, rates1);
    }

    /** Keeps steps at or below this, so that nothing short is stepped over. */
    public void limitStep(double largest) {
        if (!(largest > 0)) {
            throw new IllegalArgumentException("largest (" + largest + ") must be above 0.");
        }
        largestStep = largest;
    }

    /**
     * Takes the rates anew: for a system that changes suddenly at this time. What was within the last step
     * can be asked no more.
     */
    public void renewRates() {
        motion.rates(time, state, rates1);
    }

    /**
     * Takes one good step, as long as the error allows and not past a time.
     *
     * @param until later than the present time
     * @throws IllegalArgumentException if it is not
     * @throws ArithmeticException if no step is small enough: the rates are not finite
     */
    public void step(double until) {
        if (!(until > time)) {
            throw new IllegalArgumentException("until (" + until + ") must lie after " + time);
        }
        while (true) {
            double left = until - time;
            double step = Math.min(nextStep, largestStep);
            boolean last = step >= left;
            step = last ? left : step;
            double error = tryStep(step);
            if (error <= 1) {
                accept(last ? until : time + step);
                double grown = step * Math.min(GROW_FACTOR, scale(Math.max(error, 1e-10)));
                nextStep = last ? Math.max(nextStep, grown) : grown;
                return;
            }
            nextStep = step * Math.max(SHRINK_FRACTION, scale(error));
            if (!(time + nextStep > time)) {
                throw new ArithmeticException("no step is small enough at " + time + ".");
            }
        }
    }

    /** Goes back to where the last step began; the next may be shorter. */
    public void stepBack() {
        System.arraycopy(before, 0, state, 0, state.length);
        time = timeBefore;
        motion.rates(time, state, rates1);
    }

    public double time() {
        return time;
    }

    /** When the last step began. */
    public double timeBefore() {
        return timeBefore;
    }

    /** A place of the present state. */
    public double at(int place) {
        return state[place];
    }

    /** A place of the state where the last step began. */
    public double atBefore(int place) {
        return before[place];
    }

    /**
     * A place of the state within the last step, by the fourth-order interpolant.
     *
     * @param when between {@link #timeBefore} and {@link #time}
     */
    public double within(double when, int place) {
        return course(place).at(when);
    }

    /** A place within the last step for whoever asks often; good until the next step. */
    public Course course(int place) {
        return new Course(place);
    }

    /** A place of the state through the last step. */
    public final class Course {
        private final double step = time - timeBefore;
        private final double start;
        private final double rise;
        private final double bend;
        private final double counterBend;
        private final double fine;

        private Course(int place) {
            // By now rates1 are those at the step's end and rates7 those at its start: see accept.
            boolean went = step > 0;
            start = went ? before[place] : state[place];
            rise = went ? state[place] - before[place] : 0;
            bend = step * rates7[place] - rise;
            counterBend = rise - step * rates1[place] - bend;
            fine =
                    step
                            * (-12715105075.0 / 11282082432.0 * rates7[place]
                                    + 87487479700.0 / 32700410799.0 * rates3[place]
                                    - 10690763975.0 / 1880347072.0 * rates4[place]
                                    + 701980252875.0 / 199316789632.0 * rates5[place]
                                    - 1453857185.0 / 822651844.0 * rates6[place]
                                    + 69997945.0 / 29380423.0 * rates1[place]);
        }

        /**
         * By the fourth-order interpolant.
         *
         * @param when between {@link #timeBefore} and {@link #time}
         */
        public double at(double when) {
            if (!(step > 0)) {
                return start;
            }
            double part = (when - timeBefore) / step;
            double rest = 1 - part;
            return start + part * (rise + rest * (bend + part * (counterBend + rest * fine)));
        }
    }

    private double tryStep(double step) {
        for (int i = 0; i < trial.length; i++) {
            trial[i] = state[i] + step * (1.0 / 5 * rates1[i]);
        }
        motion.rates(time + 1.0 / 5 * step, trial, rates2);
        for (int i = 0; i < trial.length; i++) {
            trial[i] = state[i] + step * (3.0 / 40 * rates1[i] + 9.0 / 40 * rates2[i]);
        }
        motion.rates(time + 3.0 / 10 * step, trial, rates3);
        for (int i = 0; i < trial.length; i++) {
            trial[i] =
                    state[i]
                            + step
                                    * (44.0 / 45 * rates1[i]
                                            - 56.0 / 15 * rates2[i]
                                            + 32.0 / 9 * rates3[i]);
        }
        motion.rates(time + 4.0 / 5 * step, trial, rates4);
        for (int i = 0; i < trial.length; i++) {
            trial[i] =
                    state[i]
                            + step
                                    * (19372.0 / 6561 * rates1[i]
                                            - 25360.0 / 2187 * rates2[i]
                                            + 64448.0 / 6561 * rates3[i]
                                            - 212.0 / 729 * rates4[i]);
        }
        motion.rates(time + 8.0 / 9 * step, trial, rates5);
        for (int i = 0; i < trial.length; i++) {
            trial[i] =
                    state[i]
                            + step
                                    * (9017.0 / 3168 * rates1[i]
                                            - 355.0 / 33 * rates2[i]
                                            + 46732.0 / 5247 * rates3[i]
                                            + 49.0 / 176 * rates4[i]
                                            - 5103.0 / 18656 * rates5[i]);
        }
        motion.rates(time + step, trial, rates6);
        for (int i = 0; i < trial.length; i++) {
            trial[i] =
                    state[i]
                            + step
                                    * (35.0 / 384 * rates1[i]
                                            + 500.0 / 1113 * rates3[i]
                                            + 125.0 / 192 * rates4[i]
                                            - 2187.0 / 6784 * rates5[i]
                                            + 11.0 / 84 * rates6[i]);
        }
        motion.rates(time + step, trial, rates7);
        return errorRatio(step);
    }

    /** Largest error of the trial over what is allowed: fifth-order weights less fourth-order ones. */
    private double errorRatio(double step) {
        double worst = 0;
        for (int i = 0; i < trial.length; i++) {
            double error =
                    71.0 / 57600 * rates1[i]
                            - 71.0 / 16695 * rates3[i]
                            + 71.0 / 1920 * rates4[i]
                            - 17253.0 / 339200 * rates5[i]
                            + 22.0 / 525 * rates6[i]
                            - 1.0 / 40 * rates7[i];
            double size = Math.max(1, Math.abs(trial[i]));
            double ratio = Math.abs(step * error) / (size * toleranceRatio);
            worst = Math.max(worst, ratio);
        }
        // What is no number must not pass for a small error.
        return Double.isNaN(worst) ? Double.POSITIVE_INFINITY : worst;
    }

    private void accept(double newTime) {
        System.arraycopy(state, 0, before, 0, state.length);
        System.arraycopy(trial, 0, state, 0, state.length);
        double[] first = rates1;
        rates1 = rates7;
        rates7 = first;
        timeBefore = time;
        time = newTime;
    }

    private static double scale(double error) {
        return SAFETY_FACTOR * Math.pow(error, -0.2);
    }
}
