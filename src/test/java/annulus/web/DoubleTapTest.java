package annulus.web;

import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** The same form sent twice by one person does what it does once, and blames nobody. */
class DoubleTapTest extends OneBoard {
  private HttpResponse<String> sent(JsonNode job, String what, String fields) {
    return board.form(path(job) + what, "version=" + job.get("version").asLong() + fields);
  }

  private static String path(JsonNode job) {
    return "/job/" + job.get("id").asText();
  }

  private JsonNode now(JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  private static String location(HttpResponse<String> response) {
    return response.headers().firstValue("Location").orElse("nowhere");
  }

  /** Sends a form twice: the second goes on to the job, and nothing is written by it. */
  private JsonNode twice(JsonNode job, String what, String fields) {
    assertEquals(303, sent(job, what, fields).statusCode(), what);
    JsonNode once = now(job);
    board.clock.forward(Duration.ofMillis(300));
    HttpResponse<String> second = sent(job, what, fields);
    assertEquals(303, second.statusCode(), second.body());
    assertTrue(location(second).endsWith(path(job)), what);
    assertEquals(once.get("changes"), now(job).get("changes"), what);
    return now(job);
  }

  @Test
  void a_double_tap_on_any_button_of_a_job_goes_on_to_the_job() {
    JsonNode job = twice(board.entered("HL-1"), "/state", "&who=Ines&to=in-work");
    job = twice(job, "/closed", "&who=Ines");
    job = twice(job, "/promise", "&who=Ines&promised=2027-04-09T11:00");
    job = twice(job, "/undo", "&who=Ines");
    board.clock.forward(Duration.ofHours(1));
    job = twice(job, "/moved", "&who=Ines");
    assertTrue(job.get("readyAt").isNull(), job.toString());
  }

  @Test
  void from_the_counter_it_goes_on_to_the_counter() {
    JsonNode job = board.entered("HL-1");
    String fields = "&who=Ines&to=in-work&from=counter";
    sent(job, "/state", fields);
    assertTrue(location(sent(job, "/state", fields)).endsWith("/counter"));
  }

  @Test
  void another_person_or_another_change_is_told_that_nothing_was_written() {
    JsonNode job = board.entered("HL-1");
    sent(job, "/closed", "&who=Ines");
    HttpResponse<String> mira = sent(job, "/closed", "&who=Mira");
    assertEquals(409, mira.statusCode());
    assertTrue(mira.body().contains("Somebody else was quicker"), mira.body());
    assertTrue(mira.body().contains("Nothing of yours was written"), mira.body());
    HttpResponse<String> state =
        board.send(
            java.net.http.HttpRequest.newBuilder(board.uri(path(job) + "/state"))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Cookie", "who=Ines")
                .POST(
                    java.net.http.HttpRequest.BodyPublishers.ofString(
                        "version=1&who=Ines&to=waiting-parts")));
    assertEquals(409, state.statusCode());
    assertTrue(state.body().contains("what you sent just now was not"), state.body());
    assertFalse(state.body().contains("Somebody else"), state.body());
  }

  /** From a page left open: the joint was closed at another time than the one that is written. */
  @Test
  void closing_now_half_an_hour_later_is_not_the_same() {
    JsonNode job = board.entered("HL-1");
    sent(job, "/closed", "&who=Ines");
    board.clock.forward(Duration.ofMinutes(30));
    HttpResponse<String> later = sent(job, "/closed", "&who=Ines");
    assertEquals(409, later.statusCode());
    assertTrue(later.body().contains(" changed job HL-1 at Thu 11 Mar 09:30."), later.body());
    assertEquals(409, sent(job, "/closed", "&who=Ines&at=2027-03-11T09:45").statusCode());
    assertEquals(303, sent(job, "/closed", "&who=Ines&at=2027-03-11T09:30").statusCode());
    Instant closed = RunningBoard.MORNING;
    assertEquals(closed.toString(), now(job).get("closedAt").asText());
  }
}
