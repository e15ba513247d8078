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
    private static final double[] NODE_FRACTION = {0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1, 1};
    private static final double[][] STAGE_COEFFICIENT = {
        {},
        {1.0 / 5},
        {3.0 / 40, 9.0 / 40},
        {44.0 / 45, -56.0 / 15, 32.0 / 9},
        {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
        {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
        {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84}
    };

    /** Fifth-order weights less fourth-order ones. */
    private static final double[] ERROR_COEFFICIENT = {
        71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40
    };

    private static final double[] INTERPOLANT_COEFFICIENT = {
        -12715105075.0 / 11282082432.0,
        0,
        87487479700.0 / 32700410799.0,
        -10690763975.0 / 1880347072.0,
        701980252875.0 / 199316789632.0,
        -1453857185.0 / 822651844.0,
        69997945.0 / 29380423.0
    };
    private static final int STAGES = 7;

    /** A step shrinks at most to this part, and grows at most to the other. */
    private static final double SHRINK_FRACTION = 0.2;

    private static final double GROW_FACTOR = 5;
    private static final double SAFETY_FACTOR = 0.9;

    private final Motion motion;
    private final double toleranceRatio;
    private final double[][] rates;
    private final double[] state;
    private final double[] before;
    private final double[] trial;
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
        this.rates = new double[STAGES][places];
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
        motion.rates(time, state, rates[0]);
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
        motion.rates(time, state, rates[0]);
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
        motion.rates(time, state, rates[0]);
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
        double step = time - timeBefore;
        if (!(step > 0)) {
            return state[place];
        }
        double part = (when - timeBefore) / step;
        double rest = 1 - part;
        double difference = state[place] - before[place];
        // rates[0] holds the last stage by now, rates[6] the first: see accept.
        double bend = step * rates[6][place] - difference;
        double counterBend = difference - step * rates[0][place] - bend;
        double fine = INTERPOLANT_COEFFICIENT[0] * rates[6][place];
        for (int stage = 2; stage < STAGES - 1; stage++) {
            fine += INTERPOLANT_COEFFICIENT[stage] * rates[stage][place];
        }
        fine = step * (fine + INTERPOLANT_COEFFICIENT[6] * rates[0][place]);
        return before[place]
                + part * (difference + rest * (bend + part * (counterBend + rest * fine)));
    }

    private double tryStep(double step) {
        for (int stage = 1; stage < STAGES; stage++) {
            double[] weights = STAGE_COEFFICIENT[stage];
            for (int place = 0; place < state.length; place++) {
                double slope = 0;
                for (int i = 0; i < weights.length; i++) {
                    slope += weights[i] * rates[i][place];
                }
                trial[place] = state[place] + step * slope;
            }
            motion.rates(time + NODE_FRACTION[stage] * step, trial, rates[stage]);
        }
        double worst = 0;
        for (int place = 0; place < state.length; place++) {
            double error = 0;
            for (int stage = 0; stage < STAGES; stage++) {
                error += ERROR_COEFFICIENT[stage] * rates[stage][place];
            }
            double size = Math.max(1, Math.abs(trial[place]));
            double ratio = Math.abs(step * error) / (size * toleranceRatio);
            worst = Math.max(worst, ratio);
        }
        // What is no number must not pass for a small error.
        return Double.isNaN(worst) ? Double.POSITIVE_INFINITY : worst;
    }

    private void accept(double newTime) {
        System.arraycopy(state, 0, before, 0, state.length);
        System.arraycopy(trial, 0, state, 0, state.length);
        double[] first = rates[0];
        rates[0] = rates[STAGES - 1];
        rates[STAGES - 1] = first;
        timeBefore = time;
        time = newTime;
    }

    private static double scale(double error) {
        return SAFETY_FACTOR * Math.pow(error, -0.2);
    }
}
