package annulus.report;

import annulus.stock.Cover;
import annulus.stock.CoverAxes;
import annulus.stock.CoverCell;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which joints a cabinet serves, in words and as a picture of characters.
 *
 * @param cover the outcome
 * @param axes the joints
 */
public record CoverReport(Cover cover, CoverAxes axes) {
  private static final int NAME = 32;
  private static final int COLUMN = 9;

  /** The text for a terminal. */
  public String text() {
    TextLines out = new TextLines();
    Set<String> there = new TreeSet<>(cover.there());
    out.line(
        "In the cabinet: "
            + (there.isEmpty() ? "nothing in date" : String.join(", ", there))
            + ".");
    long possible = cover.cells().stream().filter(CoverCell::possible).count();
    out.line(
        "It serves "
            + cover.served()
            + " of "
            + possible
            + " kinds of joint that anything serves.");
    out.line("# served   o hole   - nothing known serves it. Gaps are radial (per side).");
    for (boolean releasable : new boolean[] {true, false}) {
      for (CoverAxes.Service service : axes.services()) {
        out.heading(block(releasable, service));
        out.line("  " + header());
        axes.surfaces().forEach(s -> out.line("  " + row(releasable, service, s)));
      }
    }
    holes(out);
    return out.toString();
  }

  static String block(boolean releasable, CoverAxes.Service service) {
    return (releasable ? "Comes apart again, " : "Stays for good, ") + service.name();
  }

  private String header() {
    StringBuilder line = new StringBuilder(TextLines.cell("", NAME));
    axes.gaps().forEach(g -> line.append(TextLines.cell(stretch(g, g), COLUMN)));
    return line.toString();
  }

  private String row(boolean releasable, CoverAxes.Service service, CoverAxes.Surfaces surfaces) {
    StringBuilder line = new StringBuilder(TextLines.cell(surfaces.name(), NAME));
    for (CoverAxes.Gaps gaps : axes.gaps()) {
      CoverCell cell = cell(gaps, surfaces, service, releasable);
      line.append(TextLines.cell(mark(cell), COLUMN));
    }
    return line.toString();
  }

  private String mark(CoverCell cell) {
    return !cell.possible() ? "-" : cell.servedBy(cover.there()) ? "#" : "o";
  }

  CoverCell cell(
      CoverAxes.Gaps gaps,
      CoverAxes.Surfaces surfaces,
      CoverAxes.Service service,
      boolean releasable) {
    return cover.cells().stream()
        .filter(c -> c.gap().equals(gaps.id()) && c.surfaces().equals(surfaces.id()))
        .filter(c -> c.service().equals(service.id()) && c.releasable() == releasable)
        .findFirst()
        .orElseThrow();
  }

  static String stretch(CoverAxes.Gaps from, CoverAxes.Gaps to) {
    return Math.round(from.radialUm().low()) + ".." + Math.round(to.radialUm().high());
  }

  private void holes(TextLines out) {
    List<String> words = holeWords();
    if (words.isEmpty()) {
      out.heading("No holes: the cabinet serves whatever any known class serves.");
      return;
    }
    out.heading("Holes");
    words.forEach(w -> out.hanging("  ", w));
    out.heading("Fewest to close them all: " + String.join(", ", cover.fewest()) + ".");
  }

  /** The holes named in words, neighbours together. */
  public List<String> holeWords() {
    List<String> words = new ArrayList<>();
    for (boolean releasable : new boolean[] {true, false}) {
      for (CoverAxes.Service service : axes.services()) {
        Map<String, List<String>> byStretch = new LinkedHashMap<>();
        for (CoverAxes.Surfaces surfaces : axes.surfaces()) {
          for (String stretch : stretches(releasable, service, surfaces)) {
            byStretch.computeIfAbsent(stretch, k -> new ArrayList<>()).add(surfaces.name());
          }
        }
        byStretch.forEach(
            (stretch, names) ->
                words.add(
                    block(releasable, service) + ": nothing for " + stretch + ", " + faces(names)));
      }
    }
    return words;
  }

  private String faces(List<String> names) {
    return names.size() == axes.surfaces().size() ? "whatever the faces" : String.join("; ", names);
  }

  private List<String> stretches(
      boolean releasable, CoverAxes.Service service, CoverAxes.Surfaces surfaces) {
    List<String> found = new ArrayList<>();
    CoverAxes.Gaps from = null;
    CoverAxes.Gaps last = null;
    for (CoverAxes.Gaps gaps : axes.gaps()) {
      boolean hole = mark(cell(gaps, surfaces, service, releasable)).equals("o");
      if (!hole && from != null) {
        found.add(words(from, last));
        from = null;
      } else if (hole && from == null) {
        from = gaps;
      }
      last = gaps;
    }
    if (from != null) {
      found.add(words(from, last));
    }
    return found;
  }

  private static String words(CoverAxes.Gaps from, CoverAxes.Gaps to) {
    return "radial gaps of "
        + Math.round(from.radialUm().low())
        + " to "
        + Math.round(to.radialUm().high())
        + " µm";
  }
}
