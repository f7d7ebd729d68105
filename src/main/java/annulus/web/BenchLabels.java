package annulus.web;

import java.util.Map;

/** What a field of the bench is called on the page, for messages about it. */
final class BenchLabels {
  private static final Map<String, String> LABELS =
      Map.ofEntries(
          Map.entry("reference", "Job reference"),
          Map.entry("title", "What is it?"),
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

  private BenchLabels() {}

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
    String field = BenchOrder.fieldOf(path);
    if (path.endsWith("readingsMm")) {
      return path.startsWith("bore") ? "Readings of the bore" : "Readings of the part";
    }
    boolean guessed = field.equals("reference") || field.endsWith("-1");
    return guessed ? path : of(field);
  }
}
