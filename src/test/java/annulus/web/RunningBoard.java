package annulus.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;

/** A board on a free port with a clock that the test sets, and a client for it. */
final class RunningBoard implements AutoCloseable {
  static final ObjectMapper JSON = new ObjectMapper();

  /** A Thursday; the demonstration shop opens at 09:00 there, which is 08:00 UTC. */
  static final Instant MORNING = Instant.parse("2027-03-11T08:30:00Z");

  private static final Path STOCK = Path.of("demo-data/stock.csv");

  final SetClock clock = new SetClock(MORNING);
  final HttpClient client = HttpClient.newHttpClient();
  private final BoardServer server;

  RunningBoard(String database, Optional<String> passcode) {
    this(database, passcode, Optional.of(Path.of("demo-data/shop.json")), STOCK);
  }

  private RunningBoard(
      String database, Optional<String> passcode, Optional<Path> shop, Path stock) {
    try {
      ServeOptions options =
          new ServeOptions(
              InetAddress.getLoopbackAddress(),
              0,
              database,
              Optional.empty(),
              shop,
              Optional.of(stock),
              passcode,
              Optional.empty());
      server = BoardServer.start(options, clock, ZoneId.of("Europe/Vienna"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static RunningBoard withoutShop(String database) {
    return new RunningBoard(database, Optional.empty(), Optional.empty(), STOCK);
  }

  static RunningBoard inShop(String database, Path shop) {
    return new RunningBoard(database, Optional.empty(), Optional.of(shop), STOCK);
  }

  static RunningBoard withStock(String database, Path stock) {
    return new RunningBoard(database, Optional.empty(), Optional.empty(), stock);
  }

  static RunningBoard on(String database) {
    return new RunningBoard(database, Optional.empty());
  }

  /** A clock that stands until it is moved. */
  static final class SetClock extends Clock {
    private volatile Instant now;

    SetClock(Instant now) {
      this.now = now;
    }

    void forward(Duration duration) {
      now = now.plus(duration);
    }

    void set(Instant instant) {
      now = instant;
    }

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }

  /** The zone of the demonstration shop. */
  ZoneId zone() {
    return ZoneId.of("Europe/Vienna");
  }

  URI uri(String path) {
    return URI.create("http://127.0.0.1:" + server.port() + path);
  }

  HttpResponse<String> send(HttpRequest.Builder request) {
    try {
      return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  HttpResponse<String> get(String path) {
    return send(HttpRequest.newBuilder(uri(path)));
  }

  HttpResponse<String> post(String path, JsonNode body) {
    return send(
        HttpRequest.newBuilder(uri(path))
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
  }

  HttpResponse<String> text(String path, String type, String body) {
    return send(
        HttpRequest.newBuilder(uri(path))
            .header("Content-Type", type)
            .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  /** A form with a file, as a browser sends it. */
  HttpResponse<String> upload(String path, String name, String text, String... fields) {
    StringBuilder body = new StringBuilder();
    for (String field : fields) {
      String[] two = field.split("=", 2);
      body.append("--cut\r\nContent-Disposition: form-data; name=\"").append(two[0]);
      body.append("\"\r\n\r\n").append(two[1]).append("\r\n");
    }
    body.append("--cut\r\nContent-Disposition: form-data; name=\"file\"; filename=\"");
    body.append(name).append("\"\r\nContent-Type: text/csv\r\n\r\n").append(text);
    body.append("\r\n--cut--\r\n");
    return text(path, "multipart/form-data; boundary=cut", body.toString());
  }

  static String demo(String file) {
    try {
      return Files.readString(Path.of("demo-data/" + file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static JsonNode tree(String file) {
    try {
      return JSON.readTree(Files.readString(Path.of(file)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Two hours at 8 °C until a moment. */
  static String coldLog(Instant until) {
    StringBuilder log = new StringBuilder("time,temperature C\n");
    for (int i = 120; i >= 0; i -= 5) {
      log.append(until.minusSeconds(i * 60L)).append(",8.0\n");
    }
    return log.toString();
  }

  /** A label of an invented lot. */
  static ObjectNode label() {
    return JSON.createObjectNode()
        .put("class", "shop-blend")
        .put("name", "The shop's own")
        .put("like", "medium-lasting")
        .put("gap_basis", "diametral")
        .put("largest_gap_um", 150)
        .put("fixture_minutes", 20)
        .put("full_hours", 24)
        .put("at_c", 22)
        .put("surface", "active")
        .put("at_gap_um", 50)
        .put("strength_mpa", 15)
        .put("service_low_c", -50)
        .put("service_high_c", 150)
        .put("least_cure_c", 5)
        .put("open_months", 12);
  }

  HttpResponse<String> form(String path, String body) {
    return send(
        HttpRequest.newBuilder(uri(path))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  static JsonNode json(HttpResponse<String> response) {
    try {
      return JSON.readTree(response.body());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The first demonstration order without its start: it is closed when the test says so. */
  static ObjectNode order(String file) {
    try {
      ObjectNode order =
          (ObjectNode) JSON.readTree(Files.readString(Path.of("demo-data/orders/" + file)));
      order.remove("start");
      order.put("zone", "Europe/Vienna");
      return order;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  ObjectNode newJob(String reference) {
    ObjectNode job = JSON.createObjectNode();
    job.put("who", "Mira").put("reference", reference).put("title", "a cup");
    job.set("order", order("02-good-fit-primed.json"));
    return job;
  }

  /** Enters a job and gives what the board says of it. */
  JsonNode entered(String reference) {
    HttpResponse<String> response = post("/api/jobs", newJob(reference));
    if (response.statusCode() != 201) {
      throw new IllegalStateException(response.body());
    }
    return json(response);
  }

  static ObjectNode act(JsonNode job, String who) {
    return JSON.createObjectNode().put("who", who).put("version", job.get("version").asLong());
  }

  HttpResponse<String> act(JsonNode job, String what, ObjectNode body) {
    return post("/api/jobs/" + job.get("id").asText() + "/" + what, body);
  }

  @Override
  public void close() {
    server.close();
  }
}
