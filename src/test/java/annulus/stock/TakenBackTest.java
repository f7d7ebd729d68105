package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Policy;
import annulus.exchange.DataFiles;
import annulus.exchange.StockFiles;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a ledger lets be taken back and cleared, and which days it takes. */
class TakenBackTest {
  private static final LocalDate DAY = Lots.DAY;
  private static final Movement CAME =
      Lots.move("r1", Movement.Kind.RECEIVE, "L", 10, DAY.minusDays(9), "");
  private static final Movement FIRST =
      Lots.move("u1", Movement.Kind.USE, "L", 1, DAY.minusDays(2), "J-1");
  private static final Movement LAST =
      Lots.move("u2", Movement.Kind.USE, "L", 2, DAY.minusDays(1), "J-2");

  private static Movement back(Movement taken) {
    return Movement.takeBack(taken, Instant.parse("2026-11-25T09:00:00Z"), DAY, "Orla", "");
  }

  private static String refused(Runnable act) {
    return assertThrows(InvalidValue.class, act::run).getMessage();
  }

  @Test
  void only_the_last_movement_of_a_lot_is_taken_back_and_only_once() {
    Ledger ledger = Ledger.of(List.of(CAME, FIRST, LAST));
    assertEquals(Optional.of(LAST), ledger.toTakeBack("L"));
    assertEquals(LAST, ledger.requireToTakeBack("u2"));
    String earlier = refused(() -> ledger.requireToTakeBack("u1"));
    assertTrue(earlier.contains("the last movement of lot L, u2"), earlier);
    assertFalse(earlier.contains("already"), earlier);
    String none = refused(() -> ledger.requireToTakeBack("u9"));
    assertTrue(none.contains("u9 is not in the ledger"), none);
    Ledger after = ledger.with(back(LAST));
    assertTrue(after.isTakenBack(LAST));
    assertFalse(after.isTakenBack(FIRST));
    assertEquals(Millilitres.of(9), after.left("L"));
    assertEquals(Optional.of(FIRST), after.toTakeBack("L"));
    String twice = refused(() -> after.requireToTakeBack("u2"));
    assertTrue(twice.contains("it was already"), twice);
    assertEquals(Optional.of(CAME), after.movement("r1"));
    assertEquals(Optional.empty(), after.movement("r9"));
  }

  @Test
  void an_arrival_is_not_taken_back() {
    Ledger ledger = Ledger.of(List.of(CAME));
    assertEquals(Optional.empty(), ledger.toTakeBack("L"));
    assertEquals(Optional.empty(), ledger.toTakeBack("other"));
    String arrival = refused(() -> ledger.requireToTakeBack("r1"));
    assertTrue(arrival.contains("correct what is left of lot L"), arrival);
  }

  @Test
  void what_takes_back_undoes_just_that_and_may_come_twice() {
    Ledger ledger = Ledger.of(List.of(CAME, FIRST, LAST));
    assertDoesNotThrow(() -> ledger.requireTakesBack(back(LAST)));
    assertDoesNotThrow(() -> ledger.requireTakesBack(FIRST));
    assertDoesNotThrow(() -> ledger.with(back(LAST)).requireTakesBack(back(LAST)));
    Movement wrong = Lots.move("taken-back-u2", Movement.Kind.TAKE_BACK, "L", 1.5, DAY, "J-2");
    String amount = refused(() -> ledger.requireTakesBack(wrong));
    assertTrue(amount.contains("taken-back-u2 does not undo u2"), amount);
    assertTrue(amount.contains("2 mL of lot L"), amount);
    Movement other = Lots.move("taken-back-u2", Movement.Kind.TAKE_BACK, "M", 2, DAY, "J-2");
    assertTrue(refused(() -> ledger.requireTakesBack(other)).contains("does not undo"));
  }

  @Test
  void what_is_cleared_is_named_where_several_things_hold_a_lot_back() {
    Movement frozen = Lots.holdBack("h1", "L", DAY, "frozen");
    Movement recalled = Lots.holdBack("h2", "L", DAY, "recalled");
    Ledger none = Ledger.of(List.of(CAME));
    assertTrue(
        refused(() -> none.toClear("L", Optional.empty())).contains("lot L is not held back"));
    Ledger one = none.with(frozen);
    assertEquals("frozen", one.toClear("L", Optional.empty()).reason());
    Ledger both = one.with(recalled);
    assertEquals("recalled", both.toClear("L", Optional.of("h2")).reason());
    String which = refused(() -> both.toClear("L", Optional.empty()));
    assertTrue(which.contains("held back 2 times") && which.contains("h1 (held back"), which);
    String wrong = refused(() -> both.toClear("L", Optional.of("h9")));
    assertTrue(wrong.contains("h9 does not hold lot L back"), wrong);
  }

  @Test
  void days_to_come_or_long_past_are_refused_with_the_days_allowed() throws IOException {
    Policy stock = StockFiles.policy(DataFiles.bundled());
    long moved = (long) stock.value("movement-back-days");
    long lot = (long) stock.value("lot-back-days");
    EntryDays.requireMoved("on", DAY, DAY, stock);
    EntryDays.requireMoved("on", DAY.minusDays(moved), DAY, stock);
    EntryDays.requireOfLot("received", DAY.minusDays(lot), DAY, stock);
    String late = refused(() -> EntryDays.requireMoved("on", DAY.plusDays(1), DAY, stock));
    assertTrue(late.contains("2026-11-26 is still to come"), late);
    assertTrue(late.contains(DAY.minusDays(moved) + " to today, 2026-11-25"), late);
    String old = refused(() -> EntryDays.requireMoved("on", DAY.minusDays(moved + 1), DAY, stock));
    assertTrue(old.contains("more than " + moved + " days ago"), old);
    refused(() -> EntryDays.requireOfLot("received", DAY.minusDays(lot + 1), DAY, stock));
    LocalDate tomorrow = DAY.plusDays(1);
    for (Lot sheet :
        List.of(
            Lots.lot("L", "a", 5, tomorrow, null, null),
            Lots.lot("L", "a", 5, null, tomorrow, null),
            Lots.sealed("L", "a", 5, null)
                .heldBackFor(List.of(HeldBack.inSheet(tomorrow, "frozen"))))) {
      assertTrue(refused(() -> EntryDays.requireBeen(sheet, DAY)).contains("still to come"));
    }
    EntryDays.requireBeen(Lots.lot("L", "a", 5, DAY, DAY, DAY), DAY);
  }

  @Test
  void a_lot_came_as_its_sheet_says_or_with_its_first_movement() {
    Ledger ledger =
        Ledger.of(
            List.of(CAME, Lots.move("r2", Movement.Kind.RECEIVE, "L", 1, DAY.minusDays(20), "")));
    LocalDate said = DAY.minusDays(3);
    Cabinet sheet = new Cabinet(List.of(Lots.lot("L", "a", 5, said, null, null)), Lots.items());
    assertEquals(Optional.of(said), EntryDays.came("L", Optional.of(sheet), ledger));
    assertEquals(Optional.of(DAY.minusDays(20)), EntryDays.came("L", Optional.empty(), ledger));
    assertEquals(Optional.empty(), EntryDays.came("M", Optional.of(sheet), ledger));
  }
}
