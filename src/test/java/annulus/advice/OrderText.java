package annulus.advice;

import annulus.exchange.DataFiles;
import annulus.exchange.KnowledgeFiles;
import annulus.exchange.OrderReader;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Orders as JSON text, changed field by field, so that tests go through the real reader. */
public final class OrderText {
  public static final Knowledge KNOWLEDGE = knowledge();
  public static final Advisor ADVISOR = new Advisor(KNOWLEDGE);
  public static final Instant NOW = Instant.parse("2027-03-11T09:00:00Z");

  private final Map<String, Object> root = new LinkedHashMap<>();

  private static Knowledge knowledge() {
    try {
      return KnowledgeFiles.read(DataFiles.bundled());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A steel joint of 15 µm radial gap, well measured, at 22 °C. */
  public OrderText() {
    root.put("format", 1);
    root.put("job", "T-1");
    root.put("bore", member("steel-plain", "ground", "bore-micrometer-three-point", 30.030));
    root.put("part", member("steel-plain", "ground", "outside-micrometer", 30.000));
    root.put("engagementMm", 20);
    root.put("temperatureC", 22);
    root.put("temperaturePlusMinusC", 0);
    root.put("primer", "none");
    root.put("start", "2027-03-11T10:00Z");
    root.put("zone", "UTC");
    set("serviceLowC", 0);
    set("serviceHighC", 40);
  }

  private static Map<String, Object> member(
      String material, String finish, String instrument, double mm) {
    Map<String, Object> member = new LinkedHashMap<>();
    member.put("material", material);
    member.put("finish", finish);
    member.put("instrument", instrument);
    member.put("readingsMm", List.of(mm));
    member.put("state", "clean");
    return member;
  }

  /** Sets a field; a dot goes into bore, part, load or primer; null takes it away. */
  public OrderText set(String path, Object value) {
    Map<String, Object> at = root;
    String name = path;
    int dot = path.indexOf('.');
    if (dot > 0) {
      at = inner(path.substring(0, dot));
      name = path.substring(dot + 1);
    }
    if (value == null) {
      at.remove(name);
    } else {
      at.put(name, value);
    }
    return this;
  }

  @SuppressWarnings("unchecked") // the maps are made here
  private Map<String, Object> inner(String name) {
    if (!(root.get(name) instanceof Map)) {
      root.put(name, new LinkedHashMap<String, Object>());
    }
    return (Map<String, Object>) root.get(name);
  }

  /** Both faces of one material and finish. */
  public OrderText faces(String material, String finish) {
    return set("bore.material", material)
        .set("part.material", material)
        .set("bore.finish", finish)
        .set("part.finish", finish);
  }

  /** A radial gap in whole µm, made by the bore's readings. */
  public OrderText radialGapUm(int um) {
    return set("bore.readingsMm", List.of(30 + um / 500.0));
  }

  public OrderText bore(double... mm) {
    return set("bore.readingsMm", Arrays.stream(mm).boxed().toList());
  }

  public String json() {
    try {
      return new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(root);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public JointOrder order() {
    return read(json());
  }

  /** As read by other knowledge. */
  public JointOrder order(Knowledge knowledge) {
    return read(json(), knowledge);
  }

  /** Reads any text as an order. */
  public static JointOrder read(String json) {
    return read(json, KNOWLEDGE);
  }

  private static JointOrder read(String json, Knowledge knowledge) {
    try {
      return new OrderReader(knowledge, NOW, ZoneOffset.UTC)
          .json("order.json", new StringReader(json));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public Advice advice() {
    return ADVISOR.advise(order());
  }
}
