package annulus.exchange;

import static annulus.exchange.ShippedCatalog.CATALOG;
import static annulus.exchange.ShippedCatalog.RULES;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Activity;
import annulus.catalog.CompoundClass;
import annulus.catalog.CompoundClass.Permanence;
import annulus.catalog.Consequence;
import annulus.catalog.Finish;
import annulus.catalog.Material;
import annulus.catalog.Stage;
import annulus.quantity.Interval;
import annulus.select.Rule;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The shipped data as a whole: enough of it, no dead references, no unexplained holes. */
class CatalogDataTest {
  private static final double WIDEST_UM = 250;

  /** A range no class of a permanence fills, and the rules that tell the mechanic why. */
  record Hole(
      Permanence permanence, double fromUm, double toUm, String reason, Set<String> rules) {}

  private static final List<Hole> KNOWN_HOLES =
      List.of(
          new Hole(
              Permanence.LASTING,
              -12,
              8,
              "a near line-to-line joint holds by its fit: a film quiets it, or it is pressed dry",
              Set.of("line-to-line-film", "dry-press", "gap-too-narrow")),
          new Hole(
              Permanence.RELEASABLE,
              125,
              250,
              "only the lasting paste fills so much; to part it takes heat and force",
              Set.of("gap-too-wide", "apart-lasting", "apart-fragile")));

  static Stream<CompoundClass> classes() {
    return CATALOG.compounds().values().stream();
  }

  @Test
  void there_is_enough_of_everything() {
    assertTrue(CATALOG.materials().size() >= 24, "materials");
    assertTrue(CATALOG.finishes().size() >= 12, "finishes");
    assertTrue(CATALOG.compounds().size() >= 7, "classes");
    assertTrue(CATALOG.primers().size() >= 2, "primers");
    assertTrue(CATALOG.instruments().size() >= 8, "instruments");
    assertTrue(RULES.rules().size() >= 25, "rules");
    assertTrue(CATALOG.cautions().size() >= 3, "cautions");
  }

  @Test
  void there_is_a_class_for_hot_service_and_one_that_rebuilds() {
    CompoundClass ordinary = CATALOG.compounds().get("medium-lasting");
    assertTrue(
        classes()
            .anyMatch(
                c ->
                    c.serviceC().high() > ordinary.serviceC().high()
                        && c.hotFraction(149).low() > ordinary.hotFraction(149).low()),
        "hot");
    assertTrue(classes().anyMatch(c -> c.role() == CompoundClass.Role.REBUILD), "rebuild");
    assertTrue(classes().anyMatch(c -> c.role() == CompoundClass.Role.FILM), "film");
    assertTrue(classes().anyMatch(c -> c.permanence() == Permanence.RELEASABLE), "releasable");
  }

  @Test
  void the_ranges_of_the_classes_leave_only_known_holes() {
    List<String> found = new ArrayList<>();
    for (Permanence permanence : List.of(Permanence.LASTING, Permanence.RELEASABLE)) {
      for (Interval hole : holes(permanence)) {
        found.add(permanence + " " + hole.low() + " to " + hole.high());
      }
    }
    List<String> known =
        KNOWN_HOLES.stream()
            .map(h -> h.permanence() + " " + h.fromUm() + " to " + h.toUm())
            .toList();
    assertEquals(known, found);
  }

  /** Ranges from the least gap of any class to the widest that no class of the kind fills. */
  private static List<Interval> holes(Permanence permanence) {
    double reached = classes().mapToDouble(c -> c.gapUm().low()).min().orElseThrow();
    List<Interval> holes = new ArrayList<>();
    List<Interval> ranges =
        classes()
            .filter(c -> c.permanence() == permanence)
            .map(CompoundClass::gapUm)
            .sorted(Comparator.comparingDouble(Interval::low))
            .toList();
    for (Interval range : ranges) {
      if (range.low() > reached) {
        holes.add(new Interval(reached, range.low()));
      }
      reached = Math.max(reached, range.high());
    }
    if (reached < WIDEST_UM) {
      holes.add(new Interval(reached, WIDEST_UM));
    }
    return holes;
  }

  @Test
  void taken_together_the_classes_leave_no_hole_from_nought_to_a_quarter_of_a_millimetre() {
    for (double um = 0; um <= WIDEST_UM; um += 0.5) {
      double gap = um;
      assertTrue(classes().anyMatch(c -> c.gapUm().contains(gap)), gap + " µm");
    }
  }

  @Test
  void every_hole_is_explained_by_rules_that_exist() {
    Set<String> ids = RULES.rules().stream().map(Rule::id).collect(Collectors.toSet());
    for (Hole hole : KNOWN_HOLES) {
      assertTrue(ids.containsAll(hole.rules()), hole.toString());
    }
  }

  @Test
  void neighbouring_classes_overlap_so_that_an_uncertain_gap_can_be_decided() {
    for (Permanence permanence : Permanence.values()) {
      List<CompoundClass> some =
          classes()
              .filter(c -> c.permanence() == permanence)
              .sorted(Comparator.comparingDouble(c -> c.gapUm().low()))
              .toList();
      for (int i = 1; i < some.size(); i++) {
        double overlap = some.get(i - 1).gapUm().high() - some.get(i).gapUm().low();
        assertTrue(overlap >= 15, some.get(i).id() + " overlaps by " + overlap + " µm only");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("classes")
  void a_class_is_consistent_in_itself(CompoundClass c) {
    assertTrue(c.primedGapMaxUm() >= c.gapUm().high(), "primed gap");
    for (int i = 1; i < Stage.values().length; i++) {
      var before = c.cure().at(Stage.values()[i - 1]);
      var after = c.cure().at(Stage.values()[i]);
      assertTrue(after.hours() > before.hours() && after.fraction() > before.fraction(), "stages");
    }
    assertTrue(c.cure().completeHours() >= c.cure().at(Stage.FULL).hours(), "complete");
    assertTrue(c.cure().slowFullHours() >= c.cure().at(Stage.FULL).hours(), "slow practice");
    double grabs = c.cure().workingMinutes().high() / 60;
    assertTrue(grabs < c.cure().at(Stage.FIXTURE).hours(), "it can't be fixed while it is loose");
    assertTrue(c.hotStrength().get(0).fraction().likely() == 1, "full strength at the start");
    double hottest = c.hotStrength().get(c.hotStrength().size() - 1).celsius();
    assertTrue(hottest >= c.serviceC().high(), "hot strength known over the service range");
    assertTrue(c.removalHeatC().low() > c.cure().heldAboveC(), "heat that removes is not cure");
    assertTrue(c.shelfMonths().low() >= 1 && c.openMonths().high() <= c.shelfMonths().high());
  }

  @Test
  void a_thicker_class_is_never_thinner_in_the_bottle() {
    for (Permanence permanence : Permanence.values()) {
      List<CompoundClass> some =
          classes()
              .filter(c -> c.permanence() == permanence)
              .sorted(Comparator.comparingDouble(c -> c.gapUm().high()))
              .toList();
      for (int i = 1; i < some.size(); i++) {
        assertTrue(some.get(i).viscosity().low() >= some.get(i - 1).viscosity().low());
      }
    }
  }

  @Test
  void a_releasable_class_is_weaker_than_any_lasting_one() {
    double strongest =
        classes()
            .filter(c -> c.permanence() == Permanence.RELEASABLE)
            .mapToDouble(c -> c.strengthMPa().high())
            .max()
            .orElseThrow();
    double weakest =
        classes()
            .filter(c -> c.permanence() == Permanence.LASTING)
            .mapToDouble(c -> c.strengthMPa().low())
            .min()
            .orElseThrow();
    assertTrue(strongest <= weakest, strongest + " against " + weakest);
  }

  @Test
  void activity_falls_from_active_to_inert() {
    double active = CATALOG.activities().get(Activity.Level.ACTIVE).rate().likely();
    double slow = CATALOG.activities().get(Activity.Level.SLOW).rate().likely();
    double inert = CATALOG.activities().get(Activity.Level.INERT).rate().likely();
    assertTrue(active > slow && slow > inert);
    CATALOG
        .primers()
        .values()
        .forEach(p -> assertTrue(p.rate().likely() >= active, p.id() + " must quicken"));
  }

  @Test
  void more_harm_never_asks_for_less() {
    for (int i = 1; i < Consequence.values().length; i++) {
      var mild = CATALOG.release().get(Consequence.values()[i - 1]);
      var worse = CATALOG.release().get(Consequence.values()[i]);
      assertTrue(worse.stage().compareTo(mild.stage()) >= 0);
      assertTrue(worse.safetyFactor() >= mild.safetyFactor());
      assertTrue(worse.slowPractice() || !mild.slowPractice());
    }
    assertEquals(Stage.FULL, CATALOG.release().get(Consequence.INJURY).stage());
    assertTrue(CATALOG.release().get(Consequence.INJURY).slowPractice());
  }

  @Test
  void a_plated_or_coated_face_is_inert_and_a_bare_metal_finish_leaves_the_metal_to_decide() {
    for (Finish finish : CATALOG.finishes().values()) {
      if (finish.film() == Finish.Film.PLATED || finish.film() == Finish.Film.COAT) {
        assertEquals(Activity.Level.INERT, finish.activity().orElseThrow(), finish.id());
      }
    }
    for (String bare : List.of("as-machined", "ground", "polished", "blasted", "as-cast")) {
      assertTrue(CATALOG.finishes().get(bare).activity().isEmpty(), bare);
    }
  }

  @Test
  void what_does_not_yield_like_a_metal_has_no_yield() {
    for (Material material : CATALOG.materials().values()) {
      if (!material.isMetal()) {
        assertTrue(material.yieldMPa().isEmpty(), material.id());
        assertTrue(material.heatLimitC() <= 90, material.id());
      }
    }
  }

  @Test
  void every_policy_number_is_asked_for() {
    String all = String.join("\n", sources().stream().map(CatalogDataTest::text).toList());
    Set<String> idle = new TreeSet<>(CATALOG.policy().numbers().keySet());
    idle.removeIf(id -> all.contains('"' + id + '"'));
    assertEquals(Set.of(), idle);
  }

  @Test
  void every_number_the_program_asks_for_is_there() {
    Set<String> missing = new TreeSet<>();
    Pattern ask =
        Pattern.compile("\\b(?:value|number|policy)\\(\\s*\"([a-z0-9]+(?:-[a-z0-9]+)+)\"");
    Set<String> known = new TreeSet<>(CATALOG.policy().numbers().keySet());
    for (String table : List.of("logger-rules.csv", "stock-policy.csv", "learning.csv")) {
      for (String line : ShopFolder.shipped(table).lines().toList()) {
        known.add(line.substring(0, Math.max(0, line.indexOf(','))));
      }
    }
    int asked = 0;
    for (Path file : sources()) {
      Matcher matcher = ask.matcher(text(file));
      while (matcher.find()) {
        asked++;
        if (!known.contains(matcher.group(1))) {
          missing.add(file.getFileName() + " " + matcher.group(1));
        }
      }
    }
    assertEquals(Set.of(), missing);
    assertTrue(asked > 5, asked + " found: does the pattern still fit the code?");
  }

  private static List<Path> sources() {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      return files.filter(f -> f.toString().endsWith(".java")).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
