package annulus.report;

import annulus.advice.Advice;
import annulus.advice.PromiseDesk.Told;
import annulus.advice.Shop;
import annulus.catalog.Stage;
import annulus.handback.Promise;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A day's list: every job's stage now and its ready time; those that miss their promise first. */
public final class JobListText {
  private final Shop shop;
  private final Instant now;

  /**
   * @param shop whose clock is used
   * @param now the time that stages are told for
   */
  public JobListText(Shop shop, Instant now) {
    this.shop = shop;
    this.now = now;
  }

  /** What a job is doing. */
  public enum State {
    NOT_STARTED("not started"),
    SETTING("do not touch"),
    FIXTURE("fixture"),
    HANDLING("handling"),
    FUNCTIONAL("functional"),
    FULL("not safe yet"),
    TO_CHECK("cured, to check"),
    NO("no promise");

    private final String word;

    State(String word) {
      this.word = word;
    }

    /** What is told of it. */
    public String word() {
      return word;
    }
  }

  /**
   * One job, small enough to keep all of them.
   *
   * @param job its reference
   * @param state what it is doing
   * @param ready earliest safe hand-back
   * @param promise what could be promised now
   * @param promised what was promised
   * @param misses whether what was promised could not be kept, however quick the check
   * @param why for a job that gets no promise
   */
  public record Line(
      String job,
      State state,
      Optional<Instant> ready,
      Optional<Instant> promise,
      Optional<Instant> promised,
      boolean misses,
      String why) {}

  /** The line of a job. */
  public Line line(Told told, Optional<Instant> promised) {
    Advice advice = told.advice();
    String why =
        told.promise().isPresent()
            ? ""
            : new PromiseText(shop, advice.order().start()).whyNone(told);
    return new Line(
        advice.order().job(),
        state(told),
        told.ready(),
        PromiseText.from(now, told, shop).map(Promise::promise),
        promised,
        promised.isPresent() && !told.meets(promised.get()),
        why);
  }

  private State state(Told told) {
    Advice advice = told.advice();
    if (told.ready().isEmpty()) {
      return State.NO;
    }
    if (now.isBefore(advice.order().start())) {
      return State.NOT_STARTED;
    }
    if (!now.isBefore(told.ready().get())) {
      return State.TO_CHECK;
    }
    State state = State.SETTING;
    for (Stage stage : Stage.values()) {
      boolean reached =
          advice
              .cure()
              .flatMap(c -> c.at(stage).sure())
              .filter(d -> !advice.order().start().plus(d).isAfter(now))
              .isPresent();
      state = reached ? State.values()[State.FIXTURE.ordinal() + stage.ordinal()] : state;
    }
    return state;
  }

  /** Misses first, then by ready time, those without one last. */
  public static List<Line> inOrder(List<Line> lines) {
    Comparator<Line> misses = Comparator.comparing(l -> l.misses() ? 0 : 1);
    return lines.stream()
        .sorted(misses.thenComparing(l -> l.ready().orElse(Instant.MAX)).thenComparing(Line::job))
        .toList();
  }

  /** The list as a table. */
  public String text(List<Line> lines) {
    ShopTime time = new ShopTime(shop.hours().zone(), now);
    TextLines out = new TextLines();
    long missing = lines.stream().filter(Line::misses).count();
    out.line(
        "Jobs at " + time.full(now) + ": " + lines.size() + ", missing their promise: " + missing);
    if (!lines.isEmpty()) {
      out.line(row("job", "state now", "safe from", "promise now", "promised"));
    }
    for (Line line : inOrder(lines)) {
      out.line(
          row(
              line.job(),
              line.state().word,
              line.ready().map(time::wall).orElse("never"),
              line.promise().map(time::wall).orElse("none"),
              line.promised().map(time::wall).orElse("") + mark(line)));
      if (!line.why().isEmpty()) {
        out.hanging("            ", line.why());
      }
    }
    return out.toString();
  }

  /** A promise that has passed was kept, or the job still waits to be checked: the shop knows. */
  private String mark(Line line) {
    boolean passed = line.promised().filter(p -> !p.isAfter(now)).isPresent();
    return line.misses() ? "  MISSES" : passed ? "  passed" : "";
  }

  private static String row(String job, String state, String ready, String promise, String said) {
    return TextLines.cell(job, 12)
        + TextLines.cell(state, 17)
        + TextLines.cell(ready, 21)
        + TextLines.cell(promise, 21)
        + said;
  }
}
