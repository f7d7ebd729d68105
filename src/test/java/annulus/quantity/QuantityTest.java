package annulus.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Checks at a limit, just inside and just outside. */
class QuantityTest {
  @Test
  void both_ends_of_an_interval_belong_to_it() {
    Interval interval = new Interval(-1.5, 4);
    assertTrue(interval.contains(-1.5) && interval.contains(4) && interval.contains(0));
    assertFalse(interval.contains(Math.nextDown(-1.5)) || interval.contains(Math.nextUp(4)));
    assertEquals(5.5, interval.width());
    assertEquals(0, new Interval(2, 2).width());
  }

  @Test
  void an_interval_is_refused_out_of_order_or_out_of_bounds() {
    assertThrows(InvalidValue.class, () -> new Interval(1, Math.nextDown(1)));
    assertThrows(InvalidValue.class, () -> new Interval(Double.NaN, 1));
    assertThrows(InvalidValue.class, () -> new Interval(0, Double.POSITIVE_INFINITY));
    Interval interval = new Interval(0, 10);
    assertSame(interval, interval.checkedWithin("x", 0, 10, "mm"));
    assertThrows(InvalidValue.class, () -> interval.checkedWithin("x", 0, 9.99, "mm"));
    assertThrows(InvalidValue.class, () -> interval.checkedWithin("x", 0.01, 10, "mm"));
  }

  @Test
  void an_estimate_keeps_its_order_and_its_bounds() {
    Estimate estimate = new Estimate(1, 1, 2);
    assertSame(estimate, estimate.checkedWithin("x", 1, 2, ""));
    assertThrows(InvalidValue.class, () -> estimate.checkedWithin("x", 1.01, 2, ""));
    assertThrows(InvalidValue.class, () -> estimate.checkedWithin("x", 1, 1.99, ""));
    assertThrows(InvalidValue.class, () -> new Estimate(2, 1, 3));
    assertThrows(InvalidValue.class, () -> new Estimate(1, 4, 3));
    assertThrows(InvalidValue.class, () -> new Estimate(1, Double.NaN, 3));
    assertEquals(new Estimate(3, 3, 3), Estimate.exactly(3));
  }

  @Test
  void numbers_are_written_plainly_and_rounded_half_up() {
    assertEquals("0", Numbers.plain(-0.0));
    assertEquals("1200000000000000000000", Numbers.plain(1.2e21));
    assertEquals("0.000001", Numbers.plain(1e-6));
    assertEquals("NaN", Numbers.plain(Double.NaN));
    assertEquals("2.35", Numbers.fixed(2.345, 2));
    assertEquals("0.00", Numbers.fixed(-0.004, 2));
    assertEquals("-Infinity", Numbers.fixed(Double.NEGATIVE_INFINITY, 2));
    assertEquals("Infinity", Numbers.directed(Double.POSITIVE_INFINITY, 2, false));
    assertEquals("+1.5", Numbers.signed(1.5, 1));
    assertEquals("-1.5", Numbers.signed(-1.5, 1));
    assertEquals("0.0", Numbers.signed(0.04, 1));
  }

  @Test
  void a_check_says_field_value_unit_and_what_is_allowed() {
    InvalidValue far =
        assertThrows(InvalidValue.class, () -> Check.within("boreMm", 12.5, 1, 12, "mm"));
    assertEquals("boreMm: 12.5 mm is out of range; allowed: 1 to 12 mm", far.getMessage());
    assertEquals("boreMm", far.field());
    assertEquals("12.5 mm is out of range", far.problem());
    assertEquals("1 to 12 mm", far.allowed());
    assertEquals(12, Check.within("boreMm", 12, 1, 12, "mm"));
    assertEquals(1, Check.within("boreMm", 1, 1, 12, "mm"));
    assertEquals(-3, Check.finite("x", -3, ""));
    assertEquals("bore", Check.text("x", "bore"));
    assertThrows(InvalidValue.class, () -> Check.within("x", Double.NaN, 0, 1, ""));
    assertThrows(InvalidValue.class, () -> Check.positive("x", 0, ""));
    assertThrows(InvalidValue.class, () -> Check.positive("x", Double.POSITIVE_INFINITY, ""));
    assertEquals(1e-300, Check.positive("x", 1e-300, ""));
    assertThrows(InvalidValue.class, () -> Check.text("x", " \t"));
    assertThrows(InvalidValue.class, () -> Check.text("x", null));
  }
}
