package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk;
import annulus.advice.PromiseDesk.Told;
import annulus.advice.Reassessment;
import annulus.advice.Shop;
import annulus.advice.ShopPlace;
import annulus.catalog.Catalog;
import annulus.exchange.JobLog;
import annulus.exchange.LogWords;
import annulus.exchange.LoggerAhead;
import annulus.exchange.LoggerOptions;
import annulus.exchange.LoggerRules;
import annulus.store.Job;
import annulus.store.JobContent;
import annulus.store.TemperatureLog;
import annulus.web.Answer.Measured;
import annulus.web.Answer.Read;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;

/** Answers orders through the core. It keeps the orders and logs it read, never an answer. */
final class Judge {
  private static final int MOST_ORDERS = 1000;
  private static final int MOST_LOGS = 100;
  private static final int MOST_PLACES = 100;

  private final PromiseDesk desk;
  private final Catalog catalog;
  private final Orders orders;
  private final LoggerRules logRules;
  private final BiFunction<Job, String, TemperatureLog> logs;
  private final Kept<Entered, JointOrder> readOrders = new Kept<>(MOST_ORDERS);
  private final Kept<Logged, Read> readLogs = new Kept<>(MOST_LOGS);
  private final Kept<String, Then> readPlaces = new Kept<>(MOST_PLACES);

  /** An order as written, and when it was entered: the start of one that gives none. */
  private record Entered(String order, Instant at) {}

  /** An order as written, and the identity of the log that is read for it. */
  private record Logged(String order, String log) {}

  /** A place as it was when a joint was closed in it, and the judge by it. */
  private record Then(ShopPlace place, Judge judge) {}

  Judge(
      PromiseDesk desk,
      Catalog catalog,
      Orders orders,
      LoggerRules logRules,
      BiFunction<Job, String, TemperatureLog> logs) {
    this.desk = desk;
    this.catalog = catalog;
    this.orders = orders;
    this.logRules = logRules;
    this.logs = logs;
  }

  /** When the joint of an order is to be closed. */
  Instant start(String order, Instant enteredAt) {
    return planned(order, enteredAt).start();
  }

  /** When the part of a job was moved after closing, if it was. */
  Optional<Instant> movedAt(JobContent content, Instant enteredAt) {
    Judge judge = content.place().map(p -> then(p).judge()).orElse(this);
    return judge.planned(content.order(), enteredAt).movedAt();
  }

  /** The place of the shop that an order names, as it is now, to be kept with a closed joint. */
  Optional<String> place(String order, Instant enteredAt) {
    return desk.shop().placeOf(planned(order, enteredAt)).map(PinnedPlace::text);
  }

  /**
   * The place of a closed joint whose order is another one now: as it was at the closing, unless
   * the order names another place.
   */
  Optional<String> place(String order, JobContent was, Instant enteredAt) {
    Optional<ShopPlace> now = desk.shop().placeOf(planned(order, enteredAt));
    return was.place()
        .filter(p -> now.filter(n -> n.name().equals(then(p).place().name())).isPresent())
        .or(() -> now.map(PinnedPlace::text));
  }

  private Then then(String place) {
    return readPlaces.get(
        place,
        () -> {
          ShopPlace pinned = PinnedPlace.read(place, desk.shop());
          Shop shop = desk.shop().with(pinned);
          return new Then(
              pinned, new Judge(desk.in(shop), catalog, orders.in(shop), logRules, logs));
        });
  }

  /** The answer to a job: by its temperature log where it has one, else by the plan. */
  Answer answer(Job job) {
    return byPlace(job.content(), judge -> judge.asWritten(job));
  }

  /** The answer to a job by a temperature log. */
  Answer measured(JobContent content, Instant enteredAt, TemperatureLog log) {
    return byPlace(content, judge -> judge.measured(content.order(), enteredAt, log));
  }

  /**
   * Requires that a log that is read out now does not run past now. Asked then only: jobs with a
   * log that was taken before stay readable.
   *
   * @throws InputRefused when not
   */
  void requireRightClock(Answer byLog) {
    Read read = byLog.measured().orElseThrow().read();
    ZoneId zone = desk.shop().hours().zone();
    LoggerAhead.refuse(read.course().reading(), read.log().readAt(), logRules, zone);
  }

  /**
   * Whether an edit of the shop's file puts right what was wrong all along, or tells of a change
   * from now on, nobody says: the later of the two answers holds.
   */
  private Answer byPlace(JobContent content, Function<Judge, Answer> judged) {
    if (content.place().isEmpty()) {
      return judged.apply(this);
    }
    Then then = then(content.place().get());
    Optional<ShopPlace> now = desk.shop().place(then.place().name());
    if (now.filter(n -> PinnedPlace.alike(n, then.place())).isPresent()) {
      return judged.apply(this);
    }
    Answer asClosed = judged.apply(then.judge());
    return now.isPresent()
        ? asClosed.orLater(judged.apply(this)).noting(changed(then.place(), now.get()))
        : asClosed.noting(gone(then.place()));
  }

  private static String changed(ShopPlace then, ShopPlace now) {
    return "The shop's file gives "
        + then.name()
        + " another course of temperature than when the joint was closed (then "
        + then.describedAs()
        + "; now "
        + now.describedAs()
        + "). The later hand-back of the two holds.";
  }

  private static String gone(ShopPlace then) {
    return "The shop's file has no place "
        + then.name()
        + " any more. The joint is judged by the place as it was when it was closed ("
        + then.describedAs()
        + ").";
  }

  private Answer asWritten(Job job) {
    JobContent content = job.content();
    if (content.log().isEmpty()) {
      return answer(content.order(), job.createdAt());
    }
    JointOrder planned = planned(content.order(), job.createdAt());
    String id = content.log().get();
    Read known =
        readLogs.get(new Logged(content.order(), id), () -> read(planned, logs.apply(job, id)));
    return measured(planned, known);
  }

  private Answer measured(String order, Instant enteredAt, TemperatureLog log) {
    JointOrder planned = planned(order, enteredAt);
    return measured(planned, read(planned, log));
  }

  private Answer measured(JointOrder planned, Read known) {
    Reassessment again = desk.reassess(planned, known.course().course());
    Measured measured = new Measured(known, again, desk.shop());
    return new Answer(again.now(), catalog, Optional.of(measured), Optional.empty());
  }

  private JointOrder planned(String order, Instant enteredAt) {
    return readOrders.get(new Entered(order, enteredAt), () -> orders.read(order, enteredAt));
  }

  private Read read(JointOrder planned, TemperatureLog log) {
    LoggerOptions options =
        LogWords.options(
            desk.shop().hours().zone(),
            said(log.dateOrder()),
            said(log.unit()),
            said(log.column()),
            new LogWords.Place("log", "dateOrder", "unit"));
    try {
      JobLog course =
          JobLog.read(
              log.name(),
              () -> new StringReader(log.text()),
              options,
              logRules,
              planned,
              log.readAt());
      return new Read(log, course);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<String> said(String word) {
    return word.isBlank() ? Optional.empty() : Optional.of(word);
  }

  /** The answer to an order whose start is written down. */
  Answer answer(String order, Instant enteredAt) {
    return judged(planned(order, enteredAt));
  }

  /** The answer to an order as typed. */
  Answer judged(JointOrder order) {
    return answer(desk.tell(order));
  }

  /** The answer if the joint were closed now, to the minute. */
  Answer ifClosed(String order, Instant enteredAt, Instant now) {
    Instant minute = now.truncatedTo(ChronoUnit.MINUTES).plus(1, ChronoUnit.MINUTES);
    JointOrder planned = planned(order, enteredAt);
    return answer(desk.tellAt(planned, desk.shop().placeOf(planned), minute));
  }

  private Answer answer(Told told) {
    return new Answer(told, catalog, Optional.empty(), Optional.empty());
  }
}
