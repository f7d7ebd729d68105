package annulus.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** Fills a board: jobs of today through its own interface, the jobs of past years as copies. */
final class BoardJobs {
  static final int TODAY = 40;
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String[] ORDERS = {
    "01-good-fit", "02-good-fit-primed", "06-stainless", "12-hot-service", "13-must-come-apart"
  };

  private BoardJobs() {}

  /** The ids of today's jobs; half of them are closed and cure. */
  static List<String> fill(Path database, int jobs) throws IOException, InterruptedException {
    List<String> ids = new ArrayList<>();
    try (BoardProcess board = new BoardProcess(database)) {
      HttpClient client = HttpClient.newHttpClient();
      for (int i = 0; i < TODAY; i++) {
        JsonNode job = post(client, board, "/api/jobs", job(i));
        String id = job.get("id").asText();
        ids.add(id);
        if (i % 2 == 1) {
          ObjectNode close = JSON.createObjectNode().put("who", "Mira").put("version", 1);
          post(client, board, "/api/jobs/" + id + "/closed", close);
        }
      }
    }
    try {
      copy(database, jobs - TODAY);
    } catch (SQLException e) {
      throw new IOException(e);
    }
    return ids;
  }

  private static ObjectNode job(int i) throws IOException {
    String file = "demo-data/orders/" + ORDERS[i % ORDERS.length] + ".json";
    ObjectNode order = (ObjectNode) JSON.readTree(Files.readString(Path.of(file)));
    order.remove("start");
    order.put("zone", "Europe/Vienna");
    ObjectNode job = JSON.createObjectNode();
    job.put("who", "Mira").put("reference", "J-" + i).put("title", "a joint of today");
    job.put("bore", i % 4 == 0 ? "hub " + i : "");
    job.set("order", order);
    return job;
  }

  private static JsonNode post(HttpClient client, BoardProcess board, String path, JsonNode body)
      throws IOException, InterruptedException {
    HttpResponse<String> response =
        client.send(
            HttpRequest.newBuilder(board.page(path))
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body.toString()))
                .build(),
            HttpResponse.BodyHandlers.ofString());
    if (response.statusCode() >= 300) {
      throw new IOException(path + ": " + response.body());
    }
    return JSON.readTree(response.body());
  }

  private static void copy(Path database, int jobs) throws SQLException {
    String numbers =
        "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < " + jobs + ") ";
    String old = "(SELECT * FROM job WHERE state = 'CURING' LIMIT 1) j";
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        Statement statement = connection.createStatement()) {
      connection.setAutoCommit(false);
      statement.executeUpdate(
          numbers
              + "INSERT INTO job (id, version, reference, state, content, created_at, changed_at,"
              + " changed_by) SELECT 'old-' || n.i, 5, 'O-' || n.i, 'COLLECTED',"
              + " replace(j.content, '\"state\":\"CURING\"', '\"state\":\"COLLECTED\"'),"
              + " '2025-01-01T08:00:00Z', '2025-01-03T08:00:00Z', 'Mira' FROM n, "
              + old);
      statement.executeUpdate(
          numbers
              + "INSERT INTO job_change (job, version, at, who, kind, words, after_content)"
              + " SELECT 'old-' || n.i, 1, '2025-01-01T08:00:00Z', 'Mira', 'ENTERED', 'entered',"
              + " j.content FROM n, "
              + old);
      connection.commit();
    }
  }
}
