package annulus.web;

import annulus.exchange.ClockWord;
import annulus.exchange.InputRefused;
import annulus.exchange.PlacedProblem;
import annulus.quantity.InvalidValue;
import annulus.stock.Millilitres;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a form or an address says, and where it goes on from there. */
final class Form {
  private static final int LONGEST_FIELD = 200;
  private static final int LONGEST_NAME = 40;
  private static final int MOST_FIELDS = 240;

  private Form() {}

  /** What stands in a field; empty when it is not there. */
  static String said(Context ctx, String name) {
    return Optional.ofNullable(ctx.formParam(name)).orElse("").strip();
  }

  /** What stands in a field that must be filled in. */
  static String need(Context ctx, String name) {
    String said = said(ctx, name);
    if (said.isEmpty()) {
      throw Api.refused(name, "is missing", "fill it in");
    }
    return said;
  }

  /** What the address asks for; empty when it does not say. */
  static String asked(Context ctx, String name) {
    return Optional.ofNullable(ctx.queryParam(name)).orElse("");
  }

  /** The version that the form was filled in from. */
  static long version(Context ctx) {
    String version = Optional.ofNullable(ctx.formParam("version")).orElse("");
    if (!version.matches("[0-9]{1,15}")) {
      throw Api.refused("version", "is missing", "the version that was seen");
    }
    return Long.parseLong(version);
  }

  /** The fields of a draft, of bounded number and length. */
  static Map<String, String> fields(Context ctx) {
    Map<String, String> fields = new LinkedHashMap<>();
    ctx.formParamMap()
        .forEach(
            (name, values) -> {
              boolean own = !List.of("version", "act", "who").contains(name);
              String value = values.isEmpty() ? "" : values.get(0);
              boolean kept = own && name.length() < LONGEST_NAME && !value.isBlank();
              if (kept && fields.size() < MOST_FIELDS) {
                fields.put(name, value.substring(0, Math.min(value.length(), LONGEST_FIELD)));
              }
            });
    return fields;
  }

  /**
   * A time on the shop's clock; empty when there is none.
   *
   * @throws TwoHours when the clock shows it twice
   */
  static Optional<Instant> time(Board board, String name, String text) {
    if (text == null || text.isBlank()) {
      return Optional.empty();
    }
    TwoHours.refuse(name, text, board.times().zone());
    return Optional.of(ClockWord.read("form", 0, name, text, board.times().zone()));
  }

  /** An amount with a point or a comma. */
  static Millilitres amount(Context ctx, String name, String label, boolean signed) {
    String ml = need(ctx, name).replace(',', '.');
    if (!ml.matches((signed ? "[+-]?" : "") + "[0-9]{1,6}(\\.[0-9]{1,3})?")) {
      throw Api.refused(label, "\"" + ml + "\" is no amount", "millilitres such as 0.35");
    }
    return Millilitres.of(Double.parseDouble(ml));
  }

  /** A day; empty when there is none. */
  static Optional<LocalDate> day(String label, String text) {
    try {
      return text.isBlank() ? Optional.empty() : Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException e) {
      throw Api.refused(label, "\"" + text + "\" is no day", "such as 2027-06-30");
    }
  }

  /** What is wrong with what was typed: many things with an input, or one with a value. */
  static List<PlacedProblem> problems(RuntimeException refused) {
    return refused instanceof InputRefused input
        ? input.problems()
        : List.of(PlacedProblem.of("", 0, (InvalidValue) refused));
  }

  /** A problem as a page tells it. */
  static String words(PlacedProblem p) {
    return p.field()
        + ": "
        + p.problem()
        + (p.allowed().isEmpty() ? "" : "; allowed: " + p.allowed());
  }

  /** On to another page. */
  static void go(Context ctx, String path) {
    ctx.redirect(path, HttpStatus.SEE_OTHER);
  }
}
