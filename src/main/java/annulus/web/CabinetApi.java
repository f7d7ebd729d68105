package annulus.web;

import annulus.report.CoverPicture;
import annulus.report.CoverReport;
import annulus.report.StockPlanReport;
import annulus.stock.JobPlan;
import annulus.stock.Ledger;
import annulus.stock.Movement;
import annulus.stock.Reorder;
import annulus.web.Api.Operation;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The part of the JSON interface that looks into the cabinet: needs, orders, cover, recall. */
final class CabinetApi {
  private final Board board;
  private final Shelf shelf;

  CabinetApi(Board board, Shelf shelf) {
    this.board = board;
    this.shelf = shelf;
  }

  List<Operation> operations() {
    return List.of(
        new Operation(HandlerType.GET, "/api/cabinet/plan", this::plan),
        new Operation(HandlerType.GET, "/api/cabinet/cover", this::cover),
        new Operation(HandlerType.GET, "/api/cabinet/uses", this::uses));
  }

  private void plan(Context ctx) {
    StockPlanReport plan = shelf.plan(shelf.now(), board.today().open());
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("day", plan.on().toString()).put("text", plan.text());
    ArrayNode jobs = node.putArray("jobs");
    plan.plans().forEach(p -> job(jobs.addObject(), p));
    ArrayNode orders = node.putArray("orders");
    plan.orders().forEach(o -> order(orders.addObject(), o));
    Api.json(ctx, node);
  }

  private static void job(ObjectNode node, JobPlan plan) {
    node.put("job", plan.need().job()).put("day", plan.need().day().toString());
    node.put("short", plan.isShort());
    ArrayNode takes = node.putArray("takes");
    for (JobPlan.Take take : plan.takes()) {
      ObjectNode one = takes.addObject().put("lot", take.lot()).put("item", take.item());
      one.put("ml", take.amount().value()).put("opens", take.opens());
    }
    ArrayNode missing = node.putArray("missing");
    plan.missing()
        .forEach(m -> missing.addObject().put("item", m.item()).put("ml", m.amount().value()));
  }

  private static void order(ObjectNode node, Reorder order) {
    node.put("item", order.item()).put("leftMl", order.onHand().value());
    node.put("lackingMl", order.lacking().value()).put("orderMl", order.amount().value());
    node.put("orderBy", order.orderBy().map(Object::toString).orElse(null));
    ArrayNode words = node.putArray("words");
    StockPlanReport.words(order).forEach(words::add);
  }

  private void cover(Context ctx) {
    CoverReport cover = shelf.cover(shelf.now());
    ObjectNode node = Orders.JSON.createObjectNode();
    ArrayNode there = node.putArray("there");
    cover.cover().there().stream().sorted().forEach(there::add);
    node.put("served", cover.cover().served()).put("asked", cover.cover().cells().size());
    ArrayNode holes = node.putArray("holes");
    cover.holeWords().forEach(holes::add);
    ArrayNode fewest = node.putArray("fewestToClose");
    cover.cover().fewest().stream().sorted().forEach(fewest::add);
    node.put("text", cover.text()).put("picture", CoverPicture.svg(cover));
    Api.json(ctx, node);
  }

  /** Which jobs got a lot, or which lots went into a job. */
  private void uses(Context ctx) {
    Optional<String> lot = Optional.ofNullable(ctx.queryParam("lot"));
    Optional<String> job = Optional.ofNullable(ctx.queryParam("job"));
    if (lot.isPresent() == job.isPresent()) {
      throw Api.refused("query", "needs one of two", "?lot=X or ?job=Y");
    }
    Ledger ledger = shelf.now().ledger();
    List<Movement> uses =
        ledger.uses(
            m -> lot.map(l -> m.lot().equals(l)).orElseGet(() -> m.job().equals(job.get())));
    ObjectNode node = Orders.JSON.createObjectNode();
    ArrayNode all = node.putArray("uses");
    for (Movement m : uses) {
      ObjectNode use = all.addObject().put("id", m.id()).put("at", m.at().toString());
      use.put("kind", m.kind().name().toLowerCase(Locale.ROOT)).put("who", m.who());
      use.put("lot", m.lot()).put("item", m.item()).put("job", m.job());
      use.put("ml", m.amount().value()).put("reason", m.reason()).put("witness", m.witness());
    }
    ArrayNode alike = node.putArray("alike");
    lot.map(ledger::lotsLike).orElseGet(() -> ledger.jobsLike(job.get())).forEach(alike::add);
    Api.json(ctx, node);
  }
}
