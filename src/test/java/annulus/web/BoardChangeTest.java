package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.OrderText;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What a change of an order takes up, what it refuses, and what the history says of it. */
class BoardChangeTest extends OneBoard {
  private static final String JOINT =
      "version=1&who=Mira&reference=RF-1&engagement=11&boreMaterial=steel-plain"
          + "&partMaterial=steel-alloy&boreInstrument=bore-gauge-dial&bore-1=41.966"
          + "&partInstrument=outside-micrometer&part-1=41.918";

  private static String location(HttpResponse<String> response) {
    return response.headers().firstValue("Location").orElseThrow(() -> fault(response));
  }

  private static IllegalStateException fault(HttpResponse<String> response) {
    return new IllegalStateException(response.body());
  }

  private JsonNode booked() {
    String bench = location(board.form("/bench/new", ""));
    String form = JOINT + "&temperature=25&consequence=injury&act=book";
    return job(location(board.form(bench, form)).substring("/job/".length()));
  }

  private JsonNode job(String id) {
    return json(board.get("/api/jobs/" + id));
  }

  private JsonNode closed() {
    JsonNode job = booked();
    return json(board.act(job, "closed", act(job, "Ines")));
  }

  private String edit(JsonNode job) {
    return location(board.form("/job/" + job.get("id").asText() + "/edit", "version=1&who=Ana"));
  }

  private static String change(JsonNode job) {
    return JOINT
        + "&act=change&ofJob="
        + job.get("id").asText()
        + "&ofVersion="
        + job.get("version").asLong();
  }

  private static String lastWords(JsonNode job) {
    return job.get("changes").get(job.get("changes").size() - 1).get("words").asText();
  }

  @Test
  void another_reference_or_closing_time_is_refused_and_not_passed_over() {
    JsonNode job = closed();
    String bench = edit(job);
    String page = board.get(bench).body();
    assertFalse(page.contains("name=\"start\""), page);
    assertTrue(page.contains("value=\"Thu 11 Mar 09:30\" type=\"text\" readonly"), page);
    assertTrue(page.contains("name=\"reference\" value=\"RF-1\" type=\"text\" readonly"), page);
    String form = change(job) + "&temperature=25&consequence=injury";
    String other = form.replace("reference=RF-1", "reference=RF-2");
    HttpResponse<String> renamed = board.form(bench, other);
    assertEquals(422, renamed.statusCode());
    assertTrue(renamed.body().contains("\"RF-2\" is another one"), renamed.body());
    String again = form.replace("version=1&", "version=2&");
    HttpResponse<String> closedAnew = board.form(bench, again + "&start=2027-03-10T09:30");
    assertEquals(422, closedAnew.statusCode());
    String said = "the joint was closed Thu 11 Mar 09:30";
    assertTrue(closedAnew.body().contains(said), closedAnew.body());
    assertEquals(job, job(job.get("id").asText()), "nothing was written");
    again = form.replace("version=1&", "version=3&") + "&start=2027-03-11T09:30";
    assertEquals(303, board.form(bench, again).statusCode(), "the same time is no change");
    String words = lastWords(job(job.get("id").asText()));
    assertEquals("order entered again, nothing in it changed", words);
  }

  @Test
  void the_history_says_what_was_changed_and_from_what() {
    JsonNode job = closed();
    String form = change(job) + "&temperature=20&consequence=stranding&bore-2=41.963&sealNear=on";
    assertEquals(303, board.form(edit(job), form + "&title=cup").statusCode());
    JsonNode changed = job(job.get("id").asText());
    assertEquals(
        "order changed: Bore, reading 2 not said → 41.963;"
            + " If it let go, it could hurt someone → would strand someone;"
            + " A seal or open bearing is near no → yes;"
            + " Temperature where it cures 25 → 20; What is it? not said → cup",
        lastWords(changed));
    String page = board.get("/job/" + job.get("id").asText()).body();
    assertTrue(page.contains(">Take back: order changed</button>"), page);
  }

  /** 40 µm per side is twice as wide as 40 µm across. */
  @Test
  void a_known_gap_is_told_per_side_or_across_on_both_sides_of_a_change() {
    assertEquals(
        "Known gap 40 per side (radial) → 60 per side (radial)", gapChanged("40", "", "60", ""));
    assertEquals(
        "Known gap 40 per side (radial) → 60 across (diametral clearance)",
        gapChanged("40", "", "60", BenchOrder.ACROSS));
  }

  /** What the history says of a gap that was one and is told otherwise now. */
  private static String gapChanged(String was, String basis, String is, String newBasis) {
    OrderChanges changes =
        new OrderChanges(
            new Choices(OrderText.KNOWLEDGE, null),
            new ClockWords(ZoneOffset.UTC, Clock.systemUTC()));
    return changes.fields(gap(was, basis), gap(is, newBasis)).get(0);
  }

  private static Map<String, String> gap(String um, String basis) {
    return basis.isEmpty() ? Map.of("gap", um) : Map.of("gap", um, "gapBasis", basis);
  }

  @Test
  void the_history_says_that_the_start_has_moved_and_what_the_bench_can_t_show() {
    JsonNode job = booked();
    board.clock.forward(Duration.ofHours(1));
    ObjectNode body = act(job, "Mira");
    ObjectNode order = ((ObjectNode) job.get("order")).deepCopy();
    order.put("start", "2027-03-12T10:00:00Z").put("confidence", 0.99);
    body.set("order", order);
    assertEquals(
        "order changed: Joint is closed at Thu 11 Mar 09:30 → Fri 12 Mar 11:00;"
            + " How sure the answer has to be, of 1 not said → 0.99",
        lastWords(json(board.act(job, "order", body))));
  }
}
