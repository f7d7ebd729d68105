package annulus.report;

import annulus.advice.MeasuredCourse.Hole;
import annulus.advice.Reassessment;
import annulus.advice.Shop;
import annulus.handback.Promise;
import annulus.quantity.Numbers;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What a log changed, in words. */
public final class ReassessmentText {
  private final Shop shop;

  /**
   * @param shop whose clock is used
   */
  public ReassessmentText(Shop shop) {
    this.shop = shop;
  }

  /**
   * How the log was read, how far the joint is, how the ready time moved and why.
   *
   * @param again the judgement
   * @param read how the log was read
   */
  public String text(Reassessment again, String read) {
    ShopTime time = new ShopTime(shop.hours().zone(), again.now().advice().order().start());
    TextLines lines = new TextLines();
    lines.hanging("Log        ", read);
    lines.hanging("Cured      ", cured(again, time));
    lines.hanging("Ready      ", moved(again, time));
    promise(again, time).ifPresent(p -> lines.hanging("Promise    ", p));
    why(again).ifPresent(w -> lines.hanging("Why        ", w));
    missing(again, time).ifPresent(m -> lines.hanging("Missing    ", m));
    return lines.toString();
  }

  private static String cured(Reassessment again, ShopTime time) {
    return "at "
        + time.brief(again.at())
        + ": likely "
        + percent(again.typicalFraction())
        + " of full strength, for sure "
        + percent(again.sureFraction())
        + "; "
        + again.stage().map(s -> StageTexts.name(s) + " reached").orElse("fixture not yet sure");
  }

  private static String percent(double fraction) {
    return Numbers.fixed(Math.floor(fraction * 100), 0) + " %";
  }

  private static String moved(Reassessment again, ShopTime time) {
    Optional<Instant> before = again.planned().ready();
    Optional<Instant> now = again.now().ready();
    String was = before.map(time::brief).orElse("never");
    if (now.isEmpty()) {
      return "never, by the log so far and the plan; it was " + was;
    }
    Optional<Duration> moved = again.moved();
    String by =
        moved.isEmpty()
            ? ""
            : moved.get().isZero()
                ? ": unmoved"
                : moved.get().isNegative()
                    ? ": " + ShopTime.down(moved.get().negated()) + " sooner"
                    : ": " + ShopTime.up(moved.get()) + " later";
    return time.brief(now.get()) + ", was " + was + by;
  }

  /**
   * The one thing that somebody has to do at once: whoever was told the earlier time is waiting.
   */
  private static Optional<String> promise(Reassessment again, ShopTime time) {
    Optional<Instant> was = again.planned().promise().map(Promise::promise);
    Optional<Instant> is = again.now().promise().map(Promise::promise);
    if (was.isEmpty() || (is.isPresent() && !is.get().isAfter(was.get()))) {
      return Optional.empty();
    }
    return Optional.of(
        is.map(time::brief).orElse("none")
            + ", by the plan it was "
            + time.brief(was.get())
            + ": call whoever was told that time");
  }

  /**
   * How the log of a list was read, and what is made of it.
   *
   * @param read how it was read
   */
  public static String ofList(String read) {
    TextLines lines = new TextLines();
    lines.hanging("Log        ", read);
    lines.hanging(
        "           ",
        "Taken for every job closed before its last reading; time before its first reading counts as"
            + " cold as that reading. It only moves a job later: to move one sooner, judge that one"
            + " alone by the log that lay beside it.");
    return lines.toString();
  }

  private static Optional<String> why(Reassessment again) {
    if (again.plannedC().isEmpty() || again.measuredC().isEmpty()) {
      return Optional.empty();
    }
    double planned = again.plannedC().getAsDouble();
    double measured = again.measuredC().getAsDouble();
    String text =
        "so far the joint had the worth of "
            + Numbers.fixed(measured, 1)
            + " °C, planned was "
            + Numbers.fixed(planned, 1)
            + " °C";
    double known = again.course().plusMinusC();
    double doubt = again.planned().advice().order().cure().plusMinusC();
    if (doubt > known) {
      text +=
          "; what is measured is in doubt by "
              + Numbers.plain(known)
              + " °C only, not by "
              + Numbers.plain(doubt);
    }
    if (!again.tooCold().isZero()) {
      text += "; " + ShopTime.up(again.tooCold()) + " of it too cold for this class to cure at all";
    }
    return Optional.of(text);
  }

  private static Optional<String> missing(Reassessment again, ShopTime time) {
    List<Hole> holes = again.course().holes();
    if (holes.isEmpty()) {
      return Optional.empty();
    }
    double coldest = holes.stream().mapToDouble(Hole::takenC).min().orElseThrow();
    String text =
        ShopTime.up(again.course().missing())
            + " in "
            + holes.size()
            + (holes.size() == 1 ? " stretch" : " stretches")
            + " without readings, taken as cold as "
            + Numbers.fixed(coldest, 1)
            + " °C";
    Optional<Instant> straight = again.holesStraight().flatMap(t -> t.ready());
    Optional<Instant> now = again.now().ready();
    if (straight.isPresent() && now.isPresent() && straight.get().isBefore(now.get())) {
      text +=
          "; had they run straight between the readings around them, ready would be "
              + time.brief(straight.get())
              + ": they may hide "
              + ShopTime.up(Duration.between(straight.get(), now.get()));
    } else if (straight.isPresent() && now.isEmpty()) {
      text += "; they alone decide that it never gets ready";
    } else {
      text += "; they change nothing";
    }
    return Optional.of(text);
  }
}
