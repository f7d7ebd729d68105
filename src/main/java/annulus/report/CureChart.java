package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.CurvePoint;
import annulus.advice.Advice.HandBack;
import annulus.catalog.Stage;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Strength against the shop's clock: typical, and sure at the wanted confidence. */
public final class CureChart {
  private static final double WIDTH = 62;
  private static final double HEIGHT = 32;
  private static final double LEFT = 8.5;
  private static final double RIGHT = 60.5;
  private static final double TOP = 8;
  private static final double BASE = 22;
  private static final int[] HOUR_STEPS = {1, 2, 3, 6, 12, 24, 48, 96, 168, 336};
  private static final int MOST_MARKS = 4;
  private static final String THIN = "stroke=\"#000\" stroke-width=\"0.15\"";
  private static final String SURE = "stroke=\"#000\" stroke-width=\"0.5\"";
  private static final String TYPICAL =
      "stroke=\"#666\" stroke-width=\"0.35\" stroke-dasharray=\"1.4 0.8\"";
  private static final String PALE = "stroke=\"#bbb\" stroke-width=\"0.12\"";

  private final Advice advice;
  private final CureTimes cure;
  private final ShopTime time;
  private final double seconds;

  private CureChart(Advice advice, CureTimes cure) {
    this.advice = advice;
    this.cure = cure;
    this.time = new ShopTime(advice.order().zone(), advice.order().start());
    Duration last = cure.curve().get(cure.curve().size() - 1).after();
    Duration handBack = advice.handBack().map(HandBack::after).orElse(Duration.ZERO);
    this.seconds = Math.max((double) last.toSeconds(), handBack.toSeconds() * 1.06);
  }

  /** The picture as one SVG element; empty when nothing is to cure or no time is known. */
  public static Optional<String> of(Advice advice) {
    boolean bonds = advice.decision().kind() == Advice.Kind.USE_COMPOUND;
    return advice
        .cure()
        .filter(c -> bonds && !c.curve().isEmpty())
        .map(c -> new CureChart(advice, c).draw());
  }

  private double x(Duration after) {
    return LEFT + after.toMillis() / 1000.0 / seconds * (RIGHT - LEFT);
  }

  private static double y(double fraction) {
    return BASE - fraction * (BASE - TOP);
  }

  private String draw() {
    Svg svg = new Svg(WIDTH, HEIGHT, "Strength against time", description());
    axes(svg);
    curve(svg, CurvePoint::typical, TYPICAL);
    curve(svg, CurvePoint::sure, SURE);
    marks(svg);
    legend(svg);
    return svg.element();
  }

  private String description() {
    StringBuilder text = new StringBuilder("Counted from ").append(time.full(time.start()));
    for (Stage stage : Stage.values()) {
      cure.at(stage)
          .sure()
          .ifPresent(
              d ->
                  text.append("; ")
                      .append(StageTexts.name(stage))
                      .append(" ")
                      .append(time.brief(time.after(d))));
    }
    advice.handBack().ifPresent(h -> text.append("; hand-back ").append(time.full(h.at())));
    return text.toString();
  }

  private void curve(Svg svg, ToDoubleFunction<CurvePoint> strength, String style) {
    Svg.Path path = new Svg.Path().to(LEFT, BASE);
    cure.curve().forEach(p -> path.to(x(p.after()), y(strength.applyAsDouble(p))));
    svg.path(path, "fill=\"none\" " + style);
  }

  private void axes(Svg svg) {
    for (int percent = 0; percent <= 100; percent += 50) {
      svg.line(LEFT, y(percent / 100.0), RIGHT, y(percent / 100.0), PALE);
      svg.text(LEFT - 0.8, y(percent / 100.0) + 0.8, "end", 2.3, "", percent + " %");
    }
    int step = hourStep();
    String pattern = step < 24 ? "EEE HH:mm" : "EEE d MMM";
    for (Instant mark : clockMarks(step)) {
      double x = x(Duration.between(time.start(), mark));
      svg.line(x, TOP, x, BASE + 0.8, PALE);
      String anchor = x > RIGHT - 5 ? "end" : x < LEFT + 5 ? "start" : "middle";
      svg.text(x, BASE + 3.4, anchor, 2.3, "", time.format(mark, pattern));
    }
    svg.line(LEFT, BASE, RIGHT, BASE, THIN);
    svg.line(LEFT, TOP, LEFT, BASE, THIN);
  }

  /** The smallest step in hours that gives at most four marks. */
  private int hourStep() {
    double hours = seconds / 3600;
    int step = HOUR_STEPS[HOUR_STEPS.length - 1];
    for (int i = HOUR_STEPS.length - 1; i >= 0; i--) {
      step = hours / HOUR_STEPS[i] <= MOST_MARKS ? HOUR_STEPS[i] : step;
    }
    return step;
  }

  /** Round clock times of the shop; with steps of days, midnights. */
  private List<Instant> clockMarks(int step) {
    ZonedDateTime mark = time.start().atZone(time.zone()).with(LocalTime.MIDNIGHT);
    List<Instant> marks = new ArrayList<>();
    Instant end = time.start().plusSeconds((long) seconds);
    while (!mark.toInstant().isAfter(end)) {
      if (!mark.toInstant().isBefore(time.start())) {
        marks.add(mark.toInstant());
      }
      mark = step < 24 ? mark.plusHours(step) : mark.plusDays(step / 24);
    }
    return marks;
  }

  private void marks(Svg svg) {
    cure.at(Stage.FIXTURE).sure().ifPresent(d -> mark(svg, d, "fixture", x(d) + 0.6, "start"));
    cure.at(Stage.FULL).sure().ifPresent(d -> mark(svg, d, "full cure", fullLabel(d), "end"));
    advice.handBack().ifPresent(h -> handBack(svg, h));
  }

  /** Left of its line, but never over the first label. */
  private double fullLabel(Duration full) {
    return Math.max(x(full) - 0.6, LEFT + 22);
  }

  private void mark(Svg svg, Duration at, String label, double labelX, String anchor) {
    String dotted = "stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"0.6 0.6\"";
    svg.line(x(at), TOP - 3, x(at), BASE, dotted);
    svg.text(labelX, TOP - 1.1, anchor, 2.3, "", label);
  }

  private void handBack(Svg svg, HandBack handBack) {
    double x = x(handBack.after());
    svg.line(x, TOP - 3.4, x, BASE, "stroke=\"#000\" stroke-width=\"0.8\"");
    String text = "HAND BACK " + time.format(handBack.at(), "EEE d MMM HH:mm");
    double end = Math.min(RIGHT, Math.max(x + 0.4, LEFT + 38));
    svg.text(end, 2.6, "end", 2.6, "font-weight=\"bold\"", text);
  }

  private void legend(Svg svg) {
    double first = HEIGHT - 4;
    double second = HEIGHT - 0.8;
    svg.line(0.5, first - 0.8, 6, first - 0.8, SURE);
    String sure = "sure at " + Figures.wanted(advice.order().confidence());
    svg.text(7, first, "start", 2.2, "", sure + "; strength, % of full cure");
    svg.line(0.5, second - 0.8, 6, second - 0.8, TYPICAL);
    svg.text(7, second, "start", 2.2, "", "typical: half of such joints are later");
  }
}
