package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk;
import annulus.advice.PromiseDesk.Told;
import annulus.catalog.Catalog;
import annulus.report.JsonReport;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Answers orders through the core and remembers the answers it gave last. */
final class Judge {
  private static final int REMEMBERED = 500;

  private final PromiseDesk desk;
  private final Catalog catalog;
  private final Orders orders;
  private final Map<String, Answer> remembered =
      Collections.synchronizedMap(
          new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<String, Answer> eldest) {
              return size() > REMEMBERED;
            }
          });

  Judge(PromiseDesk desk, Catalog catalog, Orders orders) {
    this.desk = desk;
    this.catalog = catalog;
    this.orders = orders;
  }

  /** The answer to an order whose start is written down. */
  Answer answer(String order, Instant enteredAt) {
    Answer known = remembered.get(order);
    if (known == null) {
      known = judged(orders.read(order, enteredAt));
      remembered.put(order, known);
    }
    return known;
  }

  /** The answer to an order as typed; not remembered. */
  Answer judged(JointOrder order) {
    return answer(desk.tell(order));
  }

  /** The answer if the joint were closed now, to the minute. */
  Answer ifClosed(String order, Instant enteredAt, Instant now) {
    Instant minute = now.truncatedTo(ChronoUnit.MINUTES).plus(1, ChronoUnit.MINUTES);
    String key = order + " closed " + minute;
    Answer known = remembered.get(key);
    if (known == null) {
      JointOrder planned = answer(order, enteredAt).order();
      known = answer(desk.tellAt(planned, desk.shop().placeOf(planned), minute));
      remembered.put(key, known);
    }
    return known;
  }

  private Answer answer(Told told) {
    try {
      JsonNode json = Orders.JSON.readTree(JsonReport.of(told.advice(), catalog));
      return new Answer(told.advice().order(), told, json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
