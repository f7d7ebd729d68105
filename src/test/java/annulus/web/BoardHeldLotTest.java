package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.exchange.InputRefused;
import annulus.store.Databases;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A lot held back in the web cabinet, and the open jobs that got some of it. */
class BoardHeldLotTest {
  private static final String REASON = "recalled by its maker";

  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private static ObjectNode movement(String kind, String lot) {
    return new ObjectMapper()
        .createObjectNode()
        .put("who", "Ines")
        .put("kind", kind)
        .put("lot", lot);
  }

  private static HttpResponse<String> send(RunningBoard board, ObjectNode movement) {
    return board.post("/api/cabinet/movements", movement);
  }

  private static HttpResponse<String> use(RunningBoard board, String job, String reason) {
    ObjectNode use = movement("use", "007").put("ml", 0.2).put("job", job);
    return send(board, reason.isEmpty() ? use : use.put("reason", reason));
  }

  private static ObjectNode holdBack(String id) {
    return movement("hold-back", "007").put("reason", REASON).put("id", id);
  }

  private static JsonNode lot(RunningBoard board) {
    return json(board.get("/api/cabinet")).get("lots").get(0);
  }

  private static JsonNode job(RunningBoard board, JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  @ParameterizedTest
  @MethodSource("databases")
  void an_open_job_that_got_some_of_it_says_so_until_it_is_cleared(String name) {
    String url = Databases.fresh(name, folder);
    try (RunningBoard board = RunningBoard.on(url)) {
      JsonNode job = board.entered("HL-101");
      board.entered("HL-102");
      JsonNode part = board.entered("HL-101-2");
      assertEquals(201, use(board, "HL-101", "").statusCode());
      assertEquals(0, job(board, job).get("heldBack").size());
      assertEquals(201, send(board, holdBack("h1")).statusCode());
      assertEquals(201, send(board, holdBack("h1")).statusCode(), "the same again");
      JsonNode held = job(board, job).at("/heldBack");
      assertEquals(1, held.size());
      assertEquals("007", held.at("/0/lot").asText());
      assertEquals(REASON, held.at("/0/reason").asText());
      assertEquals("HL-101", job(board, part).at("/heldBack/0/job").asText());
      String day = held.at("/0/day").asText();
      String caution =
          "It got some of lot 007, which has been held back since " + day + " by Ines: " + REASON;
      String counter = board.get("/counter").body();
      assertTrue(counter.contains(caution + ". Somebody must look at the hand-back"), counter);
      assertTrue(
          counter.contains("Job HL-101, which may be this one, got some of lot 007"), counter);
      assertEquals(3, counter.split("Lot held back", -1).length, "HL-102 got nothing of it");
      assertTrue(board.get("/job/" + job.get("id").asText()).body().contains(caution));
    }
    try (RunningBoard board = RunningBoard.on(url)) {
      assertEquals("held-back", lot(board).at("/against/0").asText());
      assertEquals("h1", lot(board).at("/heldBack/0/id").asText());
      ObjectNode clear = movement("clear", "007").put("reason", "another batch");
      assertEquals(201, send(board, clear).statusCode());
      assertEquals(422, send(board, clear).statusCode(), "nothing holds it back");
      assertFalse(board.get("/counter").body().contains("Lot held back"));
      assertEquals("[]", lot(board).get("heldBack").toString());
      assertTrue(board.get("/cabinet").body().contains("Ines: cleared lot 007 (another batch)"));
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_use_of_it_is_refused_with_who_when_and_why(String name) {
    try (RunningBoard board = RunningBoard.on(Databases.fresh(name, folder))) {
      send(board, holdBack("h1"));
      HttpResponse<String> refused = use(board, "HL-101", "");
      assertEquals(422, refused.statusCode());
      assertTrue(refused.body().contains("by Ines: " + REASON + ". Take another lot"));
      assertEquals(201, use(board, "HL-101", "used at eight, before that").statusCode());
      board.clock.forward(java.time.Duration.ofDays(1));
      ObjectNode next = movement("use", "007").put("ml", 0.2).put("reason", "all the same");
      assertEquals(422, send(board, next.put("witness", "W-3")).statusCode());
      assertEquals(422, send(board, holdBack("h2").put("ml", 1)).statusCode());
      assertEquals(422, send(board, movement("hold-back", "007")).statusCode());
      assertEquals(404, send(board, movement("hold-back", "0O7").put("reason", "x")).statusCode());
      assertFalse(json(board.get("/api/cabinet/plan")).toString().contains("\"lot\":\"007\""));
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void it_goes_into_a_ledger_file_and_comes_back_by_one(String name) throws Exception {
    Path elsewhere = folder.resolve("other.db");
    String ledger;
    try (RunningBoard board = RunningBoard.on(Databases.fresh(name, folder))) {
      use(board, "HL-101", "");
      send(board, holdBack("h1"));
      send(board, movement("clear", "007").put("reason", "another batch"));
      send(board, holdBack("h2").put("reason", "seal broken"));
      ledger = board.get("/cabinet/ledger").body();
    }
    try (RunningBoard board = RunningBoard.on("jdbc:sqlite:" + elsewhere)) {
      String page = board.upload("/cabinet/ledger", "board.ledger", ledger).body();
      assertTrue(page.contains("by Ines: seal broken; jobs that got it: HL-101"), page);
      assertFalse(page.contains(REASON), page);
      assertEquals("h2", lot(board).at("/heldBack/0/id").asText());
      assertEquals(1, lot(board).get("heldBack").size());
    }
  }

  @Test
  void a_sheet_holds_back_once_and_what_was_cleared_here_stays_cleared() throws Exception {
    String url = Databases.fresh("sqlite", folder);
    StringBuilder text = new StringBuilder();
    for (String line : Files.readString(Path.of("demo-data/stock.csv")).split("\n")) {
      String cells = line.startsWith("007,") ? ",seen frozen,2026-11-02" : ",,";
      boolean head = line.startsWith("lot,");
      text.append(line).append(head ? ",held_back,held_back_on" : cells).append('\n');
    }
    Path sheet = Files.writeString(folder.resolve("held.csv"), text);
    try (RunningBoard board = RunningBoard.withStock(url, sheet)) {
      assertEquals("seen frozen", lot(board).at("/heldBack/0/reason").asText());
      send(board, movement("clear", "007").put("reason", "thermometer was wrong"));
    }
    try (RunningBoard board = RunningBoard.withStock(url, sheet)) {
      assertEquals("[]", lot(board).get("heldBack").toString());
    }
  }

  @Test
  void a_sheet_that_holds_a_day_to_come_stops_the_board_before_anything_is_taken_in()
      throws Exception {
    String url = Databases.fresh("sqlite", folder);
    String slip = Files.readString(Path.of("demo-data/stock.csv"));
    Path sheet = folder.resolve("slip.csv");
    Files.writeString(sheet, slip.replace(",2026-10-05,", ",2027-03-12,"));
    InputRefused refused =
        assertThrows(InputRefused.class, () -> RunningBoard.withStock(url, sheet));
    String told = refused.problems().get(0).toString();
    assertTrue(told.contains("slip.csv:2:7: opened: 2027-03-12 is still to come"), told);
  }

  @Test
  void it_is_held_back_and_cleared_with_buttons_as_large_as_a_gloved_finger() {
    try (RunningBoard board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
        Browser browser = Browser.start("held")) {
      JsonNode job = board.entered("HL-101");
      json(board.act(job, "closed", act(job, "Mira")));
      use(board, "HL-101", "");
      Page page = browser.screen(board, ColorScheme.LIGHT);
      page.navigate("/cabinet");
      page.locator("a[href='/cabinet/lot?lot=007#held']").click();
      page.locator("#hold-back-reason").fill(REASON);
      page.locator("#hold-back-who").fill("Ines");
      page.locator("text=‖ Hold it back").click();
      page.waitForSelector("text=✓ Clear for use");
      browser.look(page, "lot");
      for (Object height : (List<?>) page.evaluate(HEIGHTS)) {
        assertTrue(((Number) height).doubleValue() >= 64, "a button of " + height + " px");
      }
      assertTrue(page.locator("main").textContent().contains("‖ held back: must not be used"));
      page.navigate("/cabinet");
      browser.look(page, "cabinet");
      page.navigate("/counter");
      assertTrue(page.locator(".slip").textContent().contains("Lot held back"));
      browser.look(page, "counter");
      page.navigate("/job/" + job.get("id").asText());
      browser.look(page, "job");
      page.navigate("/cabinet/lot?lot=007");
      page.locator("input[id^=clear-][id$=reason]").fill("another batch");
      page.locator("text=✓ Clear for use").click();
      page.waitForSelector("text=! use soon");
      page.navigate("/cabinet/tag?lot=007");
      assertEquals(List.of(), browser.errors);
    }
  }

  private static final String HEIGHTS =
      "[...document.querySelectorAll('main button, main .button')].map(e =>"
          + " e.getBoundingClientRect().height)";
}
