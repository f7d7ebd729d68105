package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk.Told;
import com.fasterxml.jackson.databind.JsonNode;

/**
 * One order judged.
 *
 * @param order what was asked
 * @param told the answer and the promise that could be given
 * @param json the answer in words and figures, as {@code advice.schema.json}
 */
record Answer(JointOrder order, Told told, JsonNode json) {
  boolean isYes() {
    return told.advice().decision().kind().isYes() && told.ready().isPresent();
  }
}
