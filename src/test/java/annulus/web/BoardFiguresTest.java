package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** The figures that are read across the shop: one time for one job, and never one that misleads. */
class BoardFiguresTest extends OneBoard {
  private JsonNode closed() {
    JsonNode job = board.entered("HL-1");
    return json(board.act(job, "closed", act(job, "Mira")));
  }

  private JsonNode put(JsonNode job, String to) {
    return json(board.act(job, "state", act(job, "Ede").put("to", to)));
  }

  private JsonNode collected() {
    JsonNode job = closed();
    board.clock.set(Instant.parse(job.get("readyAt").asText()));
    return put(put(job, "checked"), "collected");
  }

  private JsonNode colder(JsonNode job) {
    ObjectNode body = act(job, "Mira");
    body.set("order", RunningBoard.order("02-good-fit-primed.json").put("temperatureC", 8));
    return json(board.act(job, "order", body));
  }

  private String page(JsonNode job) {
    return board.get("/job/" + job.get("id").asText()).body();
  }

  private String found() {
    return board.get("/jobs?reference=HL-1").body();
  }

  @Test
  void nothing_can_be_promised_of_a_joint_that_the_customer_has() {
    JsonNode job = collected();
    for (String page : new String[] {board.get("/counter").body(), page(job)}) {
      assertTrue(page.contains(">gone<"), page);
      assertFalse(page.contains("can promise"), page);
      assertFalse(page.contains("class=\"hour\""), page);
      assertFalse(page.contains("Promise: "), page);
    }
  }

  @Test
  void a_joint_collected_too_early_shows_from_when_it_is_safe_and_has_the_loud_border() {
    JsonNode job = colder(collected());
    assertEquals("call-customer", job.get("state").asText());
    String hour = Instant.parse(job.get("readyAt").asText()).atZone(board.zone()).toString();
    for (String page : new String[] {board.get("/counter").body(), page(job)}) {
      assertTrue(page.contains("<span class=\"what\">not safe before</span>"), page);
      assertTrue(page.contains("class=\"hour\">" + hour.substring(11, 16)), page);
      assertFalse(page.contains("can promise"), page);
      assertTrue(page.contains("class=\"card call-customer slips\""), page);
    }
    assertTrue(found().contains("not safe; call the customer"), found());
  }

  @Test
  void the_summary_counts_what_stands_under_its_heading() {
    assertTrue(board.get("/counter").body().contains("0 slipping or not safe"));
    colder(collected());
    String counter = board.get("/counter").body();
    assertTrue(counter.contains("1 slipping or not safe"), counter);
    assertTrue(counter.contains("Slipping or not safe: call the customer"), counter);
  }

  @Test
  void a_search_says_of_a_joint_what_its_card_says() {
    JsonNode job = closed();
    assertTrue(found().contains("curing until"), found());
    board.clock.forward(Duration.ofMinutes(5));
    board.act(job, "moved", act(job, "Ines"));
    assertTrue(found().contains("closed, but never safe: STRIP AND REDO"), found());
  }

  @Test
  void a_search_says_that_a_job_got_some_of_a_lot_that_is_held_back() {
    closed();
    ObjectNode use = RunningBoard.JSON.createObjectNode().put("who", "Orla").put("lot", "007");
    board.post("/api/cabinet/movements", use.put("kind", "use").put("ml", 0.5).put("job", "HL-1"));
    ObjectNode hold = RunningBoard.JSON.createObjectNode().put("who", "Orla").put("lot", "007");
    board.post("/api/cabinet/movements", hold.put("kind", "hold-back").put("reason", "recalled"));
    assertTrue(found().contains("got some of a lot that is held back"), found());
  }

  private String promises(JsonNode job) {
    String page = page(job);
    int at = page.indexOf("class=\"handback\"");
    return page.substring(at, page.indexOf("</p>", at)) + title(page);
  }

  private static String title(String page) {
    int at = page.lastIndexOf("<title>Job HL-1");
    return at < 0 ? "" : page.substring(at, page.indexOf("</title>", at));
  }

  private static String shopDay(Instant at) {
    return at.atZone(java.time.ZoneId.of("Europe/Vienna")).getDayOfMonth() + " Mar";
  }

  @Test
  void a_recorded_promise_is_the_one_that_the_answer_and_its_picture_tell() {
    JsonNode job = closed();
    Instant first = Instant.parse(job.get("promisableAt").asText());
    Instant late = first.plus(Duration.ofDays(7));
    job = json(board.act(job, "promise", act(job, "Ede").put("promised", late.toString())));
    String told = promises(job);
    assertTrue(
        told.contains("Promise: Thu " + shopDay(late)) || told.contains(shopDay(late)), told);
    assertFalse(told.contains(shopDay(first)), told);
    assertTrue(title(page(job)).contains(shopDay(late)), told);
  }

  @Test
  void a_cured_joint_tells_the_time_that_can_be_promised_and_none_that_is_past() {
    JsonNode job = closed();
    Instant first = Instant.parse(job.get("promisableAt").asText());
    board.clock.set(first.plus(Duration.ofDays(7)));
    job = json(board.get("/api/jobs/" + job.get("id").asText()));
    Instant now = Instant.parse(job.get("promisableAt").asText());
    String told = promises(job);
    assertTrue(told.contains("Promise: "), told);
    assertTrue(told.contains(shopDay(now)), told);
    assertFalse(told.contains("Promise: Sat " + shopDay(first)), told);
    assertFalse(title(page(job)).contains(shopDay(first)), told);
  }
}
