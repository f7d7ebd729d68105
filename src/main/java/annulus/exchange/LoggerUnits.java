package annulus.exchange;

import annulus.exchange.LoggerOptions.TemperatureUnit;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The units that words in a logger's file name. °F taken as °C is the dangerous side, since it
 * makes a cold night a warm one: a lone F counts in places where a lone C does not.
 */
final class LoggerUnits {
  private static final String ALONE = "(?<![a-z0-9])%s(?![a-z0-9])";
  private static final String STEM = "(?:deg(?:ree)?s?|temp(?:erature?)?s?[0-9]*)";
  private static final String CELSIUS_MARKS =
      "cel[sc]i?us|centigrade|°\\s?c(?![a-z])|deg(?:ree)?s?\\.?\\s?c(?![a-z])|\\(c\\)|\\[c\\]";
  private static final String FAHRENHEIT_MARKS =
      "fah?r+en|\\bfahr\\b|°\\s?f(?![a-z])|(?<![a-z0-9])f\\s?°|deg(?:ree)?s?\\.?\\s?f(?![a-z])"
          + "|\\(f\\)|\\[f\\]";
  private static final Pattern CELSIUS_MARKED = Pattern.compile(CELSIUS_MARKS);
  private static final Pattern FAHRENHEIT_MARKED = Pattern.compile(FAHRENHEIT_MARKS);
  private static final Pattern CELSIUS =
      Pattern.compile(CELSIUS_MARKS + "|" + ALONE.formatted("c") + "|" + STEM + "c(?![a-z0-9])");
  private static final Pattern FAHRENHEIT =
      Pattern.compile(
          FAHRENHEIT_MARKS + "|" + ALONE.formatted("(?:t[0-9]*)?f") + "|" + STEM + "f(?![a-z0-9])");
  private static final Pattern GLUED_CELSIUS = Pattern.compile("[a-z]C(?![A-Za-z0-9])");
  private static final Pattern GLUED_FAHRENHEIT = Pattern.compile("[a-z]F(?![A-Za-z0-9])");

  /** A letter that tells one of several probes from the others. */
  private static final Pattern PROBE_C =
      Pattern.compile(
          "(?:probe|sensor|channel|ch|input|port|zone|type|kanal|fühler|fuehler|bay|room)"
              + "[\\s_.:#-]*c(?![a-z0-9])");

  private static final Pattern WHOLE =
      Pattern.compile(
          "[\\s(\\[\"]*(?:(?:°|deg(?:ree)?s?\\.?)?\\s?([cf])\\s?°?|(celsius|centigrade)"
              + "|(fahrenheit))[\\s)\\]\".]*");
  private static final Pattern SPEAKS_OF_UNIT =
      Pattern.compile(
          "(?:^|[,;\\t|])[\\s\"#]*(?:temp[a-z]*[\\s._-]*)?"
              + "(?:units?|uom|einheit(?:en)?|scale|skala)(?![a-z])"
              + "|(?<![a-z])(?:units?|uom|einheit(?:en)?|scale|skala)\\s*[:=]");
  private static final Pattern SPEAKS_OF_TEMPERATURE = Pattern.compile("temp|reading|value|wert");
  private static final Pattern SPEAKS_OF_OTHERS =
      Pattern.compile("alarm|limit|high|low|accura|resol|range|offset|dew");
  private static final Pattern QUANTITY =
      Pattern.compile("[0-9](?:[.,][0-9]+)?\\s?(?:°|deg(?:ree)?s?\\.?)?\\s?[cf](?![a-z])");

  private LoggerUnits() {}

  /** Units that the header of a temperature column names. */
  static Set<TemperatureUnit> ofHeader(String header) {
    String text = plain(header);
    String lower = text.toLowerCase(Locale.ROOT);
    String unlabelled = PROBE_C.matcher(lower).replaceAll(" ");
    boolean labelled = !unlabelled.equals(lower);
    return units(
        CELSIUS.matcher(unlabelled).find() || (!labelled && GLUED_CELSIUS.matcher(text).find()),
        FAHRENHEIT.matcher(lower).find() || GLUED_FAHRENHEIT.matcher(text).find());
  }

  /** The unit that a cell is, with nothing beside it; none where it is something else. */
  static Set<TemperatureUnit> ofWord(String cell) {
    String lower = plain(cell).toLowerCase(Locale.ROOT);
    boolean whole = WHOLE.matcher(lower).matches();
    return units(whole && CELSIUS.matcher(lower).find(), whole && FAHRENHEIT.matcher(lower).find());
  }

  /** Whether a header announces a column of units. */
  static boolean announcesUnit(String header) {
    return SPEAKS_OF_UNIT.matcher(plain(header).toLowerCase(Locale.ROOT)).find();
  }

  /**
   * Units that a line gives the readings: one that speaks of the unit ({@code Unit: F}), or of the
   * temperatures with a unit that belongs to no number ({@code Temperatures in °C}).
   */
  static Set<TemperatureUnit> ofLine(String line) {
    if (!ofWord(line).isEmpty()) {
      return ofWord(line);
    }
    String lower = withoutQuantities(line);
    Matcher speaks = SPEAKS_OF_UNIT.matcher(lower);
    if (speaks.find()) {
      String behind = lower.substring(speaks.end());
      return units(CELSIUS.matcher(behind).find(), FAHRENHEIT.matcher(behind).find());
    }
    boolean ofReadings =
        SPEAKS_OF_TEMPERATURE.matcher(lower).find() && !SPEAKS_OF_OTHERS.matcher(lower).find();
    return units(
        ofReadings && CELSIUS_MARKED.matcher(lower).find(),
        ofReadings && FAHRENHEIT_MARKED.matcher(lower).find());
  }

  /**
   * Whether a line behind the first reading gives those after it in °F, as a second header does.
   */
  static boolean turnsToFahrenheit(String line, String temperatureCell) {
    boolean possible = line.indexOf('f') >= 0 || line.indexOf('F') >= 0 || line.indexOf('℉') >= 0;
    return possible
        && (ofLine(line).contains(TemperatureUnit.FAHRENHEIT)
            || FAHRENHEIT.matcher(withoutQuantities(temperatureCell)).find());
  }

  /** Whether a line speaks of °F at all, be it of a limit or an accuracy. */
  static boolean mentionsFahrenheit(String line) {
    String lower = plain(line).toLowerCase(Locale.ROOT);
    boolean ofReadings = SPEAKS_OF_UNIT.matcher(lower).find() || lower.contains("temp");
    return FAHRENHEIT_MARKED.matcher(lower).find()
        || (ofReadings && FAHRENHEIT.matcher(lower).find());
  }

  private static String withoutQuantities(String line) {
    return QUANTITY.matcher(plain(line).toLowerCase(Locale.ROOT)).replaceAll(" ");
  }

  /** With one sign for the degree, however it was written. */
  private static String plain(String text) {
    return text.replace('º', '°').replace('˚', '°').replace("℃", "°C").replace("℉", "°F");
  }

  private static Set<TemperatureUnit> units(boolean celsius, boolean fahrenheit) {
    Set<TemperatureUnit> units = EnumSet.noneOf(TemperatureUnit.class);
    if (celsius) {
      units.add(TemperatureUnit.CELSIUS);
    }
    if (fahrenheit) {
      units.add(TemperatureUnit.FAHRENHEIT);
    }
    return units;
  }
}
