package annulus.web;

import annulus.store.Draft;
import annulus.store.JobContent;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The order of a job as fields of the form at the bench: the way back of {@link BenchOrder}. Not
 * every order fits the form; {@link #unshown} tells what would be lost.
 */
final class BenchFields {
  /** The board keeps these itself, whatever the form says. */
  private static final List<String> KEPT = List.of("job", "title", "start", "zone");

  private static final String MOVED = "movedAt";
  private static final String ZONE = "zone";

  private static final int LONGEST_VALUE = 60;

  private final JobContent content;
  private final JsonNode order;
  private final ClockWords times;

  BenchFields(JobContent content, ClockWords times) {
    this.content = content;
    this.order = asTyped(Orders.tree(content.order()));
    this.times = times;
  }

  /** Whether the joint is closed and the order says that the part was moved after that. */
  boolean moved() {
    return closed() && order.has(MOVED);
  }

  private boolean closed() {
    return content.closedAt().isPresent();
  }

  /** What the order holds that the form can't show, in words; empty when it can show all. */
  List<String> unshown() {
    List<String> paths = unseen();
    if (closed()) {
      paths.remove(MOVED); // stays when the order is changed
    }
    return paths.stream().map(p -> BenchLabels.ofUnshown(p) + ": " + words(held(p))).toList();
  }

  /** What differs in two orders of a job and the form can't show of both, in words. */
  static List<String> changedUnseen(BenchFields before, BenchFields now) {
    Set<String> paths = new LinkedHashSet<>(before.unseen());
    paths.addAll(now.unseen());
    return paths.stream()
        .filter(p -> !before.held(p).equals(now.held(p)))
        .map(p -> BenchLabels.ofUnshown(p) + changed(before.held(p), now.held(p)))
        .toList();
  }

  /** A list of parts is too long for one line. */
  private static String changed(JsonNode before, JsonNode now) {
    boolean parts = before.isContainerNode() || now.isContainerNode();
    return parts ? " changed" : " " + words(before) + " → " + words(now);
  }

  /** Paths of what the order holds and the form can't show. */
  private List<String> unseen() {
    ObjectNode held = ((ObjectNode) order).deepCopy();
    Draft draft = new Draft("", 1, byName(), Instant.EPOCH, "");
    ObjectNode form = new BenchOrder(draft).order();
    List<String> unseen = new ArrayList<>();
    compare("", held.remove(KEPT), asTyped(form.remove(KEPT)), unseen);
    String zone = order.path(ZONE).asText("");
    if (!zone.isEmpty() && !zone.equals(times.zone().getId())) {
      unseen.add(ZONE);
    }
    return unseen;
  }

  private JsonNode held(String path) {
    return order.at("/" + path.replace('.', '/'));
  }

  /** Collects the paths of the fields in which two parts of an order differ. */
  private static void compare(String path, JsonNode held, JsonNode form, List<String> differ) {
    if (held.isObject() && form.isObject()) {
      Set<String> names = new TreeSet<>();
      held.fieldNames().forEachRemaining(names::add);
      form.fieldNames().forEachRemaining(names::add);
      String before = path.isEmpty() ? "" : path + ".";
      names.forEach(n -> compare(before + n, held.path(n), form.path(n), differ));
    } else if (!held.equals(form)) {
      differ.add(path);
    }
  }

  /** A number and the text of it are the same order. */
  private static JsonNode asTyped(JsonNode node) {
    if (node instanceof ObjectNode object) {
      object.properties().forEach(e -> e.setValue(asTyped(e.getValue())));
    } else if (node instanceof ArrayNode array) {
      for (int i = 0; i < array.size(); i++) {
        array.set(i, asTyped(array.get(i)));
      }
    }
    return node.isNumber() ? TextNode.valueOf(node.decimalValue().toPlainString()) : node;
  }

  private static String words(JsonNode held) {
    String value =
        held.isMissingNode() ? "not said" : held.isTextual() ? held.asText() : held.toString();
    return value.length() > LONGEST_VALUE ? value.substring(0, LONGEST_VALUE) + " …" : value;
  }

  /** What stands in each field that is filled in. */
  Map<String, String> byName() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("reference", content.reference());
    fields.put("title", content.title());
    fields.put("bore", content.bore());
    member(fields, "bore");
    member(fields, "part");
    gap(fields);
    fields.put("boreOutside", order.at("/bore/outsideDiameterMm").asText(""));
    fields.put("partInside", order.at("/part/insideDiameterMm").asText(""));
    fields.put("engagement", order.path("engagementMm").asText(""));
    fields.put("temperature", order.path("temperatureC").asText(""));
    fields.put("place", order.at("/cure/place").asText(""));
    fields.put("temperaturePlusMinus", order.path("temperaturePlusMinusC").asText(""));
    primer(fields, order.path("primer"));
    fields.put("serviceLow", order.path("serviceLowC").asText(""));
    fields.put("serviceHigh", order.path("serviceHighC").asText(""));
    fields.put("consequence", order.path("consequence").asText(""));
    fields.put("class", order.path("class").asText(""));
    start(fields);
    BenchOrder.LOAD.forEach(n -> fields.put(n, order.path("load").path(n).asText("")));
    BenchOrder.FLAGS.stream()
        .filter(f -> order.path(f).asBoolean())
        .forEach(f -> fields.put(f, "on"));
    fields.values().removeIf(String::isEmpty);
    return fields;
  }

  private void member(Map<String, String> fields, String member) {
    JsonNode of = order.path(member);
    for (String name : List.of("Material", "Finish", "State", "Instrument")) {
      fields.put(member + name, of.path(name.toLowerCase(Locale.ROOT)).asText(""));
    }
    int number = 1;
    for (JsonNode reading : of.path("readingsMm")) {
      String id = member + "-" + number++;
      fields.put(id, (reading.isObject() ? reading.path("mm") : reading).asText(""));
      fields.put(id + BenchOrder.DEPTH, reading.path("depthMm").asText(""));
      fields.put(id + BenchOrder.ANGLE, reading.path("angleDeg").asText(""));
    }
    fields.putIfAbsent("measuredAt", of.path("temperatureC").asText(""));
    fields.put(member + BenchOrder.BEARING, of.path("bearingMm").asText(""));
  }

  private void gap(Map<String, String> fields) {
    boolean across = order.has("diametralClearanceUm");
    String basis = across ? "diametralClearance" : "radialGap";
    fields.put("gapBasis", across ? BenchOrder.ACROSS : "");
    fields.put("gap", order.path(basis + "Um").asText(""));
    fields.put("gapPlusMinus", order.path(basis + "PlusMinusUm").asText(""));
    fields.put("diameter", order.path("diameterMm").asText(""));
  }

  private static void primer(Map<String, String> fields, JsonNode primer) {
    fields.put("primer", (primer.isObject() ? primer.path("id") : primer).asText(""));
    fields.put("primerOn", primer.path("on").asText(""));
    fields.put("primerMinutes", primer.path("minutesOnPart").asText(""));
  }

  /** A planned start that is still to come; an open joint whose start has passed is closed now. */
  private void start(Map<String, String> fields) {
    String start = order.path("start").asText("");
    boolean planned = !closed() && !start.isEmpty();
    Instant at = planned ? Instant.parse(start) : Instant.MIN;
    if (at.isAfter(times.clock().instant())) {
      String typed = times.field(at);
      String hour = typed + times.zone().getRules().getOffset(at);
      fields.put("start", typed);
      boolean twice = TwoHours.choices(typed, times.zone()).containsKey(hour);
      fields.put(BenchOrder.START_HOUR, twice ? hour : "");
    }
  }
}
