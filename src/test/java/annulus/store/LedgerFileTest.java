package annulus.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.exchange.InputRefused;
import annulus.quantity.InvalidValue;
import annulus.stock.Lots;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LedgerFileTest {
  /** Shorter than the others, so that a rest of a longer line would show behind it. */
  private static final Movement SHORT =
      Lots.move("after", Movement.Kind.RECEIVE, "x", 1, Lots.DAY, "");

  @TempDir Path folder;
  private Path path;
  private LedgerFile file;

  @BeforeEach
  void fresh() {
    path = folder.resolve("ledger");
    file = new LedgerFile(path);
  }

  private void three() throws IOException {
    file.append(LedgerChild.receive(1));
    file.append(LedgerChild.use("a"));
    file.append(LedgerChild.use("ü"));
  }

  @Test
  void a_ledger_that_does_not_exist_is_empty() throws IOException {
    assertTrue(file.read().ledger().movements().isEmpty());
    assertFalse(Files.exists(path));
  }

  @Test
  void a_ledger_cut_off_anywhere_keeps_its_whole_lines_and_goes_on() throws IOException {
    three();
    byte[] whole = Files.readAllBytes(path);
    int torn = 0;
    for (int length = 0; length <= whole.length; length++) {
      byte[] cut = Arrays.copyOf(whole, length);
      Files.write(path, cut);
      LedgerFile.Reading reading = file.read();
      int lines = wholeLines(whole, length);
      assertEquals(lines, reading.ledger().movements().size(), "cut at " + length);
      torn += reading.torn().isPresent() ? 1 : 0;
      file.merge(List.of(SHORT));
      LedgerFile.Reading after = file.read();
      assertTrue(after.torn().isEmpty());
      assertEquals(lines + 1, after.ledger().movements().size());
      assertTrue(after.ledger().has("after"));
    }
    assertEquals(
        whole.length - 6, torn, "every cut but the empty file and those at or before a line end");
  }

  /** Lines that are there up to a length, the line end itself not needed. */
  private static int wholeLines(byte[] bytes, int length) {
    int lines = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\n' && i <= length) {
        lines++;
      }
    }
    return lines;
  }

  @Test
  void a_changed_byte_is_always_reported() throws IOException {
    three();
    byte[] whole = Files.readAllBytes(path);
    for (int i = 0; i < whole.length; i++) {
      byte[] bad = whole.clone();
      bad[i] ^= 0x04;
      Files.write(path, bad);
      boolean reported;
      try {
        reported = file.read().torn().isPresent();
      } catch (InputRefused e) {
        assertTrue(e.problems().get(0).line() > 0);
        reported = true;
      }
      assertTrue(reported, "byte " + i);
    }
  }

  @Test
  void a_damaged_ledger_takes_no_more_and_keeps_every_byte() throws IOException {
    three();
    byte[] bad = Files.readAllBytes(path);
    bad[30] ^= 0x01;
    Files.write(path, bad);
    InputRefused refused =
        assertThrows(InputRefused.class, () -> file.append(LedgerChild.use("next")));
    assertEquals(1, refused.problems().get(0).line());
    assertTrue(Arrays.equals(bad, Files.readAllBytes(path)));
  }

  @Test
  void a_file_that_an_editor_saved_or_that_is_no_ledger_is_told_as_such() throws IOException {
    three();
    String good = Files.readString(path);
    Files.writeString(path, good.replace("\n", "\r\n"));
    InputRefused ends = assertThrows(InputRefused.class, () -> file.read());
    assertTrue(ends.getMessage().contains("changed the line ends"), ends.getMessage());
    Files.writeString(path, "lot,class,left_ml\n" + good);
    InputRefused sheet = assertThrows(InputRefused.class, () -> file.read());
    assertTrue(sheet.getMessage().contains("no line of a ledger"), sheet.getMessage());
  }

  /** Its end was never a movement being written, so nothing of it may go. */
  @Test
  void a_file_that_is_no_ledger_is_left_as_it_is_without_a_line_end_too() throws IOException {
    three();
    String good = Files.readString(path);
    for (String other :
        List.of("{\"lot\": \"007\"}", "A2", "A1\tno checksum", "lot,class\n007,a", good + "x")) {
      Files.writeString(path, other);
      assertThrows(InputRefused.class, () -> file.read(), other);
      assertThrows(InputRefused.class, () -> file.append(LedgerChild.receive(1)), other);
      assertEquals(other, Files.readString(path));
    }
  }

  @Test
  void a_last_line_changed_after_it_was_confirmed_is_not_told_as_cut_off() throws IOException {
    three();
    String good = Files.readString(path);
    String changed = good.substring(0, good.length() - 1).replaceFirst("(?s)(.*)0\\.001", "$10.01");
    Files.writeString(path, changed);
    InputRefused refused = assertThrows(InputRefused.class, () -> file.append(SHORT));
    assertEquals(3, refused.problems().get(0).line());
    assertTrue(refused.getMessage().contains("checksum does not fit"), refused.getMessage());
    assertEquals(changed, Files.readString(path));
  }

  @Test
  void the_same_movement_twice_is_written_once() throws IOException {
    three();
    assertEquals(LedgerFile.Outcome.ALREADY_THERE, file.append(LedgerChild.use("a")));
    assertEquals(3, file.read().ledger().movements().size());
    assertEquals(1, file.merge(List.of(LedgerChild.use("a"), LedgerChild.use("b"))).isNew());
  }

  @Test
  void a_second_opening_balance_of_a_lot_is_left_out_and_named() throws IOException {
    Movement sheet = Lots.move("opening-x", Movement.Kind.RECEIVE, "x", 5, Lots.DAY, "");
    Movement board = Lots.move("received-x", Movement.Kind.RECEIVE, "x", 5, Lots.DAY, "");
    Movement till = Lots.move("opening-x", Movement.Kind.RECEIVE, "x", 4, Lots.DAY, "");
    file.merge(List.of(sheet));
    LedgerFile.Merged merged = file.merge(List.of(sheet, board, till, SHORT));
    assertEquals(new LedgerFile.Merged(1, List.of(board, till), List.of()), merged);
    assertEquals(Millilitres.of(6), file.read().ledger().left("x"));
  }

  @Test
  void more_than_is_left_is_refused_and_nothing_is_written() throws IOException {
    three();
    Movement all =
        new Movement(
            "x",
            LedgerChild.use("x").at(),
            LedgerChild.use("x").day(),
            Movement.Kind.USE,
            "Orla",
            "",
            "007",
            "",
            Millilitres.of(0.999),
            "",
            "");
    InvalidValue refused = assertThrows(InvalidValue.class, () -> file.append(all));
    assertTrue(refused.problem().contains("0.998 mL left of lot 007"), refused.problem());
    assertEquals(3, file.read().ledger().movements().size());
  }

  @Test
  void threads_of_one_process_wait_for_each_other() throws Exception {
    file.append(LedgerChild.receive(1));
    ExecutorService pool = Executors.newFixedThreadPool(4);
    List<Future<LedgerFile.Outcome>> done = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      Movement use = LedgerChild.use("t" + i);
      done.add(pool.submit(() -> new LedgerFile(path).append(use)));
    }
    for (Future<LedgerFile.Outcome> outcome : done) {
      assertEquals(LedgerFile.Outcome.RECORDED, outcome.get());
    }
    pool.shutdown();
    assertEquals(Millilitres.of(0.94), file.read().ledger().left("007"));
  }
}
