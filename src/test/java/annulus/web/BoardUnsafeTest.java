package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.store.Database;
import annulus.store.Databases;
import annulus.store.JobChange;
import annulus.store.JobState;
import annulus.store.JobStore;
import annulus.store.Stamp;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A joint that is not safe any more stays here, though it was checked before. */
class BoardUnsafeTest {
  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private RunningBoard board() {
    return RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
  }

  private static JsonNode closed(RunningBoard board) {
    JsonNode job = board.entered("HL-1");
    return json(board.act(job, "closed", act(job, "Mira")));
  }

  private static JsonNode now(RunningBoard board, JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  private static JsonNode put(RunningBoard board, JsonNode job, String to) {
    return json(board.act(job, "state", act(job, "Ede").put("to", to)));
  }

  private static JsonNode checked(RunningBoard board) {
    JsonNode job = closed(board);
    board.clock.set(Instant.parse(job.get("readyAt").asText()));
    return put(board, now(board, job), "checked");
  }

  private static HttpResponse<String> reordered(RunningBoard board, JsonNode job, double celsius) {
    ObjectNode order = RunningBoard.order("02-good-fit-primed.json").put("temperatureC", celsius);
    ObjectNode body = act(job, "Mira");
    body.set("order", order);
    return board.act(job, "order", body);
  }

  private static JsonNode last(JsonNode job) {
    return job.get("changes").get(job.get("changes").size() - 1);
  }

  @Test
  void a_checked_joint_that_was_moved_is_not_handed_out() {
    try (RunningBoard board = board()) {
      JsonNode job = checked(board);
      JsonNode moved = json(board.act(job, "moved", act(job, "Ines")));
      assertEquals("curing", moved.get("state").asText());
      assertEquals("take it apart", moved.get("now").asText());
      assertTrue(last(moved).get("words").asText().endsWith(", so it is curing again"));
      assertEquals("[\"in-work\"]", moved.get("next").toString());
      ObjectNode collect = act(moved, "Ede").put("to", "collected");
      assertEquals(422, board.act(moved, "state", collect).statusCode());
      JsonNode undone = json(board.act(moved, "undo", act(moved, "Ines")));
      assertEquals("checked", undone.get("state").asText());
    }
  }

  @Test
  void a_joint_the_customer_knows_of_that_was_colder_than_ordered_cures_again() {
    try (RunningBoard board = board()) {
      JsonNode job = put(board, checked(board), "customer-told");
      JsonNode cold = json(reordered(board, job, 8));
      assertEquals("curing", cold.get("state").asText());
      assertEquals(
          "order changed: Temperature where it cures 18 → 8, so it is curing again",
          last(cold).get("words").asText());
      assertFalse(cold.get("unsafe").asBoolean());
      JsonNode warm = json(reordered(board, json(board.act(cold, "undo", act(cold, "E"))), 30));
      assertEquals("customer-told", warm.get("state").asText());
      assertEquals(
          "order changed: Temperature where it cures 18 → 30", last(warm).get("words").asText());
    }
  }

  /** As a version before this one left it, or as new data tables judge it. */
  @ParameterizedTest
  @MethodSource("databases")
  void a_checked_job_that_is_not_safe_is_neither_told_nor_collected(String name) {
    String url = Databases.fresh(name, folder);
    JsonNode job;
    try (RunningBoard board = RunningBoard.on(url)) {
      job = closed(board);
    }
    try (Database database = Database.open(url)) {
      new JobStore(database)
          .change(
              job.get("id").asText(),
              job.get("version").asLong(),
              j ->
                  new JobStore.Edit(
                      JobChange.Kind.STATE, "checked", j.content().in(JobState.CHECKED)),
              Optional.empty(),
              new Stamp("Ede", RunningBoard.MORNING));
    }
    try (RunningBoard board = RunningBoard.on(url)) {
      JsonNode wet = now(board, job);
      assertTrue(wet.get("unsafe").asBoolean(), wet.toString());
      assertEquals("checked, but not safe", wet.get("now").asText());
      assertEquals("[\"in-work\"]", wet.get("next").toString());
      for (String to : List.of("customer-told", "collected")) {
        HttpResponse<String> refused = board.act(wet, "state", act(wet, "Ede").put("to", to));
        assertEquals(422, refused.statusCode(), to);
        assertTrue(refused.body().contains("not safe before"), refused.body());
      }
      String page = board.get("/job/" + job.get("id").asText()).body();
      assertFalse(page.contains("value=\"collected\""), page);
      board.clock.set(Instant.parse(wet.get("readyAt").asText()));
      assertEquals("collected", put(board, wet, "collected").get("state").asText());
    }
  }
}
