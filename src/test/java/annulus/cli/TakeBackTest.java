package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Whoever books what did not take place takes it back, and nothing of it is left but the lines. */
class TakeBackTest extends StockDay {
  private String ledger;

  @BeforeEach
  void opened() {
    ledger = opened("ledger");
  }

  private int use(String id) {
    return run(
        "stock",
        "use",
        "--ledger",
        ledger,
        "--lot",
        "1E5",
        "--ml",
        "44",
        "--who",
        "Orla",
        "--job",
        "HL-9",
        "--movement",
        id,
        "--reason",
        "stocktake");
  }

  private int takeBack(String id) {
    return run("stock", "take-back", "--ledger", ledger, "--movement", id, "--who", "Orla");
  }

  private String check() {
    run("stock", "check", STOCK, "--ledger", ledger);
    return out;
  }

  @Test
  void a_use_taken_back_leaves_the_lot_sealed_and_in_no_job() {
    String sealed = check();
    assertEquals(0, use("u1"), err);
    assertFalse(check().equals(sealed), "opened, and 44 mL gone");
    assertEquals(0, takeBack("u1"), err);
    assertTrue(out.contains("took back: use 44 mL, lot 1E5; left 50 mL"), out);
    assertEquals(sealed, check());
    assertEquals(1, run("stock", "recall", "--ledger", ledger, "--job", "HL-9"));
    assertEquals(0, takeBack("u1"), err);
    assertTrue(out.contains("was recorded before taken-back-u1"), out);
    assertEquals(sealed, check());
  }

  @Test
  void what_is_not_the_last_movement_of_its_lot_is_refused_with_the_one_that_is() {
    use("u1");
    run(
        "stock",
        "correct",
        "--ledger",
        ledger,
        "--lot",
        "1E5",
        "--counted",
        "49",
        "--who",
        "Orla",
        "--reason",
        "count",
        "--movement",
        "c1");
    assertEquals(2, takeBack("u1"));
    assertTrue(err.contains("u1 can't be taken back"), err);
    assertTrue(err.contains("the last movement of lot 1E5, c1"), err);
    assertEquals(2, takeBack("none"));
    assertTrue(err.contains("none is not in the ledger"), err);
  }

  @Test
  void a_word_too_many_is_refused_and_nothing_is_taken_back() {
    use("u1");
    String[] words = {"stock", "take-back", "u1", "--ledger", ledger, "--movement", "u1"};
    assertEquals(
        2, run(Stream.concat(Stream.of(words), Stream.of("--who", "Orla")).toArray(String[]::new)));
    assertTrue(err.contains("is one word too many"), err);
    assertEquals(0, takeBack("u1"), err);
    assertTrue(out.contains("recorded taken-back-u1"), out);
  }
}
