package annulus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every public calculation says what it is valid for and where it comes from. A calculation is a
 * public method of {@code fit}, {@code hold}, {@code cure} or {@code measure} that takes something
 * and gives a number, or one of the answers listed here.
 */
class CalculationDocsTest {
  private static final List<String> PACKAGES = List.of("fit", "hold", "cure", "measure");

  private static final Set<String> NUMBERS =
      Set.of("double", "OptionalDouble", "Estimate", "Interval");

  /** Results of calculations that are more than a number. */
  private static final Set<String> ANSWERS =
      Set.of(
          "Answer",
          "PressAnswer",
          "Crossing",
          "RingStresses",
          "LimitsOfSize",
          "Verdict",
          "MeasuredDiameter",
          "Remedy",
          "TemperatureHistory",
          "Component",
          "Gap");

  /** Methods that look like a calculation and are not one, each with its reason. */
  private static final Map<String, String> EXCEPTIONS =
      Map.ofEntries(
          Map.entry("BondHold.factor", "picks one of the factors that were given"),
          Map.entry("Budget.share", "a part of the whole, no model behind it"),
          Map.entry("CureAccumulator.reachedAt", "gives back what was accumulated"),
          Map.entry("LimitsOfSize.deviationUm", "the difference of two sizes in another unit"),
          Map.entry("ThermalGap.radialUm", "half of diametralUm, which is explained"),
          Map.entry("ThermalGap.diametralOverUm", "the ends of diametralUm, which is explained"),
          Map.entry("TemperatureHistory.celsiusAt", "reads the course that was given"),
          Map.entry("TemperatureHistory.constant", "makes a course from what was given"),
          Map.entry("TemperatureHistory.from", "moves the start of a course"),
          Map.entry("TemperatureHistory.holdingLast", "makes a course from what was given"),
          Map.entry("TemperatureHistory.repeating", "makes a course from what was given"),
          Map.entry("TemperatureHistory.shiftedBy", "moves a course up or down"),
          Map.entry("TemperatureHistory.then", "joins two courses"),
          Map.entry("Gap.stated", "takes a gap that somebody else measured"));

  /** Calculations whose documents still lack a part; the list may only get shorter. */
  private static final Set<String> OWED =
      Set.of(
          "Gap.lowerUm",
          "Gap.oneSidedUm",
          "Gap.probabilityWithin",
          "Gap.upperUm",
          "Load.requiredN",
          "Spread.probabilityOfAtMost");

  private static final Pattern METHOD =
      Pattern.compile(
          "(?s)(/\\*\\*(?:(?!\\*/).)*\\*/)?\\s*((?:@\\w+(?:\\([^)]*\\))?\\s+)*)"
              + "public\\s+(?:static\\s+|final\\s+)*(\\w+(?:<[^>(]+>)?)\\s+(\\w+)\\(([^)]*)\\)");

  /** One public method as written. */
  record Method(String name, String result, String arguments, String doc, boolean override) {
    boolean calculates() {
      return !arguments.isBlank() && (NUMBERS.contains(result) || ANSWERS.contains(result));
    }

    boolean explained() {
      return doc.contains("Valid for:") && doc.contains("Source:") && doc.contains("@return");
    }
  }

  private static List<Method> methods() {
    List<Method> methods = new ArrayList<>();
    for (String name : PACKAGES) {
      Path folder = Path.of("src/main/java/annulus", name);
      if (!Files.isDirectory(folder)) {
        continue;
      }
      try (Stream<Path> files = Files.walk(folder)) {
        files.filter(f -> f.toString().endsWith(".java")).sorted().forEach(f -> scan(f, methods));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return methods;
  }

  private static void scan(Path file, List<Method> methods) {
    try {
      String type = file.getFileName().toString().replace(".java", "");
      Matcher matcher = METHOD.matcher(Files.readString(file));
      while (matcher.find()) {
        methods.add(
            new Method(
                type + "." + matcher.group(4),
                matcher.group(3),
                matcher.group(5),
                matcher.group(1) == null ? "" : matcher.group(1),
                matcher.group(2).contains("@Override")));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Set<String> unexplained() {
    Set<String> names = new TreeSet<>();
    for (Method method : methods()) {
      if (method.calculates() && !method.override() && !method.explained()) {
        names.add(method.name());
      }
    }
    return names;
  }

  @Test
  void every_calculation_says_what_it_is_valid_for_and_where_it_comes_from() {
    Set<String> silent = unexplained();
    silent.removeAll(EXCEPTIONS.keySet());
    silent.removeAll(OWED);
    assertEquals(Set.of(), silent);
  }

  @Test
  void every_exception_is_still_needed() {
    Set<String> stale = new TreeSet<>(EXCEPTIONS.keySet());
    stale.addAll(OWED);
    stale.removeAll(unexplained());
    assertEquals(Set.of(), stale);
  }

  @Test
  void the_scan_sees_the_calculations() {
    List<String> names = methods().stream().filter(Method::calculates).map(Method::name).toList();
    assertTrue(
        names.containsAll(
            List.of(
                "PressFit.pressureMPa",
                "Iso286Tables.toleranceUm",
                "Gap.of",
                "ReducedTime.hoursAt",
                "CureForecast.secondsTo",
                "Budget.coverageFactor",
                "Conformity.decide")),
        names.toString());
  }

  @Test
  void a_method_without_documents_would_be_found() {
    Matcher found =
        METHOD.matcher("/** Says little. */\n@Deprecated\npublic static double f(double x) {");
    assertTrue(found.find());
    Method method =
        new Method("T." + found.group(4), found.group(3), found.group(5), found.group(1), false);
    assertTrue(method.calculates() && !method.explained());
  }
}
