package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk;
import annulus.advice.PromiseDesk.Told;
import annulus.advice.Reassessment;
import annulus.catalog.Catalog;
import annulus.exchange.JobLog;
import annulus.exchange.LogWords;
import annulus.exchange.LoggerOptions;
import annulus.exchange.LoggerRules;
import annulus.exchange.ReadingText;
import annulus.report.JsonReport;
import annulus.report.PromiseJson;
import annulus.report.ReassessmentText;
import annulus.store.JobContent;
import annulus.store.TemperatureLog;
import annulus.web.Answer.Measured;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Answers orders through the core and remembers the answers it gave last. */
final class Judge {
  private static final int REMEMBERED = 500;

  private final PromiseDesk desk;
  private final Catalog catalog;
  private final Orders orders;
  private final LoggerRules logRules;
  private final Function<String, TemperatureLog> logs;
  private final Map<String, Answer> remembered =
      Collections.synchronizedMap(
          new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<String, Answer> eldest) {
              return size() > REMEMBERED;
            }
          });

  Judge(
      PromiseDesk desk,
      Catalog catalog,
      Orders orders,
      LoggerRules logRules,
      Function<String, TemperatureLog> logs) {
    this.desk = desk;
    this.catalog = catalog;
    this.orders = orders;
    this.logRules = logRules;
    this.logs = logs;
  }

  /** The answer to a job: by its temperature log where it has one, else by the plan. */
  Answer answer(JobContent content, Instant enteredAt) {
    if (content.log().isEmpty()) {
      return answer(content.order(), enteredAt);
    }
    String key = content.order() + " log " + content.log().get();
    Answer known = remembered.get(key);
    if (known == null) {
      known = measured(content.order(), enteredAt, logs.apply(content.log().get()));
      remembered.put(key, known);
    }
    return known;
  }

  /** The answer to an order by a temperature log; not remembered. */
  Answer measured(String order, Instant enteredAt, TemperatureLog log) {
    JointOrder planned = orders.read(order, enteredAt);
    ZoneId zone = desk.shop().hours().zone();
    JobLog read = read(planned, log, zone);
    Reassessment again = desk.reassess(planned, read.course());
    Answer plain = answer(again.now());
    Measured measured =
        new Measured(
            log,
            again,
            new ReassessmentText(desk.shop()).text(again, ReadingText.of(read.reading(), zone)),
            json(again, log.readAt()));
    return new Answer(plain.order(), plain.told(), plain.json(), Optional.of(measured));
  }

  private JobLog read(JointOrder planned, TemperatureLog log, ZoneId zone) {
    LoggerOptions options =
        LogWords.options(
            zone,
            said(log.dateOrder()),
            said(log.unit()),
            said(log.column()),
            new LogWords.Place("log", "dateOrder", "unit"));
    try {
      return JobLog.read(
          log.name(), () -> new StringReader(log.text()), options, logRules, planned, log.readAt());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<String> said(String word) {
    return word.isBlank() ? Optional.empty() : Optional.of(word);
  }

  private JsonNode json(Reassessment again, Instant readAt) {
    PromiseJson.Content content =
        new PromiseJson.Content(
            again.now(), List.of(), Optional.empty(), Optional.empty(), Optional.of(again), readAt);
    return tree(PromiseJson.of(content, desk.shop())).get("log");
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
    JsonNode json = tree(JsonReport.of(told.advice(), catalog));
    return new Answer(told.advice().order(), told, json, Optional.empty());
  }

  private static JsonNode tree(String text) {
    try {
      return Orders.JSON.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
