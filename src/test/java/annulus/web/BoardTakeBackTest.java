package annulus.web;

import static annulus.web.RunningBoard.JSON;
import static annulus.web.RunningBoard.json;
import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.store.Databases;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A slip at the cabinet: it is seen at once and taken back whole. */
class BoardTakeBackTest {
  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private RunningBoard board() {
    return RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
  }

  private static JsonNode lot(RunningBoard board) {
    for (JsonNode lot : json(board.get("/api/cabinet")).get("lots")) {
      if (lot.get("lot").asText().equals("NEW-1")) {
        return lot;
      }
    }
    throw new IllegalStateException("no lot NEW-1");
  }

  /** Sealed, 50 mL, good for years. */
  private static JsonNode received(RunningBoard board) {
    board.form(
        "/cabinet/receive",
        "who=Orla&newLot=NEW-1&item=medium-lasting&container=50&expires=2029-06-30");
    return lot(board);
  }

  private static String use(RunningBoard board, String id, String more) {
    HttpResponse<String> done =
        board.form(
            "/cabinet/move", "who=Orla&kind=USE&lot=NEW-1&ml=44&reason=stocktake&id=" + id + more);
    return done.headers().firstValue("Location").orElse(done.body());
  }

  private static HttpResponse<String> takeBack(RunningBoard board, String id) {
    return board.form("/cabinet/take-back", "who=Orla&movement=" + id);
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_use_that_did_not_take_place_leaves_the_lot_sealed_and_no_job_with_it(String name) {
    try (RunningBoard board = RunningBoard.on(Databases.fresh(name, folder))) {
      JsonNode sealed = received(board);
      board.entered("HL-1");
      String recorded = use(board, "u1", "&job=HL-1");
      assertEquals("/cabinet?recorded=u1", recorded);
      String page = board.get(recorded).body();
      assertTrue(page.contains("✓ Recorded: Orla: use 44 mL, lot NEW-1 for job HL-1"), page);
      assertTrue(page.indexOf("Take it back") < page.indexOf("lots may be used today"), page);
      JsonNode open = lot(board);
      assertFalse(open.equals(sealed), "it counts as opened");
      HttpResponse<String> back = takeBack(board, "u1");
      assertEquals(
          "/cabinet?recorded=taken-back-u1", back.headers().firstValue("Location").orElseThrow());
      assertEquals(sealed, lot(board), "as if it had never been");
      String after = board.get("/cabinet?recorded=taken-back-u1").body();
      assertTrue(after.contains("✓ Recorded: Orla: took back: use 44 mL, lot NEW-1"), after);
      assertTrue(after.contains("(taken back later)"), after);
      assertEquals(0, json(board.get("/api/cabinet/uses?lot=NEW-1")).get("uses").size());
      assertEquals(0, json(board.get("/api/cabinet/uses?job=HL-1")).get("uses").size());
      board.form("/cabinet/hold-back", "who=Orla&lot=NEW-1&id=h1&reason=recalled");
      JsonNode job = json(board.get("/api/jobs?reference=HL-1")).at("/jobs/0");
      assertEquals("[]", job.get("heldBack").toString());
      assertEquals(303, takeBack(board, "u1").statusCode(), "twice is once");
      assertEquals(422, takeBack(board, "u2").statusCode(), "nothing of that name");
    }
  }

  @Test
  void only_the_last_movement_of_a_lot_is_taken_back_as_a_count_rests_on_those_before() {
    try (RunningBoard board = board()) {
      received(board);
      use(board, "u1", "");
      board.form("/cabinet/move", "who=Orla&kind=COUNTED&lot=NEW-1&ml=44&reason=count&id=c1");
      HttpResponse<String> early = takeBack(board, "u1");
      assertEquals(422, early.statusCode());
      assertTrue(early.body().contains("the last movement of lot NEW-1, c1"), early.body());
      assertEquals(303, takeBack(board, "c1").statusCode());
      assertEquals(303, takeBack(board, "u1").statusCode());
      assertEquals(50, lot(board).get("leftMl").asInt());
      HttpResponse<String> arrival = takeBack(board, "received-NEW-1");
      assertEquals(422, arrival.statusCode(), arrival.body());
    }
  }

  @Test
  void a_count_that_is_as_booked_says_that_nothing_was_recorded() {
    try (RunningBoard board = board()) {
      received(board);
      HttpResponse<String> same =
          board.form("/cabinet/move", "who=O&kind=COUNTED&lot=NEW-1&ml=50&reason=count&id=c1");
      String location = same.headers().firstValue("Location").orElseThrow();
      assertTrue(board.get(location).body().contains("lot NEW-1 has 50 mL, as booked. Nothing"));
    }
  }

  @Test
  void what_the_board_takes_back_goes_into_another_cabinet_with_its_ledger() {
    String ledger;
    try (RunningBoard board = board()) {
      received(board);
      use(board, "u1", "");
      takeBack(board, "u1");
      ledger = board.get("/cabinet/ledger").body();
      assertTrue(ledger.contains("\ttake-back\t"), ledger);
    }
    try (RunningBoard other = RunningBoard.on("jdbc:sqlite:" + folder.resolve("other.db"))) {
      received(other);
      assertEquals(200, other.upload("/cabinet/ledger", "l.txt", ledger).statusCode());
      assertEquals(50, lot(other).get("leftMl").asInt());
      assertEquals(0, json(other.get("/api/cabinet/uses?lot=NEW-1")).get("uses").size());
    }
  }

  @Test
  void the_interface_takes_back_a_movement_of_the_lot_that_is_named() {
    try (RunningBoard board = board()) {
      received(board);
      use(board, "u1", "");
      ObjectNode back = JSON.createObjectNode().put("who", "Orla").put("kind", "take-back");
      back.put("lot", "007").put("takesBack", "u1");
      assertEquals(422, board.post("/api/cabinet/movements", back).statusCode());
      JsonNode done = json(board.post("/api/cabinet/movements", back.put("lot", "NEW-1")));
      assertEquals(50, done.get("leftMl").asInt(), done.toString());
    }
  }

  @Test
  void the_enter_key_records_nothing() {
    try (RunningBoard board = board();
        Browser browser = Browser.start("take-back")) {
      received(board);
      Page page = browser.screen(board, ColorScheme.LIGHT);
      page.navigate("/who");
      page.getByLabel("Your name or initials").fill("Orla");
      page.keyboard().press("Enter");
      page.waitForURL("**/counter");
      page.navigate("/cabinet");
      page.locator("#lot").selectOption("NEW-1");
      page.locator("#ml").fill("44");
      page.locator("#reason").fill("stocktake");
      page.keyboard().press("Enter");
      page.locator("#ml").press("Enter");
      assertEquals(50, lot(board).get("leftMl").asInt());
      assertThat(page.locator("#ml")).hasValue("44");
      button(page, "Counted: correct").click();
      assertThat(page.getByRole(AriaRole.STATUS)).containsText("correct -6 mL, lot NEW-1");
      browser.look(page, "recorded");
      button(page, "Take it back: it did not take place").first().click();
      assertThat(page.getByRole(AriaRole.STATUS)).containsText("50 mL left of lot NEW-1");
      assertEquals(List.of(), browser.errors);
    }
  }

  private static Locator button(Page page, String name) {
    return page.getByRole(
        AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }
}
