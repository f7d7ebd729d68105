package annulus.report;

import annulus.quantity.Numbers;
import annulus.select.Condition;
import annulus.select.Fact;
import annulus.select.Finding;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The words of a rule that spoke: its reason with the figures in place. The only place where they
 * are made; text, page and JSON print the same. A figure gets more decimals where fewer would make
 * it seem to pass the limit that it broke.
 */
public final class RuleTexts {
  private static final String BY = "by ";
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
    String reason = finding.rule().reason();
    StringBuilder out = new StringBuilder(reason.length() + 16);
    int told = 0;
    for (int open = reason.indexOf('{'); open >= 0; open = reason.indexOf('{', told)) {
      int close = reason.indexOf('}', open);
      if (close < 0) {
        break;
      }
      out.append(reason, told, open);
      String text = text(Fact.named(reason.substring(open + 1, close)).orElseThrow());
      // "larger by -12" says nothing: after "by" the size alone is meant
      boolean sizeOnly = text.startsWith("-") && isAfterBy(reason, open);
      out.append(text, sizeOnly ? 1 : 0, text.length());
      told = close + 1;
    }
    return out.append(reason, told, reason.length()).toString();
  }

  /** Whether the word "by" and a space end here. */
  private static boolean isAfterBy(String reason, int end) {
    int start = end - BY.length();
    return start >= 0
        && reason.startsWith(BY, start)
        && (start == 0 || !Character.isLetterOrDigit(reason.charAt(start - 1)));
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
    for (Condition leaf : finding.rule().leaves()) {
      OptionalDouble limit = limit(leaf, fact);
      if (limit.isPresent()) {
        return Figures.percent(value, limit.getAsDouble());
      }
    }
    return Figures.percent(value, value);
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
    for (Condition leaf : finding.rule().leaves()) {
      if (leaf instanceof Condition.Against against) {
        refine(leaf, against.fact());
      } else if (leaf instanceof Condition.Between between) {
        refine(leaf, between.fact());
        refine(leaf, between.other());
      }
    }
  }

  private void refine(Condition leaf, Fact fact) {
    OptionalDouble limit = limit(leaf, fact);
    if (limit.isPresent() && figures.get(fact) instanceof Double value) {
      refine(fact, value, limit.getAsDouble());
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
    double printed = Numbers.rounded(value, decimals);
    return Math.signum(printed - limit) != Math.signum(value - limit);
  }

  /** What the leaf holds this fact to: the fixed number, or the other fact. */
  private OptionalDouble limit(Condition leaf, Fact fact) {
    if (leaf instanceof Condition.Against against && against.fact() == fact) {
      return OptionalDouble.of(against.limit());
    }
    if (leaf instanceof Condition.Between between
        && (between.fact() == fact || between.other() == fact)) {
      Fact other = between.fact() == fact ? between.other() : between.fact();
      if (figures.get(other) instanceof Double value) {
        return OptionalDouble.of(value);
      }
    }
    return OptionalDouble.empty();
  }
}
