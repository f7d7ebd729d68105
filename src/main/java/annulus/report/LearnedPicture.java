package annulus.report;

import annulus.advice.Learned;
import annulus.quantity.Numbers;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Before and after of a class's time factor as an SVG picture: what was believed, what the
 * observations make of it, and the factor used here.
 */
public final class LearnedPicture {
  private static final double LEFT = 50;
  private static final double RIGHT = 850;
  private static final double TOP = 80;
  private static final double BOTTOM = 330;
  private static final int POINTS = 200;

  private final Learned learned;
  private final double reach;
  private final StringBuilder svg = new StringBuilder();

  private LearnedPicture(Learned learned) {
    this.learned = learned;
    double sigma = learned.time().priorSigmaLn();
    this.reach = Math.max(3.2 * sigma, Math.abs(learned.time().meanLn()) + 3 * sigma);
  }

  /** The picture. */
  public static String of(Learned learned) {
    return new LearnedPicture(learned).draw();
  }

  private String draw() {
    svg.append(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 900 400\" width=\"900\""
            + " height=\"400\" role=\"img\" "
            + Svg.FONT
            + " fill=\"#000\">\n");
    String title = learned.shipped().id() + ": time factor before and after " + evidence();
    svg.append("<title>").append(Html.text(title)).append("</title>\n");
    svg.append("<rect width=\"900\" height=\"400\" fill=\"#fff\"/>\n");
    text(LEFT, 28, "start", 18, title);
    text(LEFT, 52, "start", 14, "dashed: as shipped; thick: with what this shop saw");
    axis();
    double sigma = learned.time().priorSigmaLn();
    DoubleUnaryOperator prior = x -> Math.exp(-x * x / (2 * sigma * sigma)) / (sigma * 2.5066283);
    DoubleUnaryOperator posterior = this::density;
    double top = 0;
    for (int i = 0; i <= POINTS; i++) {
      top = Math.max(top, Math.max(prior.applyAsDouble(ln(i)), posterior.applyAsDouble(ln(i))));
    }
    curve(prior, top, "2", "6 4");
    curve(posterior, top, "3.5", "");
    mark();
    return svg.append("</svg>\n").toString();
  }

  private String evidence() {
    return learned.joints() == 1 ? "1 joint" : learned.joints() + " joints";
  }

  private double ln(int i) {
    return -reach + 2 * reach * i / POINTS;
  }

  /** Straight between the points of the grid, which is coarser than the picture may be. */
  private double density(double ln) {
    List<Double> grid = learned.time().lnFactor();
    List<Double> density = learned.time().density();
    double place = (ln - grid.get(0)) / (grid.get(1) - grid.get(0));
    int at = (int) Math.floor(place);
    if (at < 0 || at + 1 >= grid.size()) {
      return 0;
    }
    return density.get(at) + (place - at) * (density.get(at + 1) - density.get(at));
  }

  private double x(double ln) {
    return LEFT + (RIGHT - LEFT) * (ln + reach) / (2 * reach);
  }

  private void axis() {
    line(LEFT, BOTTOM, RIGHT, BOTTOM, "1.5", "");
    for (double factor : new double[] {0.25, 0.33, 0.5, 0.67, 0.8, 1, 1.25, 1.5, 2, 3, 4}) {
      double ln = Math.log(factor);
      if (Math.abs(ln) < reach) {
        line(x(ln), BOTTOM, x(ln), BOTTOM + 6, "1", "");
        text(x(ln), BOTTOM + 22, "middle", 13, Numbers.plain(factor));
      }
    }
    text(
        (LEFT + RIGHT) / 2,
        BOTTOM + 46,
        "middle",
        14,
        "factor on the times; less is quicker, more is slower");
  }

  private void curve(DoubleUnaryOperator density, double top, String width, String dash) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i <= POINTS; i++) {
      double y = BOTTOM - (BOTTOM - TOP) * density.applyAsDouble(ln(i)) / top;
      path.append(i == 0 ? "M" : " L").append(Figures.trimmed(x(ln(i)), 1));
      path.append(' ').append(Figures.trimmed(y, 1));
    }
    svg.append("<path fill=\"none\" stroke=\"#000\" stroke-width=\"").append(width).append('"');
    svg.append(dash.isEmpty() ? "" : " stroke-dasharray=\"" + dash + "\"");
    svg.append(" d=\"").append(path).append("\"/>\n");
  }

  private void mark() {
    double at = x(Math.log(learned.timeFactor()));
    line(at, TOP - 4, at, BOTTOM, "1.5", "2 3");
    text(at + 5, TOP + 8, "start", 14, "used here " + Numbers.fixed(learned.timeFactor(), 2));
  }

  private void line(double x1, double y1, double x2, double y2, String width, String dash) {
    svg.append("<line x1=\"").append(Figures.trimmed(x1, 1));
    svg.append("\" y1=\"").append(Figures.trimmed(y1, 1));
    svg.append("\" x2=\"").append(Figures.trimmed(x2, 1));
    svg.append("\" y2=\"").append(Figures.trimmed(y2, 1));
    svg.append("\" stroke=\"#000\" stroke-width=\"").append(width).append('"');
    svg.append(dash.isEmpty() ? "" : " stroke-dasharray=\"" + dash + "\"").append("/>\n");
  }

  private void text(double x, double y, String anchor, int size, String words) {
    svg.append("<text x=\"").append(Figures.trimmed(x, 1));
    svg.append("\" y=\"").append(Figures.trimmed(y, 1));
    svg.append("\" text-anchor=\"").append(anchor);
    svg.append("\" font-size=\"").append(size).append("\">");
    svg.append(Html.text(words)).append("</text>\n");
  }
}
