package annulus.cure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Adds up reduced time from temperature pieces that arrive one at a time, such as a logger's rows,
 * in constant memory. Optionally notes when given amounts of reduced time were reached. Mutable and
 * for one thread.
 */
public final class CureAccumulator implements PieceConsumer {
  private final Rate rate;
  private final double[] targetsHours;
  private final double[] reachedSeconds;
  private final Sum gathered = new Sum();
  private double endSeconds = Double.NaN;

  /**
   * @param rate the cure rate
   * @param targetsHours reduced hours whose time of arrival is wanted, each 0 or more
   */
  public CureAccumulator(Rate rate, double... targetsHours) {
    this.rate = rate;
    this.targetsHours = targetsHours.clone();
    this.reachedSeconds = new double[targetsHours.length];
    Arrays.fill(reachedSeconds, Double.NaN);
    for (double target : targetsHours) {
      Check.within("targetHours", target, 0, Double.MAX_VALUE, "h");
    }
  }

  /**
   * Adds one piece; it must start where the last one ended.
   *
   * @throws InvalidValue when time runs back or leaves a gap, or a temperature is out of range
   */
  @Override
  public void piece(double startSeconds, double startC, double endSeconds, double endC) {
    checkPiece(startSeconds, startC, endSeconds, endC);
    double seconds = endSeconds - startSeconds;
    double before = gathered.value();
    gathered.add(PieceIntegral.hours(rate, seconds, startC, endC));
    double after = gathered.value();
    for (int i = 0; i < targetsHours.length; i++) {
      if (Double.isNaN(reachedSeconds[i]) && targetsHours[i] <= after) {
        double needed = targetsHours[i] - before;
        reachedSeconds[i] =
            startSeconds + PieceInverse.secondsToReach(rate, seconds, startC, endC, needed);
      }
    }
    this.endSeconds = endSeconds;
  }

  private void checkPiece(double startSeconds, double startC, double endSeconds, double endC) {
    Check.finite("startSeconds", startSeconds, "s");
    Check.finite("endSeconds", endSeconds, "s");
    Celsius.check("startC", startC);
    Celsius.check("endC", endC);
    if (endSeconds <= startSeconds) {
      throw new InvalidValue(
          "endSeconds",
          Numbers.plain(endSeconds) + " s is not after the start of the piece",
          "more than " + Numbers.plain(startSeconds) + " s");
    }
    if (!Double.isNaN(this.endSeconds) && startSeconds != this.endSeconds) {
      throw new InvalidValue(
          "startSeconds",
          Numbers.plain(startSeconds) + " s does not join the last piece",
          Numbers.plain(this.endSeconds) + " s");
    }
  }

  /** Reduced hours so far. */
  public double hours() {
    return gathered.value();
  }

  /** End of the last piece, s; empty before the first. */
  public OptionalDouble endSeconds() {
    return Double.isNaN(endSeconds) ? OptionalDouble.empty() : OptionalDouble.of(endSeconds);
  }

  /**
   * When a target was first reached, s on the time scale of the pieces; empty when not yet.
   *
   * @param target position in the list given to the constructor
   */
  public OptionalDouble reachedAt(int target) {
    double at = reachedSeconds[target];
    return Double.isNaN(at) ? OptionalDouble.empty() : OptionalDouble.of(at);
  }
}
