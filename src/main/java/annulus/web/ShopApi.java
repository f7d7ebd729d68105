package annulus.web;

import annulus.advice.FitExplanation;
import annulus.advice.Learned;
import annulus.exchange.FitWords;
import annulus.exchange.FitWords.Measured;
import annulus.exchange.LabelSheet;
import annulus.measure.Side;
import annulus.report.FitJson;
import annulus.report.JobListText;
import annulus.report.LabelReport;
import annulus.report.LearnedPicture;
import annulus.report.LearnedText;
import annulus.report.OverlayJson;
import annulus.stock.ShopClass;
import annulus.web.Api.Operation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The part of the JSON interface that needs no job: fits, lists, learning, labels, the ledger. */
final class ShopApi {
  private final ShopTools tools;
  private final Shelf shelf;

  ShopApi(ShopTools tools, Shelf shelf) {
    this.tools = tools;
    this.shelf = shelf;
  }

  List<Operation> operations() {
    return List.of(
        new Operation(HandlerType.POST, "/api/fit", this::fit),
        new Operation(HandlerType.POST, "/api/batch", this::batch),
        new Operation(HandlerType.POST, "/api/ready", this::ready),
        new Operation(HandlerType.POST, "/api/learn", this::learn),
        new Operation(HandlerType.POST, "/api/labels", this::label),
        new Operation(HandlerType.GET, "/api/cabinet/ledger", this::ledger),
        new Operation(HandlerType.POST, "/api/cabinet/ledger", this::takeOver));
  }

  private void fit(Context ctx) {
    JsonNode body = Api.body(ctx, Set.of("fit", "bore", "part", "measuredAtC"));
    List<String> words = new ArrayList<>();
    body.path("fit").forEach(w -> words.add(w.asText()));
    double celsius = tools.defaultCelsius();
    if (body.hasNonNull("measuredAtC")) {
      celsius = body.get("measuredAtC").asDouble(Double.NaN);
    }
    List<Measured> sizes = new ArrayList<>();
    for (Side side : Side.values()) {
      JsonNode size = body.path(side.name().toLowerCase(Locale.ROOT));
      if (size.isObject()) {
        Api.requireKnown(size, Set.of("readings", "instrument", "material"));
        sizes.add(
            new Measured(
                side,
                Api.text(size, "readings"),
                size.path("instrument").asText(FitWords.INSTRUMENT),
                size.path("material").asText(FitWords.MATERIAL),
                celsius));
      }
    }
    FitExplanation fit = tools.fit(words, sizes);
    ctx.contentType("application/json");
    ctx.result(FitJson.of(fit));
  }

  private void batch(Context ctx) {
    ctx.header("Content-Disposition", "attachment; filename=\"results.csv\"");
    String results = tools.batch(csv(ctx));
    ctx.contentType("text/csv; charset=utf-8");
    ctx.result(results);
  }

  /** A page of another site can't send this type without asking first. */
  private static Upload csv(Context ctx) {
    String type = Optional.ofNullable(ctx.contentType()).orElse("");
    if (!type.toLowerCase(Locale.ROOT).startsWith("text/csv")) {
      throw Api.refused("Content-Type", "\"" + type + "\"", "text/csv");
    }
    return new Upload("body", annulus.exchange.LoggerSource.text(ctx.bodyAsBytes()));
  }

  private void ready(Context ctx) {
    ReadyList ready = tools.ready(csv(ctx));
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("text", ready.text());
    ArrayNode jobs = node.putArray("jobs");
    for (JobListText.Line line : ready.lines()) {
      ObjectNode job = jobs.addObject().put("job", line.job()).put("state", line.state().word());
      job.put("readyAt", line.ready().map(Object::toString).orElse(null));
      job.put("promisableAt", line.promise().map(Object::toString).orElse(null));
      job.put("promisedAt", line.promised().map(Object::toString).orElse(null));
      job.put("misses", line.misses()).put("why", line.why());
    }
    ArrayNode problems = node.putArray("problems");
    ready.problems().forEach(p -> problems.add(p.toString()));
    Api.json(ctx, node);
  }

  private void learn(Context ctx) {
    List<Learned> learned = tools.learn(csv(ctx));
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("text", LearnedText.of(learned));
    ArrayNode classes = node.putArray("classes");
    for (Learned one : learned) {
      classes
          .addObject()
          .put("class", one.shipped().id())
          .put("joints", one.joints())
          .put("pulls", one.pulls())
          .put("timeFactor", one.timeFactor())
          .put("picture", LearnedPicture.of(one));
    }
    node.set("overlay", tree(OverlayJson.of(learned)));
    node.put("written", false);
    Api.json(ctx, node);
  }

  private static JsonNode tree(String text) {
    try {
      return Orders.JSON.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private void label(Context ctx) {
    Set<String> known = new HashSet<>(LabelSheet.COLUMNS);
    known.add("keep");
    JsonNode body = Api.body(ctx, known);
    Map<String, String> said = new LinkedHashMap<>();
    LabelSheet.COLUMNS.forEach(c -> said.put(c, body.path(c).asText("")));
    ShopClass made = tools.label(said);
    boolean keep = body.path("keep").asBoolean();
    if (keep) {
      tools.keep(made);
    }
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("class", made.after().id());
    node.put("text", new LabelReport(made).text());
    node.put("picture", new LabelReport(made).svg());
    node.put("kept", keep);
    Api.json(ctx, node);
  }

  private void ledger(Context ctx) {
    ctx.contentType("text/plain; charset=utf-8");
    ctx.result(shelf.ledgerText());
  }

  private void takeOver(Context ctx) {
    JsonNode body = Api.body(ctx, Set.of("ledger"));
    Shelf.TakenOver taken = shelf.takeOver(new Upload("ledger", Api.text(body, "ledger")));
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("movements", taken.movements());
    node.put("new", taken.isNew());
    ArrayNode notes = node.putArray("notes");
    taken.notes().forEach(notes::add);
    Api.json(ctx, node);
  }
}
