package annulus.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.Optional;

/** The content of a job as it lies in the database. */
final class ContentJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private ContentJson() {}

  static String text(JobContent content) {
    ObjectNode node = JSON.createObjectNode();
    node.put("reference", content.reference());
    node.put("title", content.title());
    node.put("bore", content.bore());
    node.put("order", content.order());
    node.put("advice", content.advice());
    node.put("state", content.state().name());
    node.put("closedAt", written(content.closedAt()));
    node.put("promised", written(content.promised()));
    node.put("promisedStart", written(content.promisedStart()));
    node.put("promiseMoves", content.promiseMoves());
    content.log().ifPresent(l -> node.put("log", l));
    content.place().ifPresent(p -> node.put("place", p));
    if (content.toldReady()) {
      node.put("toldReady", true);
    }
    return Seal.onJson(node.toString());
  }

  private static String written(Optional<Instant> instant) {
    return instant.map(Instant::toString).orElse(null);
  }

  static JobContent content(String text) {
    try {
      JsonNode node = JSON.readTree(Seal.offJson(text));
      return new JobContent(
          node.get("reference").asText(),
          node.get("title").asText(),
          node.get("bore").asText(),
          node.get("order").asText(),
          node.get("advice").asText(),
          JobState.valueOf(node.get("state").asText()),
          instant(node, "closedAt"),
          instant(node, "promised"),
          instant(node, "promisedStart"),
          node.get("promiseMoves").asInt(),
          Optional.ofNullable(node.path("log").textValue()),
          Optional.ofNullable(node.path("place").textValue()),
          node.path("toldReady").asBoolean());
    } catch (JsonProcessingException e) {
      throw new StoreFailed("a job in the database is damaged: " + e.getOriginalMessage(), e);
    }
  }

  private static Optional<Instant> instant(JsonNode node, String name) {
    return node.hasNonNull(name)
        ? Optional.of(Instant.parse(node.get(name).asText()))
        : Optional.empty();
  }
}
