package annulus.web;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What a field of the bench is called on the page, for messages about it. */
final class BenchLabels {
  private static final Map<String, String> LABELS =
      Map.ofEntries(
          Map.entry("reference", "Job reference"),
          Map.entry("title", "What is it?"),
          Map.entry("bench-who", "Your name or initials"),
          Map.entry("lengthUnit", "Lengths in"),
          Map.entry("temperatureUnit", "Temperatures in"),
          Map.entry(BenchOrder.PLACED, "Depth and angle of readings"),
          Map.entry("engagement", "Length they share"),
          Map.entry("gap", "Known gap"),
          Map.entry("gapPlusMinus", "Known gap, give or take"),
          Map.entry("gapBasis", "Known gap is told"),
          Map.entry("diameter", "Nominal diameter beside a known gap"),
          Map.entry("place", "Where it cures"),
          Map.entry("temperature", "Temperature where it cures"),
          Map.entry("temperaturePlusMinus", "Curing temperature give or take"),
          Map.entry("measuredAt", "Parts when measured"),
          Map.entry("primer", "Primer"),
          Map.entry("primerOn", "Primer is on"),
          Map.entry("primerMinutes", "Primer was put on, minutes ago"),
          Map.entry("consequence", "If it let go, it"),
          Map.entry("duty", "Usual load of"),
          Map.entry("repeats", "How the load comes"),
          Map.entry("axialN", "Push or pull along the bore"),
          Map.entry("torqueNm", "Twist in the bore"),
          Map.entry("serviceLow", "Coldest in use"),
          Map.entry("serviceHigh", "Hottest in use"),
          Map.entry("class", "Compound"),
          Map.entry("start", "Joint is closed at"),
          Map.entry(BenchOrder.START_HOUR, "Closed at: which of the two"),
          Map.entry("boreOutside", "Outside diameter round the bore"),
          Map.entry("partInside", "Inside diameter of the part"),
          Map.entry("bore", "Name of this bore"),
          Map.entry(SameReference.TWICE, "Another joint with the same reference"),
          Map.entry("comesApartLater", "Must come apart later"),
          Map.entry("sealNear", "A seal or open bearing is near"),
          Map.entry("electronicsNear", "Battery or electronics are near"),
          Map.entry("warranty", "A warranty claim may be open"));

  /** Fields of an order that the form does not have, by the end of their names. */
  private static final Map<String, String> NOT_ON_THE_FORM =
      Map.of(
          "confidence", "How sure the answer has to be, of 1",
          "zone", "Time zone",
          "movedAt", "Part was moved",
          "cure", "Where it cures, hour by hour",
          "safetyFactor", "Hold wanted over the load",
          "name", "name",
          "arrivesAtC", "temperature when the joint is closed, °C",
          "temperatureC", "temperature when measured, °C",
          "temperaturePlusMinusC", "temperature when measured, give or take, °C");

  private BenchLabels() {}

  /** What a field of an order that the form can't show is called in the shop. */
  static String ofUnshown(String path) {
    String last = path.substring(path.lastIndexOf('.') + 1);
    String member = path.startsWith("bore.") ? "Bore, " : path.startsWith("part.") ? "Part, " : "";
    boolean onTheForm = member.isEmpty() && last.startsWith("temperature"); // of the curing
    String words = onTheForm ? null : NOT_ON_THE_FORM.get(last);
    return words == null ? ofOrder(path) : member + words;
  }

  /** The label of a field by its id. */
  static String of(String field) {
    String known = LABELS.get(field);
    if (known != null) {
      return known;
    }
    for (String member : new String[] {"bore", "part"}) {
      if (field.startsWith(member)) {
        String title = member.equals("bore") ? "Bore" : "Part";
        return title + ", " + ofMember(field.substring(member.length()));
      }
    }
    return field;
  }

  private static String ofMember(String rest) {
    return switch (rest) {
      case "Material" -> "material";
      case "Instrument" -> "read with";
      case "Finish" -> "finish of the face";
      case "State" -> "face as it came";
      case BenchOrder.BEARING -> "bearing nobody measured";
      default ->
          "reading "
              + rest.substring(1)
                  .replace(BenchOrder.DEPTH, " depth")
                  .replace(BenchOrder.ANGLE, " angle");
    };
  }

  /** What a refused field of an order is called: one of the page, or the order's own name. */
  static String ofOrder(String path) {
    String field = fieldOf(path);
    if (path.endsWith("readingsMm")) {
      return path.startsWith("bore") ? "Readings of the bore" : "Readings of the part";
    }
    boolean guessed = field.equals("reference") || field.endsWith("-1");
    return guessed ? path : of(field);
  }

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
                    : lower.contains("bearing")
                        ? member + BenchOrder.BEARING
                        : lower.contains("temperature") ? "measuredAt" : member + "-1";
      }
    }
    return switch (path) {
      case "engagementMm" -> "engagement";
      case "cure", "cure.place" -> "place";
      case "temperatureC" -> "temperature";
      case "temperaturePlusMinusC" -> "temperaturePlusMinus";
      case "serviceLowC", "serviceHighC" -> "serviceHigh";
      case "diameterMm" -> "diameter";
      case "radialGapUm", "diametralClearanceUm" -> "gap";
      case "radialGapPlusMinusUm", "diametralClearancePlusMinusUm" -> "gapPlusMinus";
      case "load.axialN" -> "axialN";
      case "load.torqueNm" -> "torqueNm";
      case "load", "load.repeats" -> "repeats";
      case "primer.minutesOnPart" -> "primerMinutes";
      case "primer.id" -> "primer";
      case "primer.on" -> "primerOn";
      case "who" -> "bench-who";
      case "start", "primer", "class", "title", "bore", "consequence" -> path;
      default -> "reference";
    };
  }
}
