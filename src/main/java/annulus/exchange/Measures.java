package annulus.exchange;

import annulus.quantity.Numbers;
import annulus.quantity.Units;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Lengths and temperatures as people write them: mm and °C bare, inch and °F with their unit. */
final class Measures {
  private static final String UNIT_SIGNS = "µμ°\"";
  private static final String SPACES = " \t\n\u000B\f\r";

  private final Problems problems;

  Measures(Problems problems) {
    this.problems = problems;
  }

  /** A diameter or length, mm. */
  OptionalDouble lengthMm(Node node, String field, double low, double high) {
    OptionalDouble value =
        written(node, field, "mm", high, "a length such as 41.97 or \"1.652 in\"", Measures::toMm);
    return within(node, field, value, low, high, "mm", lengthHint(value));
  }

  /** A temperature, °C. */
  OptionalDouble celsius(Node node, String field, double low, double high) {
    OptionalDouble value =
        written(
            node, field, "°C", high, "a temperature such as 18 or \"64 F\"", Measures::toCelsius);
    String hint = "";
    if (value.isPresent() && value.getAsDouble() > high) {
      double asF = Units.celsiusFromFahrenheit(value.getAsDouble());
      if (asF >= low && asF <= high) {
        hint =
            "; if it is °F, write \""
                + Numbers.plain(value.getAsDouble())
                + " F\" ("
                + Numbers.fixed(asF, 1)
                + " °C)";
      }
    }
    return within(node, field, value, low, high, "°C", hint);
  }

  /** A bare number in a unit that is named by the field. */
  OptionalDouble number(Node node, String field, double low, double high, String unit) {
    OptionalDouble value =
        written(
            node,
            field,
            unit,
            high,
            "a number",
            (number, u) -> u.isEmpty() || u.equals(unit) ? OptionalDouble.of(number) : NONE);
    return within(node, field, value, low, high, unit, "");
  }

  /** The number of a field that need not stand there. */
  OptionalDouble number(Fields f, String name, double low, double high, String unit) {
    Optional<Node> node = f.node(name);
    return node.isPresent() ? number(node.get(), f.path(name), low, high, unit) : NONE;
  }

  private static final OptionalDouble NONE = OptionalDouble.empty();

  private interface Conversion {
    OptionalDouble apply(double number, String unit);
  }

  private static OptionalDouble toMm(double number, String unit) {
    return switch (unit.toLowerCase(Locale.ROOT)) {
      case "", "mm" -> OptionalDouble.of(number);
      case "in", "inch", "\"" -> OptionalDouble.of(Units.mmFromInch(number));
      case "cm" -> OptionalDouble.of(number * 10);
      case "thou" -> OptionalDouble.of(Units.mmFromInch(number / 1000));
      default -> NONE;
    };
  }

  private static OptionalDouble toCelsius(double number, String unit) {
    return switch (unit.toLowerCase(Locale.ROOT)) {
      case "", "c", "°c" -> OptionalDouble.of(number);
      case "f", "°f" -> OptionalDouble.of(Units.celsiusFromFahrenheit(number));
      default -> NONE;
    };
  }

  private OptionalDouble written(
      Node node, String field, String unit, double high, String allowed, Conversion conversion) {
    String text;
    if (node instanceof Node.Num n) {
      double value = Double.parseDouble(n.written());
      if (!Double.isFinite(value)) {
        problems.add(node.place(), field, n.written() + " is too large", allowed);
        return NONE;
      }
      return OptionalDouble.of(value);
    } else if (node instanceof Node.Text t) {
      text = t.value().strip();
    } else {
      problems.add(node.place(), field, "is " + Fields.kind(node), allowed);
      return NONE;
    }
    if (isBare(text)) {
      return conversion.apply(Double.parseDouble(text), "");
    }
    int unitFrom = unitFrom(text);
    String number = withoutSpaces(text.substring(0, unitFrom));
    if (number.indexOf(',') > 0 && isNumber(number, ',')) {
      String point = "a decimal point: " + text.replace(',', '.');
      String whole = text.replace(",", "");
      problems.add(
          node.place(),
          field,
          Fields.quoted(text) + " has a decimal comma",
          mayPartThousands(number, high) ? point + ", or " + whole + " if that is meant" : point);
      return NONE;
    }
    OptionalDouble value =
        isNumber(number, '.')
            ? conversion.apply(Double.parseDouble(number), text.substring(unitFrom))
            : NONE;
    if (value.isEmpty()) {
      problems.add(
          node.place(),
          field,
          Fields.quoted(text) + " is no number in " + (unit.isEmpty() ? "plain digits" : unit),
          allowed);
    }
    return value;
  }

  /** A comma before three digits, and a value that is allowed without it. */
  private static boolean mayPartThousands(String number, double high) {
    String whole = number.replace(",", "");
    boolean three = number.indexOf(',') == number.length() - 4 && number.charAt(0) != '0';
    return three && Double.parseDouble(whole) <= high;
  }

  /** Where the letters and signs at the end begin. */
  private static int unitFrom(String text) {
    int from = text.length();
    while (from > 0 && isOfUnit(text.charAt(from - 1))) {
      from--;
    }
    return from;
  }

  private static String withoutSpaces(String text) {
    int to = text.length();
    while (to > 0 && SPACES.indexOf(text.charAt(to - 1)) >= 0) {
      to--;
    }
    return text.substring(0, to);
  }

  private static boolean isOfUnit(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || UNIT_SIGNS.indexOf(c) >= 0;
  }

  /** Digits, a sign before them or not, with at most one mark that is not the last. */
  private static boolean isNumber(String text, char mark) {
    int from = text.startsWith("+") || text.startsWith("-") ? 1 : 0;
    int marks = 0;
    for (int i = from; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == mark && i + 1 < text.length()) {
        marks++;
      } else if (c < '0' || c > '9') {
        return false;
      }
    }
    return from < text.length() && marks <= 1;
  }

  /** Digits with at most one point between them: a number without a unit, as most are. */
  static boolean isBare(String text) {
    int points = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean point = c == '.' && i > 0 && i + 1 < text.length();
      if (!point && (c < '0' || c > '9')) {
        return false;
      }
      points += point ? 1 : 0;
    }
    return points <= 1 && !text.isEmpty();
  }

  private static String lengthHint(OptionalDouble mm) {
    if (mm.isEmpty() || mm.getAsDouble() < 500) {
      return "";
    }
    double value = mm.getAsDouble();
    String hint = "; a missing decimal point? " + Numbers.plain(value / 100);
    double thou = value * Units.INCH_MM / 1000;
    return hint + "; thousandths of an inch? " + Numbers.fixed(thou, 3) + " mm";
  }

  private OptionalDouble within(
      Node node,
      String field,
      OptionalDouble value,
      double low,
      double high,
      String unit,
      String hint) {
    if (value.isPresent() && !(value.getAsDouble() >= low && value.getAsDouble() <= high)) {
      String suffix = unit.isEmpty() ? "" : " " + unit;
      problems.add(
          node.place(),
          field,
          Numbers.plain(value.getAsDouble()) + suffix + " is out of range",
          Numbers.plain(low) + " to " + Numbers.plain(high) + suffix + hint);
      return NONE;
    }
    return value;
  }
}
