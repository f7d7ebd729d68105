package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.advice.Shop;
import annulus.exchange.InputRefused;
import annulus.exchange.OrderReader;
import annulus.exchange.PlacedProblem;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Orders as JSON text: read by the one reader, with the start pinned so that they stay the same.
 */
final class Orders {
  static final ObjectMapper JSON =
      new ObjectMapper().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);

  private final Knowledge knowledge;
  private final Shop shop;

  Orders(Knowledge knowledge, Shop shop) {
    this.knowledge = knowledge;
    this.shop = shop;
  }

  /** The same in another shop. */
  Orders in(Shop other) {
    return new Orders(knowledge, other);
  }

  /**
   * Reads an order.
   *
   * @param now the start of an order that gives none
   * @throws InputRefused with every problem found
   */
  JointOrder read(String text, Instant now) {
    OrderReader reader = new OrderReader(knowledge, now, shop.hours().zone(), shop.places());
    try {
      return reader.json("order", new StringReader(text));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** JSON that the program itself wrote. */
  static JsonNode tree(String text) {
    try {
      return JSON.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The same order with this start, whatever it said before. */
  String startingAt(String text, Instant start) {
    ObjectNode order = object(text);
    String zone = order.path("zone").asText(shop.hours().zone().getId());
    order.put("zone", zone);
    order.put("start", start.toString());
    return order.toString();
  }

  /** When the joint of an order that is kept is to be closed, or was. */
  static Instant start(String text) {
    return Instant.parse(object(text).path("start").asText());
  }

  /**
   * An order that is kept, closed at another time, as {@link annulus.advice.PromiseDesk#tellAt}
   * reckons it: primer that is on already is so much older then. It is no fresher where the joint
   * was closed before the planned start, as nobody knows which of the two times it was told for.
   */
  String closedAt(String text, Instant closed) {
    ObjectNode order = object(startingAt(text, closed));
    Duration later = Duration.between(start(text), closed);
    double minutes = order.at("/primer/minutesOnPart").asDouble();
    if (minutes > 0 && later.compareTo(Duration.ZERO) > 0) {
      // whole minutes, as they are typed; rounded up, as older is never quicker
      long aged = (long) Math.ceil(minutes + later.toSeconds() / 60.0);
      ((ObjectNode) order.get("primer")).put("minutesOnPart", aged);
    }
    return order.toString();
  }

  /** The same order whose part was moved after closing; of two moves the later one counts. */
  String moved(String text, Optional<Instant> before, Instant at) {
    Instant last = before.filter(b -> b.isAfter(at)).orElse(at);
    return object(text).put("movedAt", last.toString()).toString();
  }

  /** The same order for a joint made anew. */
  String notMoved(String text) {
    ObjectNode order = object(text);
    order.remove("movedAt");
    return order.toString();
  }

  /** An order that is kept: its start written down, its job and title those of the board. */
  String kept(String text, JointOrder read, String reference, String title) {
    ObjectNode order = object(text);
    order.put("zone", read.zone().getId());
    order.put("start", read.start().toString());
    order.put("job", reference);
    if (!title.isBlank()) {
      order.put("title", title);
    }
    return order.toString();
  }

  private static ObjectNode object(String text) {
    try {
      JsonNode node = JSON.readTree(text);
      if (node instanceof ObjectNode object) {
        return object;
      }
      throw refused("is not a JSON object");
    } catch (JsonProcessingException e) {
      throw refused(e.getOriginalMessage());
    } catch (NumberFormatException e) {
      throw refused("holds a number that is too long to be read");
    }
  }

  private static InputRefused refused(String problem) {
    return new InputRefused(
        List.of(new PlacedProblem("order", 0, 0, "order", problem, "one JSON object")));
  }
}
