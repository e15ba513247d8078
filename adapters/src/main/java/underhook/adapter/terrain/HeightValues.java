package underhook.adapter.terrain;

/**
 * What stored numbers mean as heights: nodata and what cannot be ground become not a number.
 *
 * @param nodata stored number without a height; not a number when there is none
 * @param factor metres of one stored unit
 * @param offset metres added
 */
record HeightValues(double nodata, double factor, double offset) implements TiffBlocks.Values {
    /** Below the lowest and above the highest ground on Earth, and all usual nodata marks. */
    private static final double LOWEST_M = -1000;

    private static final double HIGHEST_M = 9000;

    @Override
    public double of(double stored) {
        // A float raster rounds its nodata mark to a float. Marks beyond all heights fall away
        // below.
        if (Math.abs(stored - nodata) <= 0 || Math.abs(stored - (float) nodata) <= 0) {
            return Double.NaN;
        }
        double height = stored * factor + offset;
        return height >= LOWEST_M && height <= HIGHEST_M ? height : Double.NaN;
    }
}
