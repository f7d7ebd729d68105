package annulus.measure;

import annulus.catalog.Instrument;
import annulus.measure.Remedy.MoreReadings;
import annulus.measure.Remedy.Outcome;
import annulus.measure.Remedy.Pair;
import annulus.measure.Remedy.State;
import annulus.quantity.Check;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Finds which instruments, or how many readings, would decide. */
public final class Decider {
  private static final double EVEN = 0.5;

  private final List<Instrument> candidates;
  private final FormLimits limits;

  /**
   * @param candidates the instruments to try, coarsest or cheapest first
   * @param limits the model's choices
   */
  public Decider(List<Instrument> candidates, FormLimits limits) {
    this.candidates = List.copyOf(candidates);
    this.limits = limits;
  }

  /**
   * What is to be decided.
   *
   * @param meanGapUm mean radial gap, µm
   * @param bore the bore as measured
   * @param part the part as measured
   * @param rangesUm the ranges one of which must be proved, radial µm
   * @param level probability wanted, 0.5 to 0.99999
   */
  public record Question(
      double meanGapUm,
      MeasuredDiameter bore,
      MeasuredDiameter part,
      List<Interval> rangesUm,
      double level) {
    public Question {
      Check.within("meanGapUm", meanGapUm, -5000, 5000, "µm");
      Budget.checkLevel(level);
      rangesUm = List.copyOf(rangesUm);
      if (rangesUm.isEmpty()) {
        throw new InvalidValue("rangesUm", "is empty", "at least one range");
      }
      requireSide("bore", bore, Side.BORE);
      requireSide("part", part, Side.PART);
    }

    private static void requireSide(String field, MeasuredDiameter diameter, Side side) {
      if (diameter.side() != side) {
        throw new InvalidValue(field, "was measured as " + diameter.side(), side.toString());
      }
    }
  }

  private record Best(Optional<Interval> range, double probability) {}

  /**
   * What would decide.
   *
   * <p>For each pair of instruments, and for the present pair with more readings, the budget is
   * forecast and the probability of the best range taken at the same mean gap. A new instrument is
   * given its own default repeatability, plus that part of the scatter seen which the present
   * instrument's error limit does not explain. Form between places and temperatures stay.
   *
   * @param question what is to be decided
   * @param readings readings per member to be taken with a new pair, 1 or more
   * @return the typed answer; gaps radial µm, probabilities 0 to 1
   *     <p>Valid for: planning only. The new readings will move the mean.
   *     <p>Source: JCGM 106:2012, 7.2; JCGM 100:2008, 4.2.3.
   */
  public Remedy remedyFor(Question question, int readings) {
    Check.within("readings", readings, 1, limits.mostReadings(), "");
    Forecast bore = new Forecast(question.bore(), limits);
    Forecast part = new Forecast(question.part(), limits);
    Best now = best(question, question.bore().budget(), question.part().budget());
    List<Pair> pairs = pairs(question, bore, part, readings);
    double most = now.probability();
    for (Pair p : pairs) {
      most = Math.max(most, p.probability());
    }
    MoreReadings more = moreReadings(question, bore, part, now.probability());
    if (more.outcome() == Outcome.REACHES) {
      most = Math.max(most, more.probability());
    }
    List<Pair> reaching = pairs.stream().filter(p -> p.probability() >= question.level()).toList();
    double distance = edgeDistanceUm(question);
    boolean possible = !reaching.isEmpty() || more.outcome() == Outcome.REACHES;
    State state = state(now.probability() >= question.level(), distance, possible);
    return new Remedy(state, now.probability(), now.range(), distance, reaching, most, more);
  }

  private static State state(boolean decided, double distanceUm, boolean possible) {
    if (decided) {
      return State.DECIDED;
    }
    if (distanceUm < 0) {
      return State.OUTSIDE_ALL_RANGES;
    }
    return possible ? State.CAN_BE_DECIDED : State.TOO_NEAR_AN_EDGE;
  }

  private record Ranked(Pair pair, int rank) {}

  /** All pairs but the present one; coarse pairs first, by the sum of their places in the list. */
  private List<Pair> pairs(Question q, Forecast bore, Forecast part, int readings) {
    List<Ranked> found = new ArrayList<>();
    List<Optional<Budget>> bores = forecasts(bore, readings);
    List<Optional<Budget>> parts = forecasts(part, readings);
    for (int i = 0; i < candidates.size(); i++) {
      for (int j = 0; j < candidates.size() && bores.get(i).isPresent(); j++) {
        if (parts.get(j).isEmpty() || isPresent(q, candidates.get(i), candidates.get(j))) {
          continue;
        }
        Best best = best(q, bores.get(i).get(), parts.get(j).get());
        if (best.range().isPresent()) {
          Pair pair =
              new Pair(
                  candidates.get(i), candidates.get(j), best.range().get(), best.probability());
          found.add(new Ranked(pair, i + j));
        }
      }
    }
    found.sort(Comparator.comparingInt(Ranked::rank)); // stable
    return found.stream().map(Ranked::pair).toList();
  }

  private List<Optional<Budget>> forecasts(Forecast forecast, int readings) {
    return candidates.stream().map(c -> forecast.with(c, readings)).toList();
  }

  private static boolean isPresent(Question q, Instrument bore, Instrument part) {
    return bore.id().equals(q.bore().instrument().id())
        && part.id().equals(q.part().instrument().id());
  }

  private MoreReadings moreReadings(Question q, Forecast bore, Forecast part, double now) {
    if (now >= q.level()) {
      return new MoreReadings(Outcome.NOT_NEEDED, OptionalInt.empty(), now);
    }
    double ceiling = presentPair(q, bore, part, Double.POSITIVE_INFINITY);
    if (ceiling < q.level()) {
      return new MoreReadings(Outcome.INSTRUMENT_ERROR_FORBIDS, OptionalInt.empty(), ceiling);
    }
    int fewest = Math.min(q.bore().readings().size(), q.part().readings().size());
    for (int n = fewest + 1; n <= limits.mostReadings(); n++) {
      double probability = presentPair(q, bore, part, n);
      if (probability >= q.level()) {
        return new MoreReadings(Outcome.REACHES, OptionalInt.of(n), probability);
      }
    }
    return new MoreReadings(Outcome.TOO_MANY, OptionalInt.empty(), ceiling);
  }

  private static double presentPair(Question q, Forecast bore, Forecast part, double readings) {
    Budget boreBudget = bore.with(q.bore().instrument(), readings).orElse(q.bore().budget());
    Budget partBudget = part.with(q.part().instrument(), readings).orElse(q.part().budget());
    return best(q, boreBudget, partBudget).probability();
  }

  private static Best best(Question q, Budget bore, Budget part) {
    Belief belief = Budget.beliefInGap(q.meanGapUm(), bore, part);
    Best around = best(q, belief, true);
    return around.probability() > EVEN ? around : best(q, belief, false);
  }

  /** A range that leaves the mean out has less than even odds, and need not always be tried. */
  private static Best best(Question q, Belief belief, boolean aroundMeanOnly) {
    Interval best = null;
    double most = 0;
    List<Interval> ranges = q.rangesUm();
    for (int i = 0; i < ranges.size(); i++) { // quicker than an iterator; tried for many pairs
      Interval r = ranges.get(i);
      boolean around = r.low() <= q.meanGapUm() && q.meanGapUm() <= r.high();
      double p = around || !aroundMeanOnly ? belief.within(r.low(), r.high()) : 0;
      if (p > most) {
        best = r;
        most = p;
      }
    }
    return new Best(Optional.ofNullable(best), most);
  }

  private static double edgeDistanceUm(Question q) {
    double deepest = Double.NEGATIVE_INFINITY;
    for (Interval r : q.rangesUm()) {
      double inside = Math.min(q.meanGapUm() - r.low(), r.high() - q.meanGapUm());
      deepest = Math.max(deepest, inside);
    }
    return deepest;
  }
}
