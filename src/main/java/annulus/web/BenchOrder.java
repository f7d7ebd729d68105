package annulus.web;

import annulus.store.Draft;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What was typed at the bench as an order; units are written behind each number. */
final class BenchOrder {
  static final int MOST_READINGS = 24;
  private static final List<String> FLAGS =
      List.of("comesApartLater", "sealNear", "electronicsNear", "warranty");

  private final Draft draft;

  BenchOrder(Draft draft) {
    this.draft = draft;
  }

  static List<String> flags() {
    return FLAGS;
  }

  boolean inches() {
    return draft.field("lengthUnit").equals("in");
  }

  private boolean fahrenheit() {
    return draft.field("temperatureUnit").equals("F");
  }

  /** The readings of a member that are filled in. */
  List<String> readings(String member) {
    List<String> found = new ArrayList<>();
    for (int i = 1; i <= MOST_READINGS; i++) {
      String reading = draft.field(member + "-" + i).strip();
      if (!reading.isEmpty()) {
        found.add(reading);
      }
    }
    return found;
  }

  /** What is still needed before there can be an answer, in words with the id of its field. */
  List<Missing> missing() {
    List<Missing> missing = new ArrayList<>();
    for (String member : List.of("bore", "part")) {
      if (draft.field(member + "Material").isEmpty()) {
        missing.add(new Missing("material of the " + member, member + "Material"));
      }
      if (readings(member).isEmpty()) {
        missing.add(new Missing("a reading of the " + member, member + "-1"));
      }
    }
    if (draft.field("engagement").isBlank()) {
      missing.add(new Missing("the length they share", "engagement"));
    }
    return missing;
  }

  /**
   * Something still needed.
   *
   * @param words what
   * @param field id of its field
   */
  record Missing(String words, String field) {}

  /** The id of the field that a problem is about. */
  static String fieldOf(String path) {
    String lower = path.toLowerCase(Locale.ROOT);
    for (String member : List.of("bore", "part")) {
      if (lower.startsWith(member)) {
        return lower.contains("material")
            ? member + "Material"
            : lower.contains("instrument")
                ? member + "Instrument"
                : lower.contains("finish")
                    ? member + "Finish"
                    : lower.contains("temperature") ? "measuredAt" : member + "-1";
      }
    }
    return switch (path) {
      case "engagementMm" -> "engagement";
      case "temperatureC", "cure.place" -> "temperature";
      case "start" -> "start";
      case "serviceLowC", "serviceHighC" -> "serviceHigh";
      default -> "reference";
    };
  }

  /** The order as JSON text. */
  String json() {
    ObjectNode order = Orders.JSON.createObjectNode();
    order.put("format", 1);
    order.put("job", draft.field("reference").strip());
    order.put("title", draft.field("title").strip());
    order.set("bore", member("bore", "outsideDiameterMm", "boreOutside"));
    order.set("part", member("part", "insideDiameterMm", "partInside"));
    order.put("engagementMm", length(draft.field("engagement")));
    place(order);
    text(order, "primer", draft.field("primer"));
    if (!draft.field("serviceLow").isBlank()) {
      order.put("serviceLowC", temperature(draft.field("serviceLow")));
    }
    if (!draft.field("serviceHigh").isBlank()) {
      order.put("serviceHighC", temperature(draft.field("serviceHigh")));
    }
    text(order, "consequence", draft.field("consequence"));
    if (!draft.field("duty").isEmpty()) {
      order.putObject("load").put("duty", draft.field("duty"));
    }
    for (String flag : FLAGS) {
      if (draft.field(flag).equals("on")) {
        order.put(flag, true);
      }
    }
    text(order, "start", draft.field("start"));
    return order.toString();
  }

  private void place(ObjectNode order) {
    if (!draft.field("temperature").isBlank()) {
      order.put("temperatureC", temperature(draft.field("temperature")));
    } else if (!draft.field("place").isEmpty()) {
      order.putObject("cure").put("place", draft.field("place"));
    }
  }

  private ObjectNode member(String name, String otherName, String otherField) {
    ObjectNode member = Orders.JSON.createObjectNode();
    text(member, "material", draft.field(name + "Material"));
    text(member, "finish", draft.field(name + "Finish"));
    text(member, "state", draft.field(name + "State"));
    text(member, "instrument", draft.field(name + "Instrument"));
    ArrayNode readings = member.putArray("readingsMm");
    readings(name).forEach(r -> readings.add(length(r)));
    if (!draft.field("measuredAt").isBlank()) {
      member.put("temperatureC", temperature(draft.field("measuredAt")));
    }
    if (!draft.field(otherField).isBlank()) {
      member.put(otherName, length(draft.field(otherField)));
    }
    return member;
  }

  private static void text(ObjectNode node, String name, String value) {
    if (!value.isBlank()) {
      node.put(name, value.strip());
    }
  }

  private String length(String typed) {
    return withUnit(typed, inches() ? " in" : "");
  }

  private String temperature(String typed) {
    return withUnit(typed, fahrenheit() ? " F" : "");
  }

  /** A number with a unit of its own keeps it. */
  private static String withUnit(String typed, String unit) {
    String stripped = typed.strip();
    boolean bare = stripped.matches("[-+]?[0-9]*[.,]?[0-9]+");
    return bare ? stripped + unit : stripped;
  }
}
