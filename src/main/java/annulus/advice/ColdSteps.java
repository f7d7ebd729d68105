package annulus.advice;

import annulus.cure.PieceConsumer;
import annulus.cure.TemperatureHistory;
import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.List;

/**
 * Gathers temperature pieces of any number between two times in bounded memory: pieces at least as
 * long as the step stay as they are, shorter ones become steps at the lowest temperature met. The
 * result is nowhere above what came in. Mutable and for one thread.
 */
public final class ColdSteps implements PieceConsumer {
  private final double fromSeconds;
  private final double untilSeconds;
  private final double stepSeconds;
  private final List<TemperatureHistory.Point> points = new ArrayList<>();
  private double openFrom = Double.NaN;
  private double openUntil;
  private double openC;

  /**
   * @param fromSeconds earlier parts of pieces are dropped; becomes time 0 of the history
   * @param untilSeconds later parts are dropped
   * @param stepSeconds length of the steps, s, above 0; they lie on multiples of it
   */
  public ColdSteps(double fromSeconds, double untilSeconds, double stepSeconds) {
    this.fromSeconds = fromSeconds;
    this.untilSeconds = untilSeconds;
    this.stepSeconds = stepSeconds;
  }

  @Override
  public void piece(double startSeconds, double startC, double endSeconds, double endC) {
    double start = Math.max(startSeconds, fromSeconds);
    double end = Math.min(endSeconds, untilSeconds);
    if (end <= start) {
      return;
    }
    double slope = (endC - startC) / (endSeconds - startSeconds);
    double fromC = startC + slope * (start - startSeconds);
    double toC = end == endSeconds ? endC : startC + slope * (end - startSeconds);
    if (endSeconds - startSeconds >= stepSeconds) {
      close();
      add(start, fromC);
      add(end, toC);
      return;
    }
    double border = (Math.floor(start / stepSeconds) + 1) * stepSeconds;
    if (border < end) {
      double atBorder = startC + slope * (border - startSeconds);
      gather(start, border, Math.min(fromC, atBorder));
      close();
      gather(border, end, Math.min(atBorder, toC));
    } else {
      gather(start, end, Math.min(fromC, toC));
      if (border == end) {
        close();
      }
    }
  }

  private void gather(double start, double end, double lowest) {
    openC = Double.isNaN(openFrom) ? lowest : Math.min(openC, lowest);
    openFrom = Double.isNaN(openFrom) ? start : openFrom;
    openUntil = end;
  }

  private void close() {
    if (!Double.isNaN(openFrom)) {
      add(openFrom, openC);
      add(openUntil, openC);
      openFrom = Double.NaN;
    }
  }

  private void add(double atSeconds, double celsius) {
    double seconds = atSeconds - fromSeconds;
    int size = points.size();
    if (size > 1
        && points.get(size - 1).seconds() == seconds
        && points.get(size - 2).seconds() == seconds) {
      points.remove(size - 1);
    }
    points.add(new TemperatureHistory.Point(seconds, celsius));
  }

  /** Whether nothing has come in between the two times. */
  public boolean isEmpty() {
    return points.isEmpty() && Double.isNaN(openFrom);
  }

  /** What has come in so far, first at 0 s. */
  public List<TemperatureHistory.Point> points() {
    close();
    return List.copyOf(points);
  }

  /**
   * The history of what came in; what lies before the first piece has its first temperature, unless
   * a colder one is given.
   *
   * @param beforeC taken before the first piece if colder, °C
   * @throws InvalidValue when nothing came in
   */
  public TemperatureHistory history(double beforeC) {
    List<TemperatureHistory.Point> all = new ArrayList<>(points());
    if (all.isEmpty()) {
      throw new InvalidValue("history", "has no reading in the time asked for", "at least one");
    }
    TemperatureHistory.Point first = all.get(0);
    if (first.seconds() > 0) {
      double cold = Math.min(beforeC, first.celsius());
      all.add(0, new TemperatureHistory.Point(first.seconds(), cold));
      all.add(0, new TemperatureHistory.Point(0, cold));
    }
    return TemperatureHistory.holdingLast(all);
  }
}
