package annulus.advice;

import annulus.exchange.DataFiles;
import annulus.exchange.KnowledgeFiles;
import annulus.exchange.OrderReader;
import annulus.exchange.ShopFile;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.function.Consumer;

/** The shipped data, the invented shop and an invented joint, for tests of the desk. */
public final class DeskData {
  public static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
  public static final Knowledge KNOWLEDGE = knowledge();
  public static final WarmUpTable WARM_UP = KNOWLEDGE.warmUp();
  public static final Shop SHOP = shop(s -> {});
  private static final ObjectMapper JSON = new ObjectMapper();

  private DeskData() {}

  private static Knowledge knowledge() {
    try {
      return KnowledgeFiles.read(DataFiles.bundled());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The invented shop with something changed. */
  public static Shop shop(Consumer<ObjectNode> change) {
    try {
      ObjectMapper mapper = new ObjectMapper();
      ObjectNode root =
          (ObjectNode) mapper.readTree(Files.readString(Path.of("demo-data/shop.json")));
      change.accept(root);
      return ShopFile.read(
          "shop.json",
          new StringReader(mapper.writeValueAsString(root)),
          KNOWLEDGE.catalog().policy());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static PromiseDesk desk() {
    return new PromiseDesk(KNOWLEDGE, SHOP);
  }

  public static Instant at(String local) {
    return LocalDateTime.parse(local).atZone(VIENNA).toInstant();
  }

  /** The invented cargo bike's cup, closed at a local time in Vienna, with something changed. */
  public static JointOrder order(String start, Consumer<ObjectNode> change) {
    return order(SHOP, start, change);
  }

  static JointOrder order(Shop shop, String start, Consumer<ObjectNode> change) {
    try {
      ObjectNode root =
          (ObjectNode)
              JSON.readTree(Files.readString(Path.of("demo-data/orders/01-good-fit.json")));
      root.put("start", start);
      root.put("zone", VIENNA.getId());
      change.accept(root);
      return new OrderReader(KNOWLEDGE, at("2027-03-11T10:00"), VIENNA, shop.places())
          .json("order.json", new StringReader(JSON.writeValueAsString(root)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** As {@link #order} in a place of the shop. */
  public static JointOrder in(String place, String start) {
    return order(start, o -> place(o, place));
  }

  static void place(ObjectNode order, String place) {
    order.remove("temperatureC");
    order.remove("temperaturePlusMinusC");
    order.putObject("cure").put("place", place);
  }
}
