package annulus.measure;

import annulus.catalog.Instrument;
import annulus.catalog.Instrument.Span;
import annulus.measure.ErrorSources.Single;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The budget that a member would have with another instrument or with more readings. */
final class Forecast {
  private static final Line SCATTER =
      Line.of(
          ErrorSources.SCATTER,
          "scatter of the member",
          () -> "scatter seen beyond what the present instrument's error limit explains");

  private final MeasuredDiameter now;
  private final Places places;
  private final FormLimits limits;

  Forecast(MeasuredDiameter now, FormLimits limits) {
    this.now = now;
    this.places = Places.of(now.readings(), now.span().contacts());
    this.limits = limits;
  }

  /**
   * @param candidate the instrument to take
   * @param readings readings to take in all; infinite for what no number of readings removes
   * @return the budget of the mean, or empty when the instrument cannot measure this
   */
  Optional<Budget> with(Instrument candidate, double readings) {
    if (candidate.id().equals(now.instrument().id())) {
      double n = Math.max(readings, now.readings().size());
      return Optional.of(budget(now.span(), List.of(averaged(presentNoise(), n)), n));
    }
    return candidate
        .spanFor(now.side().use(), now.meanMm())
        .map(span -> budget(span, newNoise(span, readings), readings));
  }

  private List<Component> newNoise(Span span, double n) {
    List<Component> lines = new ArrayList<>();
    lines.add(ErrorSources.unseen(span, limits).asComponent(1 / Math.sqrt(n)));
    carriedNoise().ifPresent(s -> lines.add(averaged(s, n)));
    return lines;
  }

  private Component averaged(Single noise, double n) {
    double freedom = Math.max(noise.degreesOfFreedom(), n - places.all().size());
    double um = noise.um() / Math.sqrt(n);
    return new Component(noise.line(), um, freedom, noise.shape());
  }

  private Budget budget(Span span, List<Component> noise, double n) {
    List<Component> lines = new ArrayList<>(noise);
    if (places.all().size() > 1) {
      lines.add(ErrorSources.form(places.betweenUm(), Math.max(n, places.all().size())));
    }
    lines.addAll(ErrorSources.instrument(span, now.meanMm()));
    now.budget().components().stream()
        .filter(c -> ErrorSources.OF_THE_MEMBER.contains(c.id()))
        .forEach(lines::add);
    return new Budget(lines);
  }

  private Single presentNoise() {
    return ErrorSources.single(places, false, now.span(), limits);
  }

  /** Scatter beyond what the present instrument explains belongs to the member and stays. */
  private Optional<Single> carriedNoise() {
    Single noise = presentNoise();
    double least = ErrorSources.leastRepeatabilityUm(now.span(), limits);
    double limit = now.span().mpeUm();
    double excess = noise.um() * noise.um() - least * least - limit * limit / 3;
    return excess > 0
        ? Optional.of(
            new Single(SCATTER, Math.sqrt(excess), noise.degreesOfFreedom(), noise.shape()))
        : Optional.empty();
  }
}
