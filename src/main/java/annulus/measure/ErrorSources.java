package annulus.measure;

import annulus.catalog.Instrument.Span;
import annulus.measure.Component.Shape;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;

/** Makes the lines of a diameter's budget. All figures µm on the diameter. */
final class ErrorSources {
  static final String REPEATABILITY = "repeatability";
  static final String SCATTER = "scatter";
  static final String FORM = "form";
  static final String UNPLACED = "unplaced";
  static final String INSTRUMENT = "instrument";
  static final String RESOLUTION = "resolution";
  static final String JAWS = "jaws";
  static final String TEMPERATURE = "temperature";
  static final String EXPANSION = "expansion";
  static final String SCALE_TEMPERATURE = "scale-temperature";

  /** Lines that stay when another instrument is taken. */
  static final Set<String> OF_THE_MEMBER = Set.of(TEMPERATURE, EXPANSION, SCALE_TEMPERATURE);

  /** Repeatability of one reading. */
  record Single(Line line, double um, double degreesOfFreedom, Shape shape) {
    Component asComponent(double factor) {
      return new Component(line, um * factor, degreesOfFreedom, shape);
    }
  }

  private ErrorSources() {}

  /**
   * The scatter seen in the same place, but not less than the default: a scatter below the
   * resolution cannot be seen.
   */
  static Single single(Places places, boolean knownAnglesOnly, Span span, FormLimits limits) {
    double seen = places.pooledUm(knownAnglesOnly);
    int freedom = places.pooledFreedom(knownAnglesOnly);
    double least = leastRepeatabilityUm(span, limits);
    if (seen > least) {
      Line line =
          Line.of(
              REPEATABILITY,
              "repeatability",
              () -> "scatter of readings at the same place, " + freedom + " degrees of freedom");
      return new Single(line, seen, freedom, Shape.T);
    }
    return unseen(span, limits);
  }

  static double leastRepeatabilityUm(Span span, FormLimits limits) {
    return limits.singleReadingSteps() * span.resolutionUm() / Math.sqrt(3);
  }

  static Single unseen(Span span, FormLimits limits) {
    Line line =
        Line.of(
            REPEATABILITY,
            "repeatability",
            () ->
                "no larger scatter seen: ±"
                    + Numbers.plain(limits.singleReadingSteps())
                    + " resolution step assumed");
    return new Single(
        line, leastRepeatabilityUm(span, limits), Double.POSITIVE_INFINITY, Shape.RECTANGULAR);
  }

  /**
   * Between-place scatter as doubt about the mean. Form is bounded by what was seen, not
   * bell-shaped, so no t-factor is put on it.
   */
  static Component form(double betweenUm, double places) {
    return new Component(
        FORM,
        "form between places",
        betweenUm / Math.sqrt(places),
        Double.POSITIVE_INFINITY,
        Shape.NORMAL,
        "few places stand for the whole face; spread between places over the root of their number");
  }

  static List<Component> instrument(Span span, double diameterMm) {
    List<Component> lines = new ArrayList<>();
    lines.add(Component.rectangular(limitLine(span), span.mpeUm()));
    lines.add(Component.rectangular(resolutionLine(span), span.resolutionUm() / 2));
    double jaws = jawsHalfUm(span, diameterMm);
    if (jaws > 0) {
      lines.add(Component.rectangular(jawsLine(span), jaws));
    }
    return lines;
  }

  private static Line limitLine(Span span) {
    return Line.of(
        INSTRUMENT,
        "instrument error limit",
        () -> "maximum permissible error ±" + Numbers.plain(span.mpeUm()) + " µm (JCGM 100 4.3.7)");
  }

  private static Line resolutionLine(Span span) {
    return Line.of(
        RESOLUTION,
        "resolution",
        () -> "step of " + Numbers.plain(span.resolutionUm()) + " µm (JCGM 100 F.2.2.1)");
  }

  private static Line jawsLine(Span span) {
    return Line.of(
        JAWS,
        "flat jaws in a round bore",
        () ->
            "flats between 0 and "
                + Numbers.plain(span.jawFlatMm())
                + " mm wide; half the possible error was added");
  }

  /** Half of the most that flat inside jaws can read small; 0 for other contacts and outside. */
  static double jawsHalfUm(Span span, double diameterMm) {
    boolean inside = span.use() == Side.BORE.use();
    return inside ? 500 * Jaws.readSmallMm(diameterMm, span.jawFlatMm()) : 0;
  }

  static List<Component> thermal(Thermal t, double diameterMm, FormLimits limits) {
    List<Component> lines = new ArrayList<>();
    double umPerK1e6 = diameterMm * 1e-3;
    addIfAny(
        lines,
        TEMPERATURE,
        "member's temperature",
        umPerK1e6 * t.steepest() * t.halfWidthC(),
        () -> "temperature known to ±" + Numbers.plain(t.halfWidthC()) + " °C");
    addIfAny(
        lines,
        EXPANSION,
        "member's expansion coefficient",
        umPerK1e6 * t.halfWidthPerK1e6() * t.offsetC(),
        () ->
            "range of the coefficient over " + Numbers.plain(t.offsetC()) + " °C away from 20 °C");
    addIfAny(
        lines,
        SCALE_TEMPERATURE,
        "instrument's own temperature",
        umPerK1e6 * limits.instrumentExpansionPerK1e6() * t.offsetC(),
        () -> "scale taken as true at 20 °C; it may have been as warm or cold as the member");
    return lines;
  }

  private static void addIfAny(
      List<Component> lines, String id, String name, double halfWidthUm, Supplier<String> why) {
    if (halfWidthUm > 0) {
      lines.add(Component.rectangular(Line.of(id, name, why), halfWidthUm));
    }
  }

  /**
   * The doubt in the largest and the smallest of readings without angles: if their differences are
   * form, the whole spread either way; if they are noise, their scatter, seen with few degrees of
   * freedom. The larger figure and the fewer degrees of freedom are kept, in one line, so that no
   * range is surer than under either.
   *
   * @param spreadUm largest less smallest reading, µm, above 0
   * @param known repeatability of the readings with angles
   */
  static List<Component> unplaced(Places places, double spreadUm, Single known) {
    Places.Scatter noise = places.scatterAtOneAngle();
    Component form = asForm(spreadUm);
    boolean knownIsSeen = Double.isFinite(known.degreesOfFreedom());
    if (noise.um() <= known.um() && !knownIsSeen) {
      return List.of(known.asComponent(1), form);
    }
    double asForm = Math.sqrt(known.um() * known.um() + form.varianceUm2());
    int freedom = (int) Math.min(noise.freedom(), known.degreesOfFreedom());
    return List.of(
        new Component(
            unplacedLine(
                () ->
                    "form or noise: without angles nobody can tell; the larger of the whole spread"
                        + " either way and the scatter, with the scatter's "
                        + freedom
                        + (freedom == 1 ? " degree" : " degrees")
                        + " of freedom"),
            Math.max(noise.um(), asForm),
            freedom,
            Shape.T));
  }

  private static Component asForm(double spreadUm) {
    return Component.rectangular(
        unplacedLine(
            () -> "form or noise: without angles nobody can tell, so the whole spread either way"),
        spreadUm);
  }

  private static Line unplacedLine(Supplier<String> why) {
    return Line.of(UNPLACED, "readings without angles", why);
  }
}
