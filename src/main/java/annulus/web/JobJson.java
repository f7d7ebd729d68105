package annulus.web;

import annulus.stock.HeldBack;
import annulus.stock.HeldUses;
import annulus.store.JobChange;
import annulus.store.JobState;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Jobs as the JSON interface tells them; described in {@code openapi.json}. */
final class JobJson {
  private JobJson() {}

  /** A job in short. */
  static ObjectNode brief(Board board, JobView view) {
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("id", view.job().id());
    node.put("version", view.job().version());
    node.put("reference", view.job().content().reference());
    node.put("title", view.job().content().title());
    node.put("bore", view.job().content().bore());
    node.put("state", StateWords.id(view.state()));
    node.put("stateText", view.state().words());
    node.put("now", StateWords.now(view));
    node.put("decision", view.answer().decision());
    node.put("yes", view.answer().isYes());
    put(node, "start", Optional.of(view.answer().order().start()));
    put(node, "closedAt", view.job().content().closedAt());
    put(node, "readyAt", view.ready());
    put(node, "promisableAt", view.promisable());
    put(node, "promisedAt", view.promised());
    node.put("unsafe", view.unsafe());
    node.put("callDue", view.callDue());
    node.put("toldTooEarly", view.toldTooEarly());
    node.put("slips", view.slips());
    node.put("slipWhy", view.slips() ? new SlipReason(board.times()).of(view) : null);
    ArrayNode held = node.putArray("heldBack");
    for (HeldUses.Use use : view.heldBack()) {
      for (HeldBack why : use.heldBack()) {
        ObjectNode one = held.addObject().put("lot", use.lot()).put("job", use.job());
        one.put("day", why.day().toString()).put("who", why.who()).put("reason", why.reason());
      }
    }
    put(node, "changedAt", Optional.of(view.job().changedAt()));
    node.put("changedBy", view.job().changedBy());
    ArrayNode next = node.putArray("next");
    view.next().forEach(s -> next.add(StateWords.id(s)));
    node.put("mayClose", view.state().mayClose() && view.answer().isYes());
    return node;
  }

  /** A job with its order, its answer and its history. */
  static ObjectNode whole(Board board, JobView view, List<JobChange> changes) {
    ObjectNode node = brief(board, view);
    try {
      node.set("order", Orders.JSON.readTree(view.job().content().order()));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
    node.set("advice", view.answer().json());
    node.set("log", view.answer().measured().map(JobJson::log).orElse(null));
    node.put("shopFile", view.answer().shopFile().orElse(null));
    ArrayNode same = node.putArray("sameReference");
    board
        .sameReference(view.job().content().reference(), view.job().id())
        .forEach(j -> same.add(j.id()));
    ArrayNode history = node.putArray("changes");
    for (JobChange change : changes) {
      ObjectNode entry = history.addObject();
      entry.put("id", change.id());
      entry.put("version", change.version());
      entry.put("at", change.at().toString());
      entry.put("who", change.who());
      entry.put("kind", change.kind().name().toLowerCase(Locale.ROOT));
      entry.put("words", change.words());
      if (change.undoes().isPresent()) {
        entry.put("undoes", change.undoes().getAsLong());
      } else {
        entry.putNull("undoes");
      }
    }
    return node;
  }

  private static ObjectNode log(Answer.Measured measured) {
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("name", measured.log().name());
    node.put("readAt", measured.log().readAt().toString());
    node.put("text", measured.text());
    node.setAll((ObjectNode) measured.json());
    return node;
  }

  private static void put(ObjectNode node, String name, Optional<Instant> instant) {
    node.put(name, instant.map(Instant::toString).orElse(null));
  }

  /** A state by its id. */
  static Optional<JobState> state(String id) {
    for (JobState state : JobState.values()) {
      if (StateWords.id(state).equals(id)) {
        return Optional.of(state);
      }
    }
    return Optional.empty();
  }
}
