package annulus.report;

import annulus.advice.Advice;
import annulus.measure.Remedy;
import annulus.measure.Remedy.MoreReadings;
import annulus.measure.Remedy.Pair;
import annulus.quantity.Interval;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;

/** What would make the measurement decide, in words. */
final class RemedyTexts {
  private static final int MOST_PAIRS = 3;

  private final Advice advice;
  private final double wanted;

  RemedyTexts(Advice advice) {
    this.advice = advice;
    this.wanted = advice.order().confidence();
  }

  /** The lines; for a gap that was stated instead of measured there is only general advice. */
  List<String> lines(GapTexts gap) {
    List<String> lines = new ArrayList<>(gap.remarks());
    lines.add(
        "The gap could be anything from "
            + gap.couldBe(1)
            + " radial ("
            + gap.couldBe(2)
            + " diametral); below 0 is interference.");
    if (advice.gap().remedy().isEmpty()) {
      lines.add("State the gap with less doubt, or measure both diameters.");
    } else {
      lines.addAll(remedy(advice.gap().remedy().get()));
    }
    lines.add("Nothing else is promised: no compound, no time.");
    return lines;
  }

  private List<String> remedy(Remedy remedy) {
    List<String> lines = new ArrayList<>();
    remedy.pairs().stream().limit(MOST_PAIRS).forEach(p -> lines.add(pair(p)));
    lines.add(readings(remedy.moreReadings()));
    switch (remedy.state()) {
      case TOO_NEAR_AN_EDGE ->
          lines.add(
              "The gap lies only "
                  + Figures.um(Math.abs(remedy.edgeDistanceUm()))
                  + " radial from the end of a range: no listed instrument decides (at best "
                  + Figures.percent(remedy.mostReachable(), wanted)
                  + "). Change a size, or choose a part from another batch.");
      case OUTSIDE_ALL_RANGES ->
          lines.add("The gap lies outside every range; no instrument changes that.");
      default -> {}
    }
    return lines;
  }

  private String pair(Pair pair) {
    return "Would decide: "
        + pair.bore().name()
        + " in the bore and "
        + pair.part().name()
        + " on the part: "
        + Figures.percent(pair.probability(), wanted)
        + " for "
        + range(pair.range())
        + ", if the mean stays as it is.";
  }

  private String readings(MoreReadings more) {
    String reached = Figures.percent(more.probability(), wanted);
    return switch (more.outcome()) {
      case NOT_NEEDED -> "More readings are not needed.";
      case REACHES ->
          "Or take "
              + more.perMember().orElse(0)
              + " readings in all on each member with the same instruments: "
              + reached
              + ".";
      case TOO_MANY -> "More readings alone would have to be too many to ask for.";
      case INSTRUMENT_ERROR_FORBIDS ->
          "More readings with the same instruments do not help: their own error stays (at best "
              + reached
              + ").";
    };
  }

  static String range(Interval radial) {
    return Numbers.plain(radial.low())
        + " to "
        + Numbers.plain(radial.high())
        + " µm radial, "
        + Numbers.plain(2 * radial.low())
        + " to "
        + Numbers.plain(2 * radial.high())
        + " µm diametral";
  }
}
