package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

class LedgerPropertyTest {
  @Provide
  Arbitrary<List<Movement>> movements() {
    Arbitrary<Movement> one =
        Combinators.combine(
                Arbitraries.of(Movement.Kind.values())
                    .filter(k -> k.moves() && k != Movement.Kind.TAKE_BACK),
                Arbitraries.of("007", "1E5", "x"),
                Arbitraries.integers().between(1, 50_000),
                Arbitraries.integers().between(0, 400),
                Arbitraries.of("", "J1", "J2"))
            .as(
                (k, lot, ul, day, job) ->
                    Lots.move("?", k, lot, ul / 1000.0, Lots.DAY.minusDays(day), job));
    return one.list()
        .ofMaxSize(40)
        .map(
            list -> {
              List<Movement> named = new ArrayList<>();
              for (Movement m : list) {
                named.add(
                    Lots.move(
                        "m" + named.size(),
                        m.kind(),
                        m.lot(),
                        m.amount().value(),
                        m.day(),
                        m.job()));
              }
              return named;
            });
  }

  @Property(tries = 300)
  void the_amount_left_is_the_exact_decimal_sum(@ForAll("movements") List<Movement> movements) {
    Ledger ledger = Ledger.of(movements);
    BigDecimal sum = BigDecimal.ZERO;
    for (Movement m : movements) {
      if (m.lot().equals("007")) {
        BigDecimal amount = new BigDecimal(m.amount().toString());
        boolean out = m.kind() == Movement.Kind.USE || m.kind() == Movement.Kind.DISCARD;
        sum = out ? sum.subtract(amount) : sum.add(amount);
      }
    }
    assertEquals(0, sum.compareTo(new BigDecimal(ledger.left("007").toString())));
    Statistics.collect(sum.signum());
  }

  @Property(tries = 300)
  void what_was_taken_back_counts_as_if_it_had_never_been(
      @ForAll("movements") List<Movement> movements, @ForAll long seed) {
    List<Movement> without = new ArrayList<>();
    List<Movement> with = new ArrayList<>(movements);
    Random random = new Random(seed);
    for (Movement m : movements) {
      if (random.nextInt(3) == 0) {
        with.add(Movement.takeBack(m, m.at(), Lots.DAY, "Orla", ""));
      } else {
        without.add(m);
      }
    }
    Collections.shuffle(with, random);
    Ledger a = Ledger.of(without);
    Ledger b = Ledger.of(with);
    for (String lot : List.of("007", "1E5", "x")) {
      assertEquals(a.left(lot), b.left(lot));
      assertEquals(a.jobsOf(lot), b.jobsOf(lot));
      assertEquals(a.firstUse(lot), b.firstUse(lot));
    }
    assertEquals(a.lotsOf("J1"), b.lotsOf("J1"));
    Statistics.collect(with.size() > without.size());
  }

  @Property(tries = 300)
  void sums_and_recalls_do_not_depend_on_the_order(
      @ForAll("movements") List<Movement> movements, @ForAll long seed) {
    List<Movement> other = new ArrayList<>(movements);
    Collections.shuffle(other, new Random(seed));
    Ledger a = Ledger.of(movements);
    Ledger b = Ledger.of(other);
    assertEquals(a.left(), b.left());
    assertEquals(a.jobsOf("007"), b.jobsOf("007"));
    assertEquals(a.lotsOf("J1"), b.lotsOf("J1"));
    assertEquals(a.firstUse("x"), b.firstUse("x"));
  }

  @Property(tries = 200)
  void taking_over_the_same_movements_again_changes_nothing(
      @ForAll("movements") List<Movement> movements) {
    Ledger once = Ledger.of(movements);
    List<Movement> twice = new ArrayList<>(movements);
    twice.addAll(movements);
    assertEquals(once.movements(), Ledger.of(twice).movements());
    assertEquals(once.left(), Ledger.of(twice).left());
  }

  @Property(tries = 200)
  void recall_finds_every_use_and_nothing_else(@ForAll("movements") List<Movement> movements) {
    Ledger ledger = Ledger.of(movements);
    for (Movement m : movements) {
      boolean used = m.kind() == Movement.Kind.USE && !m.job().isEmpty();
      if (used) {
        assertTrue(ledger.jobsOf(m.lot()).contains(m.job()));
        assertTrue(ledger.lotsOf(m.job()).contains(m.lot()));
      }
    }
    for (String lot : ledger.lotsOf("J2")) {
      assertTrue(
          movements.stream()
              .anyMatch(
                  m ->
                      m.kind() == Movement.Kind.USE
                          && m.lot().equals(lot)
                          && m.job().equals("J2")));
    }
  }

  @Test
  void one_id_for_two_movements_is_refused() {
    Movement a = Lots.move("m", Movement.Kind.USE, "007", 1, Lots.DAY, "J1");
    Movement b = Lots.move("m", Movement.Kind.USE, "007", 2, Lots.DAY, "J1");
    assertThrows(InvalidValue.class, () -> Ledger.of(List.of(a)).with(b));
  }

  @Test
  void a_cabinet_takes_amounts_and_openings_from_the_ledger() {
    Cabinet sheet =
        new Cabinet(
            List.of(Lots.sealed("007", "a", 5, Lots.DAY), Lots.sealed("other", "a", 3, Lots.DAY)),
            Lots.items());
    Ledger ledger =
        Ledger.of(
            List.of(
                Lots.move("1", Movement.Kind.RECEIVE, "007", 5, Lots.DAY.minusDays(9), ""),
                Lots.move("2", Movement.Kind.USE, "007", 0.4, Lots.DAY.minusDays(3), "J")));
    Cabinet now = sheet.with(ledger);
    assertEquals(Millilitres.of(4.6), now.lots().get(0).left());
    assertEquals(Optional.of(Lots.DAY.minusDays(3)), now.lots().get(0).opened());
    assertEquals(sheet.lots().get(1), now.lots().get(1));
  }

  @Test
  void a_discard_or_correction_says_why() {
    assertThrows(
        InvalidValue.class,
        () ->
            new Movement(
                "1",
                java.time.Instant.EPOCH,
                Lots.DAY,
                Movement.Kind.DISCARD,
                "Orla",
                "",
                "007",
                "",
                Millilitres.of(1),
                " ",
                ""));
  }
}
