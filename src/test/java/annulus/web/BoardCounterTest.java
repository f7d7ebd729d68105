package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** What a tired service writer may print, promise or type wrong at the counter. */
class BoardCounterTest extends OneBoard {
  private JsonNode promised() {
    JsonNode job = board.entered("HL-1");
    job = json(board.act(job, "closed", act(job, "Mira")));
    String first = job.get("promisableAt").asText();
    return json(board.act(job, "promise", act(job, "Ede").put("promised", first)));
  }

  private HttpResponse<String> page(JsonNode job, String what) {
    return board.get("/job/" + job.get("id").asText() + what);
  }

  private HttpResponse<String> closed(JsonNode job, String at) {
    return board.act(job, "closed", act(job, "Mira").put("at", at));
  }

  /** A tag said DO NOT USE BEFORE this afternoon on a joint that had to be stripped. */
  @Test
  void a_joint_that_is_never_safe_gets_no_tag_and_no_calendar_entry() {
    JsonNode job = promised();
    assertEquals(200, page(job, "/tag").statusCode());
    assertEquals(200, page(job, "/calendar.ics").statusCode());
    board.clock.forward(Duration.ofMinutes(5));
    job = json(board.act(job, "moved", act(job, "Mira")));
    HttpResponse<String> tag = page(job, "/tag");
    assertEquals(422, tag.statusCode());
    assertTrue(tag.body().contains("Take an earlier tag off the part"), tag.body());
    assertFalse(tag.body().contains("DO NOT USE BEFORE"));
    assertEquals(422, page(job, "/calendar.ics").statusCode());
    assertFalse(page(job, "").body().contains("/tag\""), "no way leads to a tag");
  }

  @Test
  void a_tag_of_a_promise_that_can_t_be_kept_says_the_time_that_can() {
    JsonNode job = promised();
    board.clock.set(Instant.parse(job.get("promisedAt").asText()).plusSeconds(3600));
    job = json(board.get("/api/jobs/" + job.get("id").asText()));
    assertTrue(job.get("slips").asBoolean(), job.toString());
    Instant kept = Instant.parse(job.get("promisableAt").asText());
    String tag = page(job, "/tag").body();
    String hour = kept.atZone(board.zone()).toLocalTime().toString();
    assertTrue(tag.contains("<p class=\"hour\">" + hour), tag);
    assertTrue(tag.contains(kept.atZone(board.zone()).getDayOfMonth() + " March"), tag);
    assertEquals(422, page(job, "/calendar.ics").statusCode());
    assertFalse(page(job, "").body().contains("Ready on "), "nothing to read out to the customer");
  }

  /** Closed "last Thursday" instead of today: the joint was wet and the board called it cured. */
  @Test
  void a_joint_can_t_have_been_closed_days_before_the_job_was_known() {
    JsonNode job = board.entered("HL-1");
    HttpResponse<String> typo = closed(job, "2027-03-04T09:00:00Z");
    assertEquals(422, typo.statusCode());
    assertTrue(typo.body().contains("Closed Thu 4 Mar 10:00?"), typo.body());
    assertTrue(typo.body().contains("change the start in the order first"), typo.body());
    assertEquals(422, closed(job, "2027-03-10T22:59:59Z").statusCode(), "the day before");
    assertEquals(200, closed(job, "2027-03-10T23:00:00Z").statusCode(), "the same day in Vienna");
  }

  @Test
  void an_order_whose_start_says_so_may_have_been_closed_before_it_was_entered() {
    ObjectNode body = board.newJob("HL-1");
    ((ObjectNode) body.get("order")).put("start", "2027-03-09T16:00");
    JsonNode job = json(board.post("/api/jobs", body));
    assertEquals(422, closed(job, "2027-03-08T09:00:00Z").statusCode());
    JsonNode done = json(closed(job, "2027-03-09T14:30:00Z"));
    assertEquals("2027-03-09T14:30:00Z", done.get("closedAt").asText());
    assertTrue(page(job, "").body().contains("Joint closed Tue 9 Mar 15:30."));
  }

  @Test
  void a_joint_taken_apart_can_t_have_been_closed_again_before_that() {
    JsonNode job = board.entered("HL-1");
    job = json(board.act(job, "closed", act(job, "Mira")));
    board.clock.forward(Duration.ofHours(30));
    job = json(board.act(job, "state", act(job, "Mira").put("to", "in-work")));
    assertEquals(422, closed(job, "2027-03-11T08:29:59Z").statusCode());
    HttpResponse<String> before = closed(job, "2027-03-12T14:00:00Z");
    assertEquals(422, before.statusCode(), "after the first closing, before it came apart");
    assertTrue(before.body().contains("It was taken apart Fri 12 Mar 15:30."), before.body());
    assertEquals(200, closed(job, "2027-03-12T14:30:00Z").statusCode());
  }

  @Test
  void a_state_before_the_first_closing_does_not_hold_up_a_time_typed_later() {
    JsonNode job = board.entered("HL-1");
    board.clock.forward(Duration.ofHours(2));
    job = json(board.act(job, "state", act(job, "Mira").put("to", "in-work")));
    assertEquals(200, closed(job, "2027-03-11T09:00:00Z").statusCode());
  }

  private JsonNode booked(String start) {
    ObjectNode body = board.newJob("HL-1");
    ((ObjectNode) body.get("order")).put("start", start);
    return json(board.post("/api/jobs", body));
  }

  private JsonNode put(JsonNode job, String to) {
    return json(board.act(job, "state", act(job, "Mira").put("to", to)));
  }

  @Test
  void a_joint_that_waited_for_its_parts_can_t_have_been_closed_before_they_came() {
    JsonNode job = put(booked("2027-03-20T10:00"), "waiting-parts");
    board.clock.set(Instant.parse("2027-03-20T08:30:00Z"));
    job = put(job, "in-work");
    board.clock.set(Instant.parse("2027-03-20T09:10:00Z"));
    HttpResponse<String> slip = closed(job, "2027-03-13T09:05:00Z");
    assertEquals(422, slip.statusCode(), slip.body());
    assertTrue(slip.body().contains("was waiting parts until Sat 20 Mar 09:30."), slip.body());
    assertTrue(slip.body().contains("take that change back first"), slip.body());
    assertEquals(422, closed(job, "2027-03-20T08:29:59Z").statusCode());
    assertEquals(200, closed(job, "2027-03-20T08:30:00Z").statusCode());
  }

  @Test
  void a_booked_joint_can_t_have_been_closed_on_a_day_before_it_was_put_in_work() {
    JsonNode job = booked("2027-03-20T10:00");
    board.clock.set(Instant.parse("2027-03-20T08:30:00Z"));
    job = put(job, "in-work");
    HttpResponse<String> slip = closed(job, "2027-03-19T22:59:59Z");
    assertTrue(slip.body().contains("was booked until Sat 20 Mar 09:30."), slip.body());
    JsonNode back = json(board.act(job, "undo", act(job, "Mira")));
    assertEquals(200, closed(back, "2027-03-19T09:00:00Z").statusCode(), "taken back");
  }

  @Test
  void a_booked_joint_may_have_been_closed_earlier_on_the_day_it_was_put_in_work() {
    JsonNode job = booked("2027-03-20T10:00");
    board.clock.set(Instant.parse("2027-03-20T08:30:00Z"));
    job = put(job, "in-work");
    assertEquals(200, closed(job, "2027-03-19T23:00:00Z").statusCode());
  }

  @Test
  void a_joint_taken_apart_in_this_second_may_be_closed_in_it() {
    JsonNode job = board.entered("HL-1");
    job = json(board.act(job, "closed", act(job, "Mira")));
    board.clock.forward(Duration.ofMillis(3_600_700));
    job = json(board.act(job, "state", act(job, "Mira").put("to", "in-work")));
    assertEquals(200, board.act(job, "closed", act(job, "Mira")).statusCode());
  }

  @Test
  void a_closing_that_was_taken_back_may_be_put_right() {
    JsonNode job = board.entered("HL-1");
    board.clock.forward(Duration.ofHours(2));
    job = json(board.act(job, "closed", act(job, "Mira")));
    job = json(board.act(job, "undo", act(job, "Mira")));
    assertEquals(200, closed(job, "2027-03-11T08:45:00Z").statusCode());
  }

  @Test
  void who_promises_a_closed_day_reads_why_it_is_closed_and_what_can_be_kept() {
    JsonNode job = board.entered("HL-1");
    ObjectNode closed = act(job, "Ede").put("promised", "2027-03-17T10:00");
    String said = board.act(job, "promise", closed).body();
    assertTrue(said.contains("The shop is closed at Wed 17 Mar 10:00 (Stocktaking)."), said);
    assertTrue(said.contains("The first time that can be kept is "), said);
    String ways = page(job, "?ways=1&wanted=2027-03-17T10:00").body();
    assertTrue(ways.contains("The shop is closed at that time (Stocktaking)"), ways);
    String passed = page(job, "?ways=1&wanted=2027-03-10T10:00").body();
    assertTrue(passed.contains("That time has passed already"), passed);
  }

  /** A year typed wrong read as this year's day. */
  @Test
  void a_promise_of_another_year_shows_its_year() {
    JsonNode job = board.entered("HL-1");
    job = json(board.act(job, "promise", act(job, "Ede").put("promised", "2028-03-14T10:00")));
    String page = page(job, "").body();
    assertTrue(page.contains("<span class=\"day\">Tue 14 Mar 2028"), page);
    assertTrue(page.contains("Ready on Tuesday 14 March 2028, 10:00."), page);
  }

  @Test
  void a_promise_far_away_is_refused_with_the_first_time_that_can_be_kept() {
    JsonNode job = board.entered("HL-1");
    ObjectNode far = act(job, "Ede").put("promised", "2099-12-23T10:00");
    String said = board.act(job, "promise", far).body();
    assertTrue(said.contains("Wed 23 Dec 2099 10:00 is more than 400 days from now."), said);
    assertTrue(said.contains("The first time that can be kept is "), said);
    assertTrue(json(board.get("/api/jobs/" + job.get("id").asText())).get("promisedAt").isNull());
  }

  @Test
  void one_list_serves_both_buttons_of_its_page() {
    String[] demo = RunningBoard.demo("jobs.csv").split("\n");
    String list = demo[0] + ",promised\n" + demo[1] + ",2027-03-20T10:00\n";
    HttpResponse<String> answers = board.upload("/tools/batch", "jobs.csv", list);
    assertEquals(200, answers.statusCode());
    assertTrue(answers.body().contains("2,HL-201,use-compound"), answers.body());
    String ready = board.upload("/tools/batch", "jobs.csv", list, "act=ready").body();
    assertTrue(ready.contains("Sat 2027-03-20 10:00"), ready);
  }
}
