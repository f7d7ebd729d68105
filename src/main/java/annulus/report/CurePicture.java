package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.StageTime;
import annulus.advice.PromiseDesk.Told;
import annulus.catalog.Stage;
import annulus.cure.TemperatureHistory;
import annulus.quantity.Numbers;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Temperature and cure of a joint against the shop's clock as an SVG picture: black on white, told
 * apart by line and word, with fixture, hand-back, promise and now marked.
 */
public final class CurePicture {
  private static final double LEFT = 70;
  private static final double RIGHT = 870;
  private static final double MARKS_TOP = 60;
  private static final double CURE_TOP = 130;
  private static final double CURE_BOTTOM = 330;
  private static final double HEAT_TOP = 370;
  private static final double HEAT_BOTTOM = 500;
  private static final int POINTS = 240;

  private final Told told;
  private final Optional<Instant> promise;
  private final ZoneId zone;
  private final Instant start;
  private final Instant end;
  private final StringBuilder svg = new StringBuilder();

  private CurePicture(Told told, Optional<Instant> promise, ZoneId zone, Optional<Instant> now) {
    this.told = told;
    this.promise = promise;
    this.zone = zone;
    this.start = told.advice().order().start();
    this.end = end(now);
  }

  /**
   * The picture, or empty when there is no cure to show.
   *
   * @param told the answer
   * @param promise what the customer was told, or can be told now
   * @param zone the shop's zone
   * @param now marked where it lies in the picture
   */
  public static Optional<String> of(
      Told told, Optional<Instant> promise, ZoneId zone, Optional<Instant> now) {
    if (told.advice().cure().isEmpty() || told.advice().cure().get().curve().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new CurePicture(told, promise, zone, now).draw(now));
  }

  /** A marked time. */
  private record Mark(Instant at, String word, String dash) {}

  private Instant end(Optional<Instant> now) {
    List<Advice.CurvePoint> curve = told.advice().cure().orElseThrow().curve();
    Instant last = start.plus(curve.get(curve.size() - 1).after());
    Optional<Instant> latest =
        Stream.concat(promise.stream(), told.ready().stream()).max(Comparator.naturalOrder());
    if (latest.isPresent()) {
      last = latest.get();
    }
    Instant shown = now.filter(n -> n.isAfter(start)).orElse(start);
    Instant later = shown.isAfter(last) ? shown : last;
    long seconds = Math.max(3600, Duration.between(start, later).toSeconds());
    return start.plusSeconds(seconds + seconds / 12);
  }

  private String draw(Optional<Instant> now) {
    svg.append(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 900 560\" width=\"900\""
            + " height=\"560\" role=\"img\" "
            + Svg.FONT
            + " font-size=\"14\" fill=\"#000\" stroke=\"none\">\n");
    svg.append("<title>").append(Html.text(title())).append("</title>\n");
    svg.append("<rect width=\"900\" height=\"560\" fill=\"#fff\"/>\n");
    text(LEFT, 26, "start", 18, title());
    days();
    cure();
    heat();
    marks(now);
    return svg.append("</svg>\n").toString();
  }

  private String title() {
    String job = told.advice().order().job();
    String name = job.isBlank() ? "Joint" : "Job " + TextLines.printable(job);
    return promise
        .map(p -> name + ": promise " + new ShopTime(zone, start).format(p, "EEE d MMMM, HH:mm"))
        .orElse(name + ": nothing promised");
  }

  private double x(Instant at) {
    double share = Duration.between(start, at).toSeconds() / (double) total();
    return LEFT + (RIGHT - LEFT) * share;
  }

  private long total() {
    return Duration.between(start, end).toSeconds();
  }

  /** Midnights as light lines with the day's name, clock hours where there is room. */
  private void days() {
    ShopTime clock = new ShopTime(zone, start);
    double perDay = (RIGHT - LEFT) * 86_400 / total();
    int every = Math.max(1, (int) Math.ceil(70 / perDay));
    LocalDate date = start.atZone(zone).toLocalDate();
    int number = 0;
    for (LocalDate d = date; !d.atStartOfDay(zone).toInstant().isAfter(end); d = d.plusDays(1)) {
      Instant midnight = d.atStartOfDay(zone).toInstant();
      boolean inside = !midnight.isBefore(start);
      if (inside) {
        line(x(midnight), CURE_TOP, x(midnight), HEAT_BOTTOM, "#999", 1, "");
      }
      double at = inside ? x(midnight) : LEFT;
      boolean room = inside || x(d.plusDays(1).atStartOfDay(zone).toInstant()) > LEFT + 90;
      if (room && number++ % every == 0 && at < RIGHT - 60) {
        text(
            at + 4,
            HEAT_BOTTOM + 38,
            "start",
            14,
            clock.format(inside ? midnight : start, "EEE d MMM"));
      }
      hours(d, perDay);
    }
  }

  private void hours(LocalDate date, double perDay) {
    int step = perDay > 420 ? 3 : perDay > 200 ? 6 : perDay > 100 ? 12 : 0;
    for (int hour = 0; step > 0 && hour < 24; hour += step) {
      Instant at = date.atTime(hour, 0).atZone(zone).toInstant();
      if (!at.isBefore(start) && !at.isAfter(end)) {
        line(x(at), HEAT_BOTTOM, x(at), HEAT_BOTTOM + 6, "#000", 1, "");
        text(x(at), HEAT_BOTTOM + 20, "middle", 12, (hour < 10 ? "0" : "") + hour + ":00");
      }
    }
  }

  private void cure() {
    frame(CURE_TOP, CURE_BOTTOM);
    for (int percent = 0; percent <= 100; percent += 25) {
      double y = CURE_BOTTOM - (CURE_BOTTOM - CURE_TOP) * percent / 100;
      line(LEFT, y, RIGHT, y, "#ccc", 1, "");
      text(LEFT - 6, y + 5, "end", 12, percent + " %");
    }
    List<Advice.CurvePoint> curve = told.advice().cure().orElseThrow().curve();
    StringBuilder typical = new StringBuilder();
    StringBuilder sure = new StringBuilder();
    for (Advice.CurvePoint point : curve) {
      Instant at = start.plus(point.after());
      if (!at.isAfter(end)) {
        point(typical, x(at), cureY(point.typical()));
        point(sure, x(at), cureY(point.sure()));
      }
    }
    Advice.CurvePoint last = curve.get(curve.size() - 1);
    if (start.plus(last.after()).isBefore(end)) {
      point(typical, RIGHT, cureY(last.typical()));
      point(sure, RIGHT, cureY(last.sure()));
    }
    path(typical, 2, "6 4");
    path(sure, 3.5, "");
    text(LEFT, CURE_TOP - 10, "start", 13, "Strength: thick line for sure, dashed likely");
  }

  private static double cureY(double fraction) {
    return CURE_BOTTOM - (CURE_BOTTOM - CURE_TOP) * fraction;
  }

  private void heat() {
    TemperatureHistory history = told.advice().order().cure().history();
    double[] celsius = new double[POINTS + 1];
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i <= POINTS; i++) {
      celsius[i] = history.celsiusAt(total() * (double) i / POINTS);
      low = Math.min(low, celsius[i]);
      high = Math.max(high, celsius[i]);
    }
    double bottom = Math.floor((low - 2) / 5) * 5;
    double top = Math.max(bottom + 10, Math.ceil((high + 2) / 5) * 5);
    frame(HEAT_TOP, HEAT_BOTTOM);
    double step = top - bottom > 25 ? 10 : 5;
    for (double c = bottom; c <= top; c += step) {
      double y = heatY(c, bottom, top);
      line(LEFT, y, RIGHT, y, "#ccc", 1, "");
      text(LEFT - 6, y + 5, "end", 12, Numbers.plain(c) + " °C");
    }
    minimum(bottom, top);
    StringBuilder line = new StringBuilder();
    for (int i = 0; i <= POINTS; i++) {
      point(line, LEFT + (RIGHT - LEFT) * i / POINTS, heatY(celsius[i], bottom, top));
    }
    path(line, 2.5, "");
    text(
        LEFT,
        HEAT_TOP - 10,
        "start",
        13,
        "Temperature, " + told.advice().order().cure().describedAs());
  }

  private void minimum(double bottom, double top) {
    double least = told.advice().decision().compound().orElseThrow().cure().minimumC();
    if (least > bottom && least < top) {
      double y = heatY(least, bottom, top);
      line(LEFT, y, RIGHT, y, "#000", 1, "2 3");
      text(RIGHT - 4, y - 4, "end", 12, "no cure below");
    }
  }

  private static double heatY(double celsius, double bottom, double top) {
    return HEAT_BOTTOM - (HEAT_BOTTOM - HEAT_TOP) * (celsius - bottom) / (top - bottom);
  }

  /** Marks in order of time; their words on three rows so that near ones do not meet. */
  private void marks(Optional<Instant> now) {
    List<Mark> marks = new ArrayList<>();
    StageTime fixture = told.advice().cure().orElseThrow().at(Stage.FIXTURE);
    fixture.sure().ifPresent(d -> marks.add(new Mark(start.plus(d), "fixture", "3 3")));
    told.ready().ifPresent(r -> marks.add(new Mark(r, "hand-back", "8 4")));
    promise.ifPresent(p -> marks.add(new Mark(p, "promise", "")));
    now.ifPresent(n -> marks.add(new Mark(n, "now", "1 3")));
    marks.sort(Comparator.comparing(Mark::at));
    ShopTime clock = new ShopTime(zone, start);
    int row = 0;
    for (Mark mark : marks) {
      if (mark.at().isBefore(start) || mark.at().isAfter(end)) {
        continue;
      }
      double x = x(mark.at());
      double y = MARKS_TOP + 22 * (row++ % 3);
      boolean leftOf = x > (LEFT + RIGHT) / 2;
      line(x, y - 10, x, HEAT_BOTTOM, "#000", mark.dash().isEmpty() ? 2.5 : 1.5, mark.dash());
      text(
          leftOf ? x - 5 : x + 5,
          y,
          leftOf ? "end" : "start",
          14,
          mark.word() + " " + clock.format(mark.at(), "EEE HH:mm"));
    }
  }

  private void frame(double top, double bottom) {
    line(LEFT, top, LEFT, bottom, "#000", 1.5, "");
    line(LEFT, bottom, RIGHT, bottom, "#000", 1.5, "");
  }

  private static void point(StringBuilder path, double x, double y) {
    number(number(path, path.length() == 0 ? "M" : " L", x), " ", y);
  }

  private void path(StringBuilder path, double width, String dash) {
    if (path.length() == 0) {
      return;
    }
    svg.append("<path fill=\"none\" stroke=\"#000\" stroke-linejoin=\"round\"");
    number(svg, " stroke-width=\"", width).append('"');
    dash(dash);
    svg.append(" d=\"").append(path).append("\"/>\n");
  }

  private void line(
      double x1, double y1, double x2, double y2, String colour, double width, String dash) {
    number(number(svg, "<line x1=\"", x1), "\" y1=\"", y1);
    number(number(svg, "\" x2=\"", x2), "\" y2=\"", y2);
    number(svg.append("\" stroke=\"").append(colour), "\" stroke-width=\"", width).append('"');
    dash(dash);
    svg.append("/>\n");
  }

  private void dash(String dash) {
    if (!dash.isEmpty()) {
      svg.append(" stroke-dasharray=\"").append(dash).append('"');
    }
  }

  private void text(double x, double y, String anchor, int size, String words) {
    number(number(svg, "<text x=\"", x), "\" y=\"", y);
    svg.append("\" text-anchor=\"").append(anchor).append("\" font-size=\"").append(size);
    svg.append("\" paint-order=\"stroke\" stroke=\"#fff\" stroke-width=\"4\">");
    svg.append(Html.text(TextLines.printable(words))).append("</text>\n");
  }

  private static StringBuilder number(StringBuilder to, String before, double value) {
    Figures.appendTrimmed(to.append(before), value, 1);
    return to;
  }
}
