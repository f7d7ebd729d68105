package annulus.web;

import annulus.advice.Advice;
import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk.Told;
import annulus.exchange.ClockWord;
import annulus.exchange.InputRefused;
import annulus.exchange.PlacedProblem;
import annulus.report.JsonReport;
import annulus.report.PromiseJson;
import annulus.report.SourceList;
import annulus.report.StockCheckReport;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.store.Job;
import annulus.store.JobState;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** The JSON interface; every path is described in {@code openapi.json}. */
final class Api {
  private final Board board;
  private final Shelf shelf;
  private final ShopApi shop;
  private final CabinetApi shelves;

  Api(Board board, Shelf shelf, ShopTools tools) {
    this.board = board;
    this.shelf = shelf;
    this.shop = new ShopApi(tools, shelf);
    this.shelves = new CabinetApi(board, shelf);
  }

  /**
   * One thing that can be asked.
   *
   * @param method GET or POST
   * @param path with {@code {id}} where an identity stands
   * @param handler what answers
   */
  record Operation(HandlerType method, String path, Handler handler) {}

  /** Everything that can be asked. */
  List<Operation> operations() {
    List<Operation> all = new ArrayList<>(ofJobs());
    all.addAll(shop.operations());
    all.addAll(shelves.operations());
    return List.copyOf(all);
  }

  private List<Operation> ofJobs() {
    return List.of(
        new Operation(HandlerType.GET, "/api/jobs", this::jobs),
        new Operation(HandlerType.POST, "/api/jobs", this::enter),
        new Operation(HandlerType.GET, "/api/jobs/{id}", this::job),
        new Operation(HandlerType.POST, "/api/jobs/{id}/state", this::state),
        new Operation(HandlerType.POST, "/api/jobs/{id}/closed", this::closed),
        new Operation(HandlerType.POST, "/api/jobs/{id}/moved", this::moved),
        new Operation(HandlerType.POST, "/api/jobs/{id}/promise", this::promise),
        new Operation(HandlerType.POST, "/api/jobs/{id}/called", this::called),
        new Operation(HandlerType.POST, "/api/jobs/{id}/log", this::log),
        new Operation(HandlerType.POST, "/api/jobs/{id}/order", this::order),
        new Operation(HandlerType.POST, "/api/jobs/{id}/undo", this::undo),
        new Operation(HandlerType.POST, "/api/advice", this::advice),
        new Operation(HandlerType.POST, "/api/sources", this::sources),
        new Operation(HandlerType.POST, "/api/promise", this::ways),
        new Operation(HandlerType.GET, "/api/cabinet", this::cabinet),
        new Operation(HandlerType.POST, "/api/cabinet/movements", this::movement));
  }

  void routes(Javalin app) {
    operations().forEach(o -> app.addHttpHandler(o.method(), o.path(), o.handler()));
  }

  private void job(Context ctx) {
    whole(ctx, board.job(ctx.pathParam("id")));
  }

  /** The part of a reference that an address asks for. */
  static Optional<String> reference(Context ctx) {
    return Optional.of(Form.asked(ctx, "reference").strip()).filter(r -> !r.isEmpty());
  }

  private void jobs(Context ctx) {
    JobViews.Today today = reference(ctx).map(board::named).orElseGet(board::today);
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("now", today.now().toString());
    node.put("zone", board.times().zone().getId());
    ArrayNode jobs = node.putArray("jobs");
    today.views().forEach(v -> jobs.add(JobJson.brief(board, v)));
    ArrayNode unjudged = node.putArray("unjudged");
    today
        .unjudged()
        .forEach(
            (job, problem) -> unjudged.addObject().put("id", job.id()).put("problem", problem));
    json(ctx, node);
  }

  private void enter(Context ctx) {
    JsonNode body = body(ctx, Set.of("who", "reference", "title", "bore", "order"));
    Job job =
        board.enter(
            text(body, "reference"),
            body.path("title").asText(""),
            body.path("bore").asText(""),
            object(body, "order").toString(),
            text(body, "who"));
    ctx.status(201);
    ctx.header("Location", "/api/jobs/" + job.id());
    whole(ctx, job);
  }

  private void state(Context ctx) {
    JsonNode body = body(ctx, Set.of("who", "version", "to"));
    JobState to =
        JobJson.state(text(body, "to"))
            .orElseThrow(() -> refused("to", "is no state", "see openapi.json"));
    whole(ctx, board.put(ctx.pathParam("id"), version(body), to, text(body, "who")));
  }

  private void closed(Context ctx) {
    JsonNode body = body(ctx, Set.of("who", "version", "at"));
    whole(
        ctx, board.close(ctx.pathParam("id"), version(body), time(body, "at"), text(body, "who")));
  }

  private void moved(Context ctx) {
    JsonNode body = body(ctx, Set.of("who", "version", "at"));
    whole(
        ctx, board.moved(ctx.pathParam("id"), version(body), time(body, "at"), text(body, "who")));
  }

  private void log(Context ctx) {
    JsonNode body =
        body(ctx, Set.of("who", "version", "name", "log", "dateOrder", "unit", "column"));
    Board.GivenLog given =
        new Board.GivenLog(
            body.path("name").asText("log"),
            text(body, "log"),
            body.path("dateOrder").asText(""),
            body.path("unit").asText(""),
            body.path("column").asText(""));
    whole(ctx, board.measure(ctx.pathParam("id"), version(body), given, text(body, "who")));
  }

  private void promise(Context ctx) {
    JsonNode body = body(ctx, Set.of("who", "version", "promised"));
    if (!body.has("promised")) {
      throw refused("promised", "is missing", "a time, or null to take it back");
    }
    whole(
        ctx,
        board.promise(
            ctx.pathParam("id"), version(body), time(body, "promised"), text(body, "who")));
  }

  private void called(Context ctx) {
    JsonNode body = body(ctx, Set.of("who", "version"));
    whole(ctx, board.called(ctx.pathParam("id"), version(body), text(body, "who")));
  }

  private void order(Context ctx) {
    JsonNode body = body(ctx, Set.of("who", "version", "order", "title", "bore"));
    Job job = board.job(ctx.pathParam("id"));
    String title = body.path("title").asText(job.content().title());
    String bore = body.path("bore").asText(job.content().bore());
    String order = object(body, "order").toString();
    whole(ctx, board.reorder(job.id(), version(body), title, bore, order, text(body, "who")));
  }

  private void undo(Context ctx) {
    JsonNode body = body(ctx, Set.of("who", "version"));
    whole(ctx, board.undo(ctx.pathParam("id"), version(body), text(body, "who")));
  }

  private void whole(Context ctx, Job job) {
    json(ctx, JobJson.whole(board, board.view(job), board.changes(job.id())));
  }

  /** The answer to an order, exactly as {@code advise --json} gives it. */
  private void advice(Context ctx) {
    requireJson(ctx);
    Answer answer = board.judge(ctx.body());
    ctx.contentType("application/json");
    ctx.result(JsonReport.of(answer.told().advice(), board.knowledge().catalog()));
  }

  /** Every number behind the answer, as the command {@code sources} lists it. */
  private void sources(Context ctx) {
    requireJson(ctx);
    Advice advice = board.judge(ctx.body()).told().advice();
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("dataVersion", advice.dataVersion());
    node.put("text", SourceList.text(advice, board.knowledge()));
    ArrayNode rows = node.putArray("rows");
    for (SourceList.Entry entry : SourceList.of(advice, board.knowledge())) {
      ObjectNode row = rows.addObject().put("what", entry.what());
      ObjectNode numbers = row.putObject("numbers");
      entry.numbers().forEach(numbers::put);
      row.put("source", entry.provenance().source());
      row.put("confidence", entry.provenance().confidence().name().toLowerCase(Locale.ROOT));
    }
    json(ctx, node);
  }

  /** What to tell the customer, as {@code promise --json} gives it. */
  private void ways(Context ctx) {
    JsonNode body = body(ctx, Set.of("order", "wanted", "options"));
    JointOrder order = board.judge(object(body, "order").toString()).order();
    Optional<Instant> wanted = time(body, "wanted");
    Told told = board.desk().tell(order);
    boolean options = wanted.isPresent() || body.path("options").asBoolean();
    PromiseJson.Content content =
        new PromiseJson.Content(
            told,
            board.desk().shifts(order),
            options
                ? Optional.of(board.desk().options(order, order.start(), wanted))
                : Optional.empty(),
            wanted,
            Optional.empty(),
            board.now());
    ctx.contentType("application/json");
    ctx.result(PromiseJson.of(content, board.shop()));
  }

  private void cabinet(Context ctx) {
    Shelf.Now now = shelf.now();
    ctx.contentType("application/json");
    ctx.result(
        new StockCheckReport(now.day(), shelf.soonDays(), now.checks(shelf.soonDays()), now.notes())
            .json());
  }

  private void movement(Context ctx) {
    JsonNode body =
        body(
            ctx,
            Set.of(
                "who",
                "id",
                "kind",
                "lot",
                "ml",
                "job",
                "reason",
                "witness",
                "heldBack",
                "takesBack"));
    String kind = text(body, "kind");
    if (kind.equals("hold-back") || kind.equals("clear")) {
      moved(ctx, heldBack(body, kind.equals("clear")), text(body, "lot"), Optional.empty());
      return;
    }
    if (kind.equals("take-back")) {
      takeBack(ctx, body);
      return;
    }
    requireSilent(body, List.of("takesBack"), "who, lot, ml and job");
    Movement movement =
        movement(
            body.path("id").asText(UUID.randomUUID().toString()),
            kind(kind),
            text(body, "who"),
            text(body, "lot"),
            body.path("ml").asDouble(Double.NaN),
            body.path("job").asText(""),
            body.path("reason").asText(""),
            body.path("witness").asText(""));
    shelf.move(movement);
    boolean use = movement.kind() == Movement.Kind.USE;
    moved(
        ctx,
        movement.id(),
        movement.lot(),
        use ? new JobOfUse(board).warning(movement) : Optional.empty());
  }

  private void takeBack(Context ctx, JsonNode body) {
    requireSilent(
        body, List.of("id", "ml", "job", "witness", "heldBack"), "who, lot, takesBack and reason");
    String lot = text(body, "lot");
    String taken = text(body, "takesBack");
    if (shelf.now().ledger().movement(taken).filter(m -> m.lot().equals(lot)).isEmpty()) {
      throw refused("takesBack", taken + " is none of lot " + lot, "one of that lot");
    }
    String reason = body.path("reason").asText("");
    moved(ctx, shelf.takeBack(taken, text(body, "who"), reason), lot, Optional.empty());
  }

  private static void requireSilent(JsonNode body, List<String> others, String allowed) {
    for (String other : others) {
      if (body.has(other)) {
        throw refused(other, "says nothing here", allowed);
      }
    }
  }

  /** Holds a lot back or clears it; no amount goes with either. */
  private String heldBack(JsonNode body, boolean clears) {
    requireSilent(
        body,
        List.of("ml", "job", "witness", "takesBack", clears ? "id" : "heldBack"),
        "who, lot and reason");
    String lot = text(body, "lot");
    String who = text(body, "who");
    String reason = text(body, "reason");
    if (clears) {
      Optional<String> held = Optional.ofNullable(body.path("heldBack").asText(null));
      return shelf.clear(lot, held, who, reason);
    }
    String id = body.path("id").asText(UUID.randomUUID().toString());
    shelf.holdBack(id, lot, who, reason);
    return id;
  }

  private void moved(Context ctx, String id, String lot, Optional<String> warning) {
    ctx.status(201);
    json(
        ctx,
        Orders.JSON
            .createObjectNode()
            .put("id", id)
            .put("lot", lot)
            .put("leftMl", shelf.now().ledger().left(lot).value())
            .put("warning", warning.orElse(null)));
  }

  /** One movement of today; the item is that of the lot. */
  Movement movement(
      String id,
      Movement.Kind kind,
      String who,
      String lot,
      double ml,
      String job,
      String reason,
      String witness) {
    String item =
        shelf.now().cabinet().lots().stream()
            .filter(l -> l.lot().equals(lot))
            .map(l -> l.item())
            .findFirst()
            .orElse("");
    Instant now = board.now();
    return new Movement(
        id,
        now,
        now.atZone(board.times().zone()).toLocalDate(),
        kind,
        who,
        job,
        lot,
        item,
        Millilitres.of(ml),
        reason,
        witness);
  }

  static Movement.Kind kind(String text) {
    return switch (text.toUpperCase(Locale.ROOT)) {
      case "USE" -> Movement.Kind.USE;
      case "DISCARD" -> Movement.Kind.DISCARD;
      case "CORRECT" -> Movement.Kind.CORRECT;
      default ->
          throw refused(
              "kind",
              text + " is no movement",
              "use, discard, correct, hold-back, clear or take-back");
    };
  }

  static void json(Context ctx, JsonNode node) {
    ctx.contentType("application/json");
    ctx.result(node.toString());
  }

  /** A page of another site can't send this type without asking first. */
  private static void requireJson(Context ctx) {
    String type = Optional.ofNullable(ctx.contentType()).orElse("");
    if (!type.toLowerCase(Locale.ROOT).startsWith("application/json")) {
      throw refused("Content-Type", "\"" + type + "\"", "application/json");
    }
  }

  static JsonNode body(Context ctx, Set<String> known) {
    requireJson(ctx);
    JsonNode body;
    try {
      body = Orders.JSON.readTree(ctx.body());
    } catch (JsonProcessingException e) {
      throw refused("body", e.getOriginalMessage(), "one JSON object");
    } catch (NumberFormatException e) {
      throw refused("body", "holds a number that is too long to be read", "one JSON object");
    }
    if (body == null || !body.isObject()) {
      throw refused("body", "is not a JSON object", "one JSON object");
    }
    requireKnown(body, known);
    return body;
  }

  static void requireKnown(JsonNode body, Set<String> known) {
    for (Iterator<String> names = body.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!known.contains(name)) {
        throw refused(
            name,
            "is unknown",
            annulus.exchange.Nearest.allowed(name, known.stream().sorted().toList()));
      }
    }
  }

  static String text(JsonNode body, String name) {
    if (!body.path(name).isTextual() || body.get(name).asText().isBlank()) {
      throw refused(name, "is missing", "text");
    }
    return body.get(name).asText();
  }

  private static JsonNode object(JsonNode body, String name) {
    if (!body.path(name).isObject()) {
      throw refused(name, "is missing", "an object");
    }
    return body.get(name);
  }

  private static long version(JsonNode body) {
    if (!body.path("version").canConvertToLong()) {
      throw refused("version", "is missing", "the version that was seen");
    }
    return body.get("version").asLong();
  }

  private Optional<Instant> time(JsonNode body, String name) {
    if (!body.hasNonNull(name)) {
      return Optional.empty();
    }
    return Optional.of(
        ClockWord.read("body", 0, name, body.get(name).asText(), board.times().zone()));
  }

  static InputRefused refused(String field, String problem, String allowed) {
    return new InputRefused(List.of(new PlacedProblem("body", 0, 0, field, problem, allowed)));
  }
}
