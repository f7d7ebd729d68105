package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Whoever keeps the stock holds a lot back and clears it again, by sheet and by ledger. */
class HeldLotTest extends StockDay {
  private String ledger;

  @BeforeEach
  void opened() {
    ledger = opened("ledger");
  }

  private String flat() {
    return out.replaceAll("\\s+", " ");
  }

  private String[] words(String kind, String... more) {
    List<String> words = new ArrayList<>(List.of("stock", kind, "--ledger", ledger));
    words.addAll(List.of(more));
    return words.toArray(String[]::new);
  }

  private int stock(String kind, String... more) {
    return run(words(kind, more));
  }

  private int use(String lot, String job, String... more) {
    List<String> words = new ArrayList<>(List.of("--lot", lot, "--ml", "0.2", "--job", job));
    words.addAll(List.of("--who", "Halden"));
    words.addAll(List.of(more));
    return stock("use", words.toArray(String[]::new));
  }

  private int hold(String lot, String reason) {
    return stock("hold-back", "--lot", lot, "--who", "Ines", "--reason", reason);
  }

  @Test
  void a_lot_held_back_after_it_was_used_is_told_with_the_jobs_that_got_it() {
    use("007", "HL-101");
    use("007", "HL-102");
    assertEquals(0, hold("007", "recalled by its maker"), err);
    String held = "lot 007 has been held back since 2026-11-25 by Ines: recalled by its maker";
    assertTrue(out.contains(held), out);
    assertTrue(out.contains("look at each before it is handed back: HL-101, HL-102"), out);
    assertTrue(out.contains("stock recall --ledger " + ledger + " --lot 007"), out);
    assertEquals(0, stock("recall", "--lot", "007"));
    assertTrue(out.contains(held), out);
    stock("recall", "--job", "HL-101");
    assertTrue(out.contains("THAT LOT IS HELD BACK"), out);
    assertEquals(1, run("stock", "check", STOCK, "--ledger", ledger));
    assertTrue(out.contains("held back since 2026-11-25 by Ines: recalled by"), out);
    assertEquals(1, run("stock", "tag", STOCK, "--lot", "007", "--ledger", ledger));
    assertTrue(out.contains("HELD: DO NOT USE"), out);
  }

  @Test
  void it_is_not_used_whatever_is_given_until_it_is_cleared() throws IOException {
    hold("007", "seal broken");
    String before = Files.readString(Path.of(ledger));
    for (String[] sheet : new String[][] {{}, {"--stock", STOCK}}) {
      assertEquals(1, use("007", "HL-1", sheet));
      assertTrue(
          out.startsWith(
              "NOT recorded: lot 007 has been held back since 2026-11-25 by Ines: seal broken."),
          out);
      assertTrue(out.contains("Take another lot. To clear it: stock clear --ledger"), out);
    }
    String[] next =
        words(
            "use", "--lot", "007", "--ml", "0.2", "--who", "H", "--reason", "x", "--witness", "W");
    assertEquals(1, runOn("2026-11-26T10:00:00Z", next), out);
    assertEquals(before, Files.readString(Path.of(ledger)));
    assertEquals(0, use("007", "HL-1", "--reason", "used at eight, before that"), out);
    assertEquals(0, stock("discard", "--lot", "007", "--ml", "1", "--who", "I", "--reason", "bad"));
    assertEquals(0, stock("clear", "--lot", "007", "--who", "Orla", "--reason", "seal was whole"));
    assertTrue(out.contains("lot 007 is held back no more"), out);
    assertEquals(0, use("007", "HL-2"));
  }

  @Test
  void several_things_are_cleared_each_for_itself() {
    hold("007", "seal broken");
    hold("007", "recalled by its maker");
    assertEquals(2, stock("clear", "--lot", "007", "--who", "Orla", "--reason", "sound"));
    assertTrue(err.contains("--movement: lot 007 is held back 2 times"), err);
    assertTrue(err.contains("(held back since 2026-11-25 by Ines: seal broken)"), err);
    String id = err.replaceFirst("(?s).*allowed: (\\S+) \\(.*seal broken.*", "$1");
    String[] named = {"--lot", "007", "--who", "Orla", "--reason", "sound", "--movement", id};
    assertEquals(0, stock("clear", named), err);
    assertTrue(out.contains("STILL HELD BACK: lot 007 has been held back"), out);
    assertTrue(out.contains("recalled by its maker"), out);
    assertEquals(1, use("007", "HL-1"));
    assertEquals(0, stock("clear", "--lot", "007", "--who", "Orla", "--reason", "other batch"));
    assertEquals(2, stock("clear", "--lot", "007", "--who", "Orla", "--reason", "sound"));
    assertTrue(err.contains("--lot: lot 007 is not held back"), err);
  }

  @Test
  void who_and_why_must_be_said_of_a_lot_that_is_there_and_on_a_day_that_was() {
    assertEquals(2, stock("hold-back", "--lot", "007", "--who", "Ines"));
    assertTrue(err.contains("--reason: is missing"), err);
    assertEquals(2, stock("hold-back", "--lot", "007", "--reason", "frozen"));
    assertEquals(2, hold("0O7", "frozen"));
    assertTrue(err.contains("did you mean 007"), err);
    String[] late = {"--lot", "007", "--who", "I", "--reason", "r", "--on", "2026-11-26"};
    assertEquals(2, stock("hold-back", late));
    assertTrue(err.contains("--on: 2026-11-26 is still to come"), err);
    String[] twice = {"--lot", "007", "--who", "I", "--reason", "r", "--movement", "h1"};
    assertEquals(0, stock("hold-back", twice));
    assertEquals(0, stock("hold-back", twice));
    assertTrue(out.startsWith("was recorded before h1"), out);
    stock("clear", "--lot", "007", "--who", "I", "--reason", "r");
    assertEquals(1, stock("hold-back", twice));
    assertTrue(out.contains("NOT held back by it: that was cleared"), out);
  }

  @Test
  void the_cabinet_offers_another_bottle_and_says_which_is_held_back() {
    advise();
    assertTrue(flat().contains("Cabinet: thin-releasable, lot KB-2304 with 10 mL"), out);
    hold("KB-2304", "in doubt");
    advise();
    assertTrue(flat().contains("Cabinet: medium-lasting, lot 007 with 12.5 mL"), out);
    hold("007", "in doubt");
    advise();
    assertTrue(flat().contains("Cabinet: medium-lasting, lot 1E5 with 50 mL"), out);
    assertTrue(
        out.contains("Held back, not counted: lot 007 (medium-lasting), lot KB-2304 ("), out);
    run("stock", "plan", STOCK, "--jobs", "demo-data/jobs.csv", "--ledger", ledger);
    assertTrue(out.contains("from lot 1E5"), out);
    assertFalse(out.contains("from lot 007"), out);
    hold("1E5", "in doubt");
    run("stock", "cover", STOCK, "--ledger", ledger);
    assertFalse(out.substring(0, 400).contains("medium-lasting"), out);
  }

  private void advise() {
    List<String> words = new ArrayList<>(List.of("advise", "--radial-gap-um", "40"));
    words.addAll(List.of("--radial-gap-plus-minus-um", "3", "--diameter", "42"));
    words.addAll(List.of("--engagement", "11", "--materials", "steel-plain,steel-bearing"));
    words.addAll(List.of("--temp", "20", "--stock", STOCK, "--ledger", ledger));
    run(words.toArray(String[]::new));
  }

  @Test
  void a_further_container_of_the_lot_is_named() {
    String[] second = {"--lot", "007-2", "--ml", "5", "--who", "I", "--class", "medium-lasting"};
    stock("receive", second);
    hold("007", "recalled by its maker");
    assertTrue(out.contains("LOOK AT THIS TOO, it may be the same: lot 007-2, NOT held"), out);
    hold("007-2", "recalled by its maker");
    assertTrue(out.contains("lot 007, held back"), out);
  }

  @Test
  void a_shop_with_a_sheet_alone_holds_back_in_two_columns() throws IOException {
    String demo = Files.readString(Path.of(STOCK));
    Path sheet = folder.resolve("held.csv");
    Files.writeString(sheet, held(demo, "007", "seen frozen", "2026-11-20"));
    assertEquals(1, run("stock", "check", sheet.toString()));
    assertTrue(flat().contains("since 2026-11-20 in the stock sheet: seen frozen"), out);
    String fresh = file("fresh");
    run("stock", "receive", "--ledger", fresh, "--from", sheet.toString(), "--who", "Orla");
    assertTrue(out.contains("held back as the sheet says: 1"), out);
    run("stock", "receive", "--ledger", fresh, "--from", sheet.toString(), "--who", "Orla");
    assertFalse(out.contains("held back as the sheet says"), out);
    ledger = fresh;
    assertEquals(1, use("007", "J"));
    stock("clear", "--lot", "007", "--who", "Orla", "--reason", "thermometer was wrong");
    run("stock", "check", sheet.toString(), "--ledger", fresh);
    assertTrue(out.replaceAll("\\s+", " ").contains("the ledger has cleared that and counts"), out);
    assertEquals(0, use("007", "J", "--stock", sheet.toString()), out);
    String next = file("next.csv");
    String[] export = {"stock", "export", sheet.toString(), "--ledger", fresh, "--out", next};
    assertEquals(0, run(export));
    assertFalse(Files.readString(Path.of(next)).contains("seen frozen"));
  }

  private static String held(String sheet, String lot, String reason, String day) {
    StringBuilder text = new StringBuilder();
    for (String line : sheet.split("\n")) {
      boolean head = line.startsWith("lot,");
      boolean it = line.startsWith(lot + ",");
      String cells = head ? ",held_back,held_back_on" : it ? "," + reason + "," + day : ",,";
      text.append(line).append(cells).append('\n');
    }
    return text.toString();
  }

  @Test
  void a_till_that_takes_over_a_hold_back_is_told_of_its_jobs_and_agrees_both_ways() {
    String a = ledger;
    String b = file("b");
    ledger = b;
    stock("receive", "--from", STOCK, "--who", "Ines");
    use("007", "HL-9");
    ledger = a;
    hold("007", "seen frozen");
    stock("clear", "--lot", "007", "--who", "Orla", "--reason", "thermometer was wrong");
    hold("007", "recalled by its maker");
    assertEquals(0, stock("import", "--from", b));
    String told =
        "lot 007 has been held back since 2026-11-25 by Ines: recalled by its maker; jobs that got"
            + " it: HL-9";
    assertTrue(out.contains(told), out);
    assertFalse(out.contains("seen frozen"), out);
    ledger = b;
    assertEquals(0, stock("import", "--from", a));
    assertTrue(out.contains(told), out);
    assertFalse(out.contains("seen frozen"), out);
    assertEquals(1, use("007", "HL-10"));
  }

  @Test
  void a_plan_and_a_cover_name_the_lots_they_leave_out() {
    String[] plan = {"stock", "plan", STOCK, "--jobs", "demo-data/jobs.csv", "--ledger", ledger};
    String[] cover = {"stock", "cover", STOCK, "--ledger", ledger};
    for (String[] asked : List.of(plan, cover)) {
      run(asked);
      assertFalse(out.contains("Held back"), out);
    }
    hold("007", "seal broken");
    String named = "lot 007: held back since 2026-11-25 by Ines: seal broken";
    for (String[] asked : List.of(plan, cover)) {
      run(asked);
      assertTrue(flat().contains(named), out);
    }
  }
}
