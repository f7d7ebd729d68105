package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.Figure;
import annulus.advice.Advice.HandBackCondition;
import annulus.catalog.Catalog;
import annulus.catalog.Provenance;
import annulus.measure.Budget;
import annulus.measure.Component;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Note;
import annulus.quantity.Numbers;
import annulus.select.ClassVerdict;
import annulus.select.Fact;
import annulus.select.Finding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The long answer: every rule, budget line, figure and source. */
final class WhyText {
  private final Advice advice;
  private final Catalog catalog;
  private final TextLines lines;

  WhyText(Advice advice, Catalog catalog, TextLines lines) {
    this.advice = advice;
    this.catalog = catalog;
    this.lines = lines;
  }

  private void holdFactors() {
    List<String> factors = new ForceTexts(advice).factors();
    if (!factors.isEmpty()) {
      lines.heading("Why: factors on the specimen's strength");
      factors.forEach(f -> lines.hanging("  ", f));
    }
  }

  void write() {
    holdFactors();
    rules();
    handBack();
    ranges();
    advice.gap().bore().ifPresent(b -> diameter("bore", b));
    advice.gap().part().ifPresent(p -> diameter("part", p));
    budget("Uncertainty of the mean gap, radial", advice.gap().gap().budget());
    budget("Uncertainty of largest and smallest gap, radial", advice.gap().gap().extremeBudget());
    figures();
  }

  private void rules() {
    lines.heading("Why: every rule that spoke");
    for (Map.Entry<String, List<Finding>> rule : byRule().entrySet()) {
      Finding first = rule.getValue().get(0);
      lines.hanging(
          "  " + rule.getKey() + " ",
          "(" + StageTexts.id(first.rule().verdict()) + ") " + first.rule().summary());
      sameWords(rule.getValue())
          .forEach(
              (words, about) -> {
                lines.hanging("      ", String.join(", ", about) + ": " + words.reason());
                lines.hanging("        figures: ", words.figures());
              });
      lines.hanging("      source: ", source(first.rule().provenance()));
    }
  }

  private Map<String, List<Finding>> byRule() {
    Map<String, List<Finding>> byRule = new LinkedHashMap<>();
    for (ClassVerdict verdict : advice.table()) {
      for (Finding finding : verdict.findings()) {
        List<Finding> same = byRule.computeIfAbsent(finding.rule().id(), id -> new ArrayList<>());
        if (!same.contains(finding)) {
          same.add(finding);
        }
      }
    }
    return byRule;
  }

  /** What a finding says; several classes may share it. */
  private record Said(String reason, String figures) {}

  /** The findings of one rule, those that say the same of several classes as one. */
  private Map<Said, List<String>> sameWords(List<Finding> findings) {
    Map<Said, List<String>> about = new LinkedHashMap<>();
    for (Finding finding : findings) {
      Said said = new Said(RuleTexts.reason(finding), figures(finding));
      about.computeIfAbsent(said, s -> new ArrayList<>()).add(about(finding));
    }
    return about;
  }

  private String about(Finding finding) {
    return advice.table().stream()
        .map(ClassVerdict::compound)
        .filter(c -> c.id().equals(finding.classId()))
        .map(ClassTexts::name)
        .findFirst()
        .orElse("joint");
  }

  private static String figures(Finding finding) {
    List<String> parts = new ArrayList<>();
    for (Fact fact : finding.figures().keySet()) {
      parts.add(fact.id() + " " + RuleTexts.figure(finding, fact));
    }
    return String.join(", ", parts);
  }

  static String source(Provenance provenance) {
    return provenance.source() + "; confidence " + StageTexts.id(provenance.confidence());
  }

  private void handBack() {
    if (advice.handBack().isEmpty()) {
      return;
    }
    ShopTime time = new ShopTime(advice.order().zone(), advice.order().start());
    HandBackTexts words = new HandBackTexts(advice, catalog);
    lines.heading("Why: what the hand-back waits for");
    for (HandBackCondition condition : advice.handBack().get().conditions()) {
      String ruling = condition.condition() == advice.handBack().get().ruling() ? "  * " : "    ";
      lines.hanging(
          ruling,
          words.condition(condition.condition())
              + ": "
              + ShopTime.up(condition.after())
              + ", "
              + time.brief(time.after(condition.after())));
    }
    lines.line("  * rules");
  }

  private void ranges() {
    lines.heading("Why: probability that the gap lies in each class's range");
    double wanted = advice.order().confidence();
    for (ClassVerdict verdict : advice.table()) {
      lines.hanging(
          TextLines.cell("  " + ClassTexts.name(verdict.compound()), 25),
          TextLines.cell(Figures.percent(verdict.covers(), wanted), 20)
              + RemedyTexts.range(verdict.compound().gapUm()));
    }
    lines.line("  wanted " + Figures.wanted(wanted));
    List<String> ids = advice.table().stream().map(v -> v.compound().id()).toList();
    lines.hanging("  ids for --class, in this order: ", String.join(", ", ids));
  }

  private void diameter(String name, MeasuredDiameter measured) {
    budget("Uncertainty of the " + name + ", on the diameter", measured.budget());
    lines.hanging(
        "  ",
        "mean "
            + Numbers.fixed(measured.meanMm(), 4)
            + " mm, largest "
            + Numbers.fixed(measured.largestMm(), 4)
            + ", smallest "
            + Numbers.fixed(measured.smallestMm(), 4)
            + " mm at 20 °C, "
            + measured.readings().size()
            + " readings with "
            + measured.instrument().name()
            + "; "
            + WhyText.source(measured.span().provenance()));
    for (Note note : measured.notes()) {
      lines.hanging("  note: ", NoteTexts.text(note));
    }
  }

  private void budget(String title, Budget budget) {
    double level = advice.gap().level();
    lines.heading("Why: " + title);
    lines.line("  " + TextLines.cell("component", 36) + "u, µm     dof       share   why");
    for (Component c : budget.components()) {
      lines.hanging(
          "  "
              + TextLines.cell(c.name(), 36)
              + TextLines.cell(Numbers.fixed(c.standardUm(), 2), 10)
              + TextLines.cell(freedom(c.degreesOfFreedom()), 10)
              + TextLines.cell(Numbers.fixed(100 * budget.share(c.id()), 0) + " %", 8),
          c.why());
    }
    lines.hanging(
        "  ",
        "combined "
            + Numbers.fixed(budget.combinedUm(), 2)
            + " µm, effective degrees of freedom "
            + freedom(budget.effectiveDegreesOfFreedom())
            + ", k "
            + Numbers.fixed(budget.coverageFactor(level), 2)
            + ", expanded "
            + Figures.roundedUp(budget.expandedUm(level), 1)
            + " µm at "
            + Figures.wanted(level));
  }

  static String freedom(double value) {
    return Double.isInfinite(value) ? "known" : Numbers.fixed(value, 1);
  }

  private void figures() {
    lines.heading("Why: every figure");
    for (Figure figure : advice.figures()) {
      String unit = figure.unit().isEmpty() ? "" : " " + figure.unit();
      lines.hanging(
          "  ",
          figure.id()
              + " = "
              + Figures.significant(figure.value())
              + unit
              + ": "
              + figure.meaning());
      lines.hanging("      source: ", source(figure.provenance()));
    }
  }
}
