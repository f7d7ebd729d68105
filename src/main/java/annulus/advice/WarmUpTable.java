package annulus.advice;

import annulus.catalog.Material;
import annulus.cure.BodyWarmUp;
import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.util.Collection;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What is known of how parts warm up.
 *
 * @param transfer surface heat transfer coefficient by kind of air, W/(m²·K)
 * @param specificHeat by family of materials, J/(kg·K)
 * @param density by family of materials, kg/m³
 * @param wall size of a member where an order does not say it, beside the shared diameter
 * @param family of each material, by its id
 */
public record WarmUpTable(
    Map<String, Estimate> transfer,
    Map<String, Estimate> specificHeat,
    Map<String, Estimate> density,
    Map<String, Estimate> wall,
    Map<String, String> family) {
  /**
   * @throws InvalidValue when a part that is counted on lacks
   */
  public WarmUpTable {
    transfer = Map.copyOf(transfer);
    specificHeat = Map.copyOf(specificHeat);
    density = Map.copyOf(density);
    wall = Map.copyOf(wall);
    family = Map.copyOf(family);
    require("transfer", transfer, "still-air");
    require("transfer", transfer, "fan-air");
    require("wall", wall, "bore-outside-ratio");
    require("wall", wall, "part-inside-ratio");
    if (!specificHeat.keySet().equals(density.keySet()) || density.isEmpty()) {
      throw new InvalidValue(
          "density", "families differ from those of specific-heat", "both for every family");
    }
    for (String named : family.values()) {
      require("density", density, named);
    }
  }

  private static void require(String quantity, Map<String, Estimate> rows, String subject) {
    if (!rows.containsKey(subject)) {
      throw new InvalidValue(quantity, subject + " is missing", "one row for it");
    }
  }

  /**
   * The member of a joint that is slower to warm up, taken alone: slow side of its material and of
   * a size the order does not say.
   *
   * @param order the joint
   * @param fan whether the air is moved
   */
  BodyWarmUp slowestBody(JointOrder order, boolean fan) {
    Estimate air = transfer.get(fan ? "fan-air" : "still-air");
    Interval range = new Interval(air.low(), air.high());
    double shared = diameterMm(order);
    OptionalDouble outside = order.bore().otherDiameterMm();
    double boreOutside = outside.orElse(shared * wall.get("bore-outside-ratio").high());
    OptionalDouble inside = order.part().otherDiameterMm();
    double partInside = inside.orElse(shared * wall.get("part-inside-ratio").low());
    double length = order.engagementMm();
    BodyWarmUp bore =
        ring(order.bore().material(), Math.max(boreOutside, shared * 1.001), shared, length, range);
    BodyWarmUp part =
        ring(order.part().material(), shared, Math.min(partInside, shared * 0.999), length, range);
    boolean boreSlower =
        bore.timeConstantSeconds(range.low()) >= part.timeConstantSeconds(range.low());
    return boreSlower ? bore : part;
  }

  private BodyWarmUp ring(
      Material material, double outsideMm, double insideMm, double lengthMm, Interval range) {
    String kind = family.get(material.id());
    double heavy = kind == null ? most(density.values()) : density.get(kind).high();
    double heat = kind == null ? most(specificHeat.values()) : specificHeat.get(kind).high();
    return BodyWarmUp.ring(outsideMm, insideMm, lengthMm, heavy, heat, range);
  }

  private static double most(Collection<Estimate> values) {
    return values.stream().mapToDouble(Estimate::high).max().orElseThrow();
  }

  private static double diameterMm(JointOrder order) {
    return order
        .givenGap()
        .map(JointOrder.GivenGap::nominalMm)
        .orElseGet(
            () ->
                order.part().readings().stream().mapToDouble(r -> r.mm()).average().orElseThrow());
  }
}
