package annulus.exchange;

import java.util.ArrayList;
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

  /** The order file's shape of flat values; empty values are absent. */
  static Node.Obj toOrder(Node.Place place, Map<String, Node> flat) {
    Map<String, Node> root = new LinkedHashMap<>();
    Map<String, Map<String, Node>> nested = new LinkedHashMap<>();
    nested.put("bore", new LinkedHashMap<>());
    nested.put("part", new LinkedHashMap<>());
    for (Map.Entry<String, Node> entry : flat.entrySet()) {
      String path = PATHS.getOrDefault(entry.getKey(), entry.getKey());
      Node value = shaped(path, entry.getValue());
      int dot = path.indexOf('.');
      if (dot < 0) {
        root.put(path, value);
      } else if (path.startsWith("both.")) {
        nested.get("bore").put(path.substring(dot + 1), value);
        nested.get("part").put(path.substring(dot + 1), value);
      } else {
        nested
            .computeIfAbsent(path.substring(0, dot), k -> new LinkedHashMap<>())
            .put(path.substring(dot + 1), value);
      }
    }
    nested.forEach((name, members) -> root.put(name, object(place, members)));
    flattenNoPrimer(root);
    return new Node.Obj(place, root);
  }

  private static Node object(Node.Place place, Map<String, Node> members) {
    Node.Place first = members.values().stream().findFirst().map(Node::place).orElse(place);
    return new Node.Obj(first, members);
  }

  /** {@code primer none} is a word, not an object. */
  private static void flattenNoPrimer(Map<String, Node> root) {
    if (root.get("primer") instanceof Node.Obj primer
        && primer.members().get("id") instanceof Node.Text id
        && id.value().equals("none")) {
      root.put("primer", id);
    }
  }

  private static Node shaped(String path, Node value) {
    if (path.endsWith("readingsMm")) {
      return readings(value);
    }
    boolean flag =
        List.of("comesApartLater", "sealNear", "electronicsNear", "warranty").contains(path);
    if (flag && value instanceof Node.Text t) {
      return switch (t.value().toLowerCase(Locale.ROOT)) {
        case "yes", "true" -> new Node.Bool(value.place(), true);
        case "no", "false" -> new Node.Bool(value.place(), false);
        default -> value;
      };
    }
    return TEXTS.contains(path) && value instanceof Node.Num n
        ? new Node.Text(n.place(), n.written())
        : value;
  }

  /** Several readings in one cell stand apart by spaces or semicolons. */
  static Node.Arr readings(Node value) {
    if (!(value instanceof Node.Text t)) {
      return new Node.Arr(value.place(), List.of(value));
    }
    List<Node> elements = new ArrayList<>();
    for (String word : BETWEEN_READINGS.split(t.value().strip())) {
      elements.add(new Node.Text(value.place(), word));
    }
    return new Node.Arr(value.place(), elements);
  }
}
