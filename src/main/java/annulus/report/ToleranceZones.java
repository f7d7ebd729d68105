package annulus.report;

import annulus.advice.FitExplanation;
import annulus.advice.FitExplanation.Zone;
import annulus.measure.Side;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;

/**
 * Tolerance zones about the nominal line, as a picture and as text: deviations in µm on the
 * diameter.
 */
public final class ToleranceZones {
  private static final double WIDTH = 90;
  private static final double HEIGHT = 62;
  private static final double TOP = 8;
  private static final double BOTTOM = 56;
  private static final double LEFT = 16;
  private static final String THIN = "stroke=\"#000\" stroke-width=\"0.2\"";

  private final FitExplanation fit;
  private final double lowUm;
  private final double highUm;

  private ToleranceZones(FitExplanation fit) {
    this.fit = fit;
    double low = 0;
    double high = 0;
    for (Zone zone : fit.zones()) {
      low = Math.min(low, zone.limits().lowerUm());
      high = Math.max(high, zone.limits().upperUm());
    }
    double margin = Math.max(4, 0.12 * (high - low));
    this.lowUm = low - margin;
    this.highUm = high + margin;
  }

  /** The picture as one SVG element. */
  public static String svg(FitExplanation fit) {
    return new ToleranceZones(fit).draw();
  }

  /** The picture as lines of text. */
  public static List<String> text(FitExplanation fit) {
    return new ToleranceZones(fit).lines();
  }

  private double y(double um) {
    return BOTTOM - (um - lowUm) / (highUm - lowUm) * (BOTTOM - TOP);
  }

  private String draw() {
    String words = String.join(" and ", fit.zones().stream().map(Zone::written).toList());
    Svg svg =
        new Svg(WIDTH, HEIGHT, "Tolerance zones of " + words, "deviations in µm on the diameter");
    svg.text(LEFT, 4.5, "start", 3, "", "µm on the diameter, from the nominal size");
    svg.line(LEFT, y(0), WIDTH - 4, y(0), THIN);
    svg.text(LEFT - 1.5, y(0) + 1, "end", 3, "", "0");
    double x = LEFT + 6;
    for (Zone zone : fit.zones()) {
      zone(svg, zone, x);
      x += 36;
    }
    return svg.element();
  }

  private void zone(Svg svg, Zone zone, double x) {
    double top = y(zone.limits().upperUm());
    double bottom = y(zone.limits().lowerUm());
    String fill = zone.side() == Side.BORE ? "fill=\"#fff\" " : "fill=\"#bbb\" ";
    svg.rectangle(x, top, 18, Math.max(0.6, bottom - top), fill + THIN);
    if (zone.limits().upperUm() != 0) {
      svg.text(x + 19, top + 1, "start", 3, "", Numbers.signed(zone.limits().upperUm(), 1));
    }
    double low = Math.max(bottom + 1, top + 4.2);
    if (zone.limits().lowerUm() != 0) {
      svg.text(x + 19, low, "start", 3, "", Numbers.signed(zone.limits().lowerUm(), 1));
    }
    String who = zone.side() == Side.BORE ? "hole " : "shaft ";
    svg.text(x, HEIGHT - 1.5, "start", 3.2, "font-weight=\"bold\"", who + zone.written());
  }

  private List<String> lines() {
    int rows = 13;
    double step = (highUm - lowUm) / (rows - 1);
    int zero = (int) Math.round(highUm / step);
    List<String> lines = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      double um = (zero - row) * step;
      StringBuilder line = new StringBuilder();
      line.append(String.format(java.util.Locale.ROOT, "%8s ", Numbers.signed(um, 0)));
      line.append(row == zero ? '+' : '|');
      for (Zone zone : fit.zones()) {
        boolean inside = covers(zone, um, step);
        char fill = zone.side() == Side.BORE ? '#' : '=';
        char empty = row == zero ? '-' : ' ';
        line.append(String.valueOf(empty).repeat(4));
        line.append(String.valueOf(inside ? fill : empty).repeat(10));
      }
      lines.add(line.toString().stripTrailing());
    }
    StringBuilder names = new StringBuilder(" ".repeat(10));
    for (Zone zone : fit.zones()) {
      names.append(String.format(java.util.Locale.ROOT, "    %-10s", zone.written()));
    }
    lines.add(names.toString().stripTrailing());
    lines.add("      µm on the diameter, from the nominal size; # hole, = shaft");
    return lines;
  }

  private static boolean covers(Zone zone, double um, double step) {
    return zone.limits().lowerUm() < um + step / 2 && zone.limits().upperUm() > um - step / 2;
  }
}
