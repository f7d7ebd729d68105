package annulus.web;

import annulus.store.Draft;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Numbers of the bench with a decimal comma, as some phones show no point: read as with a point. A
 * comma that may as well part thousands is left as it is, and refused with the rest of the order:
 * 1,500 N is not taken for 1.5 N.
 */
final class DecimalCommas {
  private static final Pattern COMMA =
      Pattern.compile("([-+]?)([0-9]*),([0-9]+)((?: ?[A-Za-zµ°\"]+)?)");

  private static final Pattern OF_THOUSANDS = Pattern.compile("[1-9][0-9]{0,2}");

  /** A thousand of them can't be meant: no order may hold as much. */
  private static final Set<String> BELOW_A_THOUSAND =
      Set.of(
          "engagement",
          "diameter",
          "bore" + BenchOrder.BEARING,
          "part" + BenchOrder.BEARING,
          "temperature",
          "temperaturePlusMinus",
          "measuredAt",
          "serviceLow",
          "serviceHigh");

  private static final Set<String> MAY_BE_THOUSANDS =
      Set.of(
          "gap",
          "gapPlusMinus",
          "boreOutside",
          "partInside",
          "axialN",
          "torqueNm",
          "primerMinutes");

  private static final Pattern READING = Pattern.compile("(?:bore|part)-[0-9]+(-depth|-angle)?");

  private DecimalCommas() {}

  /** The draft with a point in the place of each decimal comma. */
  static Draft read(Draft draft) {
    Map<String, String> fields = new LinkedHashMap<>(draft.fields());
    fields.replaceAll(DecimalCommas::read);
    return new Draft(draft.id(), draft.version(), fields, draft.changedAt(), draft.changedBy());
  }

  /** What was typed with a comma and how it is read, for whoever typed it to see. */
  static List<String> told(Draft draft) {
    List<String> lines = new ArrayList<>();
    draft
        .fields()
        .forEach(
            (name, typed) -> {
              String read = read(name, typed);
              if (!read.equals(typed)) {
                lines.add(BenchLabels.of(name) + " " + read);
              }
            });
    return lines;
  }

  private static String read(String field, String typed) {
    Matcher reading = READING.matcher(field);
    boolean ofReading = reading.matches();
    boolean depth = ofReading && BenchOrder.DEPTH.equals(reading.group(1));
    boolean thousands = depth || MAY_BE_THOUSANDS.contains(field);
    if (!ofReading && !thousands && !BELOW_A_THOUSAND.contains(field)) {
      return typed;
    }
    Matcher comma = COMMA.matcher(typed.strip());
    if (!comma.matches() || (thousands && couldPartThousands(comma))) {
      return typed;
    }
    String whole = comma.group(2).isEmpty() ? "0" : comma.group(2);
    return comma.group(1) + whole + "." + comma.group(3) + comma.group(4);
  }

  private static boolean couldPartThousands(Matcher comma) {
    return comma.group(3).length() == 3 && OF_THOUSANDS.matcher(comma.group(2)).matches();
  }
}
