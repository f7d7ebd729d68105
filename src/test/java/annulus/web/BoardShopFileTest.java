package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.store.Database;
import annulus.store.Databases;
import annulus.store.JobChange;
import annulus.store.JobStore;
import annulus.store.Stamp;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** An edit of the shop's file does not make the past of a closed joint warmer. */
class BoardShopFileTest {
  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private String url() {
    return Databases.fresh("sqlite", folder);
  }

  private static ObjectNode order(String place) {
    ObjectNode order = RunningBoard.order("02-good-fit-primed.json");
    order.remove(List.of("temperatureC", "temperaturePlusMinusC"));
    order.putObject("cure").put("place", place);
    return order;
  }

  private static JsonNode closed(RunningBoard board, String place) {
    ObjectNode job = board.newJob("HL-1");
    job.set("order", order(place));
    JsonNode entered = json(board.post("/api/jobs", job));
    return json(board.act(entered, "closed", act(entered, "Mira")));
  }

  private static JsonNode closedAtTheBench(String url) {
    try (RunningBoard board = RunningBoard.on(url)) {
      return closed(board, "bench");
    }
  }

  private static JsonNode now(RunningBoard board, JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  private static Instant ready(JsonNode job) {
    return Instant.parse(job.get("readyAt").asText());
  }

  /** The demonstration shop with another bench; none where it is null. */
  private Path shop(JsonNode bench) throws IOException {
    ObjectNode shop = (ObjectNode) RunningBoard.tree("demo-data/shop.json");
    ObjectNode places = (ObjectNode) shop.get("places");
    places.remove("cupboard");
    places.remove("bench");
    if (bench != null) {
      places.set("bench", bench);
    }
    return Files.writeString(folder.resolve("shop.json"), shop.toString());
  }

  private static ObjectNode constant(double celsius) {
    return RunningBoard.JSON.createObjectNode().put("constantC", celsius).put("plusMinusC", 1);
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_bench_told_to_be_warmer_makes_no_closed_joint_safe_earlier(String name)
      throws IOException {
    String url = Databases.fresh(name, folder);
    JsonNode job;
    try (RunningBoard board = RunningBoard.on(url)) {
      job = closed(board, "bench");
      assertTrue(job.get("shopFile").isNull(), job.toString());
    }
    try (RunningBoard board = RunningBoard.withShop(url, shop(constant(22)))) {
      JsonNode later = now(board, job);
      assertEquals(ready(job), ready(later));
      String told = later.get("shopFile").asText();
      assertTrue(told.contains("gives bench another course of temperature"), told);
      assertTrue(told.contains("now bench, planned 22 ± 1 °C throughout"), told);
      String page = board.get("/job/" + job.get("id").asText()).body();
      assertTrue(page.contains("another course of temperature than when"), page);
      JsonNode anew = closed(board, "bench");
      assertTrue(ready(anew).isBefore(ready(job)), "a joint closed from now on is in the warmth");
      assertTrue(anew.get("shopFile").isNull());
    }
    try (RunningBoard board = RunningBoard.on(url)) {
      assertTrue(now(board, job).get("shopFile").isNull(), "the file says the same again");
    }
  }

  @Test
  void a_bench_told_to_be_colder_makes_a_closed_joint_safe_later() throws IOException {
    String url = url();
    JsonNode job;
    try (RunningBoard board = RunningBoard.on(url)) {
      job = closed(board, "bench");
      ObjectNode promise = act(job, "Ede").put("promised", job.get("promisableAt").asText());
      job = json(board.act(job, "promise", promise));
    }
    try (RunningBoard board = RunningBoard.withShop(url, shop(constant(6)))) {
      JsonNode later = now(board, job);
      assertTrue(ready(later).isAfter(ready(job)), later.toString());
      assertTrue(later.get("slipWhy").asText().contains("another course of"), later.toString());
    }
  }

  @Test
  void neither_a_change_of_the_order_nor_a_log_lets_the_warmer_bench_in() throws IOException {
    String url = url();
    JsonNode job;
    try (RunningBoard board = RunningBoard.on(url)) {
      job = closed(board, "bench");
      board.clock.forward(Duration.ofHours(2));
      String log = RunningBoard.coldLog(board.clock.instant());
      ObjectNode cold = act(job, "Mira").put("log", log).put("name", "l");
      job = json(board.act(job, "log", cold));
    }
    try (RunningBoard board = RunningBoard.withShop(url, shop(constant(22)))) {
      board.clock.forward(Duration.ofHours(2));
      assertEquals(ready(job), ready(now(board, job)));
      ObjectNode edit = act(job, "Mira").put("bore", "hub");
      edit.set("order", order("bench"));
      JsonNode changed = json(board.act(job, "order", edit));
      assertEquals(ready(job), ready(changed), "the same place");
      String log = RunningBoard.coldLog(board.clock.instant());
      ObjectNode again = act(changed, "Mira").put("log", log).put("name", "l");
      assertEquals(ready(job), ready(json(board.act(changed, "log", again))), "the log again");
    }
  }

  @Test
  void a_closed_joint_that_cured_elsewhere_is_judged_by_that_place() throws IOException {
    String url = url();
    JsonNode job = closedAtTheBench(url);
    try (RunningBoard board = RunningBoard.withShop(url, shop(constant(22)))) {
      ObjectNode edit = act(job, "Mira");
      edit.set("order", order("cellar"));
      JsonNode moved = json(board.act(job, "order", edit));
      assertTrue(moved.get("shopFile").isNull(), moved.toString());
      assertEquals(ready(closed(board, "cellar")), ready(moved));
      JsonNode back = json(board.act(moved, "undo", act(moved, "Mira")));
      assertEquals(ready(job), ready(back));
    }
  }

  @Test
  void a_joint_whose_place_is_in_the_file_no_more_is_judged_as_it_was_closed() throws IOException {
    String url = url();
    JsonNode job = closedAtTheBench(url);
    try (RunningBoard board = RunningBoard.withShop(url, shop(null))) {
      board.clock.forward(Duration.ofDays(1));
      JsonNode later = now(board, job);
      assertEquals(ready(job), ready(later));
      assertTrue(later.get("shopFile").asText().contains("has no place bench any more"));
      JsonNode moved = json(board.act(later, "moved", act(later, "Ines")));
      assertTrue(moved.get("decision").asText().contains("STRIP AND REDO"), moved.toString());
    }
  }

  @Test
  void the_order_of_a_joint_whose_place_is_in_the_file_no_more_can_be_changed() throws IOException {
    String url = url();
    JsonNode job = closedAtTheBench(url);
    try (RunningBoard board = RunningBoard.withShop(url, shop(null))) {
      ObjectNode edit = act(job, "Mira");
      edit.set("order", order("cellar"));
      JsonNode changes = json(board.act(job, "order", edit)).path("changes");
      String words = changes.path(changes.size() - 1).path("words").asText();
      assertTrue(words.contains("Where it cures bench → cellar"), changes.toString());
    }
  }

  @Test
  void the_hands_on_time_of_a_place_is_no_matter_of_a_closed_joint() throws IOException {
    String url = url();
    JsonNode job = closedAtTheBench(url);
    JsonNode bench = RunningBoard.tree("demo-data/shop.json").at("/places/bench");
    Path shop = shop(((ObjectNode) bench).put("touchMinutes", 45));
    try (RunningBoard board = RunningBoard.withShop(url, shop)) {
      assertTrue(now(board, job).get("shopFile").isNull());
    }
  }

  /** Nothing is written of the place by versions before this one. */
  @ParameterizedTest
  @MethodSource("databases")
  void a_job_closed_by_an_older_version_is_judged_by_the_file_as_it_is(String name)
      throws IOException {
    String url = Databases.fresh(name, folder);
    JsonNode job = closedAtTheBench(url);
    try (Database database = Database.open(url)) {
      new JobStore(database)
          .change(
              job.get("id").asText(),
              job.get("version").asLong(),
              j ->
                  new JobStore.Edit(
                      JobChange.Kind.ORDER, "older", j.content().curingIn(Optional.empty())),
              Optional.empty(),
              new Stamp("Ede", RunningBoard.MORNING));
    }
    try (RunningBoard board = RunningBoard.on(url)) {
      assertEquals(ready(job), ready(now(board, job)));
    }
    try (RunningBoard board = RunningBoard.withShop(url, shop(constant(9)))) {
      JsonNode later = now(board, job);
      assertNotEquals(ready(job), ready(later));
      assertTrue(later.get("shopFile").isNull());
    }
  }
}
