package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk.Told;
import annulus.advice.Reassessment;
import annulus.catalog.Catalog;
import annulus.report.DecisionTexts;
import annulus.report.JsonReport;
import annulus.store.TemperatureLog;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;

/** One order judged. */
final class Answer {
  private final Told told;
  private final Catalog catalog;
  private final Optional<Measured> measured;
  private JsonNode json;

  /**
   * @param told the answer and the promise that could be given
   * @param catalog what it was judged by
   * @param measured what a temperature log says of it; empty when it is judged by the plan alone
   */
  Answer(Told told, Catalog catalog, Optional<Measured> measured) {
    this.told = told;
    this.catalog = catalog;
    this.measured = measured;
  }

  /**
   * What a temperature log says.
   *
   * @param log the log
   * @param again the judgement
   * @param text how it was read, how far the joint is, what moved and why
   * @param json the same as {@code promise --log --json} gives it
   */
  record Measured(TemperatureLog log, Reassessment again, String text, JsonNode json) {}

  /** What was asked. */
  JointOrder order() {
    return told.advice().order();
  }

  Told told() {
    return told;
  }

  Optional<Measured> measured() {
    return measured;
  }

  /** The decision in one line. */
  String decision() {
    return DecisionTexts.of(told.advice()).line();
  }

  /** In words and figures, as {@code advice.schema.json}; made when first asked for. */
  synchronized JsonNode json() {
    if (json == null) {
      json = Orders.tree(JsonReport.of(told.advice(), catalog));
    }
    return json;
  }

  /** What a page shows of it: the same without the table of classes and the figures. */
  JsonNode shown() {
    return Orders.tree(JsonReport.shown(told.advice(), catalog));
  }

  boolean isYes() {
    return told.advice().decision().kind().isYes() && told.ready().isPresent();
  }
}
