package annulus.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * An order written flat, as words of a command line or cells of a row, turned into the shape of an
 * order file so that one reader judges all three.
 */
final class FlatOrder {
  /** A flat name and where it goes; {@code bore.} and {@code part.} are members. */
  private static final Map<String, String> PATHS = paths();

  private static final List<String> TEXTS =
      List.of("job", "title", "start", "zone", "movedAt", "cure.place");

  private static final List<String> FLAGS =
      List.of("comesApartLater", "sealNear", "electronicsNear", "warranty");

  private static final Map<String, Spot> SPOTS = spots();

  private static final Pattern BETWEEN_READINGS = Pattern.compile("[;\\s]+(?![A-Za-z\"])");

  private FlatOrder() {}

  private static Map<String, String> paths() {
    Map<String, String> p = new LinkedHashMap<>();
    p.put("job", "job");
    p.put("title", "title");
    p.put("bore_mm", "bore.readingsMm");
    p.put("part_mm", "part.readingsMm");
    p.put("bore_bearing_mm", "bore.bearingMm");
    p.put("part_bearing_mm", "part.bearingMm");
    p.put("engagement_mm", "engagementMm");
    p.put("bore_material", "bore.material");
    p.put("part_material", "part.material");
    p.put("bore_finish", "bore.finish");
    p.put("part_finish", "part.finish");
    p.put("bore_instrument", "bore.instrument");
    p.put("part_instrument", "part.instrument");
    p.put("bore_state", "bore.state");
    p.put("part_state", "part.state");
    p.put("bore_outside_mm", "bore.outsideDiameterMm");
    p.put("part_inside_mm", "part.insideDiameterMm");
    p.put("measured_at_c", "both.temperatureC");
    p.put("diameter_mm", "diameterMm");
    p.put("radial_gap_um", "radialGapUm");
    p.put("radial_gap_plus_minus_um", "radialGapPlusMinusUm");
    p.put("diametral_clearance_um", "diametralClearanceUm");
    p.put("diametral_clearance_plus_minus_um", "diametralClearancePlusMinusUm");
    p.put("temperature_c", "temperatureC");
    p.put("temperature_plus_minus_c", "temperaturePlusMinusC");
    p.put("cure_place", "cure.place");
    p.put("primer", "primer.id");
    p.put("primer_on", "primer.on");
    p.put("primer_minutes_on_part", "primer.minutesOnPart");
    p.put("service_low_c", "serviceLowC");
    p.put("service_high_c", "serviceHighC");
    p.put("axial_n", "load.axialN");
    p.put("torque_nm", "load.torqueNm");
    p.put("load_repeats", "load.repeats");
    p.put("duty", "load.duty");
    p.put("consequence", "consequence");
    p.put("comes_apart_later", "comesApartLater");
    p.put("seal_near", "sealNear");
    p.put("electronics_near", "electronicsNear");
    p.put("warranty", "warranty");
    p.put("start", "start");
    p.put("zone", "zone");
    p.put("confidence", "confidence");
    p.put("class", "class");
    p.put("moved_at", "movedAt");
    return p;
  }

  /** What a value becomes. */
  enum Shape {
    READINGS,
    FLAG,
    TEXT,
    PLAIN
  }

  /**
   * Where a flat name goes.
   *
   * @param holder the object that holds it; empty for the order itself
   * @param name its name there
   * @param shape what its value becomes
   */
  record Spot(String holder, String name, Shape shape) {
    static Spot of(String path) {
      int dot = path.indexOf('.');
      Shape shape =
          path.endsWith("readingsMm")
              ? Shape.READINGS
              : FLAGS.contains(path) ? Shape.FLAG : TEXTS.contains(path) ? Shape.TEXT : Shape.PLAIN;
      return dot < 0
          ? new Spot("", path, shape)
          : new Spot(path.substring(0, dot), path.substring(dot + 1), shape);
    }
  }

  private static Map<String, Spot> spots() {
    Map<String, Spot> spots = new HashMap<>();
    PATHS.forEach((name, path) -> spots.put(name, Spot.of(path)));
    return Map.copyOf(spots);
  }

  /** The flat name of an order file's path; the path itself where there is none. */
  static String nameOf(String path) {
    String measured = path.replaceFirst("^(bore|part)\\.temperatureC$", "both.temperatureC");
    String reading = measured.equals("primer") ? "primer.id" : measured;
    return PATHS.entrySet().stream()
        .filter(e -> e.getValue().equals(reading))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(path);
  }

  /** Whether a flat name holds words of its own, in which a comma is no decimal comma. */
  static boolean isText(String name) {
    return TEXTS.contains(PATHS.getOrDefault(name, name));
  }

  /** All flat names, in the order they are printed. */
  static List<String> names() {
    return List.copyOf(PATHS.keySet());
  }

  /** Where a flat name goes; a name that is none goes where it says. */
  static Spot spot(String name) {
    Spot known = SPOTS.get(name);
    return known == null ? Spot.of(name) : known;
  }

  /** The order file's shape of flat values; empty values are absent. */
  static Node.Obj toOrder(Node.Place place, Map<String, Node> flat) {
    Made made = new Made();
    flat.forEach((name, value) -> made.put(spot(name), value));
    return made.order(place);
  }

  /** An order file's shape while values are put into it. */
  static final class Made {
    private final Map<String, Node> root = new LinkedHashMap<>();
    private final Map<String, Node> bore = new LinkedHashMap<>();
    private final Map<String, Node> part = new LinkedHashMap<>();

    /** What an order need not have; made when the first value of one comes. */
    private Map<String, Map<String, Node>> others = Map.of();

    void put(Spot spot, Node flat) {
      Node value = shaped(spot.shape(), flat);
      switch (spot.holder()) {
        case "" -> root.put(spot.name(), value);
        case "bore" -> bore.put(spot.name(), value);
        case "part" -> part.put(spot.name(), value);
        case "both" -> {
          bore.put(spot.name(), value);
          part.put(spot.name(), value);
        }
        default -> other(spot.holder()).put(spot.name(), value);
      }
    }

    private Map<String, Node> other(String holder) {
      others = others.isEmpty() ? new LinkedHashMap<>() : others;
      return others.computeIfAbsent(holder, k -> new LinkedHashMap<>());
    }

    Node.Obj order(Node.Place place) {
      root.put("bore", object(place, bore));
      root.put("part", object(place, part));
      others.forEach((name, members) -> root.put(name, object(place, members)));
      flattenNoPrimer(root);
      return new Node.Obj(place, root);
    }

    private static Node object(Node.Place place, Map<String, Node> members) {
      Node.Place first = members.isEmpty() ? place : members.values().iterator().next().place();
      return new Node.Obj(first, members);
    }
  }

  /** {@code primer none} is a word, not an object. */
  private static void flattenNoPrimer(Map<String, Node> root) {
    if (root.get("primer") instanceof Node.Obj primer
        && primer.members().get("id") instanceof Node.Text id
        && id.value().equals("none")) {
      root.put("primer", id);
    }
  }

  private static Node shaped(Shape shape, Node value) {
    if (shape == Shape.READINGS) {
      return readings(value);
    }
    if (shape == Shape.FLAG && value instanceof Node.Text t) {
      return switch (t.value().toLowerCase(Locale.ROOT)) {
        case "yes", "true" -> new Node.Bool(value.place(), true);
        case "no", "false" -> new Node.Bool(value.place(), false);
        default -> value;
      };
    }
    return shape == Shape.TEXT && value instanceof Node.Num n
        ? new Node.Text(n.place(), n.written())
        : value;
  }

  /** Several readings in one cell stand apart by spaces or semicolons. */
  static Node.Arr readings(Node value) {
    if (!(value instanceof Node.Text t)) {
      return new Node.Arr(value.place(), List.of(value));
    }
    List<Node> elements = new ArrayList<>();
    for (String word : words(t.value().strip())) {
      elements.add(new Node.Text(value.place(), word));
    }
    return new Node.Arr(value.place(), elements);
  }

  /** The readings of a cell, each with its unit, if any. */
  static List<String> words(String cell) {
    return isBare(cell) ? bareWords(cell) : List.of(BETWEEN_READINGS.split(cell));
  }

  /** Whether a cell begins with a number and holds no unit, so that every space parts readings. */
  private static boolean isBare(String cell) {
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      boolean bare = (c >= '0' && c <= '9') || c == '.' || (isBetween(c) && i > 0);
      if (!bare) {
        return false;
      }
    }
    return !cell.isEmpty();
  }

  private static boolean isBetween(char c) {
    return c == ' ' || c == ';';
  }

  private static List<String> bareWords(String cell) {
    List<String> words = new ArrayList<>();
    int start = 0;
    for (int i = 1; i <= cell.length(); i++) {
      if (i == cell.length() || isBetween(cell.charAt(i))) {
        if (i > start) {
          words.add(cell.substring(start, i));
        }
        start = i + 1;
      }
    }
    return words;
  }
}
