package annulus.exchange;

import static annulus.exchange.ShippedCatalog.CATALOG;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Activity;
import annulus.catalog.CompoundClass;
import annulus.catalog.Instrument;
import annulus.catalog.Material;
import annulus.quantity.Estimate;
import annulus.quantity.Units;
import annulus.select.Condition;
import annulus.select.Rule;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The shipped values against printed ones, each with its source. */
class CatalogDataPublishedTest {
  private static void holds(Estimate estimate, double low, double high, String what) {
    assertTrue(estimate.low() <= low && high <= estimate.high(), what + ": " + estimate);
    double slack = 1e-9;
    assertTrue(
        estimate.likely() >= low - slack && estimate.likely() <= high + slack,
        what + ": likely " + estimate.likely() + " outside " + low + " to " + high);
  }

  /**
   * Callister, Materials Science and Engineering, app. B; Shigley, Mechanical Engineering Design,
   * table A-5; Philpot, Mechanics of Materials, app. D. Printed ranges stay inside the row's range,
   * and the likely value lies inside the printed range.
   */
  @ParameterizedTest
  @CsvSource({
    "steel-plain, 11.3, 11.7",
    "steel-alloy, 12.3, 12.3",
    "steel-bearing, 12.5, 12.5",
    "stainless-304, 17.2, 17.2",
    "stainless-316, 15.9, 15.9",
    "stainless-440a, 10.2, 10.2",
    "aluminium-6061, 23.6, 23.6",
    "aluminium-7075, 23.4, 23.4",
    "titanium-6al4v, 8.6, 9.5",
    "brass-c260, 19.9, 19.9",
    "brass-c360, 20.5, 20.5",
    "bronze-phosphor, 17.8, 17.8",
    "bronze-bearing, 18.0, 18.0",
    "cast-iron-grey, 11.4, 11.4",
    "cast-iron-ductile, 11.2, 11.2",
    "magnesium-az91, 26.0, 26.0",
    "acetal-copolymer, 85, 85",
    "acetal-homopolymer, 104, 104",
    "nylon-66, 70, 144",
    "nylon-glass, 20, 100",
    "carbon-epoxy, 1.5, 1.5",
  })
  void expansion_is_as_printed(String id, double low, double high) {
    holds(CATALOG.materials().get(id).expansion(), low, high, id);
  }

  /** The same handbooks. */
  @ParameterizedTest
  @CsvSource({
    "steel-plain, 207, 207",
    "steel-alloy, 207, 207",
    "stainless-304, 193, 193",
    "stainless-316, 193, 193",
    "stainless-440a, 200, 200",
    "aluminium-6061, 69, 69",
    "aluminium-7075, 71, 71",
    "titanium-6al4v, 114, 120",
    "brass-c260, 110, 110",
    "brass-c360, 97, 106",
    "bronze-phosphor, 111, 111",
    "cast-iron-grey, 66, 138",
    "cast-iron-ductile, 169, 169",
    "magnesium-az91, 45, 45",
    "acetal-copolymer, 2.5, 2.5",
    "acetal-homopolymer, 3.0, 3.0",
    "nylon-66, 1.6, 3.8",
    "carbon-epoxy, 69.7, 69.7",
  })
  void young_is_as_printed(String id, double low, double high) {
    holds(CATALOG.materials().get(id).youngGPa(), low, high, id);
  }

  /** The same handbooks. */
  @ParameterizedTest
  @CsvSource({
    "steel-plain, 0.292, 0.292",
    "stainless-304, 0.305, 0.305",
    "aluminium-6061, 0.33, 0.33",
    "aluminium-7075, 0.33, 0.33",
    "titanium-6al4v, 0.33, 0.36",
    "brass-c260, 0.324, 0.324",
    "bronze-phosphor, 0.349, 0.349",
    "cast-iron-grey, 0.211, 0.211",
    "magnesium-az91, 0.35, 0.35",
    "nylon-66, 0.4, 0.4",
    "carbon-epoxy, 0.296, 0.296",
  })
  void poisson_is_as_printed(String id, double low, double high) {
    holds(CATALOG.materials().get(id).poisson(), low, high, id);
  }

  /** Computed from the handbook values: a 42 mm bearing-steel part, µm of clearance per kelvin. */
  @ParameterizedTest
  @CsvSource({"aluminium-6061, 0.466", "carbon-epoxy, -0.462"})
  void a_seat_of_42_mm_opens_as_computed(String bore, double micrometresPerKelvin) {
    double outer = CATALOG.materials().get(bore).expansion().likely();
    double inner = CATALOG.materials().get("steel-bearing").expansion().likely();
    assertEquals(micrometresPerKelvin, (outer - inner) * 42e-3, 5e-4);
  }

  /** George et al. 1997 and Abenojar 2024: copper before steel before aluminium. */
  @ParameterizedTest
  @ValueSource(
      strings = {"brass-c260", "brass-c360", "bronze-phosphor", "bronze-bearing", "copper"})
  void copper_alloys_are_active(String id) {
    assertEquals(Activity.Level.ACTIVE, CATALOG.materials().get(id).activity());
  }

  /** George et al. 1997 for aluminium; Hunter and Hess 2012 for stainless. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "stainless-304",
        "stainless-316",
        "stainless-440a",
        "aluminium-6061",
        "aluminium-7075",
        "aluminium-cast"
      })
  void stainless_and_aluminium_are_slow(String id) {
    assertEquals(Activity.Level.SLOW, CATALOG.materials().get(id).activity());
  }

  /**
   * Petrie, Handbook of Adhesives and Sealants: zinc, cadmium and phenolic need primer; bright
   * plate, chromate and some anodised films inhibit.
   */
  @Test
  void zinc_cadmium_phenolic_plate_and_anodised_films_are_inert() {
    for (String id : List.of("zinc-diecast", "phenolic")) {
      assertEquals(Activity.Level.INERT, CATALOG.materials().get(id).activity(), id);
    }
    for (String id :
        List.of(
            "zinc-plated",
            "cadmium-plated",
            "chrome-plated",
            "nickel-plated",
            "chromate",
            "anodised",
            "hard-anodised")) {
      assertEquals(Activity.Level.INERT, CATALOG.finishes().get(id).activity().orElseThrow(), id);
    }
  }

  /**
   * Trade list of amorphous thermoplastics: PC, ABS, PC/ABS, SAN, PPO, PMMA, PS, PSU; no others.
   */
  @Test
  void the_amorphous_thermoplastics_stress_crack_and_nothing_else_does() {
    Set<String> cracking =
        CATALOG.materials().values().stream()
            .filter(m -> m.attack() == Material.Attack.STRESS_CRACKS)
            .map(Material::id)
            .collect(Collectors.toSet());
    assertEquals(
        Set.of(
            "polycarbonate",
            "abs",
            "pc-abs",
            "san",
            "ppo",
            "acrylic",
            "polystyrene",
            "polysulfone"),
        cracking);
  }

  /**
   * ISO 10123:1990 pin 12.675 mm and collar 12.700 +0.025/0: the widest radial gap is the gap the
   * declared hours hold at.
   */
  @Test
  void the_reference_gap_is_the_widest_of_pin_and_collar() {
    double widest = (12.700 + 0.025 - 12.675) / 2 * 1000;
    for (CompoundClass c : CATALOG.compounds().values()) {
      assertEquals(widest, c.cure().referenceGapUm(), 1e-9, c.id());
    }
  }

  /**
   * Petrie, Handbook of Adhesives and Sealants: 45 s at 149 °C does what 3 h do at room temperature
   * (44.7 kJ/mol from 22 °C); and "doubles per 10 K" near 22 °C (51.2 kJ/mol).
   */
  @Test
  void activation_energy_covers_both_published_facts() {
    double pair = activation(3 * 3600 / 45.0, 22, 149);
    double doubling = activation(2, 22, 32);
    assertEquals(44.7, pair, 0.1);
    assertEquals(51.8, doubling, 0.7);
    for (CompoundClass c : CATALOG.compounds().values()) {
      Estimate e = c.cure().activationKJ();
      assertTrue(e.low() <= pair && doubling <= e.high(), c.id());
      assertEquals(pair, e.likely(), 1, c.id());
    }
  }

  private static double activation(double ratio, double lowC, double highC) {
    double inverse = 1 / Units.kelvin(lowC) - 1 / Units.kelvin(highC);
    return Units.GAS_CONSTANT * Math.log(ratio) / inverse / 1000;
  }

  private static Rule rule(String id) {
    try {
      return RuleFile.read(DataFiles.bundled()).rules().stream()
          .filter(r -> r.id().equals(id))
          .findFirst()
          .orElseThrow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Petrie: no cure above about 0.76 mm (30 mil) between faces. US Army manual: from −54 °C. */
  @Test
  void no_class_goes_beyond_the_published_gap_and_cold() {
    Rule limit = rule("face-to-face-limit");
    assertEquals(30 * 25.4, ((Condition.Against) limit.when()).limit(), 2.5);
    for (CompoundClass c : CATALOG.compounds().values()) {
      assertTrue(c.primedGapMaxUm() <= 760, c.id());
      assertTrue(c.serviceC().low() >= -54, c.id());
    }
  }

  /** Common practice: refuse below 5 °C, caution below 15 °C; thin steel joint: minutes, a day. */
  @Test
  void times_and_least_temperature_are_those_of_the_trade() {
    for (CompoundClass c : CATALOG.compounds().values()) {
      assertEquals(5, c.cure().minimumC(), c.id());
      assertEquals(15, c.cure().cautionBelowC(), c.id());
      assertEquals(24, c.cure().stages().get(3).hours(), c.id());
      assertEquals(72, c.cure().slowFullHours(), c.id());
      assertEquals(
          0.1, c.cure().stages().get(0).fraction() * c.strengthMPa().likely(), 1e-4, c.id());
    }
    assertEquals(
        20.0 / 60, CATALOG.compounds().get("thin-lasting").cure().stages().get(0).hours(), 0.01);
  }

  /** DIN 862 (1988) for calipers, DIN 863-1 for micrometers, US Army TB 9-5210-207-24 inside. */
  @ParameterizedTest
  @CsvSource({
    "caliper-150, OUTSIDE, 42, 20, 10",
    "caliper-150, INSIDE, 42, 40, 10",
    "caliper-vernier-005, OUTSIDE, 42, 50, 50",
    "caliper-vernier-005, INSIDE, 42, 70, 50",
    "outside-micrometer, OUTSIDE, 50, 4, 1",
    "outside-micrometer, OUTSIDE, 100, 5, 1",
    "outside-micrometer, OUTSIDE, 150, 6, 1",
    "inside-micrometer, INSIDE, 50, 7.5, 10",
    "inside-micrometer, INSIDE, 50.01, 10, 10",
    "bore-micrometer-three-point, INSIDE, 42, 4, 1",
  })
  void error_limits_are_as_printed(
      String id, Instrument.Use use, double mm, double mpe, double resolution) {
    Instrument.Span span = CATALOG.instruments().get(id).spanFor(use, mm).orElseThrow();
    assertEquals(mpe, span.mpeUm());
    assertEquals(resolution, span.resolutionUm());
  }
}
