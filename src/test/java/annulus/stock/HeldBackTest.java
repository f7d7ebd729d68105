package annulus.stock;

import static annulus.stock.Lots.DAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import annulus.stock.LotCheck.Objection;
import annulus.stock.LotCheck.Standing;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

/** A lot that somebody held back serves nothing until somebody clears it. */
class HeldBackTest {
  private static final Movement CAME =
      Lots.move("in", Movement.Kind.RECEIVE, "1", 5, DAY.minusDays(9), "");
  private static final Movement RECALLED = Lots.holdBack("h1", "1", DAY, "recalled by its maker");
  private static final Movement FROZEN = Lots.holdBack("h2", "1", DAY, "seen frozen");

  private static Movement use(int daysAfter, String reason) {
    Movement m = Lots.move("u", Movement.Kind.USE, "1", 1, DAY.plusDays(daysAfter), "J");
    return new Movement(
        m.id(),
        m.at(),
        m.day(),
        m.kind(),
        m.who(),
        m.job(),
        m.lot(),
        m.item(),
        m.amount(),
        reason,
        "pair W-3 held");
  }

  private static Cabinet cabinet(Movement... movements) {
    Lot good = Lots.sealed("1", "a", 5, DAY.plusYears(1));
    return new Cabinet(List.of(good), Lots.items()).with(Ledger.of(List.of(movements)));
  }

  @Test
  void it_is_offered_to_nothing_and_offered_again_when_cleared() {
    Cabinet held = cabinet(CAME, RECALLED);
    LotCheck check = held.check(DAY, 30).get(0);
    assertEquals(List.of(Objection.HELD_BACK), check.against());
    assertEquals(Standing.MUST_NOT, check.standing());
    assertEquals(Set.of(), held.inDateClasses(DAY));
    assertEquals(Map.of(), held.inDate(DAY, StockItem.Kind.COMPOUND));
    assertEquals(List.of(), held.toDraw("a", Millilitres.of(1), DAY));
    Lot sealed = Lots.sealed("2", "a", 5, DAY.plusYears(1));
    assertEquals(Optional.empty(), held.openInstead(sealed, Millilitres.of(1), DAY));
    Need need = new Need("J", 1, DAY, List.of(option()), "use compound");
    assertTrue(Allocation.of(held, DAY, List.of(need)).plans().get(0).isShort());
    Cabinet cleared = cabinet(CAME, RECALLED, Lots.clear(RECALLED, DAY));
    assertEquals(Set.of("a"), cleared.inDateClasses(DAY));
    assertFalse(Allocation.of(cleared, DAY, List.of(need)).plans().get(0).isShort());
  }

  private static Need.Option option() {
    return new Need.Option(
        "a", Millilitres.of(1), Optional.empty(), Millilitres.NONE, Optional.empty(), 20, false);
  }

  @Test
  void each_thing_that_holds_it_back_is_cleared_for_itself() {
    Ledger ledger = Ledger.of(List.of(CAME, RECALLED, FROZEN, Lots.clear(FROZEN, DAY)));
    assertEquals(List.of("h1"), ledger.heldBack("1").stream().map(HeldBack::id).toList());
    assertEquals("recalled by its maker", ledger.heldBack("1").get(0).reason());
    assertEquals(
        List.of(), ledger.with(Lots.clear(RECALLED, DAY)).heldBack("1"), "both are cleared");
  }

  @Test
  void holding_back_is_no_count_a_lot_of_the_sheet_keeps_its_amount() {
    Ledger ledger = Ledger.of(List.of(RECALLED));
    assertFalse(ledger.knows("1"));
    assertEquals(Millilitres.of(5), cabinet(RECALLED).lots().get(0).left());
    assertEquals(List.of(), ledger.uses(m -> true));
  }

  @Test
  void what_was_used_up_to_that_day_is_recorded_with_a_reason_and_later_never() {
    Ledger ledger = Ledger.of(List.of(CAME, RECALLED));
    ledger.requireNotHeldBack(use(0, "used in the morning, before"));
    ledger.requireNotHeldBack(use(-3, "booked late"));
    InvalidValue noReason =
        assertThrows(InvalidValue.class, () -> ledger.requireNotHeldBack(use(0, " ")));
    assertEquals(
        "lot 1 has been held back since 2026-11-25 by Ines: recalled by its maker",
        noReason.problem());
    assertThrows(InvalidValue.class, () -> ledger.requireNotHeldBack(use(1, "all the same")));
    Ledger booked = ledger.with(use(1, "x"));
    booked.requireNotHeldBack(use(1, "the same movement again"));
    ledger.requireNotHeldBack(
        Lots.move("d", Movement.Kind.DISCARD, "1", 5, DAY.plusDays(9), "thrown away"));
  }

  @Test
  void only_what_holds_it_back_can_be_cleared_and_not_before_its_day() {
    Ledger ledger = Ledger.of(List.of(CAME, RECALLED));
    ledger.requireNotHeldBack(Lots.clear(RECALLED, DAY));
    InvalidValue other =
        assertThrows(InvalidValue.class, () -> ledger.requireNotHeldBack(Lots.clear(FROZEN, DAY)));
    assertEquals("h1", other.allowed());
    assertThrows(
        InvalidValue.class,
        () -> ledger.requireNotHeldBack(Lots.clear(RECALLED, DAY.minusDays(1))));
    Ledger none = Ledger.of(List.of(CAME));
    assertThrows(InvalidValue.class, () -> none.requireNotHeldBack(Lots.clear(RECALLED, DAY)));
  }

  @Test
  void a_movement_that_holds_back_moves_nothing_and_says_why() {
    assertEquals(Millilitres.NONE, RECALLED.change());
    assertThrows(InvalidValue.class, () -> Lots.holdBack("h", "1", DAY, " "));
    assertThrows(InvalidValue.class, () -> Lots.holdBack("h".repeat(193), "1", DAY, "why"));
    assertEquals(200, Lots.clear(Lots.holdBack("h".repeat(192), "1", DAY, "w"), DAY).id().length());
    Instant at = RECALLED.at();
    for (Movement.Kind kind : List.of(Movement.Kind.HOLD_BACK, Movement.Kind.CLEAR)) {
      assertThrows(
          InvalidValue.class,
          () ->
              new Movement(
                  "cleared-x", at, DAY, kind, "I", "", "1", "a", Millilitres.of(1), "why", ""));
    }
    assertThrows(
        InvalidValue.class,
        () ->
            new Movement(
                "x", at, DAY, Movement.Kind.CLEAR, "I", "", "1", "a", Millilitres.NONE, "y", ""));
  }

  @Test
  void what_the_sheet_holds_back_stands_until_the_ledger_cleared_that_very_thing() {
    HeldBack typed = HeldBack.inSheet(DAY, " seen frozen ");
    Lot lot = Lots.sealed("1", "a", 5, DAY.plusYears(1)).heldBackFor(List.of(typed));
    Cabinet sheet = new Cabinet(List.of(lot), Lots.items());
    assertTrue(sheet.with(Ledger.EMPTY).lots().get(0).isHeldBack());
    Ledger recalled = Ledger.of(List.of(RECALLED, Lots.clear(RECALLED, DAY)));
    assertTrue(sheet.with(recalled).lots().get(0).isHeldBack(), "another reason was cleared");
    Movement early = Lots.holdBack("h0", "1", DAY.minusDays(1), "seen frozen");
    Ledger otherDay = Ledger.of(List.of(early, Lots.clear(early, DAY)));
    assertTrue(sheet.with(otherDay).lots().get(0).isHeldBack(), "another day was cleared");
    Ledger booked = Ledger.of(List.of(FROZEN));
    assertEquals(
        List.of("Ines"),
        sheet.with(booked).lots().get(0).heldBack().stream().map(HeldBack::who).toList(),
        "told once, by the ledger");
    Ledger cleared = booked.with(Lots.clear(FROZEN, DAY));
    assertFalse(sheet.with(cleared).lots().get(0).isHeldBack());
  }

  /** Two ledgers taken over into each other, in whatever order, must agree. */
  @Property(tries = 300)
  void what_is_held_back_does_not_depend_on_the_order(
      @ForAll @Size(max = 12) List<@IntRange(min = 0, max = 5) Integer> drawn, @ForAll long seed) {
    List<Movement> movements = new ArrayList<>();
    Set<Integer> held = new TreeSet<>();
    Set<Integer> cleared = new TreeSet<>();
    for (int i : drawn) {
      Movement hold = Lots.holdBack("h" + i, "lot " + i % 2, DAY, "why " + i);
      boolean again = held.contains(i);
      movements.add(again ? Lots.clear(hold, DAY) : hold);
      (again ? cleared : held).add(i);
    }
    List<Movement> other = new ArrayList<>(movements);
    Collections.shuffle(other, new Random(seed));
    Map<String, Set<String>> open = ids(Ledger.of(movements));
    assertEquals(open, ids(Ledger.of(other)));
    held.removeAll(cleared);
    assertEquals(held.size(), open.values().stream().mapToInt(Set::size).sum());
    Statistics.label("still held back").collect(!held.isEmpty());
    Statistics.label("cleared").collect(!cleared.isEmpty());
  }

  private static Map<String, Set<String>> ids(Ledger ledger) {
    Map<String, Set<String>> ids = new java.util.TreeMap<>();
    ledger
        .heldBack()
        .forEach(
            (lot, all) ->
                all.forEach(h -> ids.computeIfAbsent(lot, l -> new TreeSet<>()).add(h.id())));
    return ids;
  }
}
