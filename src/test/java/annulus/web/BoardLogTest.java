package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.cli.CommandLine;
import annulus.store.Databases;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A closed job is judged by the temperature that a logger saw. */
class BoardLogTest {
  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private static JsonNode closed(RunningBoard board) {
    JsonNode job = board.entered("HL-1");
    job = json(board.act(job, "state", act(job, "Mira").put("to", "in-work")));
    return json(board.act(job, "closed", act(job, "Mira")));
  }

  private static ObjectNode cold(RunningBoard board, JsonNode job) {
    return act(job, "Mira")
        .put("name", "bench.csv")
        .put("log", RunningBoard.coldLog(board.clock.instant()));
  }

  private static JsonNode now(RunningBoard board, JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  @ParameterizedTest
  @MethodSource("databases")
  void what_every_screen_shows_follows_the_log_also_after_a_restart(String name) {
    String url = Databases.fresh(name, folder);
    JsonNode job;
    Instant planned;
    try (RunningBoard board = RunningBoard.on(url)) {
      job = closed(board);
      planned = Instant.parse(job.get("readyAt").asText());
      assertTrue(job.get("log").isNull());
      board.clock.forward(Duration.ofHours(2));
      job = json(board.act(job, "log", cold(board, job)));
      assertTrue(Instant.parse(job.get("readyAt").asText()).isAfter(planned), job.toString());
      assertEquals(planned, Instant.parse(job.at("/log/plannedReady").asText()));
      assertTrue(job.at("/log/measuredC").asDouble() < job.at("/log/plannedC").asDouble());
      assertEquals("log", job.get("changes").get(3).get("kind").asText());
      String page = board.get("/job/" + job.get("id").asText()).body();
      assertTrue(page.contains("follow the log bench.csv"), page);
      assertTrue(page.contains("of full strength, for sure"), page);
    }
    try (RunningBoard board = RunningBoard.on(url)) {
      board.clock.forward(Duration.ofHours(3));
      JsonNode again = now(board, job);
      assertEquals(job.get("readyAt"), again.get("readyAt"));
      JsonNode undone = json(board.act(again, "undo", act(again, "Mira")));
      assertEquals(planned, Instant.parse(undone.get("readyAt").asText()));
      assertTrue(undone.get("log").isNull());
    }
  }

  @Test
  void the_log_is_judged_as_the_command_line_judges_it() throws Exception {
    try (RunningBoard board = board()) {
      JsonNode job = closed(board);
      board.clock.forward(Duration.ofHours(2));
      job = json(board.act(job, "log", cold(board, job)));
      Path order = folder.resolve("order.json");
      Path log = folder.resolve("bench.csv");
      Files.writeString(order, job.get("order").toString());
      Files.writeString(log, RunningBoard.coldLog(board.clock.instant()));
      String told =
          CommandLine.output(
              "promise",
              order.toString(),
              "--shop",
              "demo-data/shop.json",
              "--log",
              log.toString(),
              "--now",
              board.clock.instant().toString(),
              "--json");
      JsonNode promise = RunningBoard.JSON.readTree(told);
      ObjectNode here = job.get("log").deepCopy();
      here.remove(List.of("name", "readAt", "text"));
      assertEquals(promise.get("log"), here);
      assertEquals(
          Instant.parse(job.get("readyAt").asText()),
          java.time.OffsetDateTime.parse(promise.get("earliest").asText()).toInstant());
    }
  }

  private RunningBoard board() {
    return RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
  }

  @Test
  void a_promise_that_the_log_breaks_slips_and_says_so() {
    try (RunningBoard board = board()) {
      // a Tuesday: the shop is open on the days between the time told and the time that holds
      board.clock.set(RunningBoard.MORNING.minus(Duration.ofDays(2)));
      JsonNode job = closed(board);
      ObjectNode promise = act(job, "Ede").put("promised", job.get("promisableAt").asText());
      job = json(board.act(job, "promise", promise));
      board.clock.set(Instant.parse(job.get("readyAt").asText()).minusSeconds(60));
      assertFalse(now(board, job).get("slips").asBoolean());
      job = json(board.act(job, "log", coldAllTheTime(board, job)));
      assertTrue(job.get("slips").asBoolean(), job.toString());
      assertTrue(job.get("slipWhy").asText().contains("By the temperature log"), job.toString());
    }
  }

  @Test
  void a_checked_job_that_is_not_safe_by_the_log_is_curing_again() {
    try (RunningBoard board = board()) {
      JsonNode job = checked(board);
      JsonNode again = json(board.act(job, "log", coldAllTheTime(board, job)));
      assertEquals("curing", again.get("state").asText());
      assertTrue(again.get("changes").get(4).get("words").asText().contains("curing again"));
      JsonNode undone = json(board.act(again, "undo", act(again, "Mira")));
      assertEquals("checked", undone.get("state").asText());
      assertFalse(undone.get("unsafe").asBoolean());
    }
  }

  @Test
  void a_collected_job_that_was_not_safe_says_to_call_the_customer() {
    try (RunningBoard board = board()) {
      JsonNode job = checked(board);
      job = json(board.act(job, "state", act(job, "Ede").put("to", "collected")));
      JsonNode again = json(board.act(job, "log", coldAllTheTime(board, job)));
      assertEquals("call-customer", again.get("state").asText());
      assertTrue(again.get("unsafe").asBoolean());
      assertTrue(board.get("/counter").body().contains("call the customer"));
    }
  }

  private static JsonNode checked(RunningBoard board) {
    JsonNode job = closed(board);
    board.clock.set(Instant.parse(job.get("readyAt").asText()));
    return json(board.act(now(board, job), "state", act(job, "Ede").put("to", "checked")));
  }

  private static ObjectNode coldAllTheTime(RunningBoard board, JsonNode job) {
    StringBuilder log = new StringBuilder("time,temperature C\n");
    Instant until = board.clock.instant();
    for (Instant at = Instant.parse(job.get("closedAt").asText());
        at.isBefore(until);
        at = at.plusSeconds(600)) {
      log.append(at).append(",6.0\n");
    }
    return act(job, "Mira").put("name", "cold.csv").put("log", log.toString());
  }

  @Test
  void an_open_joint_takes_no_log_and_a_joint_made_anew_forgets_it() {
    try (RunningBoard board = board()) {
      JsonNode open = board.entered("HL-2");
      assertEquals(422, board.act(open, "log", cold(board, open)).statusCode());
      JsonNode job = closed(board);
      board.clock.forward(Duration.ofHours(2));
      job = json(board.act(job, "log", cold(board, job)));
      job = json(board.act(job, "state", act(job, "Mira").put("to", "in-work")));
      assertTrue(job.get("log").isNull());
      job = json(board.act(job, "closed", act(job, "Mira")));
      assertTrue(job.get("log").isNull());
    }
  }

  @Test
  void a_bad_line_is_named_and_nothing_is_written() {
    try (RunningBoard board = board()) {
      JsonNode job = closed(board);
      board.clock.forward(Duration.ofHours(2));
      ObjectNode twoOrders = act(job, "Mira").put("log", "01/02/2027 08:00,20\n02/03/2027,21\n");
      HttpResponse<String> refused = board.act(job, "log", twoOrders);
      assertEquals(422, refused.statusCode());
      assertTrue(json(refused).get("fields").size() > 0, refused.body());
      assertEquals(job.get("version"), now(board, job).get("version"));
    }
  }

  @Test
  void the_page_takes_a_file_and_refuses_one_that_is_too_large() {
    try (RunningBoard board = board()) {
      JsonNode job = closed(board);
      board.clock.forward(Duration.ofHours(2));
      String path = "/job/" + job.get("id").asText() + "/log";
      String version = job.get("version").asText();
      String log = RunningBoard.coldLog(board.clock.instant());
      HttpResponse<String> taken =
          board.upload(path, "lo<b>g.csv", log, "version=" + version, "who=Mira");
      assertEquals(303, taken.statusCode(), taken.body());
      assertEquals("lo<b>g.csv", now(board, job).at("/log/name").asText());
      String page = board.get("/job/" + job.get("id").asText()).body();
      assertTrue(page.contains("lo&lt;b&gt;g.csv") && !page.contains("lo<b>g.csv"), page);
      String large = "x".repeat(6_000_000);
      assertEquals(413, board.upload(path, "l.csv", large, "version=9", "who=Mira").statusCode());
    }
  }

  /** Where readings are dated after now, the others stand at wrong hours too. */
  @Test
  void a_log_from_the_future_is_refused_but_not_for_a_clock_some_minutes_fast() {
    try (RunningBoard board = RunningBoard.on(Databases.fresh("sqlite", folder))) {
      JsonNode job = board.entered("HL-1");
      job = json(board.act(job, "closed", act(job, "Mira")));
      board.clock.forward(Duration.ofHours(3));
      Instant now = board.clock.instant();
      ObjectNode fast = act(job, "Mira").put("name", "l");
      fast.put("log", RunningBoard.coldLog(now.plusSeconds(301)));
      HttpResponse<String> refused = board.act(job, "log", fast);
      assertEquals(422, refused.statusCode(), refused.body());
      assertTrue(refused.body().contains("the clock of the logger is wrong"), refused.body());
      assertTrue(refused.body().contains("past now Thu 2027-03-11 12:30"), refused.body());
      fast.put("log", RunningBoard.coldLog(now.plusSeconds(300)));
      assertEquals(200, board.act(job, "log", fast).statusCode());
    }
  }
}
