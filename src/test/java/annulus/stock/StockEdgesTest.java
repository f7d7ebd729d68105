package annulus.stock;

import static annulus.stock.Lots.DAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Catalog;
import annulus.catalog.Policy;
import annulus.exchange.CatalogFiles;
import annulus.exchange.DataFiles;
import annulus.exchange.StockFiles;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import annulus.stock.Movement.Kind;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lots, movements and the ledger at their limits. */
class StockEdgesTest {
  private static Lot stored(OptionalDouble low, OptionalDouble high) {
    return new Lot(
        "1",
        "a",
        "",
        Millilitres.of(10),
        Millilitres.of(5),
        Optional.empty(),
        Optional.empty(),
        Optional.of(DAY.plusDays(100)),
        "",
        SafetySheet.NONE,
        low,
        high,
        List.of());
  }

  private static OptionalDouble at(double celsius) {
    return OptionalDouble.of(celsius);
  }

  @Test
  void a_storage_temperature_is_possible_and_in_order() {
    OptionalDouble none = OptionalDouble.empty();
    stored(at(-60), at(80));
    stored(at(20), at(20));
    stored(at(20), none);
    stored(none, at(20));
    assertThrows(InvalidValue.class, () -> stored(at(-60.1), none));
    assertThrows(InvalidValue.class, () -> stored(at(80.1), none));
    assertThrows(InvalidValue.class, () -> stored(none, at(-60.1)));
    assertThrows(InvalidValue.class, () -> stored(none, at(80.1)));
    assertThrows(InvalidValue.class, () -> stored(at(20.1), at(20)));
  }

  @Test
  void a_lot_kept_at_the_ends_of_its_storage_range_may_be_used() {
    StockItem item = Lots.items().get("a");
    assertTrue(LotCheck.of(stored(at(8), at(21)), item, DAY, 30).usable());
    assertFalse(LotCheck.of(stored(at(7.9), at(21)), item, DAY, 30).usable());
    assertFalse(LotCheck.of(stored(at(8), at(21.1)), item, DAY, 30).usable());
  }

  @Test
  void a_lot_received_and_opened_today_may_be_used_and_one_opened_tomorrow_not() {
    StockItem item = Lots.items().get("a");
    Lot today = Lots.lot("1", "a", 5, DAY, DAY, DAY.plusDays(100));
    assertTrue(LotCheck.of(today, item, DAY, 30).usable());
    Lot tomorrow = Lots.lot("1", "a", 5, DAY, DAY.plusDays(1), DAY.plusDays(100));
    assertEquals(
        List.of(LotCheck.Objection.DATE_TO_COME), LotCheck.of(tomorrow, item, DAY, 30).against());
  }

  /** One month and a half from 1 November: 1 December and half of 28 days. */
  @Test
  void half_a_month_of_open_life_is_fourteen_days() {
    StockItem a = Lots.items().get("a");
    StockItem short_ = new StockItem("a", "a", a.kind(), a.storageC(), 12, 1.5, a.provenance());
    Lot lot = Lots.lot("1", "a", 5, null, LocalDate.of(2026, 11, 1), DAY.plusYears(2));
    assertEquals(LocalDate.of(2026, 12, 15), UseBy.of(lot, short_).orElseThrow().date());
  }

  @Test
  void a_lot_with_more_left_than_its_container_has_the_larger_container() {
    Lot lot = stored(at(8), at(21));
    assertEquals(Millilitres.of(10), lot.withLeft(Millilitres.of(3)).container());
    assertEquals(Millilitres.of(12), lot.withLeft(Millilitres.of(12)).container());
    assertEquals(Millilitres.of(12), lot.withLeft(Millilitres.of(12)).left());
  }

  private static Lot again(String received, String opened, String expires) {
    return Lots.lot("1", "a", 5, day(received), day(opened), day(expires));
  }

  private static LocalDate day(String text) {
    return text == null || text.isEmpty() ? null : LocalDate.parse(text);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-03-02, , 2027-06-30, 2026-04-01, 2026-05-01, 2027-05-30, 2026-03-02, 2026-05-01, 2027-05-30",
    "2026-04-01, 2026-06-01, 2027-06-30, 2026-03-02, 2026-07-01, 2027-07-30, 2026-03-02, 2026-06-01, 2027-06-30",
    "2026-04-01, 2026-06-01, 2027-06-30, , , , 2026-04-01, 2026-06-01, 2027-06-30",
    ", , , 2026-04-01, 2026-06-01, 2027-06-30, 2026-04-01, 2026-06-01, 2027-06-30"
  })
  void of_two_that_tell_of_one_lot_the_earlier_dates_count(
      String r1,
      String o1,
      String e1,
      String r2,
      String o2,
      String e2,
      String r,
      String o,
      String e) {
    Lot stricter = again(r1, o1, e1).stricter(again(r2, o2, e2));
    assertEquals(again(r, o, e), stricter);
  }

  @Test
  void of_two_that_tell_of_one_lot_the_worse_storage_counts() {
    OptionalDouble none = OptionalDouble.empty();
    assertEquals(stored(at(8), at(34)), stored(at(8), at(20)).stricter(stored(at(10), at(34))));
    assertEquals(stored(at(8), at(20)), stored(at(9), at(20)).stricter(stored(at(8), none)));
    assertEquals(stored(none, at(34)), stored(none, none).stricter(stored(none, at(34))));
    Lot other = Lots.lot("1", "b", 5, null, null, DAY);
    InvalidValue refused =
        assertThrows(InvalidValue.class, () -> stored(none, none).stricter(other));
    assertEquals("lot 1 is a, not b", refused.problem());
    assertEquals("a, or a lot number of its own", refused.allowed());
    stored(none, none).requireItem("");
  }

  @Test
  void a_lot_without_dates_gets_the_size_too_unless_more_is_in_it() {
    Lot dateless = Lots.lot("1", "a", 5, null, DAY, null);
    Lot large = stored(at(8), at(20));
    assertTrue(dateless.isDateless());
    assertEquals(large.container(), dateless.stricter(large).container());
    assertEquals(Optional.of(DAY), dateless.stricter(large).opened());
    Lot small = Lots.lot("1", "a", 4, DAY, null, null);
    assertEquals(dateless.container(), dateless.stricter(small).container());
    assertEquals(small.container(), small.stricter(large).container());
    assertFalse(small.isDateless());
    assertFalse(large.isDateless());
  }

  private static Movement movement(Kind kind, double ml, String reason, String who) {
    return new Movement(
        "m",
        Instant.parse("2026-01-01T00:00:00.9Z"),
        DAY,
        kind,
        who,
        "",
        "1",
        "a",
        Millilitres.of(ml),
        reason,
        "");
  }

  @ParameterizedTest
  @CsvSource({
    "RECEIVE, 1, '', true", "RECEIVE, 0, '', false", "RECEIVE, -1, '', false",
    "USE, 1, '', true", "USE, 0, '', false", "USE, -1, '', false",
    "DISCARD, 1, spilt, true", "DISCARD, 1, ' ', false", "DISCARD, 0, spilt, false",
    "CORRECT, 1, counted, true", "CORRECT, -1, counted, true", "CORRECT, 0, counted, false",
    "CORRECT, 1, '', false"
  })
  void a_movement_moves_something_and_says_why_where_it_must(
      Kind kind, double ml, String reason, boolean taken) {
    if (taken) {
      double sign = kind == Kind.USE || kind == Kind.DISCARD ? -1 : 1;
      assertEquals(sign * ml, movement(kind, ml, reason, "Orla").change().value());
    } else {
      assertThrows(InvalidValue.class, () -> movement(kind, ml, reason, "Orla"));
    }
  }

  @Test
  void a_text_of_a_movement_has_two_hundred_characters_at_most() {
    assertEquals(200, movement(Kind.USE, 1, "", "x".repeat(200)).who().length());
    assertThrows(InvalidValue.class, () -> movement(Kind.USE, 1, "", "x".repeat(201)));
    assertThrows(InvalidValue.class, () -> movement(Kind.USE, 1, "x".repeat(201), "Orla"));
    InvalidValue zero = assertThrows(InvalidValue.class, () -> movement(Kind.USE, 0, "", "O"));
    assertEquals("more than 0 mL", zero.allowed());
    InvalidValue none = assertThrows(InvalidValue.class, () -> movement(Kind.CORRECT, 0, "r", "O"));
    assertEquals("not 0 mL", none.allowed());
  }

  private static Ledger ledger() {
    return Ledger.of(
        List.of(
            Lots.move("in", Kind.RECEIVE, "1", 10, DAY, ""),
            Lots.move("u1", Kind.USE, "1", 4, DAY, "J1"),
            Lots.move("in2", Kind.RECEIVE, "2", 5, DAY, ""),
            Lots.move("u2", Kind.USE, "2", 1, DAY, "J2")));
  }

  @Test
  void what_is_left_by_lot_is_the_sum_of_its_movements() {
    assertEquals(Map.of("1", Millilitres.of(6), "2", Millilitres.of(4)), ledger().left());
    assertEquals(Millilitres.of(6), ledger().left("1"));
    assertEquals(Set.of("J1"), ledger().jobsOf("1"));
    assertEquals(Set.of("J2"), ledger().jobsOf("2"));
    assertTrue(ledger().has("u1"));
    assertFalse(ledger().has("u3"));
    Ledger more = ledger().with(Lots.move("u3", Kind.USE, "1", 6, DAY, "J3"));
    assertEquals(Millilitres.NONE, more.left("1"));
    assertTrue(more.has("u3"));
    assertFalse(ledger().has("u3"));
  }

  @Test
  void no_more_is_taken_than_is_left_but_the_same_use_may_be_sent_again() {
    ledger().requireLeft(Lots.move("u3", Kind.USE, "1", 6, DAY, "J3"));
    Movement tooMuch = Lots.move("u3", Kind.USE, "1", 6.001, DAY, "J3");
    InvalidValue error = assertThrows(InvalidValue.class, () -> ledger().requireLeft(tooMuch));
    assertTrue(error.problem().contains("6 mL left of lot 1"), error.problem());
    Movement again = Lots.move("u1", Kind.USE, "1", 40, DAY, "J1");
    ledger().requireLeft(again);
    ledger().requireLeft(Lots.move("c", Kind.CORRECT, "3", 1, DAY, ""));
    Ledger below = ledger().with(Lots.move("u4", Kind.USE, "1", 9, DAY, "J4"));
    assertEquals(Millilitres.of(-3), below.left("1"));
    below.requireLeft(Lots.move("c", Kind.CORRECT, "1", 1, DAY, ""));
    assertThrows(
        InvalidValue.class,
        () -> ledger().requireLeft(Lots.move("d", Kind.DISCARD, "1", 6.1, DAY, "")));
  }

  @Test
  void an_amount_is_at_most_a_hundred_litres() {
    assertEquals(100_000, new Millilitres(100_000_000L).value());
    InvalidValue much = assertThrows(InvalidValue.class, () -> new Millilitres(100_000_001L));
    assertEquals("100000.001 mL is out of range", much.problem());
    assertThrows(InvalidValue.class, () -> new Millilitres(-100_000_001L));
    assertThrows(InvalidValue.class, () -> Millilitres.of(Double.NaN));
    Millilitres one = Millilitres.of(1);
    assertEquals(one, one.atMost(Millilitres.of(2)));
    assertEquals(one, Millilitres.of(2).atMost(one));
  }

  @Test
  void what_can_stand_in_the_cabinet_is_every_class_and_every_primer() throws IOException {
    Catalog catalog = CatalogFiles.read(DataFiles.bundled());
    Policy policy = StockFiles.policy(DataFiles.bundled());
    Map<String, StockItem> items = StockItem.all(catalog, policy);
    List<String> ids = new ArrayList<>(catalog.compounds().keySet());
    ids.addAll(catalog.primers().keySet());
    assertEquals(ids, List.copyOf(items.keySet()));
    catalog
        .compounds()
        .values()
        .forEach(
            c -> {
              StockItem item = items.get(c.id());
              assertEquals(StockItem.Kind.COMPOUND, item.kind());
              assertEquals(c.shelfMonths().low(), item.shelfMonths());
              assertEquals(c.openMonths().low(), item.openMonths());
              assertEquals(c.storageC(), item.storageC());
            });
    for (String id : catalog.primers().keySet()) {
      StockItem item = items.get(id);
      assertEquals(StockItem.Kind.PRIMER, item.kind());
      assertEquals(new Interval(5, 25), item.storageC());
      assertEquals(12, item.shelfMonths());
      assertEquals(6, item.openMonths());
    }
  }

  @Test
  void a_job_done_with_another_than_the_best_option_is_second_best() {
    Need.Option best =
        new Need.Option(
            "a",
            Millilitres.of(1),
            Optional.empty(),
            Millilitres.NONE,
            Optional.empty(),
            20,
            false);
    Need.Option other =
        new Need.Option(
            "b",
            Millilitres.of(1),
            Optional.empty(),
            Millilitres.NONE,
            Optional.empty(),
            20,
            false);
    Need need = new Need("J", 1, DAY, List.of(best, other), "bond");
    assertFalse(new JobPlan(need, Optional.of(best), List.of(), List.of()).secondBest());
    assertTrue(new JobPlan(need, Optional.of(other), List.of(), List.of()).secondBest());
    assertFalse(new JobPlan(need, Optional.empty(), List.of(), List.of()).secondBest());
  }

  @Test
  void the_cabinet_serves_what_its_items_serve_together() {
    CoverCell both = new CoverCell("g", "s", "t", false, List.of(Set.of("a", "p"), Set.of("b")));
    CoverCell one = new CoverCell("g", "s", "u", false, List.of(Set.of("a")));
    CoverCell never = new CoverCell("g", "s", "v", false, List.of());
    Cover cover = new Cover(List.of(both, one, never), Set.of("a"));
    assertEquals(1, cover.served());
    assertEquals(List.of(both), cover.holes());
    assertEquals(1, cover.fewest().size());
    assertEquals(0, new Cover(List.of(both), Set.of()).served());
  }

  @Test
  void a_use_before_the_day_on_the_sheet_opens_the_lot_on_the_earlier_day() {
    Lot lot = Lots.lot("1", "a", 5, DAY.minusDays(10), DAY.minusDays(5), DAY.plusDays(300));
    Lot earlier = lot.openedOn(DAY.minusDays(7));
    assertEquals(Optional.of(DAY.minusDays(7)), earlier.opened());
    assertEquals(Optional.of(DAY.minusDays(10)), earlier.received());
    assertEquals(lot, lot.openedOn(DAY.minusDays(5)));
    assertEquals(lot, lot.openedOn(DAY));
    Lot beforeItCame = lot.openedOn(DAY.minusDays(12));
    assertEquals(Optional.of(DAY.minusDays(12)), beforeItCame.opened());
    assertEquals(Optional.of(DAY.minusDays(12)), beforeItCame.received());
  }

  @Test
  void an_open_lot_comes_first_only_where_it_holds_enough_and_is_in_date() {
    Lot sealed = Lots.sealed("1", "a", 5, DAY.plusDays(300));
    Lot open = Lots.lot("2", "a", 0.2, DAY.minusDays(9), DAY.minusDays(9), DAY.plusDays(300));
    Lot old = Lots.lot("3", "a", 3, null, DAY.minusYears(1), DAY.plusDays(300));
    Lot other = Lots.lot("4", "b", 3, DAY, DAY, DAY.plusDays(300));
    Cabinet cabinet = new Cabinet(List.of(sealed, old, other, open), Lots.items());
    assertEquals(Optional.of(open), cabinet.openInstead(sealed, Millilitres.of(0.2), DAY));
    assertEquals(Optional.empty(), cabinet.openInstead(sealed, Millilitres.of(0.201), DAY));
    assertEquals(Optional.empty(), cabinet.openInstead(open, Millilitres.of(0.1), DAY));
    assertEquals(Optional.of(old), cabinet.lot("3"));
    assertEquals(Optional.empty(), cabinet.lot("5"));
  }

  @Test
  void a_correction_never_overfills_a_container_but_may_take_from_one_that_is() {
    Lot lot = Lots.sealed("1", "a", 5, DAY);
    Movement more = Lots.move("m", Movement.Kind.CORRECT, "1", 0.5, DAY, "");
    lot.requireRoom(more, Millilitres.of(4.5));
    InvalidValue refused =
        assertThrows(InvalidValue.class, () -> lot.requireRoom(more, Millilitres.of(4.501)));
    assertTrue(refused.getMessage().contains("5.001 mL in a container of 5 mL"));
    Movement less = Lots.move("m", Movement.Kind.CORRECT, "1", -0.5, DAY, "");
    lot.requireRoom(less, Millilitres.of(9));
    lot.requireRoom(Lots.move("m", Kind.RECEIVE, "1", 5, DAY, ""), Millilitres.NONE);
    Movement second = Lots.move("m", Kind.RECEIVE, "1", 5, DAY, "");
    InvalidValue full =
        assertThrows(InvalidValue.class, () -> lot.requireRoom(second, Millilitres.of(0.001)));
    assertTrue(full.allowed().contains("a lot of its own, such as 1-2"), full.allowed());
    lot.requireRoom(Lots.move("m", Kind.USE, "1", 5, DAY, ""), Millilitres.of(99_999));
    assertThrows(InvalidValue.class, () -> lot.requireRoom(second, new Millilitres(100_000_000L)));
  }

  /** A slip of one lot is told where it is typed, and keeps nobody from the other lots. */
  @Test
  void more_than_the_largest_container_is_refused_and_where_it_stands_judged_alone() {
    Ledger full = Ledger.of(List.of(came("1", "big", 15_000), came("2", "7", 5)));
    full.requireLeft(came("3", "big", 5000));
    InvalidValue refused =
        assertThrows(InvalidValue.class, () -> full.requireLeft(came("3", "big", 5000.001)));
    assertEquals("lot big would then have 20000.001 mL", refused.problem());
    full.requireLeft(came("1", "big", 15_000));
    List<Movement> six = new ArrayList<>(full.movements());
    for (int i = 3; i < 9; i++) {
      six.add(came("m" + i, "big", 19_000));
    }
    Ledger slips = Ledger.of(six);
    assertEquals(Millilitres.of(100_000), slips.left("big"));
    assertEquals(Map.of("big", Millilitres.of(100_000), "7", Millilitres.of(5)), slips.left());
    slips.requireLeft(Lots.move("d", Kind.DISCARD, "big", 20_000, DAY, ""));
    slips.with(Lots.move("d", Kind.DISCARD, "big", 40_000, DAY, "")).requireRoom(slips);
    Lot big = Lots.sealed("big", "a", 10, DAY.plusDays(100));
    Cabinet cabinet = new Cabinet(List.of(big, Lots.sealed("7", "a", 5, DAY)), Lots.items());
    Lot capped = cabinet.with(slips).lot("big").orElseThrow();
    assertEquals(Lot.LARGEST_CONTAINER, capped.left());
    assertEquals(Lot.LARGEST_CONTAINER, capped.container());
    assertEquals(
        Millilitres.of(-100_000),
        Ledger.of(
                List.of(
                    Lots.move("a", Kind.USE, "x", 99_000, DAY, ""),
                    Lots.move("b", Kind.USE, "x", 99_000, DAY, "")))
            .left("x"));
  }

  private static Movement came(String id, String lot, double ml) {
    return Lots.move(id, Kind.RECEIVE, lot, ml, DAY, "");
  }

  /** A sheet's amount and a first delivery both say what was in a lot when its count began. */
  @Test
  void what_is_in_a_container_is_counted_once() {
    for (String first : List.of("opening-7", "received-7")) {
      Ledger ledger = Ledger.of(List.of(came(first, "7", 5)));
      for (String again : List.of("opening-7", "received-7")) {
        assertEquals(!again.equals(first), ledger.opensAgain(came(again, "7", 5)), first + again);
        assertTrue(ledger.opensAgain(came(again, "7", 4)), "another amount");
        assertFalse(Ledger.EMPTY.opensAgain(came(again, "7", 5)));
      }
      assertFalse(ledger.opensAgain(came("opening-8", "8", 5)), "another lot");
      assertFalse(ledger.opensAgain(came("opening-8", "7", 5)), "the name of another lot");
      assertFalse(ledger.opensAgain(came("m2", "7", 5)), "a second delivery");
      Movement use = Lots.move("opening-7", Kind.USE, "7", 1, DAY, "J");
      assertFalse(ledger.opensAgain(use), "a use");
    }
    Ledger delivered = Ledger.of(List.of(came("m1", "7", 5), came("opening-8", "8", 5)));
    assertFalse(delivered.opensAgain(came("opening-7", "7", 5)), "never opened here");
  }

  @Test
  void lots_and_jobs_written_by_another_hand_are_found_in_the_ledger() {
    Ledger ledger =
        Ledger.of(
            List.of(
                came("1", "A-114", 5),
                came("2", "T-12", 5),
                Lots.move("3", Kind.USE, "A-114", 1, DAY, "HL-101"),
                Lots.move("4", Kind.DISCARD, "A-114", 1, DAY, "hl 101"),
                Lots.move("5", Kind.USE, "T-12", 1, DAY, "")));
    assertEquals(List.of("A-114"), ledger.lotsLike("a114"));
    assertEquals(List.of(), ledger.lotsLike("T-13"));
    assertEquals(List.of("HL-101"), ledger.jobsLike("hl101"));
    assertEquals(List.of(), ledger.jobsLike("HL-102"));
  }

  /** Equal in date and amount: the lower name goes first, however the sheet is sorted. */
  @Test
  void which_of_two_equal_lots_is_taken_does_not_depend_on_the_sheet() {
    Lot one = Lots.sealed("1", "a", 5, DAY.plusDays(100));
    Lot two = Lots.sealed("2", "a", 5, DAY.plusDays(100));
    Need.Option option =
        new Need.Option(
            "a", Millilitres.of(1), Optional.empty(), Millilitres.NONE, Optional.empty(), 20, true);
    Need need = new Need("J", 1, DAY, List.of(option), "bond");
    for (List<Lot> sheet : List.of(List.of(one, two), List.of(two, one))) {
      Allocation.Result plan = Allocation.of(new Cabinet(sheet, Lots.items()), DAY, List.of(need));
      assertEquals("1", plan.plans().get(0).takes().get(0).lot());
    }
  }
}
