package annulus.cure;

import annulus.cure.TemperatureHistory.Point;
import annulus.quantity.Check;
import annulus.quantity.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * A part that comes into a room colder or warmer than the room, taken as one lump of one
 * temperature. Every result lies on the cold side of the exact course.
 *
 * @param massKg mass, kg, above 0
 * @param specificHeat specific heat capacity, J/(kg·K), above 0
 * @param areaM2 surface open to the air, m², above 0
 * @param transfer surface heat transfer coefficient, lowest to highest, W/(m²·K), above 0
 */
public record BodyWarmUp(double massKg, double specificHeat, double areaM2, Interval transfer) {
  /** Points per time constant; a chord then stays within 0.8 % of the first difference. */
  private static final int STEPS_PER_CONSTANT = 4;

  private static final int CONSTANTS_FOLLOWED = 8;

  /**
   * @throws annulus.quantity.InvalidValue when a value is not above 0
   */
  public BodyWarmUp {
    Check.positive("massKg", massKg, "kg");
    Check.positive("specificHeat", specificHeat, "J/(kg·K)");
    Check.positive("areaM2", areaM2, "m²");
    Check.positive("transfer", transfer.low(), "W/(m²·K)");
  }

  /**
   * A ring from its dimensions, all of its surface open to the air.
   *
   * @param outsideMm outside diameter, mm
   * @param boreMm bore, mm, 0 for a solid disc, below the outside diameter
   * @param lengthMm length, mm
   * @param densityKgM3 density, kg/m³
   * @param specificHeat specific heat capacity, J/(kg·K)
   * @param transfer surface heat transfer coefficient, lowest to highest, W/(m²·K)
   */
  public static BodyWarmUp ring(
      double outsideMm,
      double boreMm,
      double lengthMm,
      double densityKgM3,
      double specificHeat,
      Interval transfer) {
    Check.positive("outsideMm", outsideMm, "mm");
    Check.within("boreMm", boreMm, 0, outsideMm, "mm");
    Check.positive("lengthMm", lengthMm, "mm");
    Check.positive("densityKgM3", densityKgM3, "kg/m³");
    double faceMm2 = Math.PI / 4 * (outsideMm * outsideMm - boreMm * boreMm);
    double areaMm2 = 2 * faceMm2 + Math.PI * (outsideMm + boreMm) * lengthMm;
    double massKg = faceMm2 * lengthMm * 1e-9 * densityKgM3;
    return new BodyWarmUp(massKg, specificHeat, areaMm2 * 1e-6, transfer);
  }

  /**
   * Time constant at a heat transfer coefficient.
   *
   * <p>{@code τ = m·c/(h·A)}
   *
   * @param transferCoefficient h, W/(m²·K), above 0
   * @return time constant, s
   *     <p>Valid for: parts that conduct well inside, Biot number h·(V/A)/k below 0.1.
   *     <p>Source: lumped capacity, Incropera and DeWitt, Fundamentals of Heat and Mass Transfer,
   *     chapter 5, from memory.
   */
  public double timeConstantSeconds(double transferCoefficient) {
    Check.positive("transferCoefficient", transferCoefficient, "W/(m²·K)");
    return massKg * specificHeat / (transferCoefficient * areaM2);
  }

  /**
   * The part's temperature after it comes into a room of one temperature.
   *
   * <p>{@code T(t) = T_room + (T_start − T_room)·exp(−t/τ)}, replaced by straight lines on its cold
   * side: chords while warming (lowest h), tangents while cooling (highest h). It ends just below
   * the room when warming, at the room when cooling.
   *
   * @param startC temperature of the part at the start, °C
   * @param roomC temperature of the room, °C
   * @return the part's history, holding its last temperature
   *     <p>Valid for: as {@link #timeConstantSeconds}; a room that stays as it is.
   *     <p>Source: as {@link #timeConstantSeconds}.
   */
  public TemperatureHistory course(double startC, double roomC) {
    if (startC == roomC) {
      return TemperatureHistory.constant(roomC);
    }
    boolean warming = startC < roomC;
    double constant = timeConstantSeconds(warming ? transfer.low() : transfer.high());
    List<Point> points = new ArrayList<>();
    points.add(new Point(0, startC));
    double step = 1.0 / STEPS_PER_CONSTANT;
    for (int i = 1; i <= CONSTANTS_FOLLOWED * STEPS_PER_CONSTANT; i++) {
      double at = warming ? i * step : tangentsMeet((i - 1) * step, step);
      double left = warming ? Math.exp(-at) : tangent((i - 1) * step, at);
      points.add(new Point(at * constant, roomC + (startC - roomC) * left));
    }
    if (!warming) {
      double end = points.get(points.size() - 1).seconds();
      points.add(new Point(end, roomC));
    }
    return TemperatureHistory.holdingLast(points);
  }

  /**
   * The part's temperature in a room whose temperature changes.
   *
   * <p>{@code dT/dt = (T_room(t) − T)/τ}, solved in steps with the lowest room temperature of each
   * step, the lowest h while the part warms and the highest while it cools, so that the result lies
   * at or below the course for any h within the range. After the horizon the coldest temperature of
   * the room is held.
   *
   * @param startC temperature of the part at the start, °C
   * @param room the room's history
   * @param horizonSeconds how long the part is followed, s, above 0
   * @param leastStepSeconds steps are no shorter, however small the part, s, above 0
   * @return the part's history
   *     <p>Valid for: as {@link #timeConstantSeconds}.
   *     <p>Source: as {@link #timeConstantSeconds}; comparison of solutions of first-order
   *     equations.
   */
  public TemperatureHistory following(
      double startC, TemperatureHistory room, double horizonSeconds, double leastStepSeconds) {
    Check.positive("horizonSeconds", horizonSeconds, "s");
    Check.positive("leastStepSeconds", leastStepSeconds, "s");
    double wanted = timeConstantSeconds(transfer.high()) / STEPS_PER_CONSTANT;
    double step = Math.max(wanted, leastStepSeconds);
    List<Point> points = new ArrayList<>();
    points.add(new Point(0, startC));
    room.forEachPiece(
        horizonSeconds,
        (from, fromC, to, toC) -> {
          int steps = (int) Math.ceil((to - from) / step);
          for (int i = 1; i <= steps; i++) {
            double startsC = fromC + (toC - fromC) * (i - 1) / steps;
            double endsC = fromC + (toC - fromC) * i / steps;
            double end = i == steps ? to : from + (to - from) * i / steps;
            advance(points, end, Math.min(startsC, endsC));
          }
        });
    points.add(new Point(horizonSeconds, room.coldestC()));
    return TemperatureHistory.holdingLast(points);
  }

  /** Adds the points up to a time, the room being at one temperature since the last point. */
  private void advance(List<Point> points, double end, double roomC) {
    Point last = points.get(points.size() - 1);
    double difference = last.celsius() - roomC;
    double constant = timeConstantSeconds(difference < 0 ? transfer.low() : transfer.high());
    double length = (end - last.seconds()) / constant;
    if (difference > 0) {
      double meet = tangentsMeet(0, length);
      double at = last.seconds() + meet * constant;
      if (at > last.seconds() && at < end) {
        points.add(new Point(at, roomC + difference * tangent(0, meet)));
      }
    }
    points.add(new Point(end, roomC + difference * Math.exp(-length)));
  }

  /** Where the tangents to exp(−x) touching at {@code touch} and one step later meet. */
  private static double tangentsMeet(double touch, double step) {
    double fall = Math.exp(-step);
    return touch + 1 - step * fall / (1 - fall);
  }

  private static double tangent(double touch, double at) {
    return Math.exp(-touch) * (1 - (at - touch));
  }
}
