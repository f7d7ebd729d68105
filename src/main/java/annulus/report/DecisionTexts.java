package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.Decision;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.PlannedPrimer;
import annulus.advice.HoldReport;
import annulus.advice.PressReport;
import annulus.catalog.CompoundClass;
import annulus.catalog.Finish;
import annulus.catalog.Material;
import annulus.measure.MeasuredDiameter;
import annulus.select.ClassVerdict;
import annulus.select.Fact;
import annulus.select.Finding;
import annulus.select.Rule;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** What was decided, why not, and what to do instead. */
public final class DecisionTexts {
  private final Advice advice;

  private DecisionTexts(Advice advice) {
    this.advice = advice;
  }

  /** The words for one advice. */
  public static DecisionTexts of(Advice advice) {
    return new DecisionTexts(advice);
  }

  /** The command in capitals: {@code USE}, {@code DO NOT BOND}. */
  public String command() {
    if (notBare()) {
      return "MEASURE AGAIN";
    }
    return switch (advice.decision().kind()) {
      case USE_COMPOUND -> held() ? "USE" : "DO NOT HAND OVER";
      case PRESS_DRY -> held() ? "PRESS DRY" : "DO NOT HAND OVER";
      case TOO_TIGHT -> "DO NOT PRESS";
      case MEASURE_AGAIN -> "MEASURE AGAIN";
      case TOO_WIDE -> "DO NOT BOND";
      case NO_CLASS -> primerWouldDo() ? "DO NOT BOND YET" : "DO NOT BOND";
      case STRIP_AND_REDO -> "STRIP AND REDO";
    };
  }

  /** What the command is about, short enough for one line of 100 columns. */
  public String what() {
    if (notBare()) {
      return "old compound is on a face, and the gap without it is another one";
    }
    return switch (advice.decision().kind()) {
      case USE_COMPOUND ->
          use(advice.decision()) + (held() ? "" : ": it fits the gap, but no time is safe");
      case PRESS_DRY ->
          held()
              ? "no compound: the part is larger than the bore and holds by itself"
              : advice.isPressBorne()
                  ? "pressed dry it does not surely hold"
                  : "pressed dry nobody knows whether its members bear it";
      case TOO_TIGHT ->
          decisive().isEmpty()
              ? "too tight for a dry press of workshop size"
              : "too tight: a member would yield or crack";
      case MEASURE_AGAIN -> blamed();
      case TOO_WIDE -> "the gap is wider than any class fills";
      case NO_CLASS -> decisive().stream().findFirst().map(this::summary).orElse("no class fits");
      case STRIP_AND_REDO -> "it was moved after it may have grabbed: the film is torn";
    };
  }

  /** Command and matter in one line. */
  public String line() {
    return command() + "  " + what();
  }

  /** Whether there is a time from which on it may be handed back. */
  private boolean held() {
    return advice.handBack().isPresent();
  }

  /** Whether what was measured is still under old compound. */
  private boolean notBare() {
    return advice.decision().kind().isYes() && !held() && advice.order().hasOldCompound();
  }

  private static String use(Decision decision) {
    String name = decision.compound().map(CompoundClass::name).orElse("compound");
    return name + decision.primer().map(DecisionTexts::primer).orElse(", no primer");
  }

  private static String primer(PlannedPrimer plan) {
    return ", with " + plan.primer().name() + " on " + plan.faces();
  }

  private String summary(Finding finding) {
    String summary = finding.rule().summary();
    String text = summary.endsWith(".") ? summary.substring(0, summary.length() - 1) : summary;
    return text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
  }

  /** The instrument with the larger share of the doubt. */
  private String blamed() {
    Optional<MeasuredDiameter> bore = advice.gap().bore();
    Optional<MeasuredDiameter> part = advice.gap().part();
    if (bore.isEmpty() || part.isEmpty()) {
      return "the gap as stated is too unsure to tell what fits";
    }
    boolean first =
        bore.get().extremeBudget().combinedUm() >= part.get().extremeBudget().combinedUm();
    MeasuredDiameter worse = first ? bore.get() : part.get();
    return "the "
        + shortName(worse.instrument().name())
        + (first ? " in the bore" : " on the part")
        + " cannot tell what fits";
  }

  /** An instrument's name without what stands in brackets. */
  static String shortName(String name) {
    int bracket = name.indexOf(" (");
    return bracket < 0 ? name : name.substring(0, bracket);
  }

  /** Not the rule that says "press it dry", which is what must not be done. */
  private List<Finding> ofPressure() {
    return advice.decision().because().stream()
        .filter(f -> f.rule().facts().contains(Fact.PRESS))
        .toList();
  }

  /** The findings that decided against, the deciding ones first; empty for a yes. */
  public List<Finding> decisive() {
    Kind kind = advice.decision().kind();
    if (kind.isYes() || kind == Kind.STRIP_AND_REDO) {
      return List.of();
    }
    if (kind == Kind.TOO_TIGHT) {
      return ofPressure();
    }
    List<Finding> ofJoint = new ArrayList<>();
    for (Finding finding : advice.decision().because()) {
      Rule rule = finding.rule();
      if (rule.ofJoint() && rule.verdict() == Rule.Verdict.EXCLUDES) {
        ofJoint.add(finding);
      }
    }
    return ofJoint.isEmpty()
        ? nearest().map(this::decisiveOf).orElse(advice.decision().because())
        : ofJoint;
  }

  /** What holds a class back; before a want of primer, what is wrong with the one there is. */
  private List<Finding> decisiveOf(ClassVerdict verdict) {
    List<Finding> findings = new ArrayList<>();
    if (!verdict.of(Rule.Verdict.NEEDS_PRIMER).isEmpty()) {
      for (Finding finding : advice.decision().because()) {
        if (finding.rule().verdict() == Rule.Verdict.CAUTION) {
          findings.add(finding);
        }
      }
    }
    findings.addAll(blocking(verdict));
    return findings;
  }

  /** One deciding reason in words, with the class it is about unless it holds for all of them. */
  public String because(Finding finding) {
    String reason = RuleTexts.reason(finding);
    return ofEveryClass(finding, reason) ? reason : className(finding) + reason;
  }

  /** Which rules spoke is looked at first: their words take far longer to make. */
  private boolean ofEveryClass(Finding finding, String reason) {
    List<Finding> same = new ArrayList<>();
    for (ClassVerdict verdict : advice.table()) {
      Optional<Finding> spoken = spoken(finding.rule(), verdict);
      if (spoken.isEmpty()) {
        return false;
      }
      same.add(spoken.get());
    }
    return finding.rule().ofJoint() || saysTheSame(same, reason);
  }

  private static boolean saysTheSame(List<Finding> findings, String reason) {
    for (Finding finding : findings) {
      if (!RuleTexts.reason(finding).equals(reason)) {
        return false;
      }
    }
    return true;
  }

  private static Optional<Finding> spoken(Rule rule, ClassVerdict verdict) {
    for (Finding finding : verdict.findings()) {
      if (finding.rule().id().equals(rule.id())) {
        return Optional.of(finding);
      }
    }
    return Optional.empty();
  }

  private String className(Finding finding) {
    return advice.table().stream()
        .map(ClassVerdict::compound)
        .filter(c -> c.id().equals(finding.classId()))
        .map(c -> c.name() + ": ")
        .findFirst()
        .orElse("");
  }

  /** The class that comes nearest: fits the gap best, or fills most, and is held back by least. */
  private Optional<ClassVerdict> nearest() {
    boolean widest = advice.decision().kind() == Kind.TOO_WIDE;
    Comparator<ClassVerdict> fit =
        widest
            ? Comparator.comparingDouble(v -> -v.compound().gapUm().high())
            : Comparator.comparingDouble(v -> -Math.rint(1000 * v.covers()));
    Comparator<ClassVerdict> nearer =
        fit.thenComparing(v -> v.standing() == ClassVerdict.Standing.EXCLUDED)
            .thenComparingInt(v -> blocking(v).size())
            .thenComparingDouble(v -> -v.compound().serviceC().high());
    ClassVerdict nearest = null;
    for (ClassVerdict verdict : considered()) {
      if (!blocking(verdict).isEmpty()
          && (nearest == null || nearer.compare(verdict, nearest) < 0)) {
        nearest = verdict;
      }
    }
    return Optional.ofNullable(nearest);
  }

  private static List<Finding> blocking(ClassVerdict verdict) {
    List<Finding> findings = new ArrayList<>(verdict.of(Rule.Verdict.EXCLUDES));
    findings.addAll(verdict.of(Rule.Verdict.NEEDS_PRIMER));
    return findings;
  }

  /** The classes that decide: all, or only the one that the order insists on. */
  private List<ClassVerdict> considered() {
    Optional<String> asked = advice.order().compound().map(CompoundClass::id);
    return advice.table().stream()
        .filter(v -> asked.isEmpty() || asked.get().equals(v.compound().id()))
        .toList();
  }

  /** Other classes that fit as the joint stands, where the order insists on one that does not. */
  private List<String> others() {
    return advice.order().compound().isEmpty()
        ? List.of()
        : advice.table().stream()
            .filter(ClassVerdict::usable)
            .map(v -> v.compound().name())
            .toList();
  }

  private boolean coatedLaminate() {
    return Stream.of(advice.order().bore(), advice.order().part())
        .anyMatch(
            m ->
                m.material().kind() == Material.Kind.LAMINATE
                    && m.finish().film() == Finish.Film.COAT);
  }

  private boolean primerWouldDo() {
    return considered().stream().anyMatch(v -> v.standing() == ClassVerdict.Standing.NEEDS_PRIMER);
  }

  /** What to do instead; empty for a yes. */
  public List<String> instead() {
    return switch (advice.decision().kind()) {
      case USE_COMPOUND, PRESS_DRY -> held() ? List.of() : insteadOfHandBack();
      case TOO_TIGHT ->
          List.of(
              "Check that bore and part are not swapped and that both sizes are right.",
              decisive().isEmpty()
                  ? "Then ask the maker of the part, or have it fitted by somebody with the right"
                      + " press."
                  : "Then ask the maker of the part, or have the seat opened.");
      case MEASURE_AGAIN -> insteadOfGuess();
      case TOO_WIDE ->
          List.of("Fit a sleeve, replace the worn part, or have the seat rebuilt and machined.");
      case NO_CLASS -> insteadOfClass();
      case STRIP_AND_REDO ->
          List.of("Take it apart, clean both faces bare, measure again and bond anew.");
    };
  }

  private List<String> insteadOfHandBack() {
    if (notBare()) {
      return List.of("Scrape it off as the steps say, clean, measure the bare faces, ask again.");
    }
    if (!advice.isPressBorne()) {
      return List.of(
          advice.press().orElseThrow().standing() == PressReport.Standing.DIAMETER_MISSING
              ? "Give the outside diameter around the bore and the inside diameter of the part (0"
                  + " for a solid one), and ask again."
              : "Ask the part's maker how much interference it bears, and go by that.");
    }
    if (!tooWeak()) {
      return List.of("Bring the joint to a warm place and ask again with that temperature.");
    }
    List<String> stronger =
        advice.hold().map(HoldReport::carriers).orElse(List.of()).stream()
            .map(c -> c.name() + " (" + c.id() + ")")
            .toList();
    String hold =
        "Check the load, make the seat longer, or hold the joint mechanically as well: pin, collar,"
            + " new part.";
    return stronger.isEmpty()
        ? List.of(hold)
        : List.of(
            "Surely carries the load in time: "
                + String.join(", ", stronger)
                + ". Ask again with it, and look at how it comes apart.",
            hold);
  }

  /** Whether it is the load that forbids, and not the cold. */
  private boolean tooWeak() {
    return advice.press().isPresent()
        || advice.hold().map(h -> h.fractionWanted().orElse(0) > 1).orElse(false);
  }

  private List<String> insteadOfGuess() {
    List<String> words = new ArrayList<>();
    if (!others().isEmpty()) {
      words.add(
          "The order insists on one compound. Others surely fit: "
              + String.join(", ", others())
              + ".");
    }
    words.add("Measure again, then ask again. Bond nothing on a guess.");
    return words;
  }

  private List<String> insteadOfClass() {
    Set<Fact> facts = new java.util.LinkedHashSet<>();
    decisive().forEach(f -> facts.addAll(f.rule().when().facts()));
    List<String> words = new ArrayList<>();
    if (primerWouldDo()) {
      words.add(
          "Put primer on as the "
              + (advice.steps().isEmpty() ? "reasons" : "steps")
              + " say, enter it in the order and ask again.");
    }
    if (facts.contains(Fact.WARMEST_CURE)) {
      words.add("Bring the joint to a warm place and ask again with that temperature.");
    }
    if (facts.contains(Fact.BORE_ATTACK) || facts.contains(Fact.PART_ATTACK)) {
      words.add("Use the fixing that the part's maker names: clamp, pin, press or thread.");
    }
    if (facts.contains(Fact.BORE_FILM) || facts.contains(Fact.PART_FILM)) {
      words.add(
          "Strip the seat to bare material"
              + (coatedLaminate() ? ", by hand and wet, never into the fibres" : "")
              + ", measure again and ask again.");
    }
    if (facts.contains(Fact.SERVICE_HIGH) || facts.contains(Fact.SERVICE_LOW)) {
      words.add("Check the service temperature; if it is right, hold the joint mechanically.");
    }
    if (!others().isEmpty()) {
      words.add(
          "The order insists on one compound. Others fit: " + String.join(", ", others()) + ".");
    }
    if (words.isEmpty()) {
      words.add(
          "Change what the reasons name, or hold the joint mechanically: sleeve, pin or press.");
    }
    return words;
  }
}
