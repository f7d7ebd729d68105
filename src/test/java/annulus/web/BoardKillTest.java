package annulus.web;

import static annulus.web.RunningBoard.JSON;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.store.Databases;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The server is killed in the middle of writing, again and again. */
class BoardKillTest {
  private static final int ROUNDS = 12;

  @TempDir Path folder;
  private final HttpClient client = HttpClient.newHttpClient();
  private final Random random = new Random(20271103);

  /** What the server has acknowledged: version and state by job. */
  private final Map<String, String> acknowledged = new LinkedHashMap<>();

  private record Child(Process process, URI address) {}

  private Child start(String url) throws IOException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "annulus.cli.Main",
                "serve",
                "--port",
                "0",
                "--database",
                url,
                "--shop",
                "demo-data/shop.json")
            .redirectErrorStream(true)
            .start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = out.readLine();
    assertTrue(line != null && line.startsWith("The board is at "), line);
    return new Child(process, URI.create(line.substring("The board is at ".length())));
  }

  static List<String> databases() {
    return Databases.names();
  }

  @ParameterizedTest
  @MethodSource("databases")
  void nothing_acknowledged_is_lost_when_the_server_is_killed(String name) throws Exception {
    String url = Databases.fresh(name, folder);
    int killedWhileWriting = 0;
    for (int round = 0; round < ROUNDS; round++) {
      Child child = start(url);
      try {
        compare(child);
        acknowledge(post(child, "/api/jobs", job("K-" + round)));
        long delay = 20L + random.nextInt(400);
        Thread killer =
            new Thread(
                () -> {
                  try {
                    TimeUnit.MILLISECONDS.sleep(delay);
                  } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                  }
                  child.process().destroyForcibly();
                });
        killer.start();
        killedWhileWriting += write(child, round) ? 1 : 0;
        killer.join();
      } finally {
        child.process().destroyForcibly().waitFor();
      }
    }
    Child last = start(url);
    compare(last);
    last.process().destroyForcibly().waitFor();
    assertTrue(killedWhileWriting >= ROUNDS / 2, killedWhileWriting + " kills hit a write");
    assertTrue(acknowledged.size() >= ROUNDS / 2, acknowledged.size() + " jobs");
  }

  /** Writes until the server is gone. */
  private boolean write(Child child, int round) throws InterruptedException {
    for (int i = 0; i < 2000; i++) {
      try {
        JsonNode job = acknowledge(post(child, "/api/jobs", job("K-" + round + "-" + i)));
        ObjectNode to = RunningBoard.act(job, "Ede").put("to", "in-work");
        acknowledge(post(child, "/api/jobs/" + job.get("id").asText() + "/state", to));
      } catch (IOException e) {
        return true;
      }
    }
    return false;
  }

  private static ObjectNode job(String reference) {
    ObjectNode body = JSON.createObjectNode().put("who", "Mira").put("reference", reference);
    body.set("order", RunningBoard.order("16-stated-gap.json"));
    return body;
  }

  private JsonNode acknowledge(HttpResponse<String> response) throws IOException {
    assertTrue(response.statusCode() < 300, response.body());
    JsonNode job = JSON.readTree(response.body());
    acknowledged.put(job.get("id").asText(), told(job));
    return job;
  }

  private static String told(JsonNode job) {
    return job.get("version").asText() + " " + job.get("state").asText();
  }

  private HttpResponse<String> post(Child child, String path, JsonNode body)
      throws IOException, InterruptedException {
    return client.send(
        HttpRequest.newBuilder(child.address().resolve(path))
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(body.toString()))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  /** Every acknowledged job is there, as acknowledged or one unacknowledged step further. */
  private void compare(Child child) throws Exception {
    HttpResponse<String> all =
        client.send(
            HttpRequest.newBuilder(child.address().resolve("/api/jobs")).build(),
            HttpResponse.BodyHandlers.ofString());
    assertEquals(200, all.statusCode(), all.body());
    Map<String, String> there = new LinkedHashMap<>();
    JSON.readTree(all.body()).get("jobs").forEach(j -> there.put(j.get("id").asText(), told(j)));
    List<String> lost = new ArrayList<>();
    acknowledged.forEach(
        (id, told) -> {
          boolean further = told.equals("1 booked") && "2 in-work".equals(there.get(id));
          if (!told.equals(there.get(id)) && !further) {
            lost.add(id + " " + told + " but " + there.get(id));
          }
        });
    assertEquals(List.of(), lost);
  }
}
