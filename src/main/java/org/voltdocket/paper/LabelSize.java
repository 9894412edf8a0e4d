package org.voltdocket.paper;

/**
 * Size of an adhesive label.
 *
 * @param widthMm 60 to 210 mm
 * @param heightMm 50 to 297 mm
 */
public record LabelSize(float widthMm, float heightMm) {

    private static final float POINTS_PER_MM = 72 / 25.4f;
    private static final float LEAST_WIDTH = 60;
    private static final float MOST_WIDTH = 210;
    private static final float LEAST_HEIGHT = 50;
    private static final float MOST_HEIGHT = 297;

    public LabelSize {
        if (!(widthMm >= LEAST_WIDTH && widthMm <= MOST_WIDTH && heightMm >= LEAST_HEIGHT && heightMm <= MOST_HEIGHT)) {
            throw new IllegalArgumentException(
                    "A label is 60 to 210 mm wide and 50 to 297 mm high; read " + widthMm + " × " + heightMm + " mm.");
        }
    }

    static float points(float mm) {
        return mm * POINTS_PER_MM;
    }

    float width() {
        return points(widthMm);
    }

    float height() {
        return points(heightMm);
    }
}
