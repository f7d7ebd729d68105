package annulus.web;

import static annulus.web.RunningBoard.JSON;
import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Drives the running server through every operation of its own description. */
class OpenApiTest {
  @TempDir Path folder;
  private RunningBoard board;
  private JsonNode described;
  private final Set<String> seen = new TreeSet<>();

  @BeforeEach
  void start() {
    board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
    described = json(board.get("/openapi.json"));
  }

  @AfterEach
  void stop() {
    board.close();
  }

  private List<String> errors(String schemaName, String body) {
    ObjectNode schema = JSON.createObjectNode();
    schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    schema.put("$ref", "#/components/schemas/" + schemaName);
    schema.set("components", described.get("components"));
    Schema compiled =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(schema.toString(), InputFormat.JSON);
    return compiled.validate(body, InputFormat.JSON).stream().map(Object::toString).toList();
  }

  /** A body of another type than JSON: sent and answered as described. */
  private String driveText(String method, String path, String type, String body, int status) {
    JsonNode operation = described.at("/paths").path(path).path(method);
    if (body != null && status < 400) {
      assertTrue(operation.at("/requestBody/content").has(type), path + " takes " + type);
    }
    HttpResponse<String> response = body == null ? board.get(path) : board.text(path, type, body);
    assertEquals(status, response.statusCode(), response.body());
    String answered =
        response.headers().firstValue("Content-Type").orElse("").replaceAll(";.*| ", "");
    JsonNode answer = operation.get("responses").path(Integer.toString(status));
    assertTrue(answer.path("content").has(answered), path + " " + status + " " + answered);
    if (answered.equals("application/json")) {
      assertEquals(List.of(), errors(schemaOf(answer), response.body()), path + " " + status);
    }
    seen.add(method + " " + path + " " + status);
    return response.body();
  }

  private static String schemaOf(JsonNode holder) {
    String ref = holder.at("/content/application~1json/schema/$ref").asText();
    return ref.substring(ref.lastIndexOf('/') + 1);
  }

  /** Sends what the description asks for and holds the answer against it. */
  private JsonNode drive(String method, String path, String id, JsonNode body, int status) {
    JsonNode operation = described.at("/paths").path(path).path(method);
    assertTrue(operation.isObject(), method + " " + path + " is not described");
    String real = id.startsWith("?") ? path + id : path.replace("{id}", id);
    if (body != null && status < 400) {
      assertEquals(List.of(), errors(schemaOf(operation.get("requestBody")), body.toString()));
    }
    HttpResponse<String> response = body == null ? board.get(real) : board.post(real, body);
    assertEquals(status, response.statusCode(), method + " " + path + ": " + response.body());
    JsonNode answer = operation.get("responses").path(Integer.toString(status));
    assertTrue(answer.isObject(), status + " of " + path + " is not described");
    assertEquals(
        "application/json",
        response.headers().firstValue("Content-Type").orElse("").split(";", 2)[0]);
    assertEquals(List.of(), errors(schemaOf(answer), response.body()), path + " " + status);
    seen.add(method + " " + path + " " + status);
    return json(response);
  }

  private static ObjectNode empty() {
    return JSON.createObjectNode();
  }

  @Test
  void every_operation_answers_as_it_is_described() {
    JsonNode job = drive("post", "/api/jobs", "", board.newJob("HL-1"), 201);
    drive("post", "/api/jobs", "", board.newJob("HL-2").put("colour", 1), 422);
    String id = job.get("id").asText();
    drive("get", "/api/jobs", "", null, 200);
    drive("get", "/api/jobs/{id}", id, null, 200);
    drive("get", "/api/jobs/{id}", "none", null, 404);
    JsonNode stale = job;
    job = driveJob("state", id, act(job, "Mira").put("to", "in-work"));
    job =
        driveJob(
            "order",
            id,
            act(job, "Mira").set("order", RunningBoard.order("02-good-fit-primed.json")));
    job = driveJob("closed", id, act(job, "Mira"));
    job =
        driveJob("promise", id, act(job, "Ede").put("promised", job.get("promisableAt").asText()));
    job = driveJob("undo", id, act(job, "Ede"));
    job = driveJob("moved", id, act(job, "Mira"));
    bad("state", id, act(stale, "Mira").put("to", "in-work"), act(job, "M").put("to", "gone"));
    bad(
        "order",
        id,
        act(stale, "Mira").set("order", RunningBoard.order("02-good-fit-primed.json")),
        act(job, "M"));
    bad("moved", id, act(stale, "Mira"), act(job, "M").put("at", "never"));
    job = measured(id, job, stale);
    bad("closed", id, act(stale, "Mira"), act(job, "M").put("at", "never"));
    bad("promise", id, act(stale, "Ede").putNull("promised"), act(job, "M"));
    bad("undo", id, act(stale, "Ede"), act(job, "").put("who", ""));
    judged();
    cabinet();
    shop();
    toldTooEarly();
    assertEquals(describedOperations(true), seen);
  }

  private JsonNode driveJob(String what, String id, JsonNode body) {
    return drive("post", "/api/jobs/{id}/" + what, id, body, 200);
  }

  private void bad(String what, String id, JsonNode stale, JsonNode wrong) {
    drive("post", "/api/jobs/{id}/" + what, id, stale, 409);
    drive("post", "/api/jobs/{id}/" + what, id, wrong, 422);
    drive("post", "/api/jobs/{id}/" + what, "none", stale, 404);
  }

  private JsonNode measured(String id, JsonNode job, JsonNode stale) {
    board.clock.forward(java.time.Duration.ofHours(2));
    ObjectNode log = act(job, "Mira").put("log", RunningBoard.coldLog(board.clock.instant()));
    JsonNode measured = driveJob("log", id, log.put("name", "bench.csv"));
    ObjectNode late = act(stale, "Mira").set("log", log.get("log"));
    bad("log", id, late, act(measured, "Mira").put("log", "x"));
    return measured;
  }

  private void shop() {
    ObjectNode question = empty();
    question.putArray("fit").add("35 H7").add("35 k6");
    question.putObject("bore").put("readings", "35.012 35.013").put("instrument", "caliper-150");
    drive("post", "/api/fit", "", question, 200);
    drive("post", "/api/fit", "", empty(), 422);
    driveText("post", "/api/batch", "text/csv", RunningBoard.demo("jobs.csv"), 200);
    driveText("post", "/api/batch", "text/csv", "colour\nred\n", 422);
    driveText("post", "/api/ready", "text/csv", RunningBoard.demo("jobs.csv"), 200);
    driveText("post", "/api/ready", "text/csv", "colour\nred\n", 422);
    driveText("post", "/api/learn", "text/csv", RunningBoard.demo("observations.csv"), 200);
    driveText("post", "/api/learn", "text/csv", "colour\nred\n", 422);
    drive("post", "/api/labels", "", RunningBoard.label(), 200);
    drive("post", "/api/labels", "", RunningBoard.label().put("gap_basis", "round"), 422);
    String ledger = driveText("get", "/api/cabinet/ledger", "", null, 200);
    drive("post", "/api/cabinet/ledger", "", empty().put("ledger", ledger), 200);
    drive("post", "/api/cabinet/ledger", "", empty().put("ledger", "A1\tx\ty\n"), 422);
  }

  private void judged() {
    ObjectNode order = RunningBoard.order("01-good-fit.json");
    drive("post", "/api/advice", "", order, 200);
    drive("post", "/api/advice", "", empty(), 422);
    drive("post", "/api/sources", "", order, 200);
    drive("post", "/api/sources", "", empty(), 422);
    ObjectNode question = empty().put("options", true);
    question.set("order", order);
    drive("post", "/api/promise", "", question, 200);
    drive("post", "/api/promise", "", empty(), 422);
  }

  private void toldTooEarly() {
    JsonNode job = board.entered("HL-3");
    String id = job.get("id").asText();
    JsonNode stale = job;
    job = driveJob("closed", id, act(job, "Mira"));
    bad("called", id, act(stale, "Ede"), act(job, "Ede"));
    Instant setting = Instant.parse(job.get("closedAt").asText()).plusSeconds(300);
    board.clock.set(Instant.parse(job.get("readyAt").asText()));
    job = driveJob("state", id, act(job, "Ede").put("to", "checked"));
    job = driveJob("state", id, act(job, "Ede").put("to", "customer-told"));
    job = driveJob("moved", id, act(job, "Ines").put("at", setting.toString()));
    driveJob("called", id, act(job, "Ede"));
  }

  private void cabinet() {
    drive("get", "/api/cabinet", "", null, 200);
    ObjectNode use = empty().put("who", "Orla").put("kind", "use").put("lot", "007").put("ml", 0.5);
    drive("post", "/api/cabinet/movements", "", use, 201);
    ObjectNode held = empty().put("who", "Orla").put("lot", "007").put("reason", "in doubt");
    drive("post", "/api/cabinet/movements", "", held.deepCopy().put("kind", "hold-back"), 201);
    drive("get", "/api/cabinet", "", null, 200);
    drive("get", "/api/jobs", "", null, 200);
    drive("post", "/api/cabinet/movements", "", held.deepCopy().put("kind", "clear"), 201);
    drive("get", "/api/cabinet/plan", "", null, 200);
    drive("get", "/api/cabinet/cover", "", null, 200);
    drive("get", "/api/cabinet/uses", "?lot=007", null, 200);
    drive("get", "/api/cabinet/uses", "", null, 422);
    drive("post", "/api/cabinet/movements", "", use.deepCopy().put("ml", 1000), 422);
    drive("post", "/api/cabinet/movements", "", use.deepCopy().put("lot", "no such"), 404);
  }

  private Set<String> describedOperations(boolean withStatus) {
    Set<String> all = new TreeSet<>();
    described
        .get("paths")
        .properties()
        .forEach(
            p ->
                p.getValue()
                    .properties()
                    .forEach(
                        m -> {
                          List<String> statuses = new ArrayList<>();
                          m.getValue()
                              .get("responses")
                              .fieldNames()
                              .forEachRemaining(statuses::add);
                          statuses.forEach(
                              s ->
                                  all.add(
                                      m.getKey() + " " + p.getKey() + (withStatus ? " " + s : "")));
                        }));
    return all;
  }

  @Test
  void everything_that_can_be_asked_is_described() {
    Set<String> routes = new TreeSet<>();
    new Api(null, null, null)
        .operations()
        .forEach(
            o -> routes.add(o.method().name().toLowerCase(java.util.Locale.ROOT) + " " + o.path()));
    assertEquals(describedOperations(false), routes);
  }

  @Test
  void the_schemas_of_the_description_can_tell_right_from_wrong() {
    assertTrue(!errors("Undo", "{\"who\":\"a\"}").isEmpty());
    assertTrue(!errors("Job", "{}").isEmpty());
  }

  @Test
  void the_answer_is_that_of_the_command_line_byte_for_byte() throws Exception {
    String order = java.nio.file.Files.readString(Path.of("demo-data/orders/01-good-fit.json"));
    String web = board.post("/api/advice", JSON.readTree(order)).body();
    annulus.advice.Advisor advisor = annulus.advice.OrderText.ADVISOR;
    annulus.exchange.OrderReader reader =
        new annulus.exchange.OrderReader(
            advisor.knowledge(), board.clock.instant(), java.time.ZoneOffset.UTC);
    var read = reader.json("order", new java.io.StringReader(order));
    assertEquals(annulus.report.JsonReport.of(advisor.advise(read), advisor.catalog()), web);
  }
}
