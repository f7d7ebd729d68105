package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.StageTime;
import annulus.catalog.CompoundClass;
import annulus.catalog.Stage;
import annulus.fit.Gap;
import annulus.quantity.Numbers;
import annulus.select.Finding;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;

/** One answer as one flat row; empty cells where there is no figure. Values are not CSV-escaped. */
public final class BatchColumns {
  private static final List<String> BEFORE =
      List.of(
          "job",
          "decision",
          "class",
          "primer",
          "hand_back",
          "hand_back_after_min",
          "radial_gap_um",
          "radial_gap_plus_minus_um",
          "diametral_clearance_um",
          "diametral_plus_minus_um",
          "covers_probability");
  private static final Map<Advice.Kind, String> DECISIONS = decisions();
  private static final List<String> AFTER = List.of("working_time_min", "reason", "cautions");

  private BatchColumns() {}

  private static Map<Advice.Kind, String> decisions() {
    Map<Advice.Kind, String> decisions = new EnumMap<>(Advice.Kind.class);
    for (Advice.Kind kind : Advice.Kind.values()) {
      decisions.put(kind, StageTexts.id(kind));
    }
    return decisions;
  }

  /** The column names. */
  public static List<String> header() {
    List<String> names = new ArrayList<>(BEFORE);
    for (Stage stage : Stage.values()) {
      names.add(StageTexts.id(stage) + "_typical_min");
      names.add(StageTexts.id(stage) + "_sure_min");
    }
    names.addAll(AFTER);
    return List.copyOf(names);
  }

  /** The cells of one answer, as many as {@link #header} has names. */
  public static List<String> row(Advice advice) {
    List<String> cells = new ArrayList<>(BEFORE.size() + AFTER.size() + 2 * Stage.values().length);
    Advice.Decision decision = advice.decision();
    cells.add(advice.order().job());
    boolean held = decision.kind().isYes() && !advice.isYes();
    cells.add(held ? "do-not-hand-over" : DECISIONS.get(decision.kind()));
    cells.add(decision.compound().map(CompoundClass::id).orElse(""));
    cells.add(decision.primer().map(p -> p.primer().id()).orElse(""));
    handBack(advice, cells);
    gap(advice, cells);
    cells.add(Figures.probability(decision.probability(), 6));
    stages(advice, cells);
    cells.add(reason(advice));
    cells.add(cautions(advice));
    return Collections.unmodifiableList(cells);
  }

  private static String cautions(Advice advice) {
    StringJoiner ids = new StringJoiner(" ");
    for (Finding caution : advice.cautions()) {
      ids.add(caution.rule().id());
    }
    return ids.toString();
  }

  private static void handBack(Advice advice, List<String> cells) {
    ShopTime time = new ShopTime(advice.order().zone(), advice.order().start());
    Optional<HandBack> handBack = advice.handBack();
    cells.add(handBack.map(h -> time.iso(h.at())).orElse(""));
    cells.add(minutes(handBack.map(HandBack::after)));
  }

  private static void gap(Advice advice, List<String> cells) {
    Gap gap = advice.gap().gap();
    double expanded = gap.budget().expandedUm(advice.gap().level());
    cells.add(Numbers.fixed(gap.meanUm(), 1));
    cells.add(Figures.roundedUp(expanded, 1));
    cells.add(Numbers.fixed(2 * gap.meanUm(), 1));
    cells.add(Figures.roundedUp(2 * expanded, 1));
  }

  /** Times of a joint that is not to be made, or is torn, are not told. */
  private static void stages(Advice advice, List<String> cells) {
    boolean counts = advice.decision().kind() == Advice.Kind.USE_COMPOUND;
    Optional<Advice.CureTimes> cure = advice.cure().filter(c -> counts);
    for (Stage stage : Stage.values()) {
      Optional<StageTime> times = cure.map(c -> c.at(stage));
      cells.add(minutes(times.flatMap(StageTime::typical)));
      cells.add(minutes(times.flatMap(StageTime::sure)));
    }
    cells.add(cure.map(c -> Figures.roundedDown(c.workingTime().toSeconds() / 60.0, 1)).orElse(""));
  }

  private static String minutes(Optional<Duration> duration) {
    return duration.map(d -> Long.toString(ShopTime.minutesUp(d))).orElse("");
  }

  private static String reason(Advice advice) {
    DecisionTexts words = DecisionTexts.of(advice);
    Optional<Finding> first = words.decisive().stream().findFirst();
    return first.map(words::because).orElse(words.line());
  }
}
