package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Primer that has been on for long does not become fresh by closing the joint. */
class BoardPrimerTest {
  private static final Instant START = Instant.parse("2027-03-30T08:00:00Z");

  @TempDir Path folder;

  private RunningBoard board() {
    RunningBoard board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
    board.clock.set(START);
    return board;
  }

  private static ObjectNode member(String instrument, double first, double second) {
    ObjectNode member = RunningBoard.JSON.createObjectNode().put("material", "stainless-304");
    member.put("instrument", instrument).putArray("readingsMm").add(first).add(second);
    return member;
  }

  /** Two slow faces whose primer has been on for five minutes. */
  private static ObjectNode primed(double celsius) {
    ObjectNode order = RunningBoard.JSON.createObjectNode().put("format", 1);
    order.set("bore", member("bore-gauge-dial", 41.966, 41.963));
    order.set("part", member("outside-micrometer", 41.918, 41.919));
    order.put("engagementMm", 11).put("consequence", "injury").put("zone", "Europe/Vienna");
    order.put("temperatureC", celsius).put("temperaturePlusMinusC", 1.5);
    order.putObject("primer").put("id", "primer-dry").put("minutesOnPart", 5);
    return order;
  }

  private static JsonNode entered(RunningBoard board, ObjectNode order) {
    ObjectNode job = board.newJob("HL-1");
    job.set("order", order);
    return json(board.post("/api/jobs", job));
  }

  private static JsonNode now(RunningBoard board, JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  @Test
  void primer_is_as_old_when_the_joint_is_closed_as_it_was_a_moment_before() {
    try (RunningBoard board = board()) {
      JsonNode job = entered(board, primed(18));
      assertTrue(job.get("decision").asText().contains("with solvent-free"), job.toString());
      board.clock.forward(Duration.ofHours(30));
      JsonNode before = now(board, job);
      assertTrue(before.get("decision").asText().contains("no primer"), before.toString());
      JsonNode closed = json(board.act(job, "closed", act(job, "Mira")));
      assertEquals(before.get("decision"), closed.get("decision"));
      assertEquals(30 * 60 + 5, closed.at("/order/primer/minutesOnPart").asInt());
      Instant preview = Instant.parse(before.get("readyAt").asText());
      Instant ready = Instant.parse(closed.get("readyAt").asText());
      assertFalse(ready.isBefore(preview.minusSeconds(60)), preview + " " + ready);
      JsonNode again = json(board.act(closed, "state", act(closed, "Mira").put("to", "in-work")));
      board.clock.forward(Duration.ofMinutes(10));
      again = json(board.act(again, "closed", act(again, "Mira")));
      assertEquals(30 * 60 + 15, again.at("/order/primer/minutesOnPart").asInt());
    }
  }

  @Test
  void primer_is_no_fresher_where_the_joint_was_closed_before_its_planned_start() {
    try (RunningBoard board = board()) {
      JsonNode job = entered(board, primed(18).put("start", START.plusSeconds(7200).toString()));
      JsonNode closed = json(board.act(job, "closed", act(job, "Mira")));
      assertEquals(5, closed.at("/order/primer/minutesOnPart").asInt(), closed.toString());
    }
  }

  @Test
  void primer_that_is_yet_to_be_put_on_does_not_age() {
    try (RunningBoard board = board()) {
      ObjectNode order = primed(18);
      ((ObjectNode) order.get("primer")).put("minutesOnPart", 0);
      JsonNode job = entered(board, order);
      board.clock.forward(Duration.ofHours(30));
      JsonNode closed = json(board.act(job, "closed", act(job, "Mira")));
      assertTrue(closed.get("decision").asText().contains("with solvent-free"), closed.toString());
    }
  }

  @Test
  void a_page_left_open_does_not_close_what_wants_fresh_primer_by_now_and_says_so() {
    try (RunningBoard board = board()) {
      JsonNode job = entered(board, primed(12));
      String page = board.get("/job/" + job.get("id").asText()).body();
      assertTrue(page.contains("Joint closed now"), page);
      board.clock.forward(Duration.ofHours(30));
      String old = "The primer went on too long ago";
      String later = board.get("/job/" + job.get("id").asText()).body();
      assertFalse(later.contains("Joint closed now"), later);
      assertTrue(later.contains(old), later);
      HttpResponse<String> told =
          board.form("/job/" + job.get("id").asText() + "/closed", "version=1&who=Mira");
      assertEquals(422, told.statusCode(), told.body());
      assertTrue(told.body().contains(old), told.body());
      assertTrue(now(board, job).get("closedAt").isNull());
      ObjectNode earlier = act(job, "Mira").put("at", START.plusSeconds(600).toString());
      JsonNode closed = json(board.act(job, "closed", earlier));
      assertEquals(15, closed.at("/order/primer/minutesOnPart").asInt(), closed.toString());
    }
  }

  /** The order opened at the bench and sent as it stands there, with a name for the bore. */
  private static String renamed(RunningBoard board, JsonNode job) {
    HttpResponse<String> draft =
        board.form("/job/" + job.get("id").asText() + "/edit", "version=1&who=Ana");
    String path = draft.headers().firstValue("Location").orElseThrow();
    String form = "act=change&who=Ana" + board.typed(path);
    HttpResponse<String> changed = board.form(path, form + "&bore=hub");
    assertEquals(303, changed.statusCode(), changed.body());
    return form;
  }

  @Test
  void a_late_joint_whose_order_is_changed_keeps_its_old_primer() {
    try (RunningBoard board = board()) {
      JsonNode job = entered(board, primed(18));
      board.clock.forward(Duration.ofHours(30));
      JsonNode before = now(board, job);
      String form = renamed(board, job);
      assertTrue(form.contains("&primerMinutes=1805"), form);
      JsonNode changed = now(board, job);
      assertEquals(2, changed.get("version").asInt());
      assertEquals(before.get("decision"), changed.get("decision"));
      assertEquals(1805, changed.at("/order/primer/minutesOnPart").asInt());
    }
  }

  @Test
  void a_joint_booked_for_later_keeps_its_planned_closing_when_its_order_is_changed() {
    try (RunningBoard board = board()) {
      JsonNode job = entered(board, primed(18).put("start", "2027-04-02T15:30"));
      String form = renamed(board, job);
      assertTrue(form.contains("&start=2027-04-02T15%3A30"), form);
      JsonNode changed = now(board, job);
      assertEquals(2, changed.get("version").asInt());
      assertEquals(job.get("start"), changed.get("start"));
      assertEquals(job.get("promisableAt"), changed.get("promisableAt"));
      assertEquals(5, changed.at("/order/primer/minutesOnPart").asInt());
    }
  }
}
