package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk.Told;
import annulus.advice.Reassessment;
import annulus.store.TemperatureLog;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;

/**
 * One order judged.
 *
 * @param order what was asked
 * @param told the answer and the promise that could be given
 * @param json the answer in words and figures, as {@code advice.schema.json}
 * @param measured what a temperature log says of it; empty when it is judged by the plan alone
 */
record Answer(JointOrder order, Told told, JsonNode json, Optional<Measured> measured) {
  /**
   * What a temperature log says.
   *
   * @param log the log
   * @param again the judgement
   * @param text how it was read, how far the joint is, what moved and why
   * @param json the same as {@code promise --log --json} gives it
   */
  record Measured(TemperatureLog log, Reassessment again, String text, JsonNode json) {}

  boolean isYes() {
    return told.advice().decision().kind().isYes() && told.ready().isPresent();
  }
}
