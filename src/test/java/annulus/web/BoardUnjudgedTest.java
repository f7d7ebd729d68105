package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.store.Databases;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One job that can't be judged keeps nobody from the others, and can be put right. */
class BoardUnjudgedTest {
  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  /** A job judged by a log, beside one that is sound; both logs are then lost. */
  private static JsonNode withoutItsLog(String url) throws SQLException {
    JsonNode job;
    try (RunningBoard board = RunningBoard.on(url)) {
      job = board.entered("HL-1");
      board.entered("HL-2");
      job = json(board.act(job, "closed", act(job, "Mira")));
      board.clock.forward(Duration.ofHours(2));
      ObjectNode log =
          act(job, "Mira").put("log", RunningBoard.coldLog(board.clock.instant())).put("name", "l");
      job = json(board.act(job, "log", log));
    }
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement()) {
      assertEquals(1, statement.executeUpdate("DELETE FROM temperature_log"));
    }
    return job;
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_job_whose_log_is_lost_stands_among_the_unjudged_and_can_be_taken_back(String name)
      throws SQLException {
    String url = Databases.fresh(name, folder);
    JsonNode job = withoutItsLog(url);
    String path = "/job/" + job.get("id").asText();
    try (RunningBoard board = RunningBoard.on(url)) {
      JsonNode all = json(board.get("/api/jobs"));
      assertEquals("HL-2", all.at("/jobs/0/reference").asText(), all.toString());
      assertEquals(job.get("id"), all.at("/unjudged/0/id"));
      String problem = all.at("/unjudged/0/problem").asText();
      assertTrue(
          problem.startsWith(
              "Its temperature log is not in the database any more. On Thu 11 Mar 11:30 Mira took"
                  + " in: temperature log l read: safe from "),
          problem);
      assertTrue(problem.contains("give the file of the logger again"), problem);
      for (String screen : List.of("/counter", "/cabinet", "/bench", "/api/cabinet/plan")) {
        assertEquals(200, board.get(screen).statusCode(), screen);
      }
      assertTrue(board.get("/counter").body().contains("href=\"" + path + "\""));
      HttpResponse<String> machine = board.get("/api/jobs/" + job.get("id").asText());
      assertEquals(503, machine.statusCode(), machine.body());
      HttpResponse<String> page = board.get(path);
      assertEquals(503, page.statusCode());
      assertTrue(page.body().contains("Take back: temperature log l read"), page.body());
      assertTrue(page.body().contains(problem), page.body());
      String form = "who=Mira&version=" + job.get("version").asText();
      assertEquals(303, board.form(path + "/undo", form).statusCode());
      assertEquals(200, board.get(path).statusCode());
      assertEquals(0, json(board.get("/api/jobs")).get("unjudged").size());
    }
  }
}
