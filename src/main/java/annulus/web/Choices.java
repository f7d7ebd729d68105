package annulus.web;

import annulus.advice.Knowledge;
import annulus.advice.Shop;
import annulus.advice.ShopPlace;
import annulus.catalog.Instrument;
import annulus.hold.DutyCase;
import annulus.measure.Side;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/** What can be chosen in the fields of the bench, all of it from the data. */
final class Choices {
  private final Knowledge knowledge;
  private final Shop shop;

  Choices(Knowledge knowledge, Shop shop) {
    this.knowledge = knowledge;
    this.shop = shop;
  }

  Map<String, String> materials() {
    return materials("choose");
  }

  /**
   * @param first words where none is chosen
   */
  Map<String, String> materials(String first) {
    return names(knowledge.catalog().materials(), m -> m.name(), first);
  }

  Map<String, String> finishes() {
    return names(
        knowledge.catalog().finishes(), f -> f.name(), "not said: as machined, or moulded");
  }

  Map<String, String> instruments(Side side) {
    Instrument.Use use = side == Side.BORE ? Instrument.Use.INSIDE : Instrument.Use.OUTSIDE;
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", "not said: caliper");
    for (Instrument instrument : knowledge.catalog().instruments().values()) {
      if (instrument.spans().stream().anyMatch(s -> s.use() == use)) {
        found.put(instrument.id(), instrument.name());
      }
    }
    return found;
  }

  Map<String, String> primers() {
    Map<String, String> found = names(knowledge.catalog().primers(), p -> p.name(), "not said");
    found.put("none", "none");
    return found;
  }

  /** Classes that somebody may insist on. */
  Map<String, String> classes() {
    return names(knowledge.catalog().compounds(), c -> c.name(), "the best that fits");
  }

  static Map<String, String> primed() {
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", "both faces");
    found.put("bore", "bore only");
    found.put("part", "part only");
    return found;
  }

  static Map<String, String> gapBases() {
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", "per side (radial)");
    found.put(BenchOrder.ACROSS, "across (diametral clearance)");
    return found;
  }

  static Map<String, String> dateOrders() {
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", "as the file tells");
    found.put("day-first", "day first");
    found.put("month-first", "month first");
    return found;
  }

  static Map<String, String> loggerUnits() {
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", "as the file tells");
    found.put("C", "°C");
    found.put("F", "°F");
    return found;
  }

  static Map<String, String> repeats() {
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", "not said");
    found.put("static", "steady, seldom changed");
    found.put("light-repeated", "repeated, light");
    found.put("reversing", "to and fro");
    found.put("shock", "with shocks");
    return found;
  }

  Map<String, String> duties() {
    return names(knowledge.duties(), DutyCase::name, "not said");
  }

  Map<String, String> places() {
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", shop.places().isEmpty() ? "not said: a cool bench" : "not said");
    for (ShopPlace place : shop.places()) {
      found.put(place.name(), place.describedAs());
    }
    return found;
  }

  static Map<String, String> states() {
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", "not said");
    found.put("clean", "clean: white cloth stays white");
    found.put("oily", "oily");
    found.put("old-compound", "old compound on it");
    found.put("unknown", "not known");
    return found;
  }

  static Map<String, String> consequences() {
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", "not said: could hurt someone");
    found.put("injury", "could hurt someone");
    found.put("stranding", "would strand someone");
    found.put("nuisance", "a nuisance");
    return found;
  }

  /** What a value of a field of the bench is called there; itself where it is typed. */
  String words(String field, String value) {
    return of(field).getOrDefault(value, value);
  }

  /** An order may say "both" where the bench says nothing. */
  private static Map<String, String> primedInOrders() {
    Map<String, String> found = primed();
    found.put("both", found.get(""));
    return found;
  }

  private Map<String, String> of(String field) {
    return switch (field) {
      case "boreMaterial", "partMaterial" -> materials();
      case "boreFinish", "partFinish" -> finishes();
      case "boreState", "partState" -> states();
      case "boreInstrument" -> instruments(Side.BORE);
      case "partInstrument" -> instruments(Side.PART);
      case "primer" -> primers();
      case "primerOn" -> primedInOrders();
      case "class" -> classes();
      case "place" -> places();
      case "duty" -> duties();
      case "repeats" -> repeats();
      case "consequence" -> consequences();
      case "gapBasis" -> gapBases();
      default -> BenchOrder.FLAGS.contains(field) ? Map.of("", "no", "on", "yes") : Map.of();
    };
  }

  private static <T> Map<String, String> names(
      Map<String, T> values, Function<T, String> name, String first) {
    Map<String, String> found = new LinkedHashMap<>();
    found.put("", first);
    values.forEach((id, value) -> found.put(id, name.apply(value)));
    return found;
  }
}
