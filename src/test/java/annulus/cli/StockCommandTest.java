package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.Numbers;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class StockCommandTest extends StockDay {
  private static final Schema ADVICE = adviceSchema();

  private static Schema adviceSchema() {
    try {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(Files.readString(Path.of("data/schema/advice.schema.json")), InputFormat.JSON);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void check_says_what_must_not_be_used_and_answers_no() {
    assertEquals(1, run("stock", "check", STOCK));
    assertTrue(out.startsWith("Cabinet on 2026-11-25: 5 of 9 lots may be used."), out);
    assertTrue(out.contains("opened too long"));
    assertTrue(out.contains("stored too hot: 34 °C"));
    assertTrue(out.contains("past its printed expiry 2026-10-31"));
  }

  @Test
  void check_counts_days_as_asked() {
    run("stock", "check", STOCK, "--within", "0");
    assertFalse(out.contains("Use soon"));
    run("stock", "check", STOCK, "--on", "2026-12-11");
    assertTrue(out.contains("past its printed expiry 2026-12-10"), out);
    assertEquals(2, run("stock", "check", STOCK, "--on", "11.12.2026"));
    assertTrue(err.contains("command line:5: --on"), err);
  }

  @Test
  void an_unknown_second_word_is_told_the_nearest() {
    assertEquals(2, run("stock", "chek"));
    assertTrue(err.contains("did you mean check"), err);
    assertEquals(2, run("stock"));
    assertEquals(2, run("stock", "check"));
    assertEquals(2, run("stock", "check", STOCK, "--whithin", "3"));
  }

  @Test
  void a_life_in_the_ledger_from_receipt_to_recall() throws IOException {
    String ledger = file("ledger");
    assertEquals(0, run("stock", "receive", "--ledger", ledger, "--from", STOCK, "--who", "Orla"));
    assertEquals(0, use(ledger, "007", "0.35", "HL-201", "m1"));
    assertTrue(out.contains("left 12.15 mL"), out);
    assertEquals(0, use(ledger, "007", "0.35", "HL-201", "m1"));
    assertTrue(out.startsWith("was recorded before m1"), out);
    assertEquals(2, use(ledger, "007", "0.36", "HL-201", "m1"));
    assertEquals(2, use(ledger, "007", "99", "HL-202", "m2"));
    assertEquals(0, run("stock", "recall", "--ledger", ledger, "--lot", "007"));
    assertTrue(out.contains("lot 007 went into jobs: HL-201"), out);
    assertEquals(0, run("stock", "recall", "--ledger", ledger, "--job", "HL-201"));
    assertTrue(out.contains("job HL-201 got lots: 007"), out);
    assertEquals(1, run("stock", "recall", "--ledger", ledger, "--lot", "7"));
    run("stock", "check", STOCK, "--ledger", ledger);
    assertTrue(out.contains("the sheet says 12.5 mL left, the ledger 12.15 mL"), out);
    assertEquals(0, run("stock", "export", STOCK, "--ledger", ledger, "--out", file("n.csv")));
    assertTrue(Files.readString(folder.resolve("n.csv")).contains("bottle,50,12.15,"));
  }

  private int use(String ledger, String lot, String ml, String job, String movement) {
    return run(
        "stock",
        "use",
        "--ledger",
        ledger,
        "--lot",
        lot,
        "--ml",
        ml,
        "--who",
        "Halden",
        "--job",
        job,
        "--movement",
        movement,
        "--stock",
        STOCK);
  }

  @Test
  void a_lot_past_its_day_or_out_of_turn_needs_a_reason_and_a_witness_pair() throws IOException {
    String ledger = opened("ledger");
    String before = Files.readString(Path.of(ledger));
    assertEquals(1, use(ledger, "KB-2211", "0.1", "J", "m1"));
    assertTrue(out.contains("NOT recorded: lot KB-2211: opened too long"), out);
    assertEquals(1, use(ledger, "1E5", "0.1", "J", "m2"));
    assertTrue(out.contains("lot 007 of the same class is open and in date"), out);
    assertEquals(2, use(ledger, "unknown", "0.1", "J", "m3"));
    assertEquals(before, Files.readString(Path.of(ledger)));
    String[] overridden = {
      "stock",
      "use",
      "--ledger",
      ledger,
      "--lot",
      "KB-2211",
      "--ml",
      "0.1",
      "--who",
      "Halden",
      "--stock",
      STOCK,
      "--reason",
      "nothing else",
      "--witness",
      "pair W-3 held"
    };
    assertEquals(0, run(overridden));
    assertTrue(Files.readString(Path.of(ledger)).contains("pair W-3 held"));
  }

  @Test
  void an_amount_with_a_decimal_comma_is_told_with_its_point() {
    CliRun run =
        CliRun.of("stock", "use", "--ledger", "none", "--lot", "1", "--ml", "0,2", "--who", "Ines");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("a decimal point: 0.2"), run.err());
  }

  @Test
  void another_tills_ledger_is_taken_over_once() {
    String a = file("a");
    String b = file("b");
    run("stock", "receive", "--ledger", a, "--from", STOCK, "--who", "Orla");
    run("stock", "receive", "--ledger", b, "--from", STOCK, "--who", "Orla");
    use(b, "007", "0.5", "J9", "till-b-1");
    assertEquals(0, run("stock", "import", "--ledger", a, "--from", b));
    assertTrue(out.startsWith("1 new movements of 9"), out);
    run("stock", "import", "--ledger", a, "--from", b);
    assertTrue(out.startsWith("0 new movements of 9"), out);
    run("stock", "recall", "--ledger", a, "--job", "J9");
    assertTrue(out.contains("007"));
  }

  @Test
  void a_ledger_that_is_not_there_is_no_empty_one_for_who_only_reads() {
    String typo = file("ledgr");
    String jobs = "demo-data/jobs.csv";
    String order = "demo-data/orders/01-good-fit.json";
    for (List<String> words :
        List.of(
            List.of("stock", "check", STOCK),
            List.of("stock", "plan", STOCK, "--jobs", jobs),
            List.of("stock", "cover", STOCK),
            List.of("stock", "tag", STOCK, "--lot", "007"),
            List.of("stock", "export", STOCK, "--out", file("n.csv")),
            List.of("stock", "recall", "--lot", "007"),
            List.of("advise", order, "--stock", STOCK))) {
      List<String> asked = new ArrayList<>(words);
      asked.addAll(List.of("--ledger", typo));
      assertEquals(2, run(asked.toArray(String[]::new)), words.toString());
      assertTrue(err.contains("--ledger: " + typo + " is not a file"), err);
    }
    assertFalse(Files.exists(Path.of(typo)));
    assertFalse(Files.exists(folder.resolve("n.csv")));
  }

  @Test
  void a_ledger_without_the_sheet_it_counts_for_is_refused() {
    String ledger = opened("ledger");
    assertEquals(2, run("advise", "demo-data/orders/01-good-fit.json", "--ledger", ledger));
    assertTrue(err.contains("--ledger: stands without --stock"), err);
  }

  @Test
  void a_movement_of_a_day_to_come_or_long_past_is_refused() throws IOException {
    String ledger = opened("ledger");
    String before = Files.readString(Path.of(ledger));
    for (String day :
        List.of("2026-11-26", "2027-11-25", "2025-11-25", "0001-01-01", "+99999-01-01")) {
      for (String kind : List.of("use", "discard", "correct")) {
        String[] words = {
          "stock", kind, "--ledger", ledger, "--lot", "007", "--ml", "0.1", "--who", "Ines", "--on"
        };
        List<String> slip = new ArrayList<>(List.of(words));
        slip.addAll(List.of(day, "--reason", "spilt"));
        assertEquals(2, run(slip.toArray(String[]::new)), day);
        assertTrue(err.contains("allowed: 2025-11-26 to today, 2026-11-25"), err);
      }
      String next = file("next");
      String[] from = {
        "stock", "receive", "--ledger", next, "--from", STOCK, "--who", "Orla", "--on", day
      };
      assertEquals(2, run(from));
      assertFalse(Files.exists(Path.of(next)));
    }
    assertEquals(before, Files.readString(Path.of(ledger)));
  }

  /** Else a slip in the month counts as soon as it has come. */
  @Test
  void a_sheet_that_holds_a_day_to_come_is_refused_by_every_command() throws IOException {
    String good = Files.readString(Path.of(STOCK));
    String slip =
        good.replace(",2026-09-01,,", ",2026-12-01,,").replace(",2026-10-05,", ",2026-11-26,");
    String sheet = Files.writeString(folder.resolve("slip.csv"), slip).toString();
    String ledger = opened("ledger");
    for (List<String> words :
        List.of(
            List.of("check", sheet, "--on", "2027-01-10"),
            List.of("plan", sheet, "--jobs", "demo-data/jobs.csv"),
            List.of("cover", sheet),
            List.of("tag", sheet, "--lot", "KB-2304"),
            List.of("export", sheet, "--ledger", ledger, "--out", file("n.csv")),
            List.of("receive", "--ledger", ledger, "--from", sheet, "--who", "Orla"))) {
      List<String> asked = new ArrayList<>(List.of("stock"));
      asked.addAll(words);
      assertEquals(2, run(asked.toArray(String[]::new)), words.toString());
      String allowed = "allowed: a day up to today, 2026-11-25";
      assertTrue(
          err.contains("slip.csv:2:7: opened: 2026-11-26 is still to come; " + allowed), err);
      assertTrue(
          err.contains("slip.csv:3:6: received: 2026-12-01 is still to come; " + allowed), err);
    }
    String order = "demo-data/orders/01-good-fit.json";
    assertEquals(2, run("advise", order, "--stock", sheet));
    assertTrue(err.contains("slip.csv:2:7: opened"), err);
  }

  @Test
  void a_use_before_the_lot_came_needs_a_reason() throws IOException {
    String ledger = opened("ledger");
    String before = Files.readString(Path.of(ledger));
    List<String> use =
        new ArrayList<>(List.of("stock", "use", "--ledger", ledger, "--lot", "007", "--ml", "0.1"));
    use.addAll(List.of("--who", "Ines", "--on", "2026-11-24"));
    assertEquals(1, run(use.toArray(String[]::new)));
    assertTrue(out.contains("lot 007 came on 2026-11-25, it can't be used on 2026-11-24"), out);
    assertEquals(before, Files.readString(Path.of(ledger)));
    use.addAll(List.of("--reason", "booked late"));
    assertEquals(0, run(use.toArray(String[]::new)));
  }

  @Test
  void an_export_can_be_read_again_after_a_second_delivery_and_an_early_use() throws IOException {
    String ledger = opened("ledger");
    String[] more = {
      "stock", "receive", "--ledger", ledger, "--lot", "1E5", "--ml", "50", "--who", "Ines"
    };
    List<String> delivery = new ArrayList<>(List.of(more));
    delivery.addAll(List.of("--class", "medium-lasting"));
    assertEquals(0, run(delivery.toArray(String[]::new)));
    String[] early = {
      "stock", "use", "--ledger", ledger, "--lot", "007", "--ml", "0.1", "--who", "Ines"
    };
    List<String> use = new ArrayList<>(List.of(early));
    use.addAll(List.of("--on", "2026-03-01", "--reason", "booked late"));
    assertEquals(0, run(use.toArray(String[]::new)));
    String next = file("next.csv");
    assertEquals(0, run("stock", "export", STOCK, "--ledger", ledger, "--out", next));
    assertEquals(1, run("stock", "check", next), err);
    String text = Files.readString(Path.of(next));
    assertTrue(text.contains("\n1E5,medium-lasting,spare,100,100,2026-09-01,"), text);
    assertTrue(text.contains("bench bottle,50,12.4,2026-03-01,2026-03-01,"), text);
  }

  @Test
  void a_lot_that_has_expired_by_now_serves_no_order_of_the_past() throws IOException {
    String head = Files.readAllLines(Path.of(STOCK)).get(0);
    Path sheet = folder.resolve("old.csv");
    Files.writeString(
        sheet, head + "\nOLD,medium-lasting,,50,50,2026-01-10,,2026-09-30,,yes,10,20,\n");
    String[] order = {
      "advise",
      "--radial-gap-um",
      "40",
      "--radial-gap-plus-minus-um",
      "3",
      "--diameter",
      "42",
      "--engagement",
      "11",
      "--materials",
      "steel-plain,steel-bearing",
      "--temp",
      "20",
      "--stock",
      sheet.toString(),
      "--start",
      "2026-07-01T09:00"
    };
    run(order);
    assertTrue(out.contains("Cabinet: "), out + err);
    assertFalse(out.contains("OLD"), out);
  }

  /** A stock sheet of these lots alone. */
  private String sheet(String... lots) throws IOException {
    String head = Files.readString(Path.of(STOCK)).lines().findFirst().orElseThrow();
    Path sheet = folder.resolve("sheet.csv");
    return Files.writeString(sheet, head + "\n" + String.join("\n", lots) + "\n").toString();
  }

  private JsonNode cabinet(String order, String sheet) throws IOException {
    run("advise", order, "--json", "--stock", sheet);
    assertEquals("", err);
    assertEquals(List.of(), ADVICE.validate(out, InputFormat.JSON), order);
    return new ObjectMapper().readTree(out).get("cabinet");
  }

  @Test
  void the_json_of_an_answer_holds_the_lots_to_draw_as_its_text_tells_them() throws IOException {
    String order = "demo-data/orders/06-stainless.json";
    String sheet =
        sheet(
            "P-9,thin-lasting,,50,40,2026-10-01,,2027-12-31,,yes,10,20,",
            "S-2,primer-solvent,,150,60.5,2026-10-01,2026-11-01,2027-12-31,,yes,10,20,");
    JsonNode cabinet = cabinet(order, sheet);
    run("advise", order, "--stock", sheet);
    String text = out.substring(out.indexOf("Cabinet: ")).replaceAll("\\s+", " ");
    assertTrue(cabinet.get("willDo").asBoolean());
    assertEquals(2, cabinet.get("draw").size(), "a compound and its primer");
    for (JsonNode draw : cabinet.get("draw")) {
      JsonNode lot = draw.get("lots").get(0);
      String told =
          draw.get("item").asText()
              + ", lot "
              + lot.get("lot").asText()
              + " with "
              + Numbers.plain(lot.get("leftMl").asDouble())
              + " mL, use by "
              + lot.get("useBy").asText();
      assertTrue(text.contains(told), told + " in " + text);
      assertTrue(draw.get("ml").asDouble() > 0);
    }
    for (JsonNode sentence : cabinet.get("text")) {
      assertTrue(text.contains(sentence.asText()), sentence + " in " + text);
    }
  }

  @Test
  void the_json_of_an_answer_says_that_there_is_too_little() throws IOException {
    String sheet = sheet("1,thin-lasting,,50,0.01,2026-10-01,,2027-12-31,,yes,10,20,");
    JsonNode cabinet = cabinet("demo-data/orders/01-good-fit.json", sheet);
    assertFalse(cabinet.get("willDo").asBoolean());
    assertEquals(0, cabinet.get("draw").size());
    JsonNode few = cabinet.get("tooLittle").get(0);
    assertEquals("thin-lasting", few.get("item").asText());
    assertEquals(0.01, few.get("leftMl").asDouble());
    assertTrue(few.get("wantedMl").asDouble() > 0.01);
  }

  @Test
  void a_joint_pressed_dry_takes_nothing_out_of_the_cabinet() throws IOException {
    JsonNode cabinet = cabinet("demo-data/orders/10-interference.json", STOCK);
    assertTrue(cabinet.get("willDo").asBoolean());
    assertEquals(0, cabinet.get("draw").size());
    run("advise", "demo-data/orders/10-interference.json", "--stock", STOCK);
    assertTrue(out.endsWith("\nCabinet: the joint takes nothing out of it.\n"), out);
  }

  @Test
  void without_a_cabinet_the_json_says_nothing_of_one() throws IOException {
    run("advise", "demo-data/orders/01-good-fit.json", "--json");
    assertFalse(new ObjectMapper().readTree(out).has("cabinet"));
  }

  @Test
  void a_file_in_the_shops_folder_that_is_no_table_is_told() throws IOException {
    Path shop = Files.createDirectory(folder.resolve("shop"));
    for (String name : List.of("stock_policy.csv", "Stock-Policy.csv", "compound.JSON")) {
      Path table = Files.writeString(shop.resolve(name), "id,value\n");
      assertEquals(2, run("stock", "check", STOCK, "--data", shop.toString()), name);
      assertTrue(err.contains(name + ": is no table"), err);
      assertTrue(err.contains("did you mean " + (name.startsWith("c") ? "comp" : "stock-po")), err);
      Files.delete(table);
    }
    Files.writeString(shop.resolve("notes.txt"), "mine");
    assertEquals(1, run("stock", "check", STOCK, "--data", shop.toString()), err);
  }

  @Test
  void a_use_from_a_new_ledger_is_told_how_to_open_it() {
    String ledger = file("ledger");
    String[] bare = {
      "stock", "use", "--ledger", ledger, "--lot", "007", "--ml", "0.2", "--who", "Ines"
    };
    assertEquals(2, run(bare));
    assertTrue(err.contains("stock receive --ledger LEDGER --from SHEET"), err);
    assertEquals(2, use(ledger, "007", "0.2", "J", "m1"));
    assertTrue(err.contains("\"007\" is in the sheet, not yet in the ledger"), err);
    assertTrue(err.contains("stock receive --ledger LEDGER --from SHEET"), err);
    assertFalse(Files.exists(Path.of(ledger)));
  }

  @Test
  void a_label_never_takes_the_id_of_a_primer() throws IOException {
    String good = Files.readString(Path.of("demo-data/stock-labels.csv"));
    assertTrue(good.contains("\nhalden-blend,"), good);
    Path labels = folder.resolve("labels.csv");
    Files.writeString(labels, good.replace("\nhalden-blend,", "\nprimer-solvent,"));
    assertEquals(2, run("stock", "label", "--data", file("shop"), "--from", labels.toString()));
    assertTrue(err.contains("labels.csv:2: class: primer-solvent is a primer"), err);
    assertFalse(Files.exists(folder.resolve("shop/compounds.json")));
  }

  /** Two tills, each opened with what its own sheet said; the same bottle stands there once. */
  @Test
  void a_lot_opened_by_two_tills_is_counted_once() throws IOException {
    String a = file("a");
    String b = file("b");
    run("stock", "receive", "--ledger", a, "--from", STOCK, "--who", "Orla");
    String sheet = Files.readString(Path.of(STOCK)).replace(",50,12.5,", ",50,12.2,");
    Path later = Files.writeString(folder.resolve("later.csv"), sheet);
    run("stock", "receive", "--ledger", b, "--from", later.toString(), "--who", "Ines");
    use(b, "007", "0.5", "J9", "till-b-1");
    assertEquals(0, run("stock", "import", "--ledger", a, "--from", b));
    assertTrue(out.startsWith("1 new movements of 9"), out);
    assertTrue(out.contains("lot 007: its opening balance of 12.2 mL was left out"), out);
    run("stock", "check", STOCK, "--ledger", a);
    assertTrue(out.contains("the ledger 12 mL"), out);
  }

  /** One bottle entered twice, or two of one number: only somebody who looks can tell. */
  @Test
  void a_bottle_that_two_tills_took_in_counts_once_and_is_told() {
    String a = file("a");
    String b = file("b");
    String[] bottle = {"--class", "medium-lasting"};
    assertEquals(0, came(a, "T-7", "50", bottle));
    String[] there = {
      "stock", "receive", "--ledger", b, "--lot", "T-7", "--ml", "50", "--who", "Orla", "--class"
    };
    List<String> other = new ArrayList<>(List.of(there));
    other.add("medium-lasting");
    assertEquals(0, runOn("2026-11-24T10:00:00Z", other.toArray(String[]::new)));
    String told =
        "lot T-7: Ines took it in on 2026-11-25 here, Orla took it in on 2026-11-24 there; counted"
            + " as ONE bottle of 50 mL. If there are two, take the other one in as T-7-2";
    for (int again = 0; again < 2; again++) {
      assertEquals(0, run("stock", "import", "--ledger", a, "--from", b));
      assertTrue(out.contains(told), out);
    }
    String c = file("c");
    assertEquals(0, run("stock", "import", "--ledger", c, "--from", a));
    assertEquals(0, run("stock", "import", "--ledger", c, "--from", a));
    assertFalse(out.contains("ONE bottle"), "a copy of one ledger is no second bottle");
  }

  @Test
  void a_count_is_recorded_as_the_change_and_never_added_to_what_is_booked() {
    String ledger = opened("ledger");
    assertEquals(2, correct(ledger, "--ml", "40"));
    assertTrue(err.contains("52.5 mL in a container of 50 mL"), err);
    assertEquals(0, correct(ledger, "--counted", "11.8"));
    assertTrue(out.contains("correct -0.7 mL, lot 007; left 11.8 mL"), out);
    assertEquals(0, correct(ledger, "--counted", "11.8"));
    assertTrue(out.startsWith("nothing to record"), out);
    assertEquals(2, correct(ledger, "--counted", "50.1"));
    assertEquals(2, correct(ledger, "--counted", "1", "--ml", "1"));
    assertEquals(2, correct(ledger));
  }

  private int came(String ledger, String lot, String ml, String... more) {
    List<String> words = new ArrayList<>(List.of("stock", "receive", "--ledger", ledger));
    words.addAll(List.of("--lot", lot, "--ml", ml, "--who", "Ines"));
    words.addAll(List.of(more));
    return run(words.toArray(String[]::new));
  }

  @Test
  void more_than_a_container_holds_is_refused_before_it_is_written() throws IOException {
    String ledger = file("ledger");
    assertEquals(0, came(ledger, "BIG", "20000", "--class", "thick-lasting"));
    String before = Files.readString(Path.of(ledger));
    assertEquals(2, came(ledger, "BIG", "20000"));
    assertTrue(err.contains("lot BIG would then have 40000 mL"), err);
    assertEquals(before, Files.readString(Path.of(ledger)));
    String other = file("other");
    assertEquals(0, came(other, "BIG", "5", "--class", "thick-lasting", "--movement", "m1"));
    assertEquals(2, run("stock", "import", "--ledger", ledger, "--from", other));
    assertEquals(before, Files.readString(Path.of(ledger)));
    run("stock", "receive", "--ledger", ledger, "--from", STOCK, "--who", "Orla");
    before = Files.readString(Path.of(ledger));
    assertEquals(2, came(ledger, "1E5", "0.1", "--stock", STOCK));
    assertTrue(err.contains("50.1 mL in a container of 50 mL"), err);
    assertTrue(err.contains("1E5-2"), err);
    assertEquals(before, Files.readString(Path.of(ledger)));
    String[] once = {"--stock", STOCK, "--movement", "m7"};
    assertEquals(0, came(ledger, "007", "37.5", once));
    assertEquals(0, came(ledger, "007", "37.5", once));
    assertTrue(out.startsWith("was recorded before m7"), out);
  }

  /** One ledger heard of the bottle by its delivery, the other by the sheet. */
  @Test
  void a_delivery_and_an_opening_balance_of_one_bottle_count_once() {
    String a = file("a");
    String b = file("b");
    assertEquals(0, came(a, "1E5", "50", "--class", "medium-lasting"));
    run("stock", "receive", "--ledger", b, "--from", STOCK, "--who", "Orla");
    assertEquals(0, run("stock", "import", "--ledger", a, "--from", b));
    assertTrue(out.contains("lot 1E5: its opening balance of 50 mL was left out"), out);
    run("stock", "check", STOCK, "--ledger", a);
    assertFalse(out.contains("100 mL"), out);
    assertEquals(0, came(a, "1E5", "50"));
    run("stock", "check", STOCK, "--ledger", a);
    String told = out.replaceAll("\\s+", " ");
    assertTrue(told.contains("lot 1E5: 100 mL are booked in a container of 50 mL"), told);
  }

  @Test
  void another_class_than_the_lot_has_is_refused_and_told_at_an_import() throws IOException {
    String a = file("a");
    String b = file("b");
    run("stock", "receive", "--ledger", a, "--from", STOCK, "--who", "Orla");
    String before = Files.readString(Path.of(a));
    assertEquals(2, came(a, "007", "1", "--class", "thin-releasable"));
    assertTrue(err.contains("lot 007 is medium-lasting, not thin-releasable"), err);
    assertEquals(2, came(file("new"), "007", "1", "--class", "press-film", "--stock", STOCK));
    String[] use = {
      "stock",
      "use",
      "--ledger",
      a,
      "--lot",
      "007",
      "--ml",
      "1",
      "--who",
      "I",
      "--class",
      "press-film"
    };
    assertEquals(2, run(use));
    assertEquals(before, Files.readString(Path.of(a)));
    assertEquals(0, came(b, "1E5", "10", "--class", "thin-releasable"));
    run("stock", "use", "--ledger", b, "--lot", "1E5", "--ml", "1", "--who", "I", "--job", "J-9");
    run("stock", "receive", "--ledger", b, "--from", STOCK, "--who", "Orla");
    assertTrue(err.contains("lot 1E5 is thin-releasable in the ledger, and medium-lasting"), err);
    assertEquals(0, run("stock", "import", "--ledger", a, "--from", b));
    assertTrue(out.contains("lot 1E5: it is medium-lasting here and thin-releasable there"), out);
    assertEquals(1, out.split("lot 1E5", -1).length - 1, out);
    run("stock", "check", STOCK, "--ledger", a);
    assertTrue(
        out.replaceAll("\\s+", " ")
            .contains("lot 1E5: the sheet says 50 mL left, the ledger 49 mL"),
        out);
    run("stock", "recall", "--ledger", a, "--lot", "1E5");
    assertTrue(out.contains("(thin-releasable), job J-9"), out);
    run("stock", "import", "--ledger", a, "--from", b);
    assertTrue(out.startsWith("0 new movements"), out);
  }

  private int correct(String ledger, String... amount) {
    List<String> words =
        new ArrayList<>(List.of("stock", "correct", "--ledger", ledger, "--lot", "007"));
    words.addAll(List.of("--who", "Orla", "--reason", "counted", "--stock", STOCK));
    words.addAll(List.of(amount));
    return run(words.toArray(String[]::new));
  }

  @Test
  void a_number_written_otherwise_makes_no_lot_of_its_own() {
    String ledger = opened("ledger");
    assertEquals(2, use(ledger, "kb-2304", "0.1", "J", "m1"));
    assertTrue(err.contains("did you mean KB-2304"), err);
    assertEquals(0, use(ledger, " 007 ", "0.1", "J", "m2"));
    String[] again = {
      "stock", "receive", "--ledger", ledger, "--lot", "7", "--ml", "5", "--who", "Ines"
    };
    assertEquals(2, run(again));
    assertTrue(err.contains("--class: is missing"), err);
    String[] named = Arrays.copyOf(again, again.length + 2);
    named[again.length] = "--class";
    named[again.length + 1] = "medium-lastin";
    assertEquals(2, run(named));
    assertTrue(err.contains("did you mean medium-lasting"), err);
    named[again.length + 1] = "medium-lasting";
    assertEquals(0, run(named));
    assertTrue(err.contains("there is a lot 007 already"), err);
  }

  /** Two containers of one lot are numbered -1, -2; the maker recalls the lot. */
  @Test
  void a_recall_names_further_containers_of_the_lot_and_other_spellings() {
    String ledger = file("ledger");
    for (String lot : List.of("A-114", "A-114-2", "a114", "A-115")) {
      run(
          "stock",
          "receive",
          "--ledger",
          ledger,
          "--lot",
          lot,
          "--ml",
          "5",
          "--who",
          "Ines",
          "--class",
          "medium-lasting");
      run(
          "stock",
          "use",
          "--ledger",
          ledger,
          "--lot",
          lot,
          "--ml",
          "1",
          "--who",
          "Ines",
          "--job",
          "for-" + lot);
    }
    assertEquals(0, run("stock", "recall", "--ledger", ledger, "--lot", "A-114"));
    assertTrue(out.startsWith("lot A-114 went into jobs: for-A-114\n"), out);
    assertTrue(out.contains("may be the same: lot A-114-2 went into jobs: for-A-114-2"), out);
    assertTrue(out.contains("may be the same: lot a114 went into jobs: for-a114"), out);
    assertFalse(out.contains("A-115"), out);
    assertEquals(1, run("stock", "recall", "--ledger", ledger, "--job", "FOR-A115"));
    assertTrue(out.contains("may be the same: job for-A-115 got lots: A-115"), out);
  }

  @Test
  void a_plan_assigns_lots_and_says_what_is_short_and_what_another_class_costs() {
    String jobs = "demo-data/jobs.csv";
    assertEquals(1, run("stock", "plan", STOCK, "--jobs", jobs));
    assertTrue(out.matches("(?s).* 0\\.1[0-9]* mL medium-lasting from lot 007.*"), out);
    assertTrue(out.contains("instead of thin-lasting: hand-back"), out);
    assertTrue(out.matches("(?s).*SHORT: 0\\.0[0-9]* mL thin-lasting.*"), out);
    assertTrue(out.contains("demo-data/jobs.csv:4:3"), out);
    assertTrue(out.contains("thin-lasting        10 mL, order by 2027-02-25"), out);
    String primer =
        out.substring(out.indexOf("primer-solvent      150 mL")).replaceAll("\\s+", " ");
    assertTrue(
        primer.contains(
            "; 0 mL in date left after these jobs (60 mL more goes out of date before 2027-03-12),"
                + " 0.059 mL short"),
        primer);
  }

  @Test
  void cover_draws_its_picture_and_names_the_fewest() throws IOException {
    String picture = file("cover.svg");
    assertEquals(0, run("stock", "cover", STOCK, "--picture", picture));
    assertTrue(out.contains("Holes"), out);
    assertTrue(out.contains("Fewest to close them all: "), out);
    assertTrue(Files.readString(Path.of(picture)).startsWith("<svg"));
  }

  @Test
  void labels_become_classes_that_an_answer_names_as_shop_label() throws IOException {
    String data = file("shop");
    assertEquals(
        0,
        run(
            "stock",
            "label",
            "--data",
            data,
            "--from",
            "demo-data/stock-labels.csv",
            "--picture",
            file("l.svg")));
    assertTrue(Files.exists(folder.resolve("l-halden-blend.svg")));
    assertTrue(out.contains("  class it is like ") && !out.contains("as shipped"), out);
    assertTrue(Files.readString(folder.resolve("shop/compounds.json")).contains("shop label"));
    assertEquals(
        0,
        run(
            "advise",
            "--data",
            data,
            "--class",
            "halden-blend",
            "--radial-gap-um",
            "40",
            "--radial-gap-plus-minus-um",
            "3",
            "--diameter",
            "42",
            "--engagement",
            "11",
            "--materials",
            "steel-plain,steel-bearing",
            "--temp",
            "20",
            "--why"));
    assertTrue(out.contains("shop label"), out);
  }

  @Test
  void one_bad_label_keeps_all_of_them_out() throws IOException {
    Path labels = folder.resolve("labels.csv");
    String good = Files.readString(Path.of("demo-data/stock-labels.csv"));
    Files.writeString(labels, good.replace(",25,48,23,", ",25,0.2,23,"));
    assertEquals(2, run("stock", "label", "--data", file("shop"), "--from", labels.toString()));
    assertTrue(err.contains("labels.csv:3"), err);
    assertTrue(err.contains("full cure is not after fixture"), err);
    assertFalse(Files.exists(folder.resolve("shop/compounds.json")));
  }

  @Test
  void a_label_that_does_not_say_which_gap_it_means_is_refused_at_its_row() throws IOException {
    Path labels = folder.resolve("labels.csv");
    String good = Files.readString(Path.of("demo-data/stock-labels.csv"));
    Files.writeString(labels, good.replace(",diametral,", ",,"));
    assertEquals(2, run("stock", "label", "--data", file("shop"), "--from", labels.toString()));
    assertTrue(err.contains("labels.csv:2:1: gap_basis: is missing: does the label count"), err);
    assertTrue(err.contains("per side"), err);
  }

  @Test
  void typed_answers_make_a_class_and_a_contradiction_is_asked_again() throws IOException {
    String answers =
        String.join(
            "\n",
            List.of(
                "shop-blend",
                "Shop blend",
                "medium-lasting",
                "radial",
                "80",
                "",
                "12",
                "0.1",
                "22",
                "active",
                "25",
                "22",
                "-50",
                "140",
                "6",
                "9",
                "",
                "20",
                ""));
    ByteArrayOutputStream to = new ByteArrayOutputStream();
    PrintStream print = new PrintStream(to, true, StandardCharsets.UTF_8);
    int code =
        new StockCommand(
                SURROUND,
                new ByteArrayInputStream(answers.getBytes(StandardCharsets.UTF_8)),
                print,
                print)
            .run(new String[] {"stock", "label", "--data", file("shop")});
    String said = to.toString(StandardCharsets.UTF_8);
    assertEquals(0, code);
    assertTrue(said.contains("full cure is not after fixture"), said);
    assertTrue(said.contains("shop-blend (Shop blend), like medium-lasting"), said);
  }

  @Test
  void a_tag_carries_lot_class_opening_and_use_by() throws IOException {
    assertEquals(0, run("stock", "tag", STOCK, "--lot", "007", "--out", file("t.html")));
    assertTrue(out.contains("USE BY 2027-04-05"), out);
    assertTrue(Files.readString(folder.resolve("t.html")).contains("lot <bdi>007</bdi>"));
    assertEquals(1, run("stock", "tag", STOCK, "--lot", "KB-2211"));
    assertTrue(out.contains("DO NOT USE"), out);
  }

  @Test
  void a_word_that_a_whole_sheet_would_swallow_is_refused_and_nothing_is_written() {
    String ledger = file("ledger");
    for (String option :
        List.of(
            "--lot",
            "--ml",
            "--counted",
            "--class",
            "--job",
            "--reason",
            "--witness",
            "--movement",
            "--stock")) {
      String[] words = {
        "stock",
        "receive",
        "--ledger",
        ledger,
        "--from",
        STOCK,
        "--who",
        "Ines",
        option,
        option.equals("--stock") ? STOCK : "5"
      };
      assertEquals(2, run(words), option);
      assertTrue(err.startsWith("command line:10: " + option + ": does not go with --from"), err);
      assertFalse(Files.exists(Path.of(ledger)), option);
    }
  }

  @Test
  void a_sheet_opens_a_ledger_and_is_no_other_movement() throws IOException {
    String ledger = file("ledger");
    run("stock", "receive", "--ledger", ledger, "--from", STOCK, "--who", "Orla");
    String before = Files.readString(Path.of(ledger));
    for (String kind : List.of("use", "discard", "correct")) {
      int code =
          run(
              "stock",
              kind,
              "--ledger",
              ledger,
              "--lot",
              "007",
              "--ml",
              "1",
              "--who",
              "Orla",
              "--from",
              STOCK);
      assertEquals(2, code, kind);
      assertTrue(err.startsWith("command line:12: --from: is for stock receive"), err);
    }
    assertEquals(before, Files.readString(Path.of(ledger)));
  }
}
