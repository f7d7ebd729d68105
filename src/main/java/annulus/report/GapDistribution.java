package annulus.report;

import annulus.advice.Advice;
import annulus.catalog.CompoundClass;
import annulus.fit.Gap;
import annulus.select.ClassVerdict;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The largest gap as it is known, over the range of each class: a curve, its interval, a bar for
 * each class, and two scales, radial below and diametral above.
 */
public final class GapDistribution {
  private static final double WIDTH = 62;
  private static final double HEIGHT = 40.5;
  private static final double LEFT = 20.5;
  private static final double RIGHT = 60;
  private static final double CURVE_TOP = 8;
  private static final double CURVE_BASE = 17;
  private static final double BARS_TOP = 18.5;
  private static final double BARS_BOTTOM = 34;
  private static final int POINTS = 120;
  private static final String THIN = "stroke=\"#000\" stroke-width=\"0.15\"";

  private final Advice advice;
  private final double lowUm;
  private final double highUm;

  private GapDistribution(Advice advice) {
    this.advice = advice;
    Gap gap = advice.gap().gap();
    double expanded = gap.extremeBudget().expandedUm(advice.gap().level());
    double low = Math.min(-15, gap.largestUm() - 2 * expanded);
    double high = Math.max(60, gap.largestUm() + 2 * expanded);
    for (ClassVerdict verdict : advice.table()) {
      double end = verdict.compound().gapUm().high();
      boolean near = verdict.covers() > 0.01 && end < 3 * high;
      high = near ? Math.max(high, end * 1.08) : high;
    }
    this.lowUm = low;
    this.highUm = high;
  }

  /** The picture as one SVG element. */
  public static String of(Advice advice) {
    return new GapDistribution(advice).draw();
  }

  private double x(double um) {
    double clipped = Math.min(highUm, Math.max(lowUm, um));
    return LEFT + (clipped - lowUm) / (highUm - lowUm) * (RIGHT - LEFT);
  }

  private String draw() {
    Gap gap = advice.gap().gap();
    double level = advice.gap().level();
    double expanded = gap.extremeBudget().expandedUm(level);
    String known =
        "largest gap "
            + GapTexts.plusMinus(gap.largestUm(), expanded)
            + " radial, "
            + GapTexts.plusMinus(2 * gap.largestUm(), 2 * expanded)
            + " diametral";
    Svg svg = new Svg(WIDTH, HEIGHT, "Measured gap over the class ranges", known);
    scale(svg);
    bars(svg);
    curve(svg, gap);
    interval(svg, gap.largestUm(), expanded, level);
    return svg.element();
  }

  private void curve(Svg svg, Gap gap) {
    double u = gap.extremeBudget().combinedUm();
    double freedom = Math.max(1, Math.floor(gap.extremeBudget().effectiveDegreesOfFreedom()));
    ContinuousDistribution shape =
        freedom > 1e5 ? NormalDistribution.of(0, 1) : TDistribution.of(freedom);
    double peak = shape.density(0);
    double reach = Math.max(4 * u, (highUm - lowUm) / POINTS);
    double from = Math.max(lowUm, gap.largestUm() - reach);
    double to = Math.min(highUm, gap.largestUm() + reach);
    Svg.Path path = new Svg.Path().to(x(from), CURVE_BASE);
    for (int i = 0; i <= POINTS; i++) {
      double um = from + (to - from) * i / POINTS;
      double share = u > 0 ? shape.density((um - gap.largestUm()) / u) / peak : 1;
      path.to(x(um), CURVE_BASE - share * (CURVE_BASE - CURVE_TOP));
    }
    path.to(x(to), CURVE_BASE).close();
    svg.path(path, "fill=\"#b8b8b8\" stroke=\"#000\" stroke-width=\"0.25\"");
    svg.line(LEFT, CURVE_BASE, RIGHT, CURVE_BASE, THIN);
  }

  private void interval(Svg svg, double middle, double expanded, double level) {
    String dashed = "stroke=\"#000\" stroke-width=\"0.2\" stroke-dasharray=\"0.8 0.5\"";
    for (double end : new double[] {middle - expanded, middle + expanded}) {
      svg.line(x(end), CURVE_TOP - 0.5, x(end), BARS_BOTTOM, dashed);
    }
    svg.text(0.5, CURVE_TOP + 3, "start", 2.3, "", "measured");
    svg.text(0.5, CURVE_TOP + 6, "start", 2.3, "", "dashed lines:");
    svg.text(0.5, CURVE_TOP + 9, "start", 2.3, "", Figures.wanted(level) + " sure");
  }

  private void bars(Svg svg) {
    int count = Math.max(1, advice.table().size());
    double step = (BARS_BOTTOM - BARS_TOP) / count;
    double y = BARS_TOP;
    for (ClassVerdict verdict : advice.table()) {
      bar(svg, verdict, y, Math.min(2.2, step));
      y += step;
    }
  }

  private void bar(Svg svg, ClassVerdict verdict, double y, double step) {
    CompoundClass compound = verdict.compound();
    boolean chosen = verdict.standing() == ClassVerdict.Standing.CHOSEN;
    double from = x(compound.gapUm().low());
    double to = x(compound.gapUm().high());
    String fill =
        chosen ? "fill=\"#000\"" : verdict.usable() ? "fill=\"#777\"" : "fill=\"#d4d4d4\"";
    if (compound.gapUm().low() < highUm) {
      svg.rectangle(
          from, y + 0.25, to - from, step - 0.6, fill + " stroke=\"#000\" stroke-width=\"0.1\"");
    }
    if (compound.gapUm().high() > highUm) {
      svg.text(RIGHT + 0.3, y + step - 0.4, "start", 2.2, "", "›");
    }
    String weight = chosen ? "font-weight=\"bold\"" : "";
    svg.text(
        LEFT - 0.8, y + step - 0.5, "end", Math.min(2.1, step), weight, ClassTexts.name(compound));
  }

  private void scale(Svg svg) {
    double step = step(highUm - lowUm);
    svg.line(LEFT, BARS_BOTTOM, RIGHT, BARS_BOTTOM, THIN);
    svg.line(LEFT, 5.6, RIGHT, 5.6, THIN);
    for (double um = Math.ceil(lowUm / step) * step; um <= highUm; um += step) {
      svg.line(x(um), BARS_BOTTOM, x(um), BARS_BOTTOM + 0.8, THIN);
      svg.line(x(um), 5.6, x(um), 4.8, THIN);
      svg.text(x(um), BARS_BOTTOM + 3, "middle", 2.2, "", Figures.trimmed(um, 0));
      svg.text(x(um), 4.2, "middle", 2.2, "", Figures.trimmed(2 * um, 0));
    }
    svg.text(0.5, 4.2, "start", 2.2, "", "diametral, µm");
    svg.text(0.5, BARS_BOTTOM + 3, "start", 2.2, "", "radial, µm");
    svg.text(0.5, HEIGHT - 0.6, "start", 2.2, "", legend());
  }

  private String legend() {
    return "bars, what a class fills: black chosen, grey would do";
  }

  /** A round step that gives four to nine marks. */
  private static double step(double range) {
    double step = 1;
    double[] factors = {2, 2.5, 2};
    for (int i = 0; range / step > 8; i++) {
      step *= factors[i % factors.length];
    }
    return step;
  }
}
