package annulus.report;

import annulus.catalog.CompoundClass;
import annulus.catalog.Stage;
import annulus.quantity.Numbers;
import annulus.stock.ShopClass;
import java.util.List;

/**
 * What a label changes, in words and as a picture.
 *
 * @param change before and after
 */
public record LabelReport(ShopClass change) {
  private static final double LEFT = 210;
  private static final double WIDTH = 420;

  /** One property: its range before and after. */
  private record Row(
      String name, String unit, double low0, double high0, double low1, double high1) {}

  private List<Row> rows() {
    CompoundClass a = change.before();
    CompoundClass b = change.after();
    return List.of(
        new Row(
            "gap it fills",
            "µm radial",
            a.gapUm().low(),
            a.gapUm().high(),
            b.gapUm().low(),
            b.gapUm().high()),
        new Row(
            "shear strength",
            "MPa",
            a.strengthMPa().low(),
            a.strengthMPa().high(),
            b.strengthMPa().low(),
            b.strengthMPa().high()),
        times("fixture", "min", Stage.FIXTURE, 60),
        times("full cure", "h", Stage.FULL, 1),
        new Row(
            "service",
            "°C",
            a.serviceC().low(),
            a.serviceC().high(),
            b.serviceC().low(),
            b.serviceC().high()),
        new Row(
            "open life",
            "months",
            a.openMonths().low(),
            a.openMonths().high(),
            b.openMonths().low(),
            b.openMonths().high()));
  }

  /** Times with the spread between lots, two standard deviations either way. */
  private Row times(String name, String unit, Stage stage, double perHour) {
    double[] before = spread(change.before(), stage, perHour);
    double[] after = spread(change.after(), stage, perHour);
    return new Row(name, unit, before[0], before[1], after[0], after[1]);
  }

  private static double[] spread(CompoundClass compound, Stage stage, double perHour) {
    double hours = compound.cure().at(stage).hours() * perHour;
    double factor = Math.exp(2 * compound.cure().spreadLn());
    return new double[] {hours / factor, hours * factor};
  }

  /** The text for a terminal. */
  public String text() {
    TextLines out = new TextLines();
    CompoundClass after = change.after();
    out.line(
        after.id() + " (" + after.name() + "), like " + change.before().id() + ", from the label");
    out.line(
        "  "
            + TextLines.cell("", 28)
            + TextLines.cell("class it is like", 22)
            + "by the shop's label");
    for (Row row : rows()) {
      out.line(
          "  "
              + TextLines.cell(row.name() + ", " + row.unit(), 28)
              + TextLines.cell(range(row.low0(), row.high0()), 22)
              + range(row.low1(), row.high1()));
    }
    out.line(
        "  times hold at "
            + Numbers.plain(after.cure().referenceC())
            + " °C, two active faces, radial gap "
            + Numbers.plain(after.cure().referenceGapUm())
            + " µm; least cure temperature "
            + Numbers.plain(after.cure().minimumC())
            + " °C");
    change.notes().forEach(n -> out.hanging("  note: ", n));
    out.line("  Every answer that uses it says: source shop label.");
    return out.toString();
  }

  private static String range(double low, double high) {
    return number(low) + " to " + number(high);
  }

  private static String number(double value) {
    return Numbers.plain(Double.parseDouble(Numbers.fixed(value, Math.abs(value) < 10 ? 2 : 1)));
  }

  /** The picture; write it as UTF-8. */
  public String svg() {
    StockSvg svg = new StockSvg();
    String title = change.after().id() + " by its label, before and after";
    svg.text(10, 22, 15, "start", title);
    svg.box(10, 34, 16, 10, "#fff", "before").text(30, 43, 11, "start", "class it is like");
    svg.box(150, 34, 16, 10, "#444", "after").text(170, 43, 11, "start", "by the shop's label");
    double y = 62;
    for (Row row : rows()) {
      bars(svg, row, y);
      y += 46;
    }
    return svg.picture(LEFT + WIDTH + 150, y + 6, title);
  }

  private static void bars(StockSvg svg, Row row, double y) {
    double low = Math.min(0, Math.min(row.low0(), row.low1()));
    double high = Math.max(row.high0(), row.high1());
    double scale = WIDTH / (high - low);
    svg.text(LEFT - 8, y + 18, 12, "end", row.name() + ", " + row.unit());
    bar(svg, row.low0(), row.high0(), low, scale, y, "#fff");
    bar(svg, row.low1(), row.high1(), low, scale, y + 16, "#444");
    svg.line(LEFT - low * scale, y - 4, LEFT - low * scale, y + 34);
  }

  private static void bar(
      StockSvg svg, double from, double to, double low, double scale, double y, String fill) {
    double width = Math.max(2, (to - from) * scale);
    svg.box(LEFT + (from - low) * scale, y, width, 12, fill, range(from, to));
    svg.text(LEFT + (to - low) * scale + 6, y + 10, 10, "start", range(from, to));
  }
}
