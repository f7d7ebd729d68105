package annulus.stock;

import annulus.catalog.Activity;
import annulus.catalog.CompoundClass;
import annulus.catalog.CompoundClass.Role;
import annulus.catalog.Policy;
import annulus.catalog.Stage;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.List;

/** What a label can't say. */
final class LabelChecks {
  private final ShopLabel label;
  private final CompoundClass like;
  private final Policy stock;

  LabelChecks(ShopLabel label, CompoundClass like, Policy stock) {
    this.label = label;
    this.like = like;
    this.stock = stock;
  }

  void all(List<String> notes) {
    gaps(notes);
    times();
    temperatures();
    strength();
    lives();
  }

  private void gaps(List<String> notes) {
    double limit = stock.value("label-gap-most-um");
    double largest = label.largestRadialUm();
    refuse(
        largest > limit,
        "largest_gap_um",
        Numbers.plain(largest) + " µm radial is wider than any gap it cures across",
        "at most "
            + Numbers.plain(limit)
            + " µm radial ("
            + Numbers.plain(2 * limit)
            + " diametral)");
    if (2 * largest > limit) {
      notes.add(
          "Across the diameter that is "
              + Numbers.plain(2 * largest)
              + " µm, more than the "
              + Numbers.plain(limit)
              + " µm it cures across: only a centred part has that gap.");
    }
    double smallest = label.smallestRadialUm().orElse(Math.min(like.gapUm().low(), largest));
    double least = like.role() == Role.FILM ? like.gapUm().low() : 0;
    refuse(
        smallest >= largest,
        "smallest_gap_um",
        "is not below largest_gap_um",
        "less than " + Numbers.plain(largest) + " µm radial");
    refuse(
        smallest < least,
        "smallest_gap_um",
        Numbers.plain(smallest) + " µm radial is an interference",
        "at least " + Numbers.plain(least) + " µm radial");
    refuse(
        label.atRadialUm() > largest || label.atRadialUm() > 500,
        "at_gap_um",
        Numbers.plain(label.atRadialUm()) + " µm radial is wider than the largest gap",
        "at most " + Numbers.plain(Math.min(500, largest)) + " µm radial");
  }

  private void times() {
    double leastFixture = stock.value("label-fixture-least-min");
    double mostFull = stock.value("label-full-most-hours");
    refuse(
        label.fixtureMinutes() < leastFixture,
        "fixture_minutes",
        Numbers.plain(label.fixtureMinutes()) + " min is too quick to join the parts",
        "at least " + Numbers.plain(leastFixture) + " min");
    refuse(
        label.fullHours() > mostFull,
        "full_hours",
        Numbers.plain(label.fullHours()) + " h is longer than any full cure",
        "at most " + Numbers.plain(mostFull) + " h");
    refuse(
        label.surface() == Activity.Level.INERT,
        "surface",
        "two inert faces do not cure",
        "active or slow: the faces the label's times hold on");
  }

  private void temperatures() {
    refuse(
        label.leastCureC() > label.atC(),
        "least_cure_c",
        Numbers.plain(label.leastCureC()) + " °C is above the temperature of the times",
        "at most " + Numbers.plain(label.atC()) + " °C");
    refuse(
        label.leastCureC() < -20,
        "least_cure_c",
        Numbers.plain(label.leastCureC()) + " °C is colder than any of them cures",
        "at least -20 °C");
    refuse(
        label.serviceHighC() < label.atC(),
        "service_high_c",
        Numbers.plain(label.serviceHighC()) + " °C is below the temperature it cures at",
        "at least " + Numbers.plain(label.atC()) + " °C");
    refuse(
        label.serviceLowC() < -100 || label.serviceHighC() > 350,
        "service_high_c",
        "the service range is beyond any such compound",
        "-100 to 350 °C");
  }

  private void strength() {
    double most = stock.value("label-strength-most-mpa");
    double fixture = stock.value("label-fixture-mpa");
    double handling = like.cure().at(Stage.HANDLING).fraction();
    refuse(
        label.strengthMpa() > most,
        "strength_mpa",
        Numbers.plain(label.strengthMpa()) + " MPa is more than such a bond can have",
        "at most " + Numbers.plain(most) + " MPa");
    refuse(
        fixture / label.strengthMpa() >= handling,
        "strength_mpa",
        Numbers.plain(label.strengthMpa()) + " MPa is hardly more than fixture",
        "more than " + Numbers.plain(fixture / handling) + " MPa");
  }

  private void lives() {
    double most = stock.value("label-open-most-months");
    refuse(
        label.openMonths() > most,
        "open_months",
        Numbers.plain(label.openMonths()) + " months is longer than any open life",
        "at most " + Numbers.plain(most) + " months");
    refuse(
        label.shelfMonths().isPresent()
            && !(label.shelfMonths().getAsDouble() > 0 && label.shelfMonths().getAsDouble() <= 120),
        "shelf_months",
        "is out of range",
        "more than 0, at most 120 months");
  }

  private static void refuse(boolean wrong, String field, String problem, String allowed) {
    if (wrong) {
      throw new InvalidValue(field, problem, allowed);
    }
  }
}
