package annulus.cure;

import annulus.cure.TemperatureHistory.Point;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Random histories on whole minutes and tenths of a degree, some with steps, some repeating. */
final class Histories {
  private Histories() {}

  static Arbitrary<TemperatureHistory> any(double lowC, double highC) {
    return Combinators.combine(points(lowC, highC), Arbitraries.of(true, false))
        .as(
            (points, repeats) ->
                repeats
                    ? TemperatureHistory.repeating(
                        points, points.get(points.size() - 1).seconds() + 60)
                    : TemperatureHistory.holdingLast(points));
  }

  static Arbitrary<List<Point>> points(double lowC, double highC) {
    Arbitrary<Integer> tenths =
        Arbitraries.integers().between((int) (lowC * 10), (int) (highC * 10));
    Arbitrary<Integer> minutes = Arbitraries.integers().between(0, 600);
    Arbitrary<int[]> move = Combinators.combine(minutes, tenths).as((m, t) -> new int[] {m, t});
    return Combinators.combine(tenths, move.list().ofMinSize(0).ofMaxSize(12)).as(Histories::join);
  }

  private static List<Point> join(int firstTenths, List<int[]> moves) {
    List<Point> points = new ArrayList<>();
    points.add(new Point(0, firstTenths / 10.0));
    double at = 0;
    boolean stepped = false;
    for (int[] move : moves) {
      boolean steps = move[0] < 100 && !stepped;
      at += steps ? 0 : (move[0] + 1) * 60.0;
      stepped = steps;
      points.add(new Point(at, move[1] / 10.0));
    }
    return points;
  }
}
