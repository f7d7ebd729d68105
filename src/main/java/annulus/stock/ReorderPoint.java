package annulus.stock;

import annulus.quantity.Check;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * When to order.
 *
 * @param duringLead use expected while an order is on its way
 * @param safety stock held against chance
 */
public record ReorderPoint(double duringLead, double safety) {

  /**
   * Reorder point under random use and random lead time.
   *
   * <p>{@code R = d L + z sqrt(L s^2 + d^2 sL^2)}
   *
   * @param perDay mean use d, per day
   * @param sdPerDay its standard deviation s, per day
   * @param leadDays mean lead time L, days
   * @param leadSdDays its standard deviation sL, days
   * @param serviceLevel probability of not running out before the order arrives; 0.5 to 0.9999
   * @return use during the lead time and safety stock, in the unit of the use
   *     <p>Valid for: days independent of each other and of the lead time; both sums near normal.
   *     <p>Source: Heizer and Render, Operations Management, probabilistic models, from memory.
   */
  public static ReorderPoint of(
      double perDay, double sdPerDay, double leadDays, double leadSdDays, double serviceLevel) {
    Check.within("perDay", perDay, 0, 1e9, "per day");
    Check.within("sdPerDay", sdPerDay, 0, 1e9, "per day");
    Check.within("leadDays", leadDays, 0, 3650, "days");
    Check.within("leadSdDays", leadSdDays, 0, 3650, "days");
    Check.within("serviceLevel", serviceLevel, 0.5, 0.9999, "");
    double z = NormalDistribution.of(0, 1).inverseCumulativeProbability(serviceLevel);
    double variance = leadDays * sdPerDay * sdPerDay + perDay * perDay * leadSdDays * leadSdDays;
    return new ReorderPoint(perDay * leadDays, z * Math.sqrt(variance));
  }

  /** The stock at which to order. */
  public double at() {
    return duringLead + safety;
  }
}
