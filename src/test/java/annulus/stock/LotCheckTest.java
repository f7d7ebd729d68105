package annulus.stock;

import static annulus.stock.Lots.DAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import annulus.stock.LotCheck.Objection;
import annulus.stock.LotCheck.Standing;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Days reckoned by hand on a calendar. */
class LotCheckTest {
  private static final StockItem ITEM = Lots.items().get("a");

  private static LotCheck check(Lot lot) {
    return LotCheck.of(lot, ITEM, DAY, 30);
  }

  private static LocalDate day(String text) {
    return LocalDate.parse(text);
  }

  @Test
  void the_use_by_is_the_earlier_of_printed_expiry_and_open_life() {
    Lot opened = Lots.lot("1", "a", 5, null, day("2026-06-10"), day("2027-06-30"));
    assertEquals(day("2026-12-10"), UseBy.of(opened, ITEM).orElseThrow().date());
    assertEquals(UseBy.Rule.AFTER_OPENING, UseBy.of(opened, ITEM).orElseThrow().rule());
    Lot printed = Lots.lot("1", "a", 5, null, day("2026-06-10"), day("2026-12-09"));
    assertEquals(UseBy.Rule.PRINTED_EXPIRY, UseBy.of(printed, ITEM).orElseThrow().rule());
  }

  @Test
  void months_end_on_the_last_day_there_is() {
    Lot lot = Lots.lot("1", "a", 5, null, day("2026-08-31"), day("2029-01-01"));
    assertEquals(day("2027-02-28"), UseBy.of(lot, ITEM).orElseThrow().date());
  }

  @Test
  void without_a_printed_date_the_shelf_life_counts_from_arrival() {
    Lot lot = Lots.lot("1", "a", 5, day("2025-12-01"), null, null);
    UseBy useBy = UseBy.of(lot, ITEM).orElseThrow();
    assertEquals(day("2026-12-01"), useBy.date());
    assertEquals(UseBy.Rule.SHELF_LIFE, useBy.rule());
    assertEquals("test", useBy.provenance().source());
  }

  @Test
  void a_lot_of_which_no_date_is_known_is_not_used_even_if_just_opened() {
    Lot lot = Lots.lot("1", "a", 5, null, DAY, null);
    assertEquals(List.of(Objection.NO_DATE_KNOWN), check(lot).against());
    assertEquals(Standing.MUST_NOT, check(lot).standing());
  }

  @Test
  void the_last_day_still_counts_and_the_next_does_not() {
    assertTrue(check(Lots.sealed("1", "a", 5, DAY)).usable());
    LotCheck late = check(Lots.sealed("1", "a", 5, DAY.minusDays(1)));
    assertEquals(List.of(Objection.PAST_PRINTED_EXPIRY), late.against());
  }

  @Test
  void soon_begins_on_the_day_that_was_asked_for() {
    assertEquals(Standing.SOON, check(Lots.sealed("1", "a", 5, DAY.plusDays(30))).standing());
    assertEquals(Standing.USABLE, check(Lots.sealed("1", "a", 5, DAY.plusDays(31))).standing());
  }

  @Test
  void opened_too_long_and_stored_too_hot_are_both_said() {
    Lot lot = Lots.lot("1", "a", 5, null, day("2026-01-01"), day("2027-06-30"));
    Lot hot =
        new Lot(
            "1",
            "a",
            "",
            lot.container(),
            lot.left(),
            lot.received(),
            lot.opened(),
            lot.expires(),
            "",
            SafetySheet.NONE,
            OptionalDouble.of(7.9),
            OptionalDouble.of(21.1),
            List.of());
    assertEquals(
        List.of(Objection.OPENED_TOO_LONG, Objection.STORED_TOO_HOT, Objection.STORED_TOO_COLD),
        check(hot).against());
  }

  @Test
  void a_day_to_come_is_an_objection() {
    Lot lot = Lots.lot("1", "a", 5, DAY.plusDays(1), null, day("2028-01-01"));
    assertEquals(List.of(Objection.DATE_TO_COME), check(lot).against());
  }

  @Test
  void an_empty_lot_is_empty_whatever_its_date() {
    assertEquals(Standing.EMPTY, check(Lots.sealed("1", "a", 0, DAY.minusDays(9))).standing());
  }

  @Test
  void dates_out_of_order_and_impossible_amounts_are_refused() {
    assertThrows(InvalidValue.class, () -> Lots.lot("1", "a", 5, DAY, DAY.minusDays(1), null));
    assertThrows(InvalidValue.class, () -> Lots.lot("1", "a", 5, DAY, null, DAY.minusDays(1)));
    assertThrows(InvalidValue.class, () -> Lots.sealed("1", "a", -0.001, DAY));
    assertThrows(InvalidValue.class, () -> Lots.sealed(" ", "a", 1, DAY));
  }

  @Test
  void the_cabinet_names_what_is_in_date_by_kind() {
    Cabinet cabinet =
        new Cabinet(
            List.of(
                Lots.sealed("1", "b", 5, DAY),
                Lots.sealed("2", "a", 5, DAY.minusDays(1)),
                Lots.sealed("3", "p", 5, DAY),
                Lots.sealed("4", "b", 2, DAY)),
            Lots.items());
    assertEquals(java.util.Set.of("b"), cabinet.inDateClasses(DAY));
    assertEquals(java.util.Set.of("p"), cabinet.inDatePrimers(DAY));
    assertEquals(List.of(), cabinet.toDraw("b", Millilitres.of(8), DAY));
    assertEquals(Millilitres.of(7), cabinet.inDate(DAY, StockItem.Kind.COMPOUND).get("b"));
  }
}
