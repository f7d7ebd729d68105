package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.JointOrder.CurePlace;
import annulus.cure.BodyWarmUp;
import annulus.cure.TemperatureHistory.Point;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Steps of a log, warming of parts and places of a shop, worked by hand. */
class AdvicePartsTest {
  private static List<Point> steps(double from, double until, double... pieces) {
    ColdSteps steps = new ColdSteps(from, until, 60);
    for (int i = 0; i < pieces.length; i += 4) {
      steps.piece(pieces[i], pieces[i + 1], pieces[i + 2], pieces[i + 3]);
    }
    assertFalse(steps.isEmpty());
    return steps.points();
  }

  @Test
  void a_long_piece_stays_as_it_is_and_is_cut_at_both_ends() {
    assertEquals(List.of(new Point(0, 20), new Point(60, 26)), steps(0, 999, 0, 20, 60, 26));
    assertEquals(List.of(new Point(0, 21), new Point(30, 24)), steps(10, 40, 0, 20, 60, 26));
    ColdSteps outside = new ColdSteps(100, 200, 60);
    outside.piece(0, 20, 100, 26);
    outside.piece(200, 20, 300, 26);
    assertTrue(outside.isEmpty());
  }

  /** 50 to 70 s rising from 20 to 24 °C: 20 until the border at 60 s, from 22 after it. */
  @Test
  void a_short_piece_becomes_steps_at_its_lowest_on_each_side_of_a_border() {
    assertEquals(
        List.of(new Point(50, 20), new Point(60, 20), new Point(60, 22), new Point(70, 22)),
        steps(0, 999, 50, 20, 70, 24));
    assertEquals(
        List.of(new Point(50, 22), new Point(60, 22), new Point(60, 20), new Point(70, 20)),
        steps(0, 999, 50, 24, 70, 20));
  }

  @Test
  void short_pieces_of_one_step_come_to_the_lowest_of_them() {
    assertEquals(
        List.of(new Point(0, 17), new Point(60, 17), new Point(60, 19), new Point(90, 19)),
        steps(0, 999, 0, 20, 20, 17, 20, 18, 60, 21, 60, 21, 90, 19));
  }

  @Test
  void a_long_piece_closes_the_step_before_it() {
    assertEquals(
        List.of(new Point(0, 18), new Point(20, 18), new Point(20, 22), new Point(90, 25)),
        steps(0, 999, 0, 18, 20, 22, 20, 22, 90, 25));
  }

  private static Map<String, Estimate> rows(String... subjects) {
    Map<String, Estimate> rows = new LinkedHashMap<>();
    for (String subject : subjects) {
      rows.put(subject, Estimate.exactly(10));
    }
    return rows;
  }

  private static final Map<String, Estimate> AIR = rows("still-air", "fan-air");
  private static final Map<String, Estimate> WALL = rows("bore-outside-ratio", "part-inside-ratio");

  @ParameterizedTest
  @CsvSource({
    "fan-air, part-inside-ratio, steel, steel, steel, false",
    "x, part-inside-ratio, steel, steel, steel, true",
    "fan-air, x, steel, steel, steel, true",
    "fan-air, part-inside-ratio, lead, steel, steel, true",
    "fan-air, part-inside-ratio, steel, lead, steel, true",
    "fan-air, part-inside-ratio, steel, steel, lead, true"
  })
  void a_warm_up_table_has_all_that_is_counted_on(
      String air, String wall, String heat, String density, String family, boolean refused) {
    Runnable made =
        () ->
            new WarmUpTable(
                rows("still-air", air),
                rows(heat),
                rows(density),
                rows("bore-outside-ratio", wall),
                Map.of("steel-plain", family));
    if (refused) {
      assertThrows(InvalidValue.class, made::run);
    } else {
      made.run();
    }
  }

  @Test
  void a_warm_up_table_is_not_empty_and_has_both_kinds_of_air_and_wall() {
    Map<String, String> none = Map.of();
    assertThrows(InvalidValue.class, () -> new WarmUpTable(AIR, Map.of(), Map.of(), WALL, none));
    Map<String, Estimate> steel = rows("steel");
    assertThrows(
        InvalidValue.class, () -> new WarmUpTable(rows("fan-air"), steel, steel, WALL, none));
    assertThrows(
        InvalidValue.class,
        () -> new WarmUpTable(AIR, steel, steel, rows("part-inside-ratio"), none));
  }

  private static double lump(double outside, double inside, double density, double heat) {
    double face = Math.PI / 4 * (outside * outside - inside * inside);
    double area = 2 * face + Math.PI * (outside + inside) * 20;
    return face * 20 * 1e-9 * density * heat / (area * 1e-6 * 2);
  }

  /** Ring of 1.6 diameters or a solid part, slow side of data/warm-up.csv in still air. */
  @Test
  void where_an_order_says_no_wall_the_thickest_that_may_be_is_taken() {
    double shared = 30;
    BodyWarmUp body = DeskData.WARM_UP.slowestBody(new OrderText().order(), false);
    double ring = lump(48, shared, 7900, 500);
    double solid = lump(shared, 0, 7900, 500);
    assertEquals(Math.max(ring, solid), body.timeConstantSeconds(2), 1e-6);
    BodyWarmUp thin =
        DeskData.WARM_UP.slowestBody(
            new OrderText()
                .set("bore.outsideDiameterMm", 31)
                .set("part.insideDiameterMm", 28)
                .order(),
            false);
    double slower = Math.max(lump(31, shared, 7900, 500), lump(shared, 28, 7900, 500));
    assertEquals(slower, thin.timeConstantSeconds(2), 1e-6);
    BodyWarmUp heavy =
        DeskData.WARM_UP.slowestBody(
            new OrderText().set("bore.outsideDiameterMm", 90).order(), true);
    assertEquals(lump(90, shared, 7900, 500), heavy.timeConstantSeconds(2), 1e-6);
  }

  private static CurePlace felt(JointOrder order, CurePlace place) {
    JointOrder there = OrderChange.cure(order, place);
    return JointHeat.felt(there, JointHeat.Entry.LIES_THERE, DeskData.WARM_UP, false).orElse(place);
  }

  @Test
  void a_joint_that_comes_no_colder_than_its_place_feels_the_place_itself() {
    CurePlace room = CurePlace.constant(18, 1, "room");
    JointOrder order = new OrderText().order();
    assertSame(room, felt(order, room));
    JointOrder warm = new OrderText().set("part.arrivesAtC", 18).order();
    assertSame(room, felt(warm, room));
    JointOrder cold = new OrderText().set("part.arrivesAtC", 10).order();
    CurePlace felt = felt(cold, room);
    assertEquals(10, felt.history().celsiusAt(0), 1e-9);
    assertEquals(9, felt.coldSide().celsiusAt(0), 1e-9);
    assertTrue(felt.history().celsiusAt(86_400) > 17);
  }

  @Test
  void a_shop_names_each_place_once_and_finds_it_by_name_and_by_description() {
    Shop shop = DeskData.SHOP;
    for (ShopPlace place : shop.places()) {
      assertEquals(Optional.of(place), shop.place(place.name()));
      CurePlace there = place.from(Instant.parse("2027-03-11T10:00:00Z"));
      assertEquals(place.describedAs(), there.describedAs());
      assertEquals(place.plusMinusC(), there.plusMinusC());
    }
    assertEquals(Optional.empty(), shop.place("attic"));
    ShopPlace last = shop.places().get(shop.places().size() - 1);
    JointOrder there = DeskData.in(last.name(), "2027-03-11T15:30");
    assertEquals(Optional.of(last), shop.placeOf(there));
    assertEquals(
        Optional.empty(), shop.placeOf(DeskData.order("2027-03-11T15:30", (ObjectNode o) -> {})));
    assertThrows(InvalidValue.class, () -> withPlaces(shop, last, last));
    ShopPlace renamed = place(last, "other", last.describedAs(), Duration.ZERO);
    assertThrows(InvalidValue.class, () -> withPlaces(shop, last, renamed));
    ShopPlace apart = place(last, "other", "elsewhere", Duration.ZERO);
    assertEquals(2, withPlaces(shop, last, apart).places().size());
    assertThrows(
        InvalidValue.class, () -> place(last, "other", "elsewhere", Duration.ofSeconds(-1)));
  }

  private static Shop withPlaces(Shop shop, ShopPlace... places) {
    return new Shop(shop.name(), shop.hours(), shop.rule(), shop.touch(), List.of(places));
  }

  private static ShopPlace place(ShopPlace like, String name, String described, Duration touch) {
    return new ShopPlace(
        name,
        like.climate(),
        like.plusMinusC(),
        touch,
        like.warm(),
        like.fan(),
        like.unsaidC(),
        described);
  }
}
