package annulus.web;

import static annulus.web.RunningBoard.JSON;
import static annulus.web.RunningBoard.demo;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.cli.CommandLine;
import annulus.exchange.InputRefused;
import annulus.store.Databases;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Fits, job lists, labels, learning and the ledger on the board, held against the commands. */
class BoardToolsTest {
  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private RunningBoard board() {
    return RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
  }

  @Test
  void a_fit_is_told_as_the_command_line_tells_it() {
    try (RunningBoard board = board()) {
      ObjectNode question = JSON.createObjectNode();
      question.putArray("fit").add("35 H7").add("35 k6");
      question.putObject("bore").put("readings", "35.012 35.013");
      String told = CommandLine.output("fit", "35 H7", "35 k6", "--bore", "35.012 35.013");
      JsonNode answer = json(board.post("/api/fit", question));
      assertEquals(told, answer.get("text").asText());
      assertEquals("transition", answer.at("/fit/kind").asText());
      // ISO 286-2: 35 H7 is 0 to +25 µm, 35 k6 is +2 to +18 µm
      assertEquals(11.5, answer.at("/fit/greatestGapRadialUm").asDouble(), 1e-9);
      assertEquals(-9, answer.at("/fit/leastGapRadialUm").asDouble(), 1e-9);
      assertEquals("not-decided", answer.at("/judgements/0/verdict").asText());
      String page = board.get("/tools/fit?fit=35+H7%2Fk6&part=35.010").body();
      assertTrue(page.contains("TRANSITION FIT"), page);
      assertTrue(page.contains("this instrument can't tell"), page);
    }
  }

  @Test
  void a_fit_that_is_none_is_refused_and_what_was_typed_stays() {
    try (RunningBoard board = board()) {
      HttpResponse<String> refused = board.get("/tools/fit?fit=35+%3Cb%3E&part=35.010");
      assertEquals(422, refused.statusCode());
      assertTrue(refused.body().contains("value=\"35 &lt;b&gt;\""), refused.body());
      assertTrue(refused.body().contains("role=\"alert\""));
    }
  }

  @Test
  void a_job_list_comes_back_as_from_the_command_line_byte_for_byte() throws Exception {
    Path out = folder.resolve("results.csv");
    CommandLine.output("advise", "--batch", "demo-data/jobs.csv", "--out", out.toString());
    try (RunningBoard board = board()) {
      HttpResponse<String> results = board.text("/api/batch", "text/csv", demo("jobs.csv"));
      assertEquals(
          named(Files.readString(out), "demo-data/jobs.csv"), named(results.body(), "body"));
      HttpResponse<String> page = board.upload("/tools/batch", "jobs.csv", demo("jobs.csv"));
      assertEquals(named(results.body(), "body"), named(page.body(), "jobs.csv"));
      assertTrue(
          page.headers().firstValue("Content-Disposition").orElse("").contains("results.csv"));
      HttpResponse<String> pasted = board.upload("/tools/batch", "", "", "text=colour\nred");
      assertEquals(422, pasted.statusCode());
      assertFalse(json(board.get("/api/jobs")).get("jobs").elements().hasNext());
    }
  }

  /** The name of the file in a message is the only difference. */
  private static String named(String results, String file) {
    return results.replace(file + ":", "FILE:");
  }

  @Test
  void a_list_tells_when_each_is_ready_as_the_command_line_does() throws Exception {
    try (RunningBoard board = board()) {
      String list = demo("jobs.csv");
      String[] words = {"promise", "--list", "demo-data/jobs.csv", "--shop", "demo-data/shop.json"};
      List<String> at = new java.util.ArrayList<>(List.of(words));
      at.addAll(List.of("--now", "2027-03-11T09:30"));
      JsonNode ready = json(board.text("/api/ready", "text/csv", list));
      String told = CommandLine.output(at.toArray(String[]::new));
      String body = told.substring(told.indexOf('\n'));
      assertTrue(ready.get("text").asText().endsWith(body), told + ready.get("text").asText());
      int rows = list.strip().split("\n").length - 1;
      assertEquals(rows, ready.get("jobs").size() + ready.get("problems").size());
      HttpResponse<String> page = board.upload("/tools/batch", "jobs.csv", list, "act=ready");
      assertTrue(page.body().contains("When each is ready"), page.body());
    }
  }

  @Test
  void every_number_of_an_answer_is_listed_as_the_command_line_lists_it() {
    try (RunningBoard board = board()) {
      String told = CommandLine.output("sources", "demo-data/orders/02-good-fit-primed.json");
      JsonNode order = RunningBoard.tree("demo-data/orders/02-good-fit-primed.json");
      JsonNode sources = json(board.post("/api/sources", order));
      assertEquals(told, sources.get("text").asText());
      JsonNode job = board.entered("HL-7");
      String page = board.get("/job/" + job.get("id").asText() + "/sources").body();
      for (JsonNode row : sources.get("rows")) {
        assertFalse(row.get("source").asText().isBlank(), row.toString());
        assertTrue(page.contains(row.get("what").asText()), row.toString());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_half_full_container_is_taken_in_as_it_is_and_counted(String name) {
    try (RunningBoard board = RunningBoard.on(Databases.fresh(name, folder))) {
      String half = "newLot=H-1&item=medium-lasting&container=50&who=Orla&opened=2026-03-01";
      String again = board.form("/cabinet/receive", half).body();
      assertTrue(again.contains("<title>Please look again"), again);
      assertTrue(again.contains("Left in it: is missing for an open container"), again);
      assertTrue(again.contains("name=\"newLot\" value=\""), again);
      assertFalse(again.contains("name=\"newLot\" value=\"\""), again);
      assertTrue(again.contains("<details id=\"receive\" open>"), again);
      assertEquals(422, board.form("/cabinet/receive", half).statusCode());
      assertEquals(422, board.form("/cabinet/receive", half + "&left=50,5").statusCode());
      assertEquals(303, board.form("/cabinet/receive", half + "&left=17,5").statusCode());
      JsonNode lot = lot(board, "H-1");
      assertEquals(17.5, lot.get("leftMl").asDouble(), 1e-9);
      // opened on 1 March and six months of life, whatever day it was taken in
      assertEquals("2026-09-01", lot.get("useBy").asText());
      String change = "kind=CORRECT&lot=H-1&ml=40&reason=count&who=Orla&id=c-1";
      HttpResponse<String> refused = board.form("/cabinet/move", change);
      assertEquals(422, refused.statusCode());
      assertTrue(refused.body().contains("57.5 mL in a container of 50 mL"), refused.body());
      String counted = "kind=COUNTED&lot=H-1&ml=16,9&reason=count&who=Orla&id=c-2";
      assertEquals(303, board.form("/cabinet/move", counted).statusCode());
      assertEquals(303, board.form("/cabinet/move", counted).statusCode());
      assertEquals(16.9, lot(board, "H-1").get("leftMl").asDouble(), 1e-9);
      assertEquals(422, board.form("/cabinet/move", counted.replace("lot=H-1&", "")).statusCode());
    }
  }

  @Test
  void a_lot_that_came_or_was_opened_on_a_day_to_come_or_long_past_is_refused() {
    try (RunningBoard board = board()) {
      String lot = "newLot=H-2&item=medium-lasting&container=50&left=20&who=Orla";
      for (String field : List.of("opened", "came")) {
        String label = field.equals("came") ? "Came on" : "Opened on";
        HttpResponse<String> early =
            board.form("/cabinet/receive", lot + "&" + field + "=2099-01-01");
        assertEquals(422, early.statusCode());
        assertTrue(early.body().contains(label + ": 2099-01-01 is still to come"), early.body());
        HttpResponse<String> late =
            board.form("/cabinet/receive", lot + "&" + field + "=0001-01-01");
        assertEquals(422, late.statusCode());
        assertTrue(late.body().contains("is more than 3650 days ago"), late.body());
      }
      assertEquals(303, board.form("/cabinet/receive", lot + "&opened=2026-03-01").statusCode());
    }
  }

  @Test
  void a_sealed_container_is_not_opened_in_vain_and_the_page_names_what_is_written_alike() {
    try (RunningBoard board = board()) {
      HttpResponse<String> sealed =
          board.form("/cabinet/move", "kind=USE&lot=1E5&ml=0,1&who=Orla&id=s-1");
      assertEquals(422, sealed.statusCode());
      assertTrue(sealed.body().contains("lot 007 of the same class is open"), sealed.body());
      String reason = "kind=USE&lot=1E5&ml=0,1&who=Orla&id=s-1&reason=007+is+at+the+other+bench";
      assertEquals(303, board.form("/cabinet/move", reason).statusCode());
      String second = "newLot=007-2&item=medium-lasting&container=50&expires=2028-06-30&who=Orla";
      assertEquals(303, board.form("/cabinet/receive", second).statusCode());
      assertTrue(board.get("/cabinet/lot?lot=007").body().contains("Lot 007-2"));
      JsonNode alike = json(board.get("/api/cabinet/uses?lot=007")).get("alike");
      assertEquals("[\"007-2\"]", alike.toString());
    }
  }

  @Test
  void a_lot_tells_its_jobs_and_a_job_its_lots() {
    try (RunningBoard board = board()) {
      JsonNode job = board.entered("HL-7");
      String form = "kind=USE&lot=007&ml=0,35&job=HL-7&who=Orla&id=u-1";
      assertEquals(303, board.form("/cabinet/move", form).statusCode());
      JsonNode uses = json(board.get("/api/cabinet/uses?lot=007")).get("uses");
      assertEquals(1, uses.size());
      assertEquals("HL-7", uses.get(0).get("job").asText());
      assertEquals(0.35, uses.get(0).get("ml").asDouble(), 1e-12);
      assertEquals(uses, json(board.get("/api/cabinet/uses?job=HL-7")).get("uses"));
      assertEquals(0, json(board.get("/api/cabinet/uses?job=HL-8")).get("uses").size());
      assertTrue(board.get("/cabinet/lot?lot=007").body().contains("job HL-7"));
      String page = board.get("/job/" + job.get("id").asText()).body();
      assertTrue(page.contains("href=\"/cabinet/lot?lot=007\""), page);
      assertTrue(board.get("/cabinet/tag?lot=007").body().contains("USE BY"));
      assertTrue(board.get("/cabinet/tag?lot=PASTE-3").body().contains("DO NOT USE"));
      assertTrue(board.get("/cabinet/lot?lot=%3D2%2B2").body().contains("Lot =2+2"));
      assertEquals(404, board.get("/cabinet/lot?lot=%3Cb%3E").statusCode());
    }
  }

  @Test
  void the_cabinet_tells_its_plan_and_cover_as_the_command_line_does() {
    try (RunningBoard board = board()) {
      JsonNode cover = json(board.get("/api/cabinet/cover"));
      String[] asked = {"stock", "cover", "demo-data/stock.csv", "--on", "2027-03-11"};
      assertEquals(CommandLine.output(asked), cover.get("text").asText());
      board.entered("HL-7");
      JsonNode plan = json(board.get("/api/cabinet/plan"));
      assertEquals("HL-7", plan.at("/jobs/0/job").asText());
      double taken = 0;
      for (JsonNode take : plan.at("/jobs/0/takes")) {
        taken += take.get("ml").asDouble();
      }
      assertEquals(taken == 0, plan.at("/jobs/0/short").asBoolean(), plan.toString());
      assertTrue(plan.get("orders").size() > 0, plan.toString());
    }
  }

  @Test
  void a_list_with_a_bad_row_answers_the_others_and_names_it() {
    try (RunningBoard board = board()) {
      String[] lines = demo("jobs.csv").split("\n", 3);
      String list = lines[0] + "\n" + lines[1] + "\n" + lines[1].replace("steel", "cheese") + "\n";
      String[] rows = board.text("/api/batch", "text/csv", list).body().split("\n");
      assertEquals(3, rows.length);
      assertFalse(rows[1].contains("refused"), rows[1]);
      assertTrue(rows[2].contains("refused") && rows[2].contains("cheese"), rows[2]);
    }
  }

  @Test
  void observations_teach_what_they_teach_on_the_command_line_and_nothing_is_written() {
    try (RunningBoard board = board()) {
      String told = CommandLine.output("learn", "demo-data/observations.csv");
      JsonNode learned = json(board.text("/api/learn", "text/csv", demo("observations.csv")));
      assertTrue(told.startsWith(learned.get("text").asText()), told);
      HttpResponse<String> page =
          board.upload("/tools/learn", "", "", "text=" + demo("observations.csv"));
      assertTrue(page.body().contains("<svg"), page.body());
      assertTrue(page.body().contains("Nothing is written here"));
      HttpResponse<String> wrong = board.upload("/tools/learn", "o.csv", "joint\n1");
      assertEquals(422, wrong.statusCode());
    }
  }

  @Test
  void a_label_makes_the_class_of_the_command_line_and_is_kept_only_where_tables_are() {
    try (RunningBoard board = board()) {
      JsonNode made = json(board.post("/api/labels", RunningBoard.label()));
      String[] words = {"stock", "label", "--data", folder.toString()};
      List<String> all = new java.util.ArrayList<>(List.of(words));
      RunningBoard.label()
          .properties()
          .forEach(
              e -> all.addAll(List.of("--" + e.getKey().replace('_', '-'), e.getValue().asText())));
      String told = CommandLine.output(all.toArray(String[]::new));
      assertTrue(told.startsWith(made.get("text").asText()), told);
      assertEquals(
          422, board.post("/api/labels", RunningBoard.label().put("keep", true)).statusCode());
      String form = "class=shop-blend&gap_basis=&act=show";
      HttpResponse<String> refused = board.form("/tools/label", form);
      assertEquals(422, refused.statusCode());
      assertTrue(refused.body().contains("per side or across the diameter"), refused.body());
      assertTrue(refused.body().contains("value=\"shop-blend\""));
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_ledger_file_goes_out_and_comes_back_and_counts_once(String name) {
    String url = Databases.fresh(name, folder);
    try (RunningBoard board = RunningBoard.on(url)) {
      String lots = board.get("/api/cabinet").body();
      String ledger = board.get("/api/cabinet/ledger").body();
      assertTrue(ledger.contains("received-007"), ledger);
      ObjectNode body = JSON.createObjectNode().put("ledger", ledger);
      JsonNode again = json(board.post("/api/cabinet/ledger", body));
      assertEquals(0, again.get("new").asInt());
      assertEquals(ledger.split("\n").length, again.get("movements").asInt());
      assertEquals(lots, board.get("/api/cabinet").body());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_ledger_of_the_command_line_is_taken_over_once_and_its_lots_wait_for_their_dates(
      String name) throws Exception {
    Path file = folder.resolve("till.ledger");
    till(file, "receive", "T-1", "30", "r1");
    till(file, "use", "T-1", "0.5", "u1");
    CommandLine.output(
        "stock",
        "receive",
        "--ledger",
        file.toString(),
        "--from",
        "demo-data/stock.csv",
        "--who",
        "Orla");
    till(file, "use", "007", "0.25", "u2");
    try (RunningBoard board = RunningBoard.on(Databases.fresh(name, folder))) {
      double before = lot(board, "007").get("leftMl").asDouble();
      String text = Files.readString(file);
      HttpResponse<String> page = board.upload("/cabinet/ledger", "till.ledger", text);
      assertEquals(200, page.statusCode(), page.body());
      assertTrue(page.body().contains("Lot T-1: it came with the ledger"), page.body());
      ObjectNode body = JSON.createObjectNode().put("ledger", text);
      assertEquals(0, json(board.post("/api/cabinet/ledger", body)).get("new").asInt());
      assertEquals(before - 0.25, lot(board, "007").get("leftMl").asDouble(), 1e-9);
      assertEquals(29.5, lot(board, "T-1").get("leftMl").asDouble(), 1e-9);
      assertEquals("must-not", lot(board, "T-1").get("standing").asText());
      String dates = "newLot=T-1&item=medium-lasting&container=30&expires=2028-06-30&who=Orla";
      assertEquals(303, board.form("/cabinet/receive", dates).statusCode());
      assertEquals(29.5, lot(board, "T-1").get("leftMl").asDouble(), 1e-9);
      assertEquals("usable", lot(board, "T-1").get("standing").asText());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_bottle_that_a_till_took_in_too_counts_once_and_one_above_its_size_is_told(String name)
      throws Exception {
    Path file = folder.resolve("till.ledger");
    String[] came = {
      "stock",
      "receive",
      "--ledger",
      file.toString(),
      "--lot",
      "007",
      "--ml",
      "50",
      "--who",
      "I",
      "--class",
      "medium-lasting"
    };
    CommandLine.output(came);
    try (RunningBoard board = RunningBoard.on(Databases.fresh(name, folder))) {
      ObjectNode body = JSON.createObjectNode().put("ledger", Files.readString(file));
      JsonNode taken = json(board.post("/api/cabinet/ledger", body));
      assertEquals(0, taken.get("new").asInt());
      assertTrue(taken.get("notes").get(0).asText().contains("Lot 007: its opening balance"));
      assertEquals(12.5, lot(board, "007").get("leftMl").asDouble(), 1e-9);
      till(file, "receive", "007", "50", "another name");
      body.put("ledger", Files.readString(file));
      String notes = json(board.post("/api/cabinet/ledger", body)).get("notes").toString();
      String above = "lot 007: 62.5 mL are booked in a container of 50 mL: count it again";
      assertTrue(notes.contains(above), notes);
      assertTrue(board.get("/api/cabinet").body().contains(above));
      assertTrue(board.get("/cabinet").body().contains(above));
    }
  }

  private static void till(Path file, String kind, String lot, String ml, String id) {
    CommandLine.output(
        "stock",
        kind,
        "--ledger",
        file.toString(),
        "--lot",
        lot,
        "--ml",
        ml,
        "--who",
        "Orla",
        "--class",
        "medium-lasting",
        "--movement",
        id);
  }

  private static JsonNode lot(RunningBoard board, String name) {
    JsonNode found = null;
    for (JsonNode lot : json(board.get("/api/cabinet")).get("lots")) {
      found = lot.get("lot").asText().equals(name) ? lot : found;
    }
    return found;
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_sheet_read_again_makes_a_lot_stricter_and_tells_what_differs(String name)
      throws Exception {
    String url = Databases.fresh(name, folder);
    RunningBoard.on(url).close();
    String sheet =
        demo("stock.csv")
            .replace("2027-06-30,cupboard B,2026-01-15,10,20", "2027-06-30,cupboard B,yes,10,34")
            .replace(",2027-11-30,", ",2026-10-31,");
    Path edited = Files.writeString(folder.resolve("edited.csv"), sheet);
    try (RunningBoard board = RunningBoard.withStock(url, edited)) {
      assertEquals("must-not", lot(board, "007").get("standing").asText());
      assertTrue(lot(board, "007").get("because").asText().contains("34 °C"));
      assertEquals("must-not", lot(board, "1E5").get("standing").asText());
      JsonNode notes = json(board.get("/api/cabinet")).get("notes");
      assertEquals(
          "lot 007: warmest it was stored: 20 °C here, 34 °C said now, 34 °C counts",
          notes.get(0).asText());
      assertTrue(
          notes.get(1).asText().contains("printed expiry: 2027-11-30 here"), notes.toString());
      assertEquals(2, notes.size());
      assertTrue(board.get("/cabinet").body().contains(notes.get(0).asText()));
      assertTrue(board.get("/cabinet/tag?lot=007").body().contains("DO NOT USE"));
    }
    // the first sheet again: what it says better counts no more
    try (RunningBoard board = RunningBoard.on(url)) {
      assertEquals("must-not", lot(board, "007").get("standing").asText());
      JsonNode notes = json(board.get("/api/cabinet")).get("notes");
      assertEquals(
          "lot 007: warmest it was stored: 34 °C here, 20 °C said now, 34 °C counts",
          notes.get(0).asText());
    }
  }

  @Test
  void a_sheet_with_another_class_for_a_lot_of_the_cabinet_is_refused_by_its_name()
      throws Exception {
    String url = Databases.fresh("sqlite", folder);
    RunningBoard.on(url).close();
    String sheet = demo("stock.csv").replace("007,medium-lasting", "007,thin-releasable");
    Path edited = Files.writeString(folder.resolve("edited.csv"), sheet);
    InputRefused refused =
        assertThrows(InputRefused.class, () -> RunningBoard.withStock(url, edited));
    String told = refused.problems().get(0).toString();
    assertTrue(told.contains("lot 007 is medium-lasting, not thin-releasable"), told);
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_lot_taken_in_again_by_hand_is_told_as_one_that_is_there(String name) throws Exception {
    Path file = folder.resolve("till.ledger");
    till(file, "receive", "T-1", "30", "r1");
    try (RunningBoard board = RunningBoard.on(Databases.fresh(name, folder))) {
      board.upload("/cabinet/ledger", "till.ledger", Files.readString(file));
      String dates = "newLot=T-1&item=ITEM&container=30&expires=2028-06-30&who=Orla";
      HttpResponse<String> other =
          board.form("/cabinet/receive", dates.replace("ITEM", "thin-releasable"));
      assertEquals(422, other.statusCode());
      assertTrue(other.body().contains("lot T-1 is medium-lasting"), other.body());
      assertEquals("must-not", lot(board, "T-1").get("standing").asText());
      String right = dates.replace("ITEM", "medium-lasting");
      assertEquals(303, board.form("/cabinet/receive", right).statusCode());
      String earlier = right.replace("2028-06-30", "2027-01-31");
      HttpResponse<String> told = board.form("/cabinet/receive", earlier);
      assertEquals(200, told.statusCode());
      assertTrue(told.body().contains("2028-06-30 here, 2027-01-31 said now"), told.body());
      assertTrue(told.body().contains("T-1-2"), told.body());
      assertEquals("must-not", lot(board, "T-1").get("standing").asText());
      assertEquals(30, lot(board, "T-1").get("leftMl").asDouble(), 1e-9);
      assertEquals(422, board.form("/cabinet/receive", right).statusCode());
    }
  }

  @Test
  void an_id_that_stands_for_another_movement_stops_the_whole_ledger() throws Exception {
    Path file = folder.resolve("till.ledger");
    till(file, "receive", "T-1", "30", "r1");
    String first = Files.readString(file);
    Files.delete(file);
    till(file, "receive", "T-1", "20", "r1");
    till(file, "use", "T-1", "1", "u1");
    try (RunningBoard board = board()) {
      ObjectNode body = JSON.createObjectNode();
      assertEquals(200, board.post("/api/cabinet/ledger", body.put("ledger", first)).statusCode());
      body.put("ledger", Files.readString(file));
      assertEquals(422, board.post("/api/cabinet/ledger", body).statusCode());
      assertEquals(30, lot(board, "T-1").get("leftMl").asDouble(), 0);
    }
  }

  @Test
  void what_is_sent_without_a_length_is_refused() throws Exception {
    try (RunningBoard board = board()) {
      java.net.http.HttpRequest request =
          java.net.http.HttpRequest.newBuilder(board.uri("/api/batch"))
              .header("Content-Type", "text/csv")
              .POST(
                  java.net.http.HttpRequest.BodyPublishers.ofInputStream(
                      () -> new java.io.ByteArrayInputStream(new byte[100])))
              .build();
      HttpResponse<String> refused =
          board.client.send(request, HttpResponse.BodyHandlers.ofString());
      assertEquals(411, refused.statusCode(), refused.body());
    }
  }

  @Test
  void an_order_that_holds_depth_and_angle_is_changed_at_the_bench() {
    try (RunningBoard board = board()) {
      ObjectNode body = board.newJob("HL-1");
      ObjectNode order = (ObjectNode) body.get("order");
      order.remove("temperaturePlusMinusC");
      order.put("primer", "primer-solvent");
      String id = json(board.post("/api/jobs", body)).get("id").asText();
      HttpResponse<String> edit = board.form("/job/" + id + "/edit", "version=1&who=Mira");
      String path = edit.headers().firstValue("Location").orElseThrow();
      String page = board.get(path).body();
      assertTrue(page.contains("name=\"bore-4-depth\""), page);
      String saved =
          "version=1&act=change&who=Mira&reference=HL-1&title=cup&ofJob="
              + id
              + "&ofVersion=1&engagement=11&boreMaterial=steel-plain&partMaterial=steel-alloy"
              + "&boreInstrument=bore-gauge-dial&partInstrument=outside-micrometer&temperature=18"
              + "&bore-1=41.966&bore-1-depth=3&bore-1-angle=0&bore-2=41.963&bore-2-depth=9"
              + "&part-1=41.918";
      assertEquals(303, board.form(path, saved).statusCode());
      JsonNode readings = json(board.get("/api/jobs/" + id)).at("/order/bore/readingsMm");
      assertEquals("3", readings.get(0).get("depthMm").asText());
      assertEquals("0", readings.get(0).get("angleDeg").asText());
      assertEquals("41.963", readings.get(1).get("mm").asText());
      assertFalse(readings.get(1).has("angleDeg"));
    }
  }

  @Test
  void without_a_shop_the_counter_says_that_every_time_counts_as_open() {
    try (RunningBoard board = board()) {
      assertFalse(board.get("/counter").body().contains("hours are not known"));
    }
    String url = "jdbc:sqlite:" + folder.resolve("alone.db");
    try (RunningBoard board = RunningBoard.withoutShop(url)) {
      assertTrue(board.get("/counter").body().contains("hours are not known"));
      JsonNode job = board.entered("HL-1");
      assertEquals("HL-1", job.get("reference").asText());
    }
  }
}
