package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk.Told;
import annulus.advice.Reassessment;
import annulus.advice.Shop;
import annulus.catalog.Catalog;
import annulus.exchange.JobLog;
import annulus.exchange.ReadingText;
import annulus.report.AnswerWords;
import annulus.report.DecisionTexts;
import annulus.report.JsonReport;
import annulus.report.PromiseJson;
import annulus.report.ReassessmentText;
import annulus.store.TemperatureLog;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * One order judged; words and JSON are made when they are asked for.
 *
 * @param told the answer and the promise that could be given
 * @param catalog what it was judged by
 * @param measured what a temperature log says of it; empty when it is judged by the plan alone
 * @param shopFile how the shop's file has changed since the joint was closed, where that matters
 */
record Answer(Told told, Catalog catalog, Optional<Measured> measured, Optional<String> shopFile) {
  /**
   * A temperature log as read for one order.
   *
   * @param log the log
   * @param course what it says of the joint
   */
  record Read(TemperatureLog log, JobLog course) {}

  /**
   * What a temperature log says.
   *
   * @param read the log
   * @param again the judgement
   * @param shop whose clock the words go by
   */
  record Measured(Read read, Reassessment again, Shop shop) {
    TemperatureLog log() {
      return read.log();
    }

    /** How it was read, how far the joint is, what moved and why. */
    String text() {
      String reading = ReadingText.of(read.course().reading(), shop.hours().zone());
      return new ReassessmentText(shop).text(again, reading);
    }

    /** The same as {@code promise --log --json} gives it. */
    JsonNode json() {
      PromiseJson.Content content =
          new PromiseJson.Content(
              again.now(),
              List.of(),
              Optional.empty(),
              Optional.empty(),
              Optional.of(again),
              log().readAt());
      return Orders.tree(PromiseJson.of(content, shop)).get("log");
    }
  }

  /** What was asked. */
  JointOrder order() {
    return told.advice().order();
  }

  /** The decision in one line. */
  String decision() {
    return DecisionTexts.of(told.advice()).line();
  }

  /** Why it is no; empty for a yes. */
  List<String> because() {
    return new AnswerWords(told.advice(), catalog).because();
  }

  /** In words and figures, as {@code advice.schema.json}. */
  JsonNode json() {
    return Orders.tree(JsonReport.of(told.advice(), catalog));
  }

  /** The same answer with what has to be said of the shop's file. */
  Answer noting(String changed) {
    return new Answer(told, catalog, measured, Optional.of(changed));
  }

  /** The one of two answers with the later hand-back; never is the latest. */
  Answer orLater(Answer other) {
    boolean earlier =
        told.ready().isPresent()
            && other.told.ready().filter(r -> !r.isAfter(told.ready().get())).isEmpty();
    return earlier ? other : this;
  }

  /** Whether the joint is safe at a moment. */
  boolean isSafe(Instant at) {
    return told.ready().filter(r -> !r.isAfter(at)).isPresent();
  }

  boolean isYes() {
    return told.advice().decision().kind().isYes() && told.ready().isPresent();
  }
}
