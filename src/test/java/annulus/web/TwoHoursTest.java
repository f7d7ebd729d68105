package annulus.web;

import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** In the hour that the clock shows twice it is asked which one is meant, on a page. */
class TwoHoursTest extends OneBoard {
  private JsonNode inTheNight() {
    board.clock.set(Instant.parse("2027-10-30T22:00:00Z"));
    JsonNode job = board.entered("HL-1");
    board.clock.set(Instant.parse("2027-10-31T07:00:00Z"));
    return job;
  }

  private JsonNode now(JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  @Test
  void the_two_hours_are_offered_and_each_is_taken_as_it_is_meant() {
    JsonNode job = inTheNight();
    String closed = "/job/" + job.get("id").asText() + "/closed";
    HttpResponse<String> asked = board.form(closed, "version=1&who=Ines&at=2027-10-31T02:30");
    assertEquals(422, asked.statusCode());
    String page = asked.body();
    assertTrue(page.contains("<form method=\"post\" action=\"" + closed + "\">"), page);
    assertTrue(page.contains("type=\"hidden\" name=\"version\" value=\"1\""), page);
    assertTrue(page.contains("type=\"hidden\" name=\"who\" value=\"Ines\""), page);
    assertFalse(page.contains("type=\"hidden\" name=\"at\""), page);
    assertTrue(page.contains("name=\"at\" value=\"2027-10-31T02:30+02:00\""), page);
    assertTrue(page.contains("The first 02:30<"), page);
    assertTrue(page.contains("name=\"at\" value=\"2027-10-31T02:30+01:00\""), page);
    assertTrue(page.contains("The second 02:30, 1 h later<"), page);
    assertTrue(now(job).get("closedAt").isNull(), "nothing was written yet");
    String second = "version=1&who=Ines&at=2027-10-31T02:30%2B01:00";
    assertEquals(303, board.form(closed, second).statusCode());
    assertEquals("2027-10-31T01:30:00Z", now(job).get("closedAt").asText());
  }

  @Test
  void an_hour_shown_once_is_not_asked_about_and_one_left_out_is_refused() {
    JsonNode job = inTheNight();
    String closed = "/job/" + job.get("id").asText() + "/closed";
    assertEquals(303, board.form(closed, "version=1&who=I&at=2027-10-31T03:00").statusCode());
    String wanted = board.get("/job/" + job.get("id").asText() + "?wanted=2028-03-26T02:30").body();
    assertTrue(wanted.contains("does not exist in Europe/Vienna"), wanted);
  }

  @Test
  void a_wish_in_that_hour_is_asked_about_in_the_address() {
    JsonNode job = inTheNight();
    String page =
        board.get("/job/" + job.get("id").asText() + "?wanted=2027-10-31T02:30&ways=1").body();
    assertTrue(page.contains("<form method=\"get\""), page);
    assertTrue(page.contains("type=\"hidden\" name=\"ways\" value=\"1\""), page);
  }

  @Test
  void the_bench_asks_which_of_the_two_beside_the_start() {
    String bench = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
    String form =
        "who=Mira&act=book&reference=HL-7&engagement=11&boreMaterial=steel-plain"
            + "&partMaterial=steel-alloy&boreInstrument=bore-gauge-dial&bore-1=41.966"
            + "&partInstrument=outside-micrometer&temperature=18&part-1=41.918";
    String twice = form + "&start=2027-10-31T02:30";
    HttpResponse<String> asked = board.form(bench, "version=1&" + twice);
    assertEquals(422, asked.statusCode());
    String page = asked.body();
    assertTrue(page.contains("name=\"startHour\""), page);
    assertTrue(page.contains("value=\"2027-10-31T02:30+01:00\">the second 02:30"), page);
    String other = form + "&start=2027-11-02T10:00&startHour=2027-10-31T02:30%2B01:00";
    assertFalse(board.form(bench + "/save", "version=2&" + other).body().contains("look again"));
    String meant = "version=3&" + twice + "&startHour=2027-10-31T02:30%2B01:00";
    String job = board.form(bench, meant).headers().firstValue("Location").orElseThrow();
    JsonNode entered = json(board.get("/api/jobs/" + job.substring("/job/".length())));
    assertEquals("2027-10-31T01:30:00Z", entered.at("/order/start").asText());
  }

  @Test
  void a_planned_start_in_that_hour_stays_the_one_that_was_meant() {
    board.clock.set(Instant.parse("2027-10-30T22:00:00Z"));
    ObjectNode body = board.newJob("HL-9");
    ((ObjectNode) body.get("order")).put("start", "2027-10-31T02:30+01:00");
    String job = "/job/" + json(board.post("/api/jobs", body)).get("id").asText();
    HttpResponse<String> draft = board.form(job + "/edit", "version=1&who=Ede");
    String bench = draft.headers().firstValue("Location").orElseThrow();
    HttpResponse<String> changed = board.form(bench, "act=change&who=Ede" + board.typed(bench));
    assertEquals(303, changed.statusCode(), changed.body());
    JsonNode now = json(board.get("/api" + job.replace("job", "jobs")));
    assertEquals("2027-10-31T01:30:00Z", now.at("/order/start").asText());
    assertEquals(2, now.get("version").asInt());
  }
}
