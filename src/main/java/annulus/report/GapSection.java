package annulus.report;

import annulus.advice.Advice;
import annulus.catalog.Catalog;
import annulus.quantity.Numbers;

/**
 * The joint cut along its axis: bore wall, part and film between. Parts are drawn to one scale, the
 * gap to a larger one; both are printed under the picture.
 */
public final class GapSection {
  private static final double WIDTH = 62;
  private static final double HEIGHT = 37;
  private static final double WALL = 3.6;
  private static final double MIDDLE = 17;
  private static final double LEFT = 2;
  private static final double TALLEST_PART = 18;
  private static final double LONGEST = 22;
  private static final double WIDEST_GAP = 3;
  private static final double[] SERIES = {1, 2, 2.5, 4, 5};
  private static final String THIN = "stroke=\"#000\" stroke-width=\"0.15\"";
  private static final String EDGE = "fill=\"none\" stroke=\"#000\" stroke-width=\"0.3\"";

  private final Advice advice;
  private final GapTexts words;
  private final double partScale;
  private final double gapScale;
  private final double part;
  private final double gap;
  private final double length;

  private GapSection(Advice advice, Catalog catalog) {
    this.advice = advice;
    this.words = new GapTexts(advice, catalog);
    double diameter = advice.gap().gap().nominalMm();
    double engagement = advice.order().engagementMm();
    double gapMm = Math.abs(advice.gap().gap().meanUm()) / 1000;
    this.partScale = largest(Math.min(TALLEST_PART / diameter, LONGEST / engagement), 10);
    this.gapScale = largest(WIDEST_GAP / Math.max(gapMm, WIDEST_GAP / 500), 500);
    this.part = diameter * partScale;
    this.gap = gapMm * gapScale;
    this.length = engagement * partScale;
  }

  /** The picture as one SVG element. */
  public static String of(Advice advice, Catalog catalog) {
    return new GapSection(advice, catalog).draw();
  }

  /** The largest scale of 1, 2, 2.5, 4, 5 times a power of ten that is not above the wanted one. */
  private static double largest(double wanted, double most) {
    double best = 0.001;
    for (double decade = 0.001; decade < 2000; decade *= 10) {
      for (double step : SERIES) {
        double scale = step * decade;
        best = scale <= wanted * (1 + 1e-9) && scale <= most * (1 + 1e-9) ? scale : best;
      }
    }
    return best;
  }

  private static String scale(double scale) {
    return scale >= 1 - 1e-9
        ? Figures.trimmed(scale, 1) + " : 1"
        : "1 : " + Figures.trimmed(1 / scale, 1);
  }

  private boolean tight() {
    return advice.gap().gap().meanUm() < 0;
  }

  private String draw() {
    String title = "Joint cut along its axis";
    Svg svg = new Svg(WIDTH, HEIGHT, title, words.fit().words() + "; " + words.line());
    double half = part / 2;
    // interference: the part's edge lies inside the wall by the exaggerated amount
    double inner = half + (tight() ? -gap : gap);
    wall(svg, MIDDLE - inner - WALL, MIDDLE - inner);
    wall(svg, MIDDLE + inner, MIDDLE + inner + WALL);
    part(svg, half);
    film(svg, half, inner);
    double x = LEFT + length + 2.5;
    gapLabels(svg, x, half, inner);
    sizes(svg);
    svg.text(
        LEFT,
        HEIGHT - 0.7,
        "start",
        2.3,
        "",
        "gap drawn " + scale(gapScale) + ", parts " + scale(partScale) + ", wall not to scale");
    return svg.element();
  }

  /** Hatched as a cut face. */
  private void wall(Svg svg, double top, double bottom) {
    svg.rectangle(LEFT, top, length, bottom - top, "fill=\"#e4e4e4\"");
    double height = bottom - top;
    for (double x = -height; x < length; x += 1.2) {
      double from = Math.max(0, x);
      double to = Math.min(length, x + height);
      svg.line(LEFT + from, bottom - (from - x), LEFT + to, bottom - (to - x), THIN);
    }
    svg.rectangle(LEFT, top, length, height, EDGE);
  }

  private void part(Svg svg, double half) {
    svg.rectangle(LEFT, MIDDLE - half, length, 2 * half, "fill=\"#fff\"");
    svg.rectangle(LEFT, MIDDLE - half, length, 2 * half, EDGE);
    svg.line(
        LEFT - 1.5,
        MIDDLE,
        LEFT + length + 1.5,
        MIDDLE,
        "stroke=\"#000\" stroke-width=\"0.15\" stroke-dasharray=\"2 0.6 0.4 0.6\"");
  }

  private void film(Svg svg, double half, double inner) {
    double thick = Math.abs(inner - half);
    double outer = Math.max(half, inner);
    String fill = tight() ? "fill=\"#000\"" : "fill=\"#8a8a8a\"";
    svg.rectangle(LEFT, MIDDLE - outer, length, thick, fill);
    svg.rectangle(LEFT, MIDDLE + outer - thick, length, thick, fill);
  }

  private void gapLabels(Svg svg, double x, double half, double inner) {
    double top = MIDDLE - (half + inner) / 2;
    double bottom = MIDDLE + (half + inner) / 2;
    double text = Math.max(x + 4, 27);
    svg.line(LEFT + length, top, text - 0.8, 5, THIN);
    svg.text(text, 4, "start", 2.5, "", "radial gap (per side)");
    svg.text(text, 7.4, "start", 3.2, "font-weight=\"bold\"", words.radial());
    svg.line(LEFT + length, top, x + 1, top, THIN);
    svg.line(LEFT + length, bottom, x + 1, bottom, THIN);
    svg.line(x + 1, top, x + 1, bottom, THIN);
    svg.line(x + 1, 15, text - 0.8, 15, THIN);
    svg.text(text, 13.8, "start", 2.5, "", "diametral clearance (across)");
    svg.text(text, 17.2, "start", 3.2, "font-weight=\"bold\"", words.diametral());
  }

  private void sizes(Svg svg) {
    double text = Math.max(LEFT + length + 6.5, 27);
    String bore =
        advice.gap().bore().map(b -> "bore Ø " + mm(b.meanMm())).orElse("joint Ø " + nominal());
    String partSize = advice.gap().part().map(p -> "part Ø " + mm(p.meanMm())).orElse("");
    svg.text(text, 22.6, "start", 2.5, "", bore);
    svg.text(text, 26, "start", 2.5, "", partSize);
    svg.text(
        text,
        29.4,
        "start",
        2.5,
        "",
        "length in the bore " + Figures.trimmed(advice.order().engagementMm(), 1) + " mm");
    String legend = tight() ? "black: overlap, an interference" : "hatched: wall; grey: film";
    svg.text(text, 32.8, "start", 2.3, "", legend);
  }

  private String nominal() {
    return mm(advice.gap().gap().nominalMm());
  }

  private static String mm(double mm) {
    return Numbers.fixed(mm, 3) + " mm";
  }
}
