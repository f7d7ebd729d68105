package annulus.advice;

import annulus.catalog.Provenance;
import annulus.fit.iso286.Fit;
import annulus.fit.iso286.LimitsOfSize;
import annulus.measure.Conformity;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Side;
import annulus.measure.Verdict;
import java.util.List;
import java.util.Optional;

/**
 * What a designation allows, and how measured sizes stand to it.
 *
 * @param zones one or two tolerance zones, the hole's first
 * @param fit the fit of hole and shaft; empty for a single zone
 * @param judgements one for each zone that has a measured size
 * @param level probability wanted for a judgement
 */
public record FitExplanation(
    List<Zone> zones, Optional<Fit> fit, List<Judgement> judgements, double level) {
  public FitExplanation {
    zones = List.copyOf(zones);
    judgements = List.copyOf(judgements);
  }

  /**
   * One tolerance zone.
   *
   * @param written how it was written
   * @param side hole (bore) or shaft (part)
   * @param limits limits of size, deviations in µm on the diameter
   * @param basis where the deviations come from
   */
  public record Zone(String written, Side side, LimitsOfSize limits, Provenance basis) {}

  /**
   * A measured size against its zone (ISO 14253-1, JCGM 106).
   *
   * @param zone the zone
   * @param measured the size at 20 °C
   * @param inside probability that the true size lies inside the limits, 0 to 1
   * @param verdict inside, outside, or the instrument can't tell
   */
  public record Judgement(Zone zone, MeasuredDiameter measured, double inside, Verdict verdict) {

    static Judgement of(Zone zone, MeasuredDiameter measured, double level) {
      double nominal = zone.limits().nominalMm();
      double deviation = (measured.meanMm() - nominal) * 1000;
      double standard = measured.budget().combinedUm();
      double freedom = measured.budget().effectiveDegreesOfFreedom();
      double low = zone.limits().lowerUm();
      double high = zone.limits().upperUm();
      return new Judgement(
          zone,
          measured,
          Conformity.probabilityWithin(deviation, standard, freedom, low, high),
          Conformity.decide(deviation, standard, freedom, low, high, level));
    }
  }

  /**
   * Puts zones, fit and measured sizes together.
   *
   * @param zones one zone, or a hole and a shaft
   * @param measured measured sizes, each for the zone of its side
   * @param level probability wanted, above 0.5 and below 1
   */
  public static FitExplanation of(List<Zone> zones, List<MeasuredDiameter> measured, double level) {
    Optional<Fit> fit =
        zones.size() == 2
            ? Optional.of(new Fit(zones.get(0).limits(), zones.get(1).limits()))
            : Optional.empty();
    List<Judgement> judgements =
        zones.stream()
            .flatMap(
                zone ->
                    measured.stream()
                        .filter(m -> m.side() == zone.side())
                        .map(m -> Judgement.of(zone, m, level)))
            .toList();
    return new FitExplanation(zones, fit, judgements, level);
  }
}
