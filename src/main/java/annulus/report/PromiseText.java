package annulus.report;

import annulus.advice.Advice;
import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk.Input;
import annulus.advice.PromiseDesk.Option;
import annulus.advice.PromiseDesk.Shift;
import annulus.advice.PromiseDesk.Told;
import annulus.advice.Shop;
import annulus.catalog.Primer;
import annulus.handback.LatestStart;
import annulus.handback.OpeningHours;
import annulus.handback.Promise;
import annulus.quantity.Numbers;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** A promise in words for the shop; only its last line is for the customer. */
public final class PromiseText {
  private static final String COLD = "too-cold";
  private static final String NOT_HERE = "It will not cure here: too cold. Find a warmer place.";

  private final Shop shop;
  private final ShopTime time;

  /**
   * @param shop whose clock is used
   * @param start when the joint is closed
   */
  public PromiseText(Shop shop, Instant start) {
    this.shop = shop;
    this.time = new ShopTime(shop.hours().zone(), start);
  }

  /**
   * What the customer is told: the promise, what must not be done for a while after it, and nothing
   * that could be taken for an earlier time.
   *
   * @param promised the time
   * @param zone the shop's zone
   * @param advice the answer behind it
   */
  public static String customer(Instant promised, ZoneId zone, Advice advice) {
    ShopTime clock = new ShopTime(zone, promised);
    String ready = "Ready on " + clock.longDay(promised) + ".";
    return new HandBackNotes(advice)
        .limitedUse(promised, zone)
        .map(l -> ready + " " + l)
        .orElse(ready);
  }

  /** What can be promised at a moment: as told, or once it has passed the next time for a check. */
  public static Optional<Promise> from(Instant now, Told told, Shop shop) {
    return told.promise()
        .flatMap(
            p ->
                p.promise().isAfter(now) ? Optional.of(p) : shop.rule().promise(now, shop.hours()));
  }

  /**
   * Promise, what moves it, and on what ground.
   *
   * @param told the answer
   * @param shifts what would move it, most first
   * @param now when this is judged
   */
  public String promise(Told told, List<Shift> shifts, Instant now) {
    TextLines lines = new TextLines();
    Advice advice = told.advice();
    JointOrder order = advice.order();
    lines.line(heading(order));
    otherClock(order).ifPresent(w -> lines.hanging("! Clock    ", w));
    if (told.promise().isPresent()) {
      promised(lines, told, told.promise().get(), now);
    } else {
      lines.line("NO PROMISE  " + whyNone(told));
    }
    HandBackNotes notes = new HandBackNotes(advice);
    told.promise()
        .flatMap(p -> notes.limitedUse(p.promise(), shop.hours().zone()))
        .ifPresent(l -> lines.hanging("Then       ", l));
    lines.hanging("What       ", DecisionTexts.of(advice).line());
    notes.primer().ifPresent(p -> lines.hanging("Primer     ", p));
    shifts(lines, told, shifts);
    lines.hanging("Basis      ", basis(told, now));
    from(now, told, shop)
        .ifPresent(
            p ->
                lines
                    .blank()
                    .hanging("Customer   ", customer(p.promise(), shop.hours().zone(), advice)));
    return lines.toString();
  }

  /** An order that names another zone than the shop's starts at another time than it seems to. */
  private Optional<String> otherClock(JointOrder order) {
    ShopTime other = new ShopTime(order.zone(), order.start());
    if (other.offset(order.start()).equals(time.offset(order.start()))) {
      return Optional.empty();
    }
    return Optional.of(
        "the order names the zone "
            + order.zone()
            + ", where its start is "
            + other.wall(order.start())
            + "; at the shop that is "
            + time.wall(order.start())
            + ". If the shop's clock was meant, take \"zone\" out of the order.");
  }

  private static String heading(JointOrder order) {
    String job = order.job().isBlank() ? "Job" : "Job " + order.job();
    return order.title().isBlank() ? job : job + "  " + order.title();
  }

  private void promised(TextLines lines, Told told, Promise promise, Instant now) {
    Optional<Promise> later =
        from(now, told, shop).filter(p -> !p.promise().equals(promise.promise()));
    String passed = promise.promise().isAfter(now) ? "" : "  it has passed: check the job now";
    if (later.isPresent()) {
      lines.line("PROMISE    " + time.full(later.get().promise()));
      lines.hanging("First      ", time.brief(promise.promise()) + passed);
    } else {
      lines.line("PROMISE    " + time.full(promise.promise()) + passed);
    }
    String sure = Figures.probability(told.advice().order().confidence() * 100, 1);
    lines.hanging(
        "Earliest   ",
        time.brief(promise.ready())
            + "  safe with "
            + sure
            + " % confidence; "
            + reason(promise)
            + ", check from "
            + time.brief(promise.checkStart()));
    if (told.advice().decision().kind() == Advice.Kind.USE_COMPOUND) {
      lines.hanging(
          "Likely     ",
          told.likely()
              .map(
                  l ->
                      time.brief(l)
                          + "  half of such joints are cured so far by then; not a promise")
              .orElse("never"));
    }
  }

  private static String reason(Promise promise) {
    return switch (promise.reason()) {
      case READY_WHILE_OPEN -> "the shop is open then";
      case READY_WHILE_CLOSED -> "the shop is closed then";
      case CHECK_DOES_NOT_FIT -> "too near closing for the check";
      case ROUNDED_PAST_CLOSING -> "too near closing for a round time";
    };
  }

  /** Why nothing is promised. */
  String whyNone(Told told) {
    Advice advice = told.advice();
    if (!advice.decision().kind().isYes()) {
      boolean cold = advice.decision().because().stream().anyMatch(f -> f.rule().id().equals(COLD));
      return cold ? NOT_HERE : DecisionTexts.of(advice).line();
    }
    if (advice.handBack().isPresent()) {
      return "ready "
          + time.brief(advice.handBack().get().at())
          + ", but the shop is never open long enough after that";
    }
    if (advice.cure().map(c -> c.stages().get(3).sure().isEmpty()).orElse(false)) {
      return NOT_HERE;
    }
    return "the hold never covers the load for sure";
  }

  private void shifts(TextLines lines, Told told, List<Shift> shifts) {
    String first = "Moves it   ";
    for (Shift shift : shifts.stream().limit(2).toList()) {
      boolean same =
          shift.promise().isPresent()
              && told.promise().isPresent()
              && shift.promise().get().promise().equals(told.promise().get().promise());
      String then =
          shift.promise().map(p -> same ? "the same" : time.brief(p.promise())).orElse("none");
      lines.hanging(
          first,
          name(shift.input(), told.advice())
              + ": "
              + shift.atBest()
              + " -> safe "
              + ShopTime.down(shift.sooner())
              + " sooner, promise "
              + then);
      first = "           ";
    }
  }

  /** A primer that is planned already moves the time by being entered, not by being put on. */
  private static String name(Input input, Advice advice) {
    boolean planned = input == Input.PRIMER && advice.primerNotCounted();
    return planned ? "primer, once it is entered" : name(input);
  }

  static String name(Input input) {
    return switch (input) {
      case TEMPERATURE -> "temperature";
      case GAP -> "gap";
      case PRIMER -> "primer";
      case FACES -> "faces";
      case CLASS_TIMES -> "cure times";
      case ACTIVATION -> "effect of temperature";
      case ARRIVAL -> "cold parts";
    };
  }

  /** Whose number, which temperature, when judged. */
  public String basis(Told told, Instant now) {
    Advice advice = told.advice();
    String figures =
        advice
            .decision()
            .compound()
            .map(
                c ->
                    "times of "
                        + c.id()
                        + ": "
                        + c.provenance().source()
                        + " (confidence "
                        + StageTexts.id(c.provenance().confidence())
                        + "); ")
            .orElse("");
    return figures
        + "temperature "
        + advice.order().cure().describedAs()
        + "; data "
        + advice.dataVersion()
        + "; judged "
        + time.brief(now);
  }

  /**
   * All ways as a table.
   *
   * @param options in order
   * @param wanted the pickup asked for; the latest start is shown for it
   * @param now when this is judged
   */
  public String options(List<Option> options, Optional<Instant> wanted, Instant now) {
    TextLines lines = new TextLines();
    wanted.ifPresent(w -> lines.blank().line(wantedLine(options, w)));
    wanted.flatMap(w -> noPickup(w, now, shop.hours())).ifPresent(lines::line);
    if (options.isEmpty()) {
      return lines.blank().line("There is no other way: no class is usable.").toString();
    }
    lines.heading("Ways, soonest first; \"-\" marks those no better in anything than another one");
    lines.line(
        row(
            "",
            "safe from",
            wanted.isPresent() ? "latest start" : "promise",
            "class",
            "primer",
            "place",
            "MPa",
            "apart",
            "work",
            "touch"));
    for (Option option : options) {
      lines.line(row(option, wanted.isPresent()));
    }
    lines.line(
        "MPa: likely shear strength left at the hottest service. Apart: by hand tools, or with heat."
            + " Work: time to push it home. Touch: minutes of hands-on time; work begins "
            + time.brief(options.get(0).work())
            + " or later.");
    return lines.toString();
  }

  /** Why nobody can collect at a wanted time, however early the joint is ready. */
  public static Optional<String> noPickup(Instant wanted, Instant now, OpeningHours hours) {
    if (!wanted.isAfter(now)) {
      return Optional.of("That time has passed already.");
    }
    if (hours.isOpen(wanted)) {
      return Optional.empty();
    }
    String why = closedFor(wanted, hours);
    return Optional.of("The shop is closed at that time" + why + ": nobody can collect it then.");
  }

  /** Why the shop is closed on a day, in brackets after a space; empty where no reason is given. */
  public static String closedFor(Instant when, OpeningHours hours) {
    return hours
        .closureReason(when.atZone(hours.zone()).toLocalDate())
        .map(r -> " (" + r + ")")
        .orElse("");
  }

  private String wantedLine(List<Option> options, Instant wanted) {
    long ways = options.stream().filter(o -> o.told().meets(wanted)).count();
    String when = time.brief(wanted);
    return ways == 0
        ? "WANTED " + when + ": can't be met by any way"
        : "WANTED " + when + ": can be met by " + ways + " of " + options.size() + " ways";
  }

  /** What is said of other ways for a joint that is closed: there are none. */
  public String closedAlready(Told told, Optional<Instant> wanted, Instant now) {
    TextLines lines = new TextLines();
    lines.line(
        wanted
            .map(w -> told.meets(w) ? "it meets the wanted time." : "it MISSES the wanted time.")
            .map(w -> "The joint is closed already; " + w)
            .orElse("The joint is closed already: there is no other way for it."));
    wanted.flatMap(w -> noPickup(w, now, shop.hours())).ifPresent(lines::line);
    return lines.toString();
  }

  private String row(Option o, boolean wanted) {
    String second =
        wanted
            ? o.latest().map(this::latest).orElse("")
            : o.told().promise().map(p -> brief(p.promise())).orElse("none");
    return row(
        o.noBetter() ? "-" : "",
        o.told().ready().map(this::brief).orElse("never"),
        second,
        o.compound().id(),
        o.primer().map(Primer::id).orElse("none"),
        o.place().map(p -> p.name()).orElse("as given"),
        Numbers.fixed(o.strengthMPa(), 1),
        o.releasable() ? "hand" : "heat",
        workingTime(o.workingTime()),
        Long.toString(ShopTime.minutesUp(o.touch())));
  }

  private String latest(LatestStart latest) {
    if (latest instanceof LatestStart.Found found) {
      return brief(found.start());
    }
    return switch (((LatestStart.None) latest).reason()) {
      case NOT_OPEN_BEFORE_PICKUP -> "not open";
      case FIRST_START_TOO_LATE -> "too late";
      case NEVER_READY -> "never ready";
    };
  }

  private static String workingTime(Duration time) {
    return time.toMinutes() < 2 ? time.toSeconds() + " s" : time.toMinutes() + " min";
  }

  private String brief(Instant instant) {
    return time.format(instant, "EEE MM-dd HH:mm");
  }

  private static String row(String... cells) {
    int[] widths = {2, 16, 16, 18, 15, 9, 6, 6, 7, 5};
    StringBuilder row = new StringBuilder();
    for (int i = 0; i < cells.length; i++) {
      row.append(i == cells.length - 1 ? cells[i] : TextLines.cell(cells[i], widths[i]));
    }
    return row.toString();
  }
}
