package annulus.stock;

import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.CompoundClass.Cure;
import annulus.catalog.CompoundClass.HotPoint;
import annulus.catalog.CompoundClass.StagePoint;
import annulus.catalog.Confidence;
import annulus.catalog.Policy;
import annulus.catalog.Provenance;
import annulus.catalog.Stage;
import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;

/**
 * The class that a label makes of the class it is most like: what the label says, narrower, and the
 * rest as before.
 *
 * @param before the class it is like
 * @param after the shop's class
 * @param notes what had to be bent to the safe side, in words
 */
public record ShopClass(CompoundClass before, CompoundClass after, List<String> notes) {
  public ShopClass {
    notes = List.copyOf(notes);
  }

  /**
   * Makes the class.
   *
   * @param label what the label says
   * @param catalog the classes and the rates of faces
   * @param policy the numbers of the stock
   * @throws InvalidValue when the label contradicts itself or physics
   */
  public static ShopClass of(ShopLabel label, Catalog catalog, Policy policy) {
    CompoundClass like = catalog.compounds().get(label.like());
    if (like == null) {
      throw new InvalidValue(
          "like",
          label.like() + " is not a class",
          String.join(", ", catalog.compounds().keySet()));
    }
    CompoundClass same = catalog.compounds().get(label.id());
    if (same != null && !ShopLabel.made(same)) {
      throw new InvalidValue(
          "class",
          label.id() + " is a class of the program; other lots of it would follow this label",
          "an id of the shop's own");
    }
    if (catalog.primers().containsKey(label.id())) {
      throw new InvalidValue(
          "class", label.id() + " is a primer, no class", "an id of the shop's own");
    }
    List<String> notes = new ArrayList<>();
    new LabelChecks(label, like, policy).all(notes);
    return new ShopClass(like, made(label, like, catalog, policy, notes), notes);
  }

  private static CompoundClass made(
      ShopLabel label, CompoundClass like, Catalog catalog, Policy policy, List<String> notes) {
    double high = label.largestRadialUm();
    double low = label.smallestRadialUm().orElse(Math.min(like.gapUm().low(), high));
    Interval service = service(label, like, notes);
    return new CompoundClass(
        label.id(),
        label.name(),
        like.summary(),
        like.permanence(),
        like.role(),
        new Interval(low, high),
        high,
        like.viscosity(),
        strength(label, policy),
        cure(label, like, catalog, policy, notes),
        service,
        hot(like, service),
        like.removalHeatC(),
        like.storageC(),
        label.shelfMonths().isPresent()
            ? Estimate.exactly(label.shelfMonths().getAsDouble())
            : like.shelfMonths(),
        Estimate.exactly(label.openMonths()),
        new Provenance(ShopLabel.SOURCE, Confidence.MEDIUM));
  }

  private static Estimate strength(ShopLabel label, Policy policy) {
    double mpa = label.strengthMpa();
    return new Estimate(
        mpa * policy.value("label-strength-low-share"),
        mpa,
        mpa * policy.value("label-strength-high-share"));
  }

  /** Hot strength is known only as far as that of the class it is like. */
  private static Interval service(ShopLabel label, CompoundClass like, List<String> notes) {
    double known = like.serviceC().high();
    double high = Math.min(label.serviceHighC(), known);
    if (high < label.serviceHighC()) {
      notes.add(
          "The label says "
              + Numbers.plain(label.serviceHighC())
              + " °C, but no hot strength is known above "
              + Numbers.plain(known)
              + " °C: "
              + Numbers.plain(known)
              + " °C counts. A hotter class for --like would carry further.");
    }
    if (label.serviceLowC() >= high) {
      throw new InvalidValue(
          "service_low_c",
          "is above what counts as highest, " + Numbers.plain(high) + " °C",
          "lower");
    }
    return new Interval(label.serviceLowC(), high);
  }

  private static List<HotPoint> hot(CompoundClass like, Interval service) {
    List<HotPoint> points = new ArrayList<>();
    for (HotPoint point : like.hotStrength()) {
      if (point.celsius() <= service.high()) {
        points.add(point);
      }
    }
    boolean reaches =
        !points.isEmpty() && points.get(points.size() - 1).celsius() >= service.high();
    if (!reaches) {
      points.add(new HotPoint(service.high(), like.hotFraction(service.high())));
    }
    return points;
  }

  private static Cure cure(
      ShopLabel label, CompoundClass like, Catalog catalog, Policy policy, List<String> notes) {
    Cure old = like.cure();
    double share = onActiveFaces(label, catalog, notes);
    double fixture = label.fixtureMinutes() / 60 * share;
    double full = label.fullHours() * share;
    double oldFull = old.at(Stage.FULL).hours();
    if (label.leastCureC() < old.minimumC()) {
      notes.add(
          "The label says it cures from "
              + Numbers.plain(label.leastCureC())
              + " °C, but no rate is known below "
              + Numbers.plain(old.minimumC())
              + " °C: "
              + Numbers.plain(old.minimumC())
              + " °C counts.");
    }
    double working = Math.min(1, fixture / old.at(Stage.FIXTURE).hours());
    Estimate minutes = old.workingMinutes();
    return new Cure(
        label.atC(),
        label.atRadialUm(),
        old.gapExponent(),
        old.activationKJ(),
        Math.max(label.leastCureC(), old.minimumC()),
        Math.max(old.cautionBelowC(), Math.max(label.leastCureC(), old.minimumC())),
        Math.max(old.heldAboveC(), label.atC()),
        Math.min(old.spreadLn(), policy.value("label-spread-ln")),
        stages(old, fixture, full, fixtureFraction(label, policy)),
        old.completeHours() / oldFull * full,
        Math.max(full, old.slowFullHours()),
        new Estimate(
            Math.max(0.1, minutes.low() * working),
            Math.max(0.1, minutes.likely() * working),
            Math.max(0.1, minutes.high() * working)));
  }

  /**
   * Hours on two active faces of hours on the label's faces: the slow side of the rates, so that a
   * time is never made shorter than it may be.
   */
  private static double onActiveFaces(ShopLabel label, Catalog catalog, List<String> notes) {
    if (label.surface() == Activity.Level.ACTIVE) {
      return 1;
    }
    double rate = Math.min(1, catalog.activities().get(label.surface()).rate().high());
    notes.add(
        "Times on the label are for slow faces; on active ones "
            + Numbers.fixed(rate, 2)
            + " of them count, the slow side.");
    return rate;
  }

  private static double fixtureFraction(ShopLabel label, Policy policy) {
    return policy.value("label-fixture-mpa") / label.strengthMpa();
  }

  /** Handling and functional keep their place between fixture and full on a log scale of time. */
  private static List<StagePoint> stages(Cure old, double fixture, double full, double fraction) {
    double oldFixture = Math.log(old.at(Stage.FIXTURE).hours());
    double oldFull = Math.log(old.at(Stage.FULL).hours());
    List<StagePoint> stages = new ArrayList<>();
    for (StagePoint point : old.stages()) {
      double share = (Math.log(point.hours()) - oldFixture) / (oldFull - oldFixture);
      double hours =
          switch (point.stage()) {
            case FIXTURE -> fixture;
            case FULL -> full;
            default -> fixture * Math.pow(full / fixture, share);
          };
      boolean first = point.stage() == Stage.FIXTURE;
      stages.add(new StagePoint(point.stage(), first ? fraction : point.fraction(), hours));
    }
    return stages;
  }
}
