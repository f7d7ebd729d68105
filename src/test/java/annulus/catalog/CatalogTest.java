package annulus.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.exchange.CatalogFiles;
import annulus.exchange.DataFiles;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What the rows of data say when asked, by hand-worked figures. */
class CatalogTest {
  /** Straight between 75/82/90 % at 60 °C and 55/62/70 % at 100 °C; nothing above service. */
  @ParameterizedTest
  @CsvSource({
    "-40, 1, 1, 1",
    "22, 1, 1, 1",
    "41, 0.875, 0.91, 0.95",
    "60, 0.75, 0.82, 0.9",
    "70, 0.70, 0.77, 0.85",
    "100, 0.55, 0.62, 0.7",
    "120, 0.55, 0.62, 0.7",
    "150, 0.55, 0.62, 0.7",
    "150.01, 0, 0, 0"
  })
  void strength_left_when_hot_lies_straight_between_its_points(
      double celsius, double low, double likely, double high) {
    Estimate left = Rows.COMPOUND.hotFraction(celsius);
    assertEquals(low, left.low(), 1e-12);
    assertEquals(likely, left.likely(), 1e-12);
    assertEquals(high, left.high(), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({"24.99,false", "25,false", "25.01,true", "50,true", "50.01,false"})
  void a_span_measures_above_its_lower_end_up_to_its_upper(double diameterMm, boolean measured) {
    Instrument gauge = new Instrument("gauge", "Gauge", List.of(Rows.SPAN));
    assertEquals(measured, gauge.spanFor(Instrument.Use.INSIDE, diameterMm).isPresent());
    assertTrue(gauge.spanFor(Instrument.Use.OUTSIDE, diameterMm).isEmpty());
  }

  @Test
  void a_span_from_zero_measures_zero_and_the_first_span_that_fits_is_taken() {
    Instrument.Span small = Rows.with(Rows.SPAN, "overMm", 0.0);
    Instrument gauge = new Instrument("gauge", "Gauge", List.of(Rows.SPAN, small));
    assertSame(small, gauge.spanFor(Instrument.Use.INSIDE, 0).orElseThrow());
    assertSame(Rows.SPAN, gauge.spanFor(Instrument.Use.INSIDE, 30).orElseThrow());
  }

  @ParameterizedTest
  @CsvSource({"INSIDE,0.99,false", "INSIDE,1,true", "OUTSIDE,0.99,true"})
  void jaws_wider_than_a_bore_do_not_measure_it(
      Instrument.Use use, double diameterMm, boolean measured) {
    Instrument.Span inside = Rows.with(Rows.with(Rows.SPAN, "overMm", 0.0), "jawFlatMm", 1.0);
    Instrument caliper =
        new Instrument("caliper", "Caliper", List.of(Rows.with(inside, "use", use)));
    assertEquals(measured, caliper.spanFor(use, diameterMm).isPresent());
  }

  @ParameterizedTest
  @CsvSource({"METAL,true", "BRITTLE_METAL,true", "PLASTIC,false", "LAMINATE,false"})
  void cast_iron_is_a_metal_and_carbon_is_not(Material.Kind kind, boolean metal) {
    assertEquals(metal, Rows.with(Rows.MATERIAL, "kind", kind).isMetal());
  }

  private static Map<Consequence, ReleaseRule> release(String field, Object worse) {
    Map<Consequence, ReleaseRule> rules = new EnumMap<>(Consequence.class);
    for (Consequence consequence : Consequence.values()) {
      ReleaseRule same = new ReleaseRule(consequence, Stage.FUNCTIONAL, true, 2, Rows.SHOP);
      rules.put(consequence, same);
    }
    rules.computeIfPresent(Consequence.INJURY, (c, rule) -> Rows.with(rule, field, worse));
    return rules;
  }

  @Test
  void a_worse_consequence_may_ask_for_as_much_or_more_and_never_for_less() {
    ReleaseRule.checkOrder(release("safetyFactor", 2.0));
    ReleaseRule.checkOrder(release("safetyFactor", 3.0));
    ReleaseRule.checkOrder(release("stage", Stage.FULL));
    refused("safety_factor", release("safetyFactor", 1.99));
    refused("stage", release("stage", Stage.HANDLING));
    refused("slow_practice", release("slowPractice", false));
  }

  private static void refused(String field, Map<Consequence, ReleaseRule> rules) {
    InvalidValue error = assertThrows(InvalidValue.class, () -> ReleaseRule.checkOrder(rules));
    assertEquals(field, error.field());
    assertEquals("of injury asks for less than stranding", error.problem());
  }

  private static Catalog shipped() throws IOException {
    return CatalogFiles.read(DataFiles.bundled());
  }

  private static Catalog with(Catalog from, String field, Object value) {
    return Rows.with(from, field, value);
  }

  @ParameterizedTest
  @EnumSource(Consequence.class)
  void a_catalogue_needs_a_release_rule_for_each_consequence(Consequence lacking)
      throws IOException {
    Catalog catalog = shipped();
    Map<Consequence, ReleaseRule> rules = new LinkedHashMap<>(catalog.release());
    rules.remove(lacking);
    InvalidValue error = assertThrows(InvalidValue.class, () -> with(catalog, "release", rules));
    assertTrue(error.problem().contains(lacking.name()));
  }

  @ParameterizedTest
  @EnumSource(Activity.Level.class)
  void a_catalogue_needs_a_row_for_each_activity(Activity.Level lacking) throws IOException {
    Catalog catalog = shipped();
    Map<Activity.Level, Activity> levels = new LinkedHashMap<>(catalog.activities());
    levels.remove(lacking);
    InvalidValue error =
        assertThrows(InvalidValue.class, () -> with(catalog, "activities", levels));
    assertTrue(error.problem().contains(lacking.name()));
  }

  @Test
  void a_catalogue_that_lets_the_worst_go_early_is_refused() throws IOException {
    Catalog catalog = shipped();
    assertThrows(
        InvalidValue.class, () -> with(catalog, "release", release("stage", Stage.FIXTURE)));
  }

  @Test
  void a_catalogue_keeps_the_order_of_its_files_and_its_own_copy() throws IOException {
    Catalog catalog = shipped();
    Map<String, CompoundClass> turned = new LinkedHashMap<>();
    List<String> ids = new ArrayList<>(catalog.compounds().keySet());
    Collections.reverse(ids);
    ids.forEach(id -> turned.put(id, catalog.compounds().get(id)));
    Catalog other = catalog.withCompounds(turned);
    turned.clear();
    assertEquals(ids, List.copyOf(other.compounds().keySet()));
    assertEquals(catalog.materials(), other.materials());
    assertEquals(catalog.policy(), other.policy());
    assertThrows(UnsupportedOperationException.class, () -> other.compounds().clear());
  }

  @Test
  void an_index_keeps_the_order_and_refuses_an_id_that_stands_twice() {
    Material iron = Rows.with(Rows.MATERIAL, "id", "iron");
    Map<String, Material> index = Catalog.index(List.of(Rows.MATERIAL, iron), Material::id);
    assertEquals(List.of("steel", "iron"), List.copyOf(index.keySet()));
    InvalidValue twice =
        assertThrows(InvalidValue.class, () -> Catalog.index(List.of(iron, iron), Material::id));
    assertEquals("iron stands twice", twice.problem());
  }
}
