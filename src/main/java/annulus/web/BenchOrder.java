package annulus.web;

import annulus.store.Draft;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What was typed at the bench as an order; units are written behind each number. */
final class BenchOrder {
  static final int MOST_READINGS = 24;
  private static final Pattern BARE_NUMBER = Pattern.compile("[-+]?[0-9]*[.,]?[0-9]+");
  static final List<String> LOAD = List.of("duty", "axialN", "torqueNm", "repeats");
  static final List<String> FLAGS =
      List.of("comesApartLater", "sealNear", "electronicsNear", "warranty");

  /** Field that says that depth and angle are noted, and the ends of their names. */
  static final String PLACED = "placed";

  /** End of the field of a bearing that nobody measured. */
  static final String BEARING = "Bearing";

  /** A known gap that is told across the diameter. */
  static final String ACROSS = "across";

  /** The start with its offset, where the clock shows it twice. */
  static final String START_HOUR = "startHour";

  static final String DEPTH = "-depth";
  static final String ANGLE = "-angle";

  private final Draft draft;

  BenchOrder(Draft draft) {
    this.draft = DecimalCommas.read(draft);
  }

  boolean inches() {
    return draft.field("lengthUnit").equals("in");
  }

  private boolean fahrenheit() {
    return draft.field("temperatureUnit").equals("F");
  }

  /**
   * One reading as typed.
   *
   * @param size the size
   * @param depth how deep, mm; empty when not noted
   * @param angle at which angle, °; empty when not noted
   */
  record Typed(String size, String depth, String angle) {
    boolean placed() {
      return !depth.isEmpty() || !angle.isEmpty();
    }
  }

  /** Whether the gap itself is given, in place of readings. */
  private boolean stated() {
    return !draft.field("gap").isBlank();
  }

  /** The readings of a member that are filled in; a place without a size is asked about. */
  List<Typed> readings(String member) {
    List<Typed> found = new ArrayList<>();
    for (int i = 1; i <= MOST_READINGS; i++) {
      String id = member + "-" + i;
      Typed typed =
          new Typed(
              draft.field(id).strip(),
              draft.field(id + DEPTH).strip(),
              draft.field(id + ANGLE).strip());
      if (typed.placed() || !typed.size().isEmpty()) {
        found.add(typed);
      }
    }
    return found;
  }

  /** Whether depth and angle of the readings are noted. */
  boolean placed() {
    return draft.field(PLACED).equals("on")
        || Stream.of("bore", "part").flatMap(m -> readings(m).stream()).anyMatch(Typed::placed);
  }

  /** What is still needed before there can be an answer, in words with the id of its field. */
  List<Missing> missing() {
    List<Missing> missing = new ArrayList<>();
    for (String member : List.of("bore", "part")) {
      if (draft.field(member + "Material").isEmpty()) {
        missing.add(new Missing("material of the " + member, member + "Material"));
      }
      boolean sized = stated() || !draft.field(member + BEARING).isBlank();
      if (!sized && readings(member).isEmpty()) {
        missing.add(new Missing("a reading of the " + member, member + "-1"));
      }
    }
    if (stated() && draft.field("diameter").isBlank()) {
      missing.add(new Missing("the nominal diameter, beside a gap that is known", "diameter"));
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

  /** The order as JSON text. */
  String json() {
    return order().toString();
  }

  ObjectNode order() {
    ObjectNode order = Orders.JSON.createObjectNode();
    order.put("format", 1);
    text(order, "job", draft.field("reference"));
    text(order, "title", draft.field("title"));
    order.set("bore", member("bore", "outsideDiameterMm", "boreOutside"));
    order.set("part", member("part", "insideDiameterMm", "partInside"));
    gap(order);
    order.put("engagementMm", length(draft.field("engagement")));
    place(order);
    primer(order);
    if (!draft.field("serviceLow").isBlank()) {
      order.put("serviceLowC", temperature(draft.field("serviceLow")));
    }
    if (!draft.field("serviceHigh").isBlank()) {
      order.put("serviceHighC", temperature(draft.field("serviceHigh")));
    }
    text(order, "consequence", draft.field("consequence"));
    text(order, "class", draft.field("class"));
    if (LOAD.stream().anyMatch(name -> !draft.field(name).isBlank())) {
      ObjectNode load = order.putObject("load");
      LOAD.forEach(name -> text(load, name, draft.field(name)));
    }
    for (String flag : FLAGS) {
      if (draft.field(flag).equals("on")) {
        order.put(flag, true);
      }
    }
    text(order, "start", start());
    return order;
  }

  /** As typed; with its offset where the clock shows it twice and it was said which is meant. */
  String start() {
    String typed = draft.field("start").strip();
    String hour = draft.field(START_HOUR);
    boolean ofIt = !typed.isEmpty() && hour.matches(Pattern.quote(typed) + "(Z|[-+][0-9:]{5,8})");
    return ofIt ? hour : typed;
  }

  private void gap(ObjectNode order) {
    boolean across = draft.field("gapBasis").equals(ACROSS);
    text(order, across ? "diametralClearanceUm" : "radialGapUm", draft.field("gap"));
    text(
        order,
        across ? "diametralClearancePlusMinusUm" : "radialGapPlusMinusUm",
        draft.field("gapPlusMinus"));
    if (!draft.field("diameter").isBlank()) {
      order.put("diameterMm", length(draft.field("diameter")));
    }
  }

  private void primer(ObjectNode order) {
    boolean plain = draft.field("primerOn").isEmpty() && draft.field("primerMinutes").isBlank();
    if (plain) {
      text(order, "primer", draft.field("primer"));
      return;
    }
    ObjectNode primer = order.putObject("primer");
    text(primer, "id", draft.field("primer"));
    text(primer, "on", draft.field("primerOn"));
    text(primer, "minutesOnPart", draft.field("primerMinutes"));
  }

  /** A temperature beside a place goes along: which of the two is meant is asked, not guessed. */
  private void place(ObjectNode order) {
    if (!draft.field("temperature").isBlank()) {
      order.put("temperatureC", temperature(draft.field("temperature")));
    }
    if (!draft.field("place").isEmpty()) {
      order.putObject("cure").put("place", draft.field("place"));
    }
    text(order, "temperaturePlusMinusC", draft.field("temperaturePlusMinus"));
  }

  private ObjectNode member(String name, String otherName, String otherField) {
    ObjectNode member = Orders.JSON.createObjectNode();
    text(member, "material", draft.field(name + "Material"));
    text(member, "finish", draft.field(name + "Finish"));
    text(member, "state", draft.field(name + "State"));
    text(member, "instrument", draft.field(name + "Instrument"));
    sizes(member, name);
    if (!draft.field("measuredAt").isBlank()) {
      member.put("temperatureC", temperature(draft.field("measuredAt")));
    }
    if (!draft.field(otherField).isBlank()) {
      member.put(otherName, length(draft.field(otherField)));
    }
    return member;
  }

  /** Readings beside a bearing's size go along: the order is then refused, and nothing is lost. */
  private void sizes(ObjectNode member, String name) {
    if (!draft.field(name + BEARING).isBlank()) {
      member.put("bearingMm", length(draft.field(name + BEARING)));
    }
    List<Typed> typed = readings(name);
    if (!typed.isEmpty()) {
      ArrayNode readings = member.putArray("readingsMm");
      typed.forEach(r -> reading(readings, r));
    }
  }

  private void reading(ArrayNode readings, Typed typed) {
    if (!typed.placed()) {
      readings.add(length(typed.size()));
      return;
    }
    ObjectNode reading = readings.addObject().put("mm", length(typed.size()));
    text(reading, "depthMm", typed.depth());
    text(reading, "angleDeg", typed.angle());
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
    boolean bare = BARE_NUMBER.matcher(stripped).matches();
    return bare ? stripped + unit : stripped;
  }
}
