package annulus.web;

import annulus.catalog.CompoundClass;
import annulus.quantity.Numbers;
import annulus.store.BoreFit;
import annulus.store.BoreTrend;
import java.util.List;
import java.util.Optional;

/** The history of a bore: each fit opens it a little. */
final class BorePart {
  private final Board board;

  BorePart(Board board) {
    this.board = board;
  }

  /** A warning where the bore has grown, or will have outgrown the class by the next fit. */
  void warning(Markup part, String bore, Answer answer) {
    Optional<BoreTrend> trend = board.trend(bore);
    if (trend.isEmpty()) {
      return;
    }
    part.open("p", "class", trend.get().isSure() ? "slip" : "hint");
    part.element("strong", (trend.get().isSure() ? "! " : "") + "Bore " + bore + ": ");
    part.text(words(trend.get()));
    part.text(next(trend.get(), answer)).close();
  }

  private static String words(BoreTrend trend) {
    String grown =
        "in "
            + trend.fits().size()
            + " fits it changed by "
            + Numbers.fixed(trend.grownUm(), 0)
            + " ± "
            + Numbers.fixed(Math.ceil(trend.doubtUm()), 0)
            + " µm on the diameter ("
            + Numbers.fixed(trend.grownUm() / 2, 0)
            + " µm radial). ";
    return grown
        + (trend.isSure()
            ? "It opens with each fit. "
            : "That is within what was measured unsurely. ");
  }

  /** Whether one more fit like the last ones would leave the range of the class. */
  private static String next(BoreTrend trend, Answer answer) {
    Optional<CompoundClass> compound = answer.told().advice().decision().compound();
    if (compound.isEmpty() || !trend.isSure()) {
      return "";
    }
    double upper =
        answer.told().advice().gap().gap().upperUm(answer.order().confidence())
            + trend.perFitUm() / 2;
    return upper > compound.get().gapUm().high()
        ? "At the next fit it will be too wide for this class: plan a sleeve or a new part."
        : "";
  }

  /** All fits. */
  void history(Markup part, String bore) {
    List<BoreFit> fits = board.fits(bore);
    if (fits.isEmpty()) {
      return;
    }
    part.element("h2", "Bore " + bore).open("div", "class", "scroll", "tabindex", "0");
    part.open("table").open("thead").open("tr");
    for (String head : List.of("fitted", "job", "mean diameter, mm", "± µm")) {
      part.element("th", head, "scope", "col");
    }
    part.close().close().open("tbody");
    for (BoreFit fit : fits) {
      part.open("tr").element("td", board.times().past(fit.at())).element("td", fit.job());
      part.element("td", Numbers.fixed(fit.meanMm(), 4));
      part.element("td", Numbers.fixed(Math.ceil(fit.plusMinusUm()), 0)).close();
    }
    part.close().close().close();
  }
}
