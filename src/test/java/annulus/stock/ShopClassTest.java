package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Policy;
import annulus.catalog.Stage;
import annulus.exchange.CatalogFiles;
import annulus.exchange.CommandWords.Word;
import annulus.exchange.DataFiles;
import annulus.exchange.InputRefused;
import annulus.exchange.LabelSheet;
import annulus.exchange.PlacedProblem;
import annulus.exchange.ShopClassFile;
import annulus.exchange.StockFiles;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShopClassTest {
  private static final Catalog CATALOG;
  private static final Policy POLICY;

  static {
    try {
      CATALOG = CatalogFiles.read(DataFiles.bundled());
      POLICY = StockFiles.policy(DataFiles.bundled());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /** A label that holds water; pairs of column and value change it. */
  private static Map<String, Word> label(String... changes) {
    Map<String, String> said = new LinkedHashMap<>();
    String[] columns = {
      "class", "shop-blend", "name", "Shop blend", "like", "medium-lasting", "gap_basis", "radial",
      "largest_gap_um", "80", "fixture_minutes", "12", "full_hours", "20", "at_c", "22",
      "surface", "active", "at_gap_um", "25", "strength_mpa", "22", "service_low_c", "-50",
      "service_high_c", "140", "least_cure_c", "6", "open_months", "9"
    };
    for (int i = 0; i < columns.length; i += 2) {
      said.put(columns[i], columns[i + 1]);
    }
    for (int i = 0; i < changes.length; i += 2) {
      said.put(changes[i], changes[i + 1]);
    }
    Map<String, Word> words = new LinkedHashMap<>();
    said.forEach((k, v) -> words.put(k, new Word(k, v, 3)));
    words.values().removeIf(w -> w.value().equals("-"));
    return words;
  }

  private static ShopClass made(String... changes) {
    return ShopClass.of(LabelSheet.words(label(changes)), CATALOG, POLICY);
  }

  @Test
  void the_label_is_in_the_class_narrower_and_says_so() {
    CompoundClass made = made().after();
    assertEquals(80, made.gapUm().high());
    assertEquals(0.2, made.cure().at(Stage.FIXTURE).hours(), 1e-12);
    assertEquals(20, made.cure().at(Stage.FULL).hours());
    assertEquals(22, made.strengthMPa().likely());
    assertEquals(9, made.openMonths().low());
    assertEquals("shop label", made.provenance().source());
    assertTrue(ShopLabel.made(made));
    assertTrue(made.cure().spreadLn() < made().before().cure().spreadLn());
    assertEquals(0.1 / 22, made.cure().at(Stage.FIXTURE).fraction(), 1e-12);
  }

  @Test
  void a_diametral_gap_counts_half_per_side() {
    ShopClass made =
        made(
            "gap_basis",
            "diametral",
            "largest_gap_um",
            "160",
            "smallest_gap_um",
            "40",
            "at_gap_um",
            "50");
    assertEquals(80, made.after().gapUm().high());
    assertEquals(20, made.after().gapUm().low());
    assertEquals(25, made.after().cure().referenceGapUm());
  }

  @Test
  void times_on_slow_faces_are_never_made_shorter_than_they_may_be() {
    double rate = CATALOG.activities().get(annulus.catalog.Activity.Level.SLOW).rate().high();
    CompoundClass slow = made("surface", "slow").after();
    assertEquals(0.2 * rate, slow.cure().at(Stage.FIXTURE).hours(), 1e-12);
    assertTrue(slow.cure().slowFullHours() >= 20);
  }

  @Test
  void service_above_what_hot_strength_is_known_for_is_not_counted_and_that_is_said() {
    ShopClass made = made("service_high_c", "230");
    assertEquals(149, made.after().serviceC().high());
    assertTrue(made.notes().get(0).contains("230"), made.notes().get(0));
    CompoundClass cool = made("service_high_c", "80").after();
    assertEquals(made.before().hotFraction(80).likely(), cool.hotFraction(80).likely(), 1e-12);
    assertEquals(0, cool.hotFraction(81).high());
  }

  @ParameterizedTest
  @CsvSource({
    "full_hours, 0.2, full_hours",
    "full_hours, 400, full_hours",
    "fixture_minutes, 0.1, fixture_minutes",
    "strength_mpa, 46, strength_mpa",
    "strength_mpa, 0.3, strength_mpa",
    "largest_gap_um, 761, largest_gap_um",
    "smallest_gap_um, 80, smallest_gap_um",
    "smallest_gap_um, -5, smallest_gap_um",
    "at_gap_um, 81, at_gap_um",
    "service_low_c, 141, service_low_c",
    "service_high_c, 20, service_high_c",
    "least_cure_c, 23, least_cure_c",
    "open_months, 61, open_months",
    "surface, inert, surface",
    "like, medium-lastin, like",
    "class, medium-lasting, class",
    "class, Shop Blend, class",
    "shelf_months, 0, shelf_months",
    "shelf_months, 120.1, shelf_months",
    "least_cure_c, -20.1, least_cure_c",
    "service_low_c, -100.1, service_high_c",
    "service_high_c, 350.1, service_high_c",
    "at_gap_um, 500.1, at_gap_um",
  })
  void a_label_that_contradicts_itself_or_physics_is_refused(
      String column, String value, String field) {
    InvalidOr refused = refused(column, value);
    assertEquals(field, refused.field());
  }

  @ParameterizedTest
  @CsvSource({
    "full_hours, 336",
    "fixture_minutes, 0.5",
    "strength_mpa, 45",
    "at_gap_um, 80",
    "smallest_gap_um, 0",
    "least_cure_c, 22",
    "least_cure_c, -20",
    "service_high_c, 22",
    "service_low_c, -100",
    "service_high_c, 350",
    "open_months, 60",
    "shelf_months, 120",
    "shelf_months, 0.1",
  })
  void a_label_at_a_limit_is_taken(String column, String value) {
    made(column, value);
  }

  @Test
  void a_gap_that_only_a_centred_part_has_is_told_with_its_clearance() {
    assertTrue(made("largest_gap_um", "380").notes().isEmpty());
    List<String> notes = made("largest_gap_um", "381").notes();
    assertTrue(notes.get(0).contains("762 µm"), notes.get(0));
    InvalidValue wide = assertThrows(InvalidValue.class, () -> made("largest_gap_um", "761"));
    assertEquals("at most 760 µm radial (1520 diametral)", wide.allowed());
  }

  @Test
  void only_a_film_may_begin_at_an_interference() {
    CompoundClass film =
        CATALOG.compounds().values().stream()
            .filter(c -> c.role() == CompoundClass.Role.FILM && c.gapUm().low() < 0)
            .findFirst()
            .orElseThrow();
    String low = Long.toString((long) film.gapUm().low());
    String[] said = {"like", film.id(), "largest_gap_um", "30", "smallest_gap_um", low};
    assertEquals(film.gapUm().low(), made(said).after().gapUm().low());
    assertThrows(InvalidValue.class, () -> made("smallest_gap_um", low));
  }

  @Test
  void a_cold_label_counts_no_colder_than_a_rate_is_known_and_says_so() {
    double known = made().before().cure().minimumC();
    ShopClass cold = made("least_cure_c", "" + (known - 1));
    assertEquals(known, cold.after().cure().minimumC());
    assertTrue(cold.notes().get(0).contains("no rate is known"), cold.notes().get(0));
    assertTrue(made("least_cure_c", "" + known).notes().isEmpty());
    assertTrue(made("least_cure_c", "" + (known + 1)).notes().isEmpty());
    assertEquals(known + 1, made("least_cure_c", "" + (known + 1)).after().cure().minimumC());
  }

  /** Half the fixture time of the class it is like leaves half of its working time. */
  @Test
  void a_quicker_label_leaves_less_time_to_work_and_a_slower_one_no_more() {
    CompoundClass like = made().before();
    double minutes = like.cure().at(Stage.FIXTURE).hours() * 60;
    CompoundClass half = made("fixture_minutes", "" + minutes / 2).after();
    assertEquals(like.cure().workingMinutes().low() / 2, half.cure().workingMinutes().low(), 1e-9);
    assertEquals(
        like.cure().workingMinutes().likely() / 2, half.cure().workingMinutes().likely(), 1e-9);
    assertEquals(
        like.cure().workingMinutes().high() / 2, half.cure().workingMinutes().high(), 1e-9);
    CompoundClass twice = made("fixture_minutes", "" + minutes * 2).after();
    assertEquals(like.cure().workingMinutes(), twice.cure().workingMinutes());
  }

  @Test
  void a_label_for_slow_faces_scales_full_cure_too() {
    double rate = CATALOG.activities().get(annulus.catalog.Activity.Level.SLOW).rate().high();
    CompoundClass slow = made("surface", "slow").after();
    assertEquals(20 * rate, slow.cure().at(Stage.FULL).hours(), 1e-9);
  }

  private record InvalidOr(String field) {}

  private static InvalidOr refused(String column, String value) {
    try {
      made(column, value);
    } catch (InvalidValue e) {
      return new InvalidOr(e.field());
    } catch (InputRefused e) {
      return new InvalidOr(e.problems().get(0).field());
    }
    throw new AssertionError(column + " " + value + " was taken");
  }

  @Test
  void times_at_a_gap_of_500_per_side_are_the_last_that_are_taken() {
    made("largest_gap_um", "600", "at_gap_um", "500");
    assertThrows(InvalidValue.class, () -> made("largest_gap_um", "600", "at_gap_um", "500.1"));
  }

  /** Fixture at 0.1 MPa must come before handling, which is a share of the strength. */
  @Test
  void a_strength_is_taken_above_the_one_that_the_refusal_names_only() {
    InvalidValue weak = assertThrows(InvalidValue.class, () -> made("strength_mpa", "0.3"));
    String least = weak.allowed().replaceAll("^more than ([0-9.]+) MPa$", "$1");
    assertEquals("strength_mpa", refused("strength_mpa", least).field());
    made("strength_mpa", new BigDecimal(least).add(new BigDecimal("0.001")).toString());
  }

  @Test
  void a_gap_of_760_per_side_is_the_last_that_is_taken() {
    assertEquals(760, made("largest_gap_um", "760").after().gapUm().high());
    assertEquals(
        760, made("largest_gap_um", "1520", "gap_basis", "diametral").after().gapUm().high());
    assertThrows(
        InvalidValue.class, () -> made("largest_gap_um", "1521", "gap_basis", "diametral"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "gap_basis",
        "largest_gap_um",
        "full_hours",
        "at_c",
        "surface",
        "strength_mpa",
        "open_months"
      })
  void what_must_be_said_is_asked_for_by_name(String column) {
    InputRefused refused = assertThrows(InputRefused.class, () -> made(column, "-"));
    PlacedProblem problem = refused.problems().get(0);
    assertEquals(column, problem.field());
    assertTrue(problem.problem().contains("missing"));
  }

  @Property(tries = 300)
  void whatever_label_is_taken_makes_stages_that_rise_and_a_file_that_reads_back(
      @ForAll @IntRange(min = 1, max = 200) int fixture,
      @ForAll @IntRange(min = 1, max = 300) int full,
      @ForAll @IntRange(min = 1, max = 45) int strength,
      @ForAll @IntRange(min = 25, max = 760) int gap)
      throws IOException {
    CompoundClass made;
    try {
      made =
          made(
                  "fixture_minutes",
                  "" + fixture,
                  "full_hours",
                  "" + full,
                  "strength_mpa",
                  "" + strength,
                  "largest_gap_um",
                  "" + gap)
              .after();
    } catch (InputRefused e) {
      assertTrue(full * 60 <= fixture, e.getMessage());
      return;
    }
    double before = 0;
    for (var point : made.cure().stages()) {
      assertTrue(point.hours() > before);
      before = point.hours();
    }
    assertTrue(ShopClassFile.text(List.of(made), Lots.DAY).contains("\"shop label\""));
  }

  @Test
  void the_table_written_for_a_shop_is_read_as_the_same_class(@TempDir Path folder)
      throws IOException {
    CompoundClass first = made().after();
    CompoundClass second = made("class", "other-blend", "full_hours", "30").after();
    ShopClassFile.put(folder, first, Lots.DAY);
    ShopClassFile.put(folder, second, Lots.DAY);
    CompoundClass again = made("strength_mpa", "18.5").after();
    ShopClassFile.put(folder, again, Lots.DAY);
    Catalog catalog = CatalogFiles.read(DataFiles.withShop(folder));
    assertEquals(again, catalog.compounds().get("shop-blend"));
    assertEquals(second, catalog.compounds().get("other-blend"));
    assertEquals(CATALOG.compounds().size() + 2, catalog.compounds().size());
  }
}
