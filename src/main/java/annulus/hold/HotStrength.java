package annulus.hold;

import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.List;
import java.util.Optional;

/**
 * Share of the cold strength that a class keeps at a temperature.
 *
 * @param curve points over °C; never rising
 */
public record HotStrength(FactorCurve curve) {
  public HotStrength {
    List<FactorCurve.Point> points = curve.points();
    for (int i = 1; i < points.size(); i++) {
      if (rises(points.get(i - 1).value(), points.get(i).value())) {
        throw new InvalidValue(
            "hot strength",
            "rises at " + Numbers.plain(points.get(i).at()) + " °C",
            "a hotter joint never stronger than a colder one");
      }
    }
  }

  /** The share kept at a temperature, °C; empty above the data: nothing is counted on there. */
  public Optional<Estimate> at(double celsius) {
    return curve.at(celsius);
  }

  private static boolean rises(Estimate colder, Estimate hotter) {
    return hotter.low() > colder.low()
        || hotter.likely() > colder.likely()
        || hotter.high() > colder.high();
  }
}
