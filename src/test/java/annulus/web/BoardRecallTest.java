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

/** A joint that the customer has and should not use is not forgotten. */
class BoardRecallTest {
  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private RunningBoard board() {
    return RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
  }

  private static JsonNode now(RunningBoard board, JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  private static JsonNode put(RunningBoard board, JsonNode job, String to) {
    return json(board.act(job, "state", act(job, "Ede").put("to", to)));
  }

  private static JsonNode collected(RunningBoard board) {
    JsonNode job = board.entered("HL-1");
    job = json(board.act(job, "closed", act(job, "Mira")));
    board.clock.set(Instant.parse(job.get("readyAt").asText()));
    return put(board, put(board, now(board, job), "checked"), "collected");
  }

  private static JsonNode moved(RunningBoard board, JsonNode job) {
    ObjectNode early = act(job, "Mira").put("at", "2027-03-11T08:35:00Z");
    return json(board.act(job, "moved", early));
  }

  private static int shown(RunningBoard board, String query) {
    return json(board.get("/api/jobs" + query)).get("jobs").size();
  }

  @ParameterizedTest
  @MethodSource("databases")
  void it_stays_on_the_board_until_somebody_says_that_the_customer_was_called(String name) {
    String url = Databases.fresh(name, folder);
    JsonNode job;
    try (RunningBoard board = RunningBoard.on(url)) {
      job = collected(board);
      board.clock.forward(Duration.ofDays(1));
      assertEquals(0, shown(board, ""), "collected yesterday");
      job = moved(board, job);
      assertEquals("call-customer", job.get("state").asText());
      assertEquals("[\"customer-called\",\"in-work\"]", job.get("next").toString());
      String last = job.get("changes").get(job.get("changes").size() - 1).get("words").asText();
      assertTrue(last.endsWith("; it has been collected, so call the customer"), last);
    }
    try (RunningBoard board = RunningBoard.on(url)) {
      board.clock.set(RunningBoard.MORNING.plus(Duration.ofDays(90)));
      assertEquals(1, shown(board, ""), "not called in three months");
      String counter = board.get("/counter").body();
      assertTrue(
          counter.contains("it is never safe, and it has been collected: call the customer."),
          counter);
      assertTrue(counter.contains("1 collected and not safe: call"), counter);
      job = put(board, job, "customer-called");
      JsonNode called = job.get("changes").get(job.get("changes").size() - 1);
      assertEquals("collected, customer called", called.get("words").asText());
      assertEquals("Ede", called.get("who").asText());
      assertTrue(job.get("unsafe").asBoolean(), job.toString());
      assertFalse(board.get("/counter").body().contains(": call the customer."));
      board.clock.forward(Duration.ofHours(13));
      assertEquals(0, shown(board, ""), "called and off the board");
      assertEquals(1, shown(board, "?reference=hl-1"));
      String found = board.get("/jobs?reference=L-1").body();
      assertTrue(found.contains("/job/" + job.get("id").asText()), found);
      assertTrue(found.contains("collected, customer called"), found);
    }
  }

  @Test
  void it_may_come_back_and_a_report_that_was_wrong_may_be_taken_back() {
    try (RunningBoard board = board()) {
      JsonNode job = moved(board, collected(board));
      job = json(board.act(job, "undo", act(job, "Mira")));
      assertEquals("collected", job.get("state").asText());
      assertEquals("[]", job.get("next").toString());
      job = put(board, moved(board, job), "in-work");
      assertEquals("in-work", job.get("state").asText());
      assertTrue(job.get("closedAt").isNull(), job.toString());
    }
  }

  /** The log is read days later, when the joint is safe by then: it was ridden before. */
  @Test
  void one_that_was_collected_before_it_was_safe_is_told_though_it_is_safe_by_now() {
    try (RunningBoard board = board()) {
      JsonNode job = collected(board);
      Instant closed = Instant.parse(job.get("closedAt").asText());
      StringBuilder log = new StringBuilder("time,temperature C\n");
      for (int i = 0; i <= 240; i++) {
        log.append(closed.plus(Duration.ofHours(i))).append(",10.0\n");
      }
      board.clock.set(closed.plus(Duration.ofDays(10)));
      JsonNode read = json(board.act(job, "log", act(job, "Mira").put("log", log.toString())));
      assertFalse(read.get("unsafe").asBoolean(), read.toString());
      assertEquals("call-customer", read.get("state").asText());
      String counter = board.get("/counter").body();
      assertTrue(counter.contains("It was collected before it was safe ("), counter);
      assertEquals("customer-called", put(board, read, "customer-called").get("state").asText());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_reference_is_found_by_any_part_of_it_as_it_is_written(String name) {
    try (RunningBoard board = RunningBoard.on(Databases.fresh(name, folder))) {
      board.entered("HL-101");
      board.entered("50%_Ü!");
      assertEquals(1, shown(board, "?reference=l-1"));
      assertEquals(1, shown(board, "?reference=%25_%C3%9C!"));
      assertEquals(0, shown(board, "?reference=H%25"));
      assertEquals(0, shown(board, "?reference=H__101"));
      assertEquals(2, shown(board, "?reference=%20"), "nothing asked: the jobs of today");
      assertTrue(board.get("/jobs?reference=zz").body().contains("No job has this"));
    }
  }
}
