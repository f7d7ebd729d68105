package annulus.report;

import annulus.quantity.Numbers;
import annulus.select.Condition;
import annulus.select.Fact;
import annulus.select.Finding;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The words of a rule that spoke: its reason with the figures in place. The only place where they
 * are made; text, page and JSON print the same. A figure gets more decimals where fewer would make
 * it seem to pass the limit that it broke.
 */
public final class RuleTexts {
  private static final Pattern PLACE = Pattern.compile("(\\bby )?\\{([^}]*)}");
  private static final Set<Fact> SHARES =
      Set.of(Fact.CLASS_COVERS, Fact.WANTED_CONFIDENCE, Fact.CLASS_HOT_FRACTION);
  private static final int MOST_DECIMALS = 6;

  private final Finding finding;
  private final Map<Fact, Object> figures;
  private final Map<Fact, Integer> decimals = new EnumMap<>(Fact.class);

  private RuleTexts(Finding finding) {
    this.finding = finding;
    this.figures = finding.figures();
    figures.forEach(this::start);
    refine();
  }

  /** The reason in words and figures. */
  public static String reason(Finding finding) {
    return new RuleTexts(finding).words();
  }

  /** One figure of a finding with its unit, as the reason prints it. */
  public static String figure(Finding finding, Fact fact) {
    String unit = SHARES.contains(fact) || fact.unit().isEmpty() ? "" : " " + fact.unit();
    return new RuleTexts(finding).text(fact) + unit;
  }

  private String words() {
    Matcher places = PLACE.matcher(finding.rule().reason());
    StringBuilder out = new StringBuilder();
    while (places.find()) {
      Fact fact = Fact.named(places.group(2)).orElseThrow();
      String by = places.group(1) == null ? "" : places.group(1);
      String text = text(fact);
      // "larger by -12" says nothing: after "by" the size alone is meant
      boolean sizeOnly = !by.isEmpty() && text.startsWith("-");
      places.appendReplacement(
          out, Matcher.quoteReplacement(by + (sizeOnly ? text.substring(1) : text)));
    }
    places.appendTail(out);
    return out.toString();
  }

  private String text(Fact fact) {
    Object value = figures.get(fact);
    if (value == null) {
      return "(not known)";
    }
    if (value instanceof Double number) {
      return SHARES.contains(fact) ? share(fact, number) : number(fact, number);
    }
    return value.toString().replace('-', ' ');
  }

  private String share(Fact fact, double value) {
    if (fact == Fact.WANTED_CONFIDENCE) {
      return Figures.wanted(value);
    }
    double limit =
        leaves(finding.rule().when()).stream()
            .map(leaf -> limit(leaf, fact))
            .flatMapToDouble(OptionalDouble::stream)
            .findFirst()
            .orElse(value);
    return Figures.percent(value, limit);
  }

  private String number(Fact fact, double value) {
    return Figures.trimmed(value, decimals.getOrDefault(fact, 0));
  }

  private void start(Fact fact, Object value) {
    if (value instanceof Double number) {
      boolean length = fact.unit().startsWith("µm");
      boolean ratio = fact.unit().isEmpty();
      decimals.put(fact, length ? Figures.micrometreDecimals(number) : ratio ? 2 : 1);
    }
  }

  /** Adds decimals until every comparison of the rule reads as it was found. */
  private void refine() {
    for (Condition leaf : leaves(finding.rule().when())) {
      for (Fact fact : leaf.facts()) {
        OptionalDouble limit = limit(leaf, fact);
        if (limit.isPresent() && figures.get(fact) instanceof Double value) {
          refine(fact, value, limit.getAsDouble());
        }
      }
    }
  }

  private void refine(Fact fact, double value, double limit) {
    int wanted = decimals.get(fact);
    while (wanted < MOST_DECIMALS && turned(value, limit, wanted)) {
      wanted++;
    }
    decimals.put(fact, wanted);
  }

  private static boolean turned(double value, double limit, int decimals) {
    double printed = Double.parseDouble(Numbers.fixed(value, decimals));
    return Math.signum(printed - limit) != Math.signum(value - limit);
  }

  /** What the leaf holds this fact to: the fixed number, or the other fact. */
  private OptionalDouble limit(Condition leaf, Fact fact) {
    if (leaf instanceof Condition.Against against && against.fact() == fact) {
      return OptionalDouble.of(against.limit());
    }
    if (leaf instanceof Condition.Between between && leaf.facts().contains(fact)) {
      Fact other = between.fact() == fact ? between.other() : between.fact();
      if (figures.get(other) instanceof Double value) {
        return OptionalDouble.of(value);
      }
    }
    return OptionalDouble.empty();
  }

  private static List<Condition> leaves(Condition when) {
    if (when instanceof Condition.All all) {
      return all.parts().stream().flatMap(p -> leaves(p).stream()).toList();
    }
    if (when instanceof Condition.Any any) {
      return any.parts().stream().flatMap(p -> leaves(p).stream()).toList();
    }
    return List.of(when);
  }
}
