package annulus.report;

import annulus.stock.CoverAxes;
import annulus.stock.CoverCell;
import java.util.Set;
import java.util.TreeSet;

/** The coverage picture as SVG: one block for each service temperature, twice. */
public final class CoverPicture {
  private static final double LEFT = 190;
  private static final double CELL_WIDTH = 64;
  private static final double CELL_HEIGHT = 18;
  private static final double BLOCK_HEAD = 40;
  private static final double TOP = 62;
  private static final String SERVED = "#444";
  private static final String HOLE = "#fff";
  private static final String NEVER = "#ddd";

  private final CoverReport report;
  private final StockSvg svg = new StockSvg();

  private CoverPicture(CoverReport report) {
    this.report = report;
  }

  /** The whole picture; write it as UTF-8. */
  public static String svg(CoverReport report) {
    return new CoverPicture(report).draw();
  }

  private String draw() {
    CoverAxes axes = report.axes();
    double blockWidth = LEFT + axes.gaps().size() * CELL_WIDTH + 20;
    double blockHeight = BLOCK_HEAD + axes.surfaces().size() * CELL_HEIGHT + 16;
    double width = 2 * blockWidth;
    double height = TOP + axes.services().size() * blockHeight;
    svg.text(
        10, 22, 16, "start", "Which joints this cabinet serves (gaps are radial, µm per side)");
    legend();
    for (int i = 0; i < axes.services().size(); i++) {
      double y = TOP + i * blockHeight;
      block(true, axes.services().get(i), 0, y);
      block(false, axes.services().get(i), blockWidth, y);
    }
    return svg.picture(width, height, "Coverage of the cabinet");
  }

  private void legend() {
    svg.box(10, 34, 16, 12, SERVED, "served").text(30, 44, 11, "start", "served");
    svg.box(90, 34, 16, 12, HOLE, "hole").text(98, 44, 11, "middle", "o");
    svg.text(110, 44, 11, "start", "hole");
    svg.box(160, 34, 16, 12, NEVER, "nothing").text(168, 44, 11, "middle", "-");
    svg.text(180, 44, 11, "start", "nothing known serves it");
  }

  private void block(boolean releasable, CoverAxes.Service service, double x, double y) {
    CoverAxes axes = report.axes();
    svg.text(x + 10, y + 14, 13, "start", CoverReport.block(releasable, service));
    for (int g = 0; g < axes.gaps().size(); g++) {
      CoverAxes.Gaps gaps = axes.gaps().get(g);
      double middle = x + LEFT + (g + 0.5) * CELL_WIDTH;
      svg.text(middle, y + 32, 10, "middle", CoverReport.stretch(gaps, gaps));
    }
    for (int s = 0; s < axes.surfaces().size(); s++) {
      CoverAxes.Surfaces surfaces = axes.surfaces().get(s);
      double top = y + BLOCK_HEAD + s * CELL_HEIGHT;
      svg.text(x + LEFT - 6, top + 13, 11, "end", surfaces.name());
      for (int g = 0; g < axes.gaps().size(); g++) {
        CoverCell cell = report.cell(axes.gaps().get(g), surfaces, service, releasable);
        cell(cell, x + LEFT + g * CELL_WIDTH, top);
      }
    }
  }

  private void cell(CoverCell cell, double x, double y) {
    boolean served = cell.servedBy(report.cover().there());
    String fill = served ? SERVED : cell.possible() ? HOLE : NEVER;
    svg.box(x, y, CELL_WIDTH, CELL_HEIGHT, fill, words(cell, served));
    if (!served) {
      svg.text(x + CELL_WIDTH / 2, y + 13, 11, "middle", cell.possible() ? "o" : "-");
    }
  }

  private static String words(CoverCell cell, boolean served) {
    Set<String> ways = new TreeSet<>();
    cell.alternatives().forEach(a -> ways.add(String.join(" with ", new TreeSet<>(a))));
    String by = String.join(", ", ways);
    return served
        ? "served; would do: " + by
        : cell.possible() ? "hole; would do: " + by : "nothing";
  }
}
