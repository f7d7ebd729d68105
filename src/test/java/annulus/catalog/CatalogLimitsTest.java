package annulus.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every field of a row of data: the least and the greatest taken, and just beyond them. */
class CatalogLimitsTest {
  private static final List<CompoundClass.StagePoint> STAGES = Rows.CURE.stages();

  private static Arguments number(Record row, String field, double low, double high) {
    return arguments(row, field, List.of(low, high), List.of(low - 1e-4, high + 1e-4));
  }

  private static Arguments estimate(Record row, String field, double low, double high) {
    return arguments(
        row,
        field,
        List.of(new Estimate(low, low, high)),
        List.of(new Estimate(low - 1e-4, low, high), new Estimate(low, low, high + 1e-4)));
  }

  private static Arguments range(Record row, String field, double low, double high) {
    return arguments(
        row,
        field,
        List.of(new Interval(low, high)),
        List.of(new Interval(low - 1e-4, high), new Interval(low, high + 1e-4)));
  }

  private static Arguments text(Record row, String field) {
    return arguments(row, field, List.of("x"), List.of("", " "));
  }

  static Stream<Arguments> fields() {
    return Stream.of(classFields(), cureFields(), memberFields(), toolFields()).flatMap(s -> s);
  }

  private static Stream<Arguments> classFields() {
    CompoundClass row = Rows.COMPOUND;
    return Stream.of(
        text(row, "id"),
        text(row, "name"),
        text(row, "summary"),
        arguments(
            row,
            "gapUm",
            List.of(new Interval(-50, 100)),
            List.of(new Interval(-50.1, 100), new Interval(0, 760.1))),
        number(row, "primedGapMaxUm", 50, 760),
        range(row, "viscosity", 1, 5_000_000),
        estimate(row, "strengthMPa", 0.2, 60),
        range(row, "serviceC", -100, 350),
        estimate(row, "removalHeatC", 60, 400),
        range(row, "storageC", -40, 60),
        arguments(row, "hotStrength", List.of(), List.of(List.of())),
        number(row.hotStrength().get(0), "celsius", -100, 400),
        estimate(row.hotStrength().get(0), "fraction", 0, 1));
  }

  private static Stream<Arguments> cureFields() {
    CompoundClass.Cure row = Rows.CURE;
    CompoundClass.Cure wide = Rows.with(Rows.with(row, "minimumC", -20.0), "heldAboveC", 120.0);
    CompoundClass.Cure warned = Rows.with(row, "cautionBelowC", 60.0);
    return Stream.of(
        number(wide, "referenceC", 0, 60),
        number(row, "referenceGapUm", 1, 500),
        estimate(row, "gapExponent", 0, 3),
        estimate(row, "activationKJ", 5, 150),
        number(warned, "minimumC", -20, 22),
        number(row, "cautionBelowC", 5, 60),
        number(row, "heldAboveC", 22, 120),
        number(row, "spreadLn", 0, 2),
        estimate(row, "workingMinutes", 0.1, 240),
        number(row, "completeHours", 24, 2000),
        number(row, "slowFullHours", 24, 2000),
        arguments(row, "stages", List.of(STAGES), List.of(STAGES.subList(0, 3))),
        number(STAGES.get(0), "fraction", 1e-6, 1),
        number(STAGES.get(0), "hours", 1e-4, 2000));
  }

  private static Stream<Arguments> memberFields() {
    Activity activity = new Activity(Activity.Level.SLOW, Estimate.exactly(0.3), Rows.SHOP);
    return Stream.of(
        estimate(activity, "rate", 1e-3, 10),
        text(Rows.FINISH, "id"),
        text(Rows.FINISH, "name"),
        estimate(Rows.FINISH, "strengthFactor", 0, 1.2),
        estimate(Rows.FINISH, "roughnessRzUm", 0.01, 200),
        text(Rows.MATERIAL, "id"),
        text(Rows.MATERIAL, "name"),
        text(Rows.MATERIAL, "bondFace"),
        estimate(Rows.MATERIAL, "expansion", -5, 300),
        estimate(Rows.MATERIAL, "youngGPa", 0.1, 1000),
        estimate(Rows.MATERIAL, "poisson", 0, 0.499),
        number(Rows.MATERIAL, "heatLimitC", 30, 600),
        arguments(
            Rows.MATERIAL,
            "yieldMPa",
            List.of(Optional.empty(), Optional.of(new Estimate(5, 5, 3000))),
            List.of(Optional.of(new Estimate(4.9, 5, 6)), Optional.of(new Estimate(5, 5, 3001)))),
        text(Rows.PRIMER, "id"),
        text(Rows.PRIMER, "name"),
        estimate(Rows.PRIMER, "rate", 0.01, 20),
        estimate(Rows.PRIMER, "strengthFactor", 0.05, 1),
        estimate(Rows.PRIMER, "flashOffMinutes", 0, 120),
        estimate(Rows.PRIMER, "onPartDays", 0.01, 365),
        estimate(Rows.PRIMER, "workingTimeFactor", 0.01, 1),
        number(Rows.PRIMER, "slowFullHours", 1, 2000));
  }

  private static Stream<Arguments> toolFields() {
    Instrument gauge = new Instrument("gauge", "Gauge", List.of(Rows.SPAN));
    NamedNumber named = new NamedNumber("touch-min", 20, "min", "Hands-on time.", Rows.SHOP);
    StandingCaution caution = new StandingCaution("skin", "Wear gloves.", Rows.SHOP);
    return Stream.of(
        text(gauge, "id"),
        text(gauge, "name"),
        arguments(gauge, "spans", List.of(List.of(Rows.SPAN)), List.of(List.of())),
        number(Rows.SPAN, "overMm", 0, 50),
        number(Rows.SPAN, "upToMm", 25, 1000),
        number(Rows.SPAN, "mpeUm", 0.1, 500),
        number(Rows.SPAN, "resolutionUm", 0.1, 500),
        arguments(Rows.SPAN, "contacts", List.of(2, 3), List.of(1, 4)),
        number(Rows.SPAN, "jawFlatMm", 0, 10),
        text(named, "id"),
        text(named, "meaning"),
        arguments(named, "value", List.of(-1.0), List.of(Double.NaN, Double.POSITIVE_INFINITY)),
        number(Rows.RELEASE, "safetyFactor", 1, 20),
        text(caution, "id"),
        text(caution, "text"),
        text(Rows.SHOP, "source"),
        arguments(Rows.SHOP, "confidence", List.of(Confidence.HIGH), nothing()));
  }

  private static List<Object> nothing() {
    return Collections.singletonList(null);
  }

  @ParameterizedTest
  @MethodSource("fields")
  void a_field_takes_its_limits_and_nothing_beyond(
      Record row, String field, List<Object> taken, List<Object> refused) {
    for (Object value : taken) {
      Rows.with(row, field, value);
    }
    for (Object value : refused) {
      InvalidValue error =
          assertThrows(InvalidValue.class, () -> Rows.with(row, field, value), field);
      assertTrue(!error.field().isBlank() && !error.allowed().isBlank());
    }
  }

  @Test
  void a_policy_that_would_let_a_joint_go_early_is_refused() {
    for (Arguments limit : limitedPolicy().toList()) {
      String id = (String) limit.get()[0];
      double low = (double) limit.get()[1];
      double high = (double) limit.get()[2];
      assertEquals(low, policy(id, low).value(id));
      assertEquals(high, policy(id, high).value(id));
      assertThrows(InvalidValue.class, () -> policy(id, low - 1e-4), id);
      assertThrows(InvalidValue.class, () -> policy(id, high + 1e-4), id);
    }
  }

  private static Stream<Arguments> limitedPolicy() {
    return Stream.of(
        arguments("undisturbed-after-fixture-min", 0.0, 100_000.0),
        arguments("cure-temperature-plus-minus-c", 0.0, 20.0),
        arguments("bore-temperature-plus-minus-c", 0.0, 20.0),
        arguments("wanted-confidence", 0.8, 0.999));
  }

  private static Policy policy(String id, double value) {
    NamedNumber number = new NamedNumber(id, value, "", "Some meaning.", Rows.SHOP);
    return new Policy(Map.of(id, number));
  }

  @Test
  void a_policy_number_not_in_the_data_is_named() {
    InvalidValue missing =
        assertThrows(InvalidValue.class, () -> policy("wanted-confidence", 0.9).value("touch-min"));
    assertEquals("touch-min", missing.field());
  }

  @Test
  void stages_stand_in_order_and_rise_in_hours_and_strength() {
    CompoundClass.StagePoint fixture = STAGES.get(0);
    CompoundClass.StagePoint handling = STAGES.get(1);
    CompoundClass.StagePoint functional = STAGES.get(2);
    CompoundClass.StagePoint full = STAGES.get(3);
    List<List<CompoundClass.StagePoint>> wrong =
        List.of(
            List.of(handling, fixture, functional, full),
            List.of(fixture, Rows.with(handling, "hours", 0.5), functional, full),
            List.of(fixture, Rows.with(handling, "fraction", 0.01), functional, full),
            List.of(fixture, handling, functional, Rows.with(full, "stage", Stage.FUNCTIONAL)));
    for (List<CompoundClass.StagePoint> stages : wrong) {
      assertThrows(InvalidValue.class, () -> Rows.with(Rows.CURE, "stages", stages));
    }
    assertEquals(functional, Rows.CURE.at(Stage.FUNCTIONAL));
  }

  @Test
  void hot_points_stand_hotter_and_never_stronger() {
    CompoundClass.HotPoint cold = new CompoundClass.HotPoint(22, new Estimate(0.5, 0.6, 0.7));
    List<CompoundClass.HotPoint> wrong =
        List.of(
            new CompoundClass.HotPoint(22, new Estimate(0.5, 0.6, 0.7)),
            new CompoundClass.HotPoint(60, new Estimate(0.51, 0.6, 0.7)),
            new CompoundClass.HotPoint(60, new Estimate(0.5, 0.61, 0.7)),
            new CompoundClass.HotPoint(60, new Estimate(0.5, 0.6, 0.71)));
    for (CompoundClass.HotPoint hot : wrong) {
      InvalidValue error =
          assertThrows(
              InvalidValue.class,
              () -> Rows.with(Rows.COMPOUND, "hotStrength", List.of(cold, hot)));
      assertEquals("point 2 is out of order", error.problem());
    }
    CompoundClass.HotPoint level = new CompoundClass.HotPoint(60, cold.fraction());
    Rows.with(Rows.COMPOUND, "hotStrength", List.of(cold, level));
  }
}
