package annulus.measure;

import annulus.catalog.Instrument;
import annulus.quantity.Interval;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What would decide in which range a gap lies.
 *
 * @param state the short answer
 * @param probabilityNow probability of the best range as measured, 0 to 1
 * @param bestRange the range with the highest probability now; empty when no range has any
 * @param edgeDistanceUm how far the mean gap lies inside the range that it is deepest in, radial
 *     µm; negative: how far outside all ranges
 * @param pairs instrument pairs that reach the level with the readings asked for, coarsest first;
 *     the present pair is not among them
 * @param mostReachable highest probability that can be had: now, with any pair, or with the number
 *     of readings asked for
 * @param moreReadings whether more readings with the present instruments would do
 */
public record Remedy(
    State state,
    double probabilityNow,
    Optional<Interval> bestRange,
    double edgeDistanceUm,
    List<Pair> pairs,
    double mostReachable,
    MoreReadings moreReadings) {

  public Remedy {
    pairs = List.copyOf(pairs);
  }

  /** The short answer. */
  public enum State {
    /** The level is reached as measured. */
    DECIDED,
    /** An instrument pair or more readings reach it. */
    CAN_BE_DECIDED,
    /** The mean lies in a range, but so near its end that nothing listed decides. */
    TOO_NEAR_AN_EDGE,
    /** The mean lies in no range, and no instrument changes that. */
    OUTSIDE_ALL_RANGES
  }

  /**
   * One pair of instruments that decides.
   *
   * @param bore for the bore
   * @param part for the part
   * @param range the range it would prove, radial µm
   * @param probability what it would reach at the same mean gap, 0 to 1
   */
  public record Pair(Instrument bore, Instrument part, Interval range, double probability) {}

  /**
   * More readings with the present instruments.
   *
   * @param outcome whether they would do
   * @param perMember the least number on each member, all counted; empty unless they would do
   * @param probability reached with that number; else with endlessly many, 0 to 1
   */
  public record MoreReadings(Outcome outcome, OptionalInt perMember, double probability) {}

  /** Whether more readings would do. */
  public enum Outcome {
    NOT_NEEDED,
    REACHES,
    /** More than a mechanic is asked to take. */
    TOO_MANY,
    /** Even endlessly many leave the instruments' own errors, which do not average out. */
    INSTRUMENT_ERROR_FORBIDS
  }
}
