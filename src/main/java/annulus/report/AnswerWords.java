package annulus.report;

import annulus.advice.Advice;
import annulus.advice.JointOrder;
import annulus.catalog.Catalog;
import annulus.select.Finding;
import java.util.ArrayList;
import java.util.List;

/** The words of an answer one by one, for a page; the same as {@link JsonReport} writes. */
public final class AnswerWords {
  private final Advice advice;
  private final Catalog catalog;
  private final DecisionTexts decision;
  private final GapTexts gap;

  /**
   * @param advice the answer
   * @param catalog the catalogue it was made with
   */
  public AnswerWords(Advice advice, Catalog catalog) {
    this.advice = advice;
    this.catalog = catalog;
    this.decision = DecisionTexts.of(advice);
    this.gap = new GapTexts(advice, catalog);
  }

  /** The decision in one line. */
  public String decision() {
    return decision.line();
  }

  /** Why it is no; empty for a yes. */
  public List<String> because() {
    return reasons(decision.decisive());
  }

  /** What to do instead; empty for a yes. */
  public List<String> instead() {
    return decision.instead();
  }

  /** What would make the measurement decide; empty where nothing has to. */
  public List<String> remedy() {
    return advice.gap().remedy().isPresent() ? new RemedyTexts(advice).lines(gap) : List.of();
  }

  /** What the hand-back waits for, or why there is none. */
  public String handBackWhy() {
    return new HandBackTexts(advice, catalog).why();
  }

  /** What has to stand beside the hand-back time: limited use after it, a primer not counted. */
  public List<String> handBackNotes() {
    HandBackNotes notes = new HandBackNotes(advice);
    List<String> told = new ArrayList<>();
    notes.limitedUse().ifPresent(told::add);
    notes.primer().ifPresent(told::add);
    return told;
  }

  /** The gap, radial and diametral. */
  public String gap() {
    return gap.line();
  }

  /** What has to be known of the gap. */
  public List<String> gapRemarks() {
    return gap.remarks();
  }

  /** What to do, in order. */
  public List<String> steps() {
    JointOrder order = advice.order();
    StepTexts words = new StepTexts(new ShopTime(order.zone(), order.start()));
    return advice.steps().stream().map(words::text).toList();
  }

  /** What to take care of with this joint and with every joint, gravest first. */
  public List<String> cautions() {
    return new CautionList(catalog).of(advice).stream().map(CautionList.Caution::text).toList();
  }

  private static List<String> reasons(List<Finding> findings) {
    return findings.stream().map(RuleTexts::reason).toList();
  }
}
