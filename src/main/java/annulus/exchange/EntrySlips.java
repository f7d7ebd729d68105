package annulus.exchange;

import annulus.advice.Member;
import annulus.catalog.Policy;
import annulus.measure.Reading;
import annulus.measure.Side;
import annulus.quantity.Numbers;
import annulus.quantity.Units;
import java.util.List;
import java.util.OptionalDouble;

/** Catches diameters that can't both be meant: swapped, inch beside mm, a slipped decimal point. */
final class EntrySlips {
  private final Problems problems;
  private final Policy policy;

  EntrySlips(Problems problems, Policy policy) {
    this.problems = problems;
    this.policy = policy;
  }

  /** Readings of one member that can't be of the same bore or part. */
  void sameMember(Node.Place place, String field, List<Reading> readings) {
    double limitMm = policy.value("entry-gap-limit-um") / 1000;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Reading reading : readings) {
      low = Math.min(low, reading.mm());
      high = Math.max(high, reading.mm());
    }
    if (high - low > limitMm) {
      problems.add(
          place,
          field,
          Numbers.plain(low) + " and " + Numbers.plain(high) + " mm can't be the same member",
          "readings within "
              + Numbers.plain(limitMm)
              + " mm of each other; a decimal comma? write a point");
    }
  }

  /** A wall of no thickness: the far diameter of a member on the wrong side of its face. */
  void wall(Fields order, Member member, double faceMm) {
    OptionalDouble other = member.otherDiameterMm();
    boolean bore = member.side() == Side.BORE;
    if (other.isEmpty() || (bore ? other.getAsDouble() > faceMm : other.getAsDouble() < faceMm)) {
      return;
    }
    String name = bore ? "bore" : "part";
    String field = bore ? "outsideDiameterMm" : "insideDiameterMm";
    String face = Numbers.plain(Double.parseDouble(Numbers.fixed(faceMm, 3))) + " mm";
    problems.add(
        order.object(name).map(m -> m.placeOf(field)).orElse(order.place()),
        name + "." + field,
        Numbers.plain(other.getAsDouble()) + " mm leaves no wall beside the face at " + face,
        (bore ? "more than " : "less than ") + face);
  }

  /** Bore and part that can't belong together. */
  void pair(Node.Place place, String boreField, double boreMm, double partMm) {
    double radialUm = (boreMm - partMm) * 500;
    double limitUm = policy.value("entry-gap-limit-um");
    double share = policy.value("unit-slip-share");
    boolean inch = apartBy(boreMm, partMm, Units.INCH_MM, share);
    boolean tenfold = apartBy(boreMm, partMm, 10, share);
    boolean apart =
        inch
            || tenfold
            || Math.abs(radialUm) > limitUm
            || -radialUm > policy.value("swapped-interference-um");
    if (apart) {
      slipOfPair(place, boreField, boreMm, partMm, new Slip(inch, tenfold, limitUm));
    }
  }

  /** What two diameters look like, and the limit of a gap. */
  private record Slip(boolean inch, boolean tenfold, double limitUm) {}

  private void slipOfPair(
      Node.Place place, String boreField, double boreMm, double partMm, Slip slip) {
    double limitUm = slip.limitUm();
    double radialUm = (boreMm - partMm) * 500;
    String both =
        "bore " + Numbers.fixed(boreMm, 3) + " and part " + Numbers.fixed(partMm, 3) + " mm";
    if (slip.inch()) {
      double inch = Math.min(boreMm, partMm);
      problems.add(
          place,
          boreField,
          both + " differ by the factor 25.4",
          "inch written with its unit, such as \"" + Numbers.plain(inch) + " in\"");
    } else if (slip.tenfold()) {
      problems.add(
          place, boreField, both + " differ by the factor 10", "one decimal place for both");
    } else if (Math.abs(radialUm) > limitUm) {
      problems.add(
          place,
          boreField,
          both + " make a radial gap of " + Numbers.fixed(radialUm, 0) + " µm",
          "within ±"
              + Numbers.plain(limitUm)
              + " µm radial (±"
              + Numbers.plain(limitUm / 500)
              + " mm across the diameter); check both entries");
    } else {
      problems.add(
          place,
          boreField,
          both
              + ": the part is larger by "
              + Numbers.fixed(-2 * radialUm, 0)
              + " µm across the diameter; bore and part swapped?",
          "an interference of at most "
              + Numbers.plain(policy.value("swapped-interference-um"))
              + " µm radial");
    }
  }

  /** Whether one of two is the other times a factor, or nearly so. */
  private static boolean apartBy(double one, double other, double factor, double share) {
    return Math.abs(one / other / factor - 1) < share || Math.abs(other / one / factor - 1) < share;
  }
}
