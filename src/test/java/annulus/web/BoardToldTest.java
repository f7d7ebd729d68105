package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.store.Databases;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A customer who was told that a joint is ready, and it is not: may come in vain, or use it. */
class BoardToldTest {
  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private RunningBoard board() {
    return RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
  }

  private static JsonNode put(RunningBoard board, JsonNode job, String to) {
    return json(board.act(job, "state", act(job, "Ede").put("to", to)));
  }

  private static JsonNode now(RunningBoard board, JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  /** Closed, cured, checked, the customer told, and no time ever promised. */
  private static JsonNode told(RunningBoard board) {
    JsonNode job = board.entered("HL-1");
    job = json(board.act(job, "closed", act(job, "Mira")));
    board.clock.set(Instant.parse(job.get("readyAt").asText()));
    return put(board, put(board, job, "checked"), "customer-told");
  }

  /** While it was setting, and learnt of now. */
  private static JsonNode moved(RunningBoard board, JsonNode job) {
    Instant setting = Instant.parse(job.get("closedAt").asText()).plusSeconds(300);
    ObjectNode at = act(job, "Ines").put("at", setting.toString());
    return json(board.act(job, "moved", at));
  }

  private static JsonNode colder(RunningBoard board, JsonNode job) {
    ObjectNode body = act(job, "Mira");
    body.set("order", RunningBoard.order("02-good-fit-primed.json").put("temperatureC", 8));
    return json(board.act(job, "order", body));
  }

  private static String counter(RunningBoard board) {
    board.form("/who", "who=Ede");
    return board.get("/counter").body();
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_customer_told_without_a_promise_is_called_when_the_joint_turns_out_unsafe(String name) {
    String url = Databases.fresh(name, folder);
    JsonNode job;
    try (RunningBoard board = RunningBoard.on(url)) {
      JsonNode told = told(board);
      assertFalse(told.get("callDue").asBoolean());
      job = moved(board, told);
      assertEquals("curing", job.get("state").asText());
      assertTrue(job.get("callDue").asBoolean() && job.get("toldTooEarly").asBoolean());
    }
    try (RunningBoard board = RunningBoard.on(url)) {
      board.clock.set(Instant.parse(job.get("changedAt").asText()).plusSeconds(60));
      String counter = counter(board);
      assertTrue(counter.contains("<h2>Slipping or not safe: call the customer</h2>"), counter);
      assertTrue(counter.contains("1 slipping or not safe"), counter);
      assertTrue(
          counter.contains("The customer was told that it is ready, and it is never safe."),
          counter);
      assertTrue(counter.contains("class=\"card curing slips\""), counter);
      String path = "/job/" + job.get("id").asText();
      assertTrue(board.get(path).body().contains("action=\"" + path + "/called\""));
      JsonNode apart = put(board, job, "in-work");
      assertTrue(apart.get("callDue").asBoolean(), "taken apart, and the customer still comes");
      assertTrue(counter(board).contains("and its joint is open again."));
      JsonNode called = json(board.act(apart, "called", act(apart, "Ede")));
      assertFalse(called.get("callDue").asBoolean(), called.toString());
      JsonNode last = called.get("changes").get(called.get("changes").size() - 1);
      assertEquals("customer was called: it is not ready yet", last.get("words").asText());
      assertEquals(422, board.act(called, "called", act(called, "Ede")).statusCode());
      assertFalse(counter(board).contains("<h2>Slipping or not safe"));
      JsonNode back = json(board.act(called, "undo", act(called, "Ede")));
      assertTrue(back.get("callDue").asBoolean(), "said by mistake, and taken back");
    }
  }

  @Test
  void a_time_told_anew_is_a_call_and_so_is_the_next_message_that_it_is_ready() {
    try (RunningBoard board = board()) {
      JsonNode job = colder(board, told(board));
      assertTrue(job.get("callDue").asBoolean(), job.toString());
      ObjectNode anew = act(job, "Ede").put("promised", job.get("promisableAt").asText());
      JsonNode promised = json(board.act(job, "promise", anew));
      assertFalse(promised.get("callDue").asBoolean());
      job = json(board.act(promised, "undo", act(promised, "Ede")));
      assertTrue(job.get("callDue").asBoolean());
      board.clock.set(Instant.parse(job.get("readyAt").asText()));
      job = now(board, job);
      assertEquals("cured-to-check", job.get("state").asText());
      assertTrue(job.get("callDue").asBoolean(), "not checked again yet");
      job = put(board, job, "checked");
      assertFalse(job.get("callDue").asBoolean(), "it is ready, as the customer was told");
      job = put(board, job, "customer-told");
      assertFalse(job.get("callDue").asBoolean());
    }
  }

  @Test
  void the_counter_says_that_the_customer_was_called() {
    try (RunningBoard board = board()) {
      JsonNode job = moved(board, told(board));
      String form = "from=counter&who=Ede&version=" + job.get("version").asLong();
      String path = "/job/" + job.get("id").asText() + "/called";
      assertEquals(
          "/counter", board.form(path, form).headers().firstValue("Location").orElseThrow());
      assertEquals(303, board.form(path, form).statusCode(), "a double tap");
      String late = form.replace("Ede", "Orla");
      assertTrue(board.form(path, late).body().contains("Say that the customer was called."));
      assertFalse(now(board, job).get("callDue").asBoolean());
    }
  }

  @Test
  void a_promise_that_is_kept_does_not_hide_that_the_customer_may_come_before() {
    try (RunningBoard board = board()) {
      JsonNode job = board.entered("HL-1");
      job = json(board.act(job, "closed", act(job, "Mira")));
      Instant first = Instant.parse(job.get("promisableAt").asText());
      String late = first.plus(Duration.ofDays(7)).toString();
      job = json(board.act(job, "promise", act(job, "Ede").put("promised", late)));
      board.clock.set(Instant.parse(job.get("readyAt").asText()));
      job = colder(board, put(board, put(board, job, "checked"), "customer-told"));
      assertFalse(job.get("slips").asBoolean(), job.toString());
      assertTrue(job.get("callDue").asBoolean(), job.toString());
    }
  }
}
