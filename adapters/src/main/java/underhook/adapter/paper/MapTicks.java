package underhook.adapter.paper;

import java.io.IOException;
import java.util.Locale;
import underhook.adapter.paper.Labels.Box;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;

/** Ticks of latitude and longitude along the frame of the map, and crosses inside it. */
final class MapTicks {
    private static final double[] STEPS_MINUTES = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30};
    private static final int MOST = 6;

    private final Sheet sheet;
    private final MapView view;
    private final LocalFrame local;

    private MapTicks(Sheet sheet, MapView view, LocalFrame local) {
        this.sheet = sheet;
        this.view = view;
        this.local = local;
    }

    static void draw(Sheet sheet, MapView view, LocalFrame local) throws IOException {
        new MapTicks(sheet, view, local).drawAll();
    }

    private void drawAll() throws IOException {
        Box frame = view.frame();
        GeoPoint bottomLeft = geo(frame.x(), frame.y() + frame.height());
        GeoPoint topRight = geo(frame.x() + frame.width(), frame.y());
        double lonStep = step(topRight.lonDeg() - bottomLeft.lonDeg());
        double latStep = step(topRight.latDeg() - bottomLeft.latDeg());
        sheet.stroke(0.8);
        double bottom = frame.y() + frame.height();
        for (long n = first(bottomLeft.lonDeg(), lonStep); n * lonStep < topRight.lonDeg(); n++) {
            double x = page(bottomLeft.latDeg(), n * lonStep).x();
            if (x > frame.x() + 20 && x < frame.x() + frame.width() - 20) {
                sheet.line(x, bottom, x, bottom + 4);
                sheet.textCentred(x, bottom + 12, Face.SMALL, minutes(n * lonStep, "E", "W"));
            }
            for (long m = first(bottomLeft.latDeg(), latStep);
                    m * latStep < topRight.latDeg();
                    m++) {
                Dot cross = page(m * latStep, n * lonStep);
                if (view.shows(cross)) {
                    sheet.line(cross.x() - 3, cross.y(), cross.x() + 3, cross.y());
                    sheet.line(cross.x(), cross.y() - 3, cross.x(), cross.y() + 3);
                }
            }
        }
        for (long m = first(bottomLeft.latDeg(), latStep); m * latStep < topRight.latDeg(); m++) {
            double y = page(m * latStep, bottomLeft.lonDeg()).y();
            if (y > frame.y() + 10 && y < bottom - 10) {
                sheet.line(frame.x() - 4, y, frame.x(), y);
                // Two short lines, because the margin is narrow.
                String text = minutes(m * latStep, "N", "S");
                int space = text.indexOf(' ');
                sheet.textRight(frame.x() - 5, y - 1, Face.SMALL, text.substring(0, space));
                sheet.textRight(frame.x() - 5, y + 8, Face.SMALL, text.substring(space + 1));
            }
        }
    }

    private static long first(double fromDeg, double stepDeg) {
        return (long) Math.ceil(fromDeg / stepDeg);
    }

    private static double step(double spanDeg) {
        for (double minutes : STEPS_MINUTES) {
            if (spanDeg * 60 / minutes <= MOST) {
                return minutes / 60;
            }
        }
        return 1;
    }

    private GeoPoint geo(double x, double y) {
        return local.toGeo(view.toPlane(new Dot(x, y)));
    }

    private Dot page(double latDeg, double lonDeg) {
        return view.toPage(local.toPlane(new GeoPoint(latDeg, lonDeg)));
    }

    /** "12° 05.0'W". */
    private static String minutes(double angleDeg, String positive, String negative) {
        long tenths = Math.round(Math.abs(angleDeg) * 600);
        return String.format(
                Locale.ROOT,
                "%d° %02d.%d'%s",
                tenths / 600,
                tenths % 600 / 10,
                tenths % 10,
                angleDeg < 0 ? negative : positive);
    }
}
