package annulus.advice;

import annulus.advice.Advice.Kind;
import annulus.advice.Advice.PlannedPrimer;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Policy;
import annulus.catalog.Primer;
import annulus.stock.Cabinet;
import annulus.stock.Draw;
import annulus.stock.Millilitres;
import annulus.stock.Need;
import annulus.stock.StockItem;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** What jobs want from a cabinet: the best class, and what of the cabinet would do instead. */
public final class StockNeeds {
  private final Advisor best;
  private final Policy stock;

  /**
   * @param best knows every class, in the cabinet or not
   * @param stock the numbers of the stock
   */
  public StockNeeds(Advisor best, Policy stock) {
    this.best = best;
    this.stock = stock;
  }

  /**
   * Something of which the lots in date hold less than a joint takes.
   *
   * @param item id of a class or primer
   * @param left what they hold
   * @param wanted what the joint takes
   */
  public record TooLittle(String item, Millilitres left, Millilitres wanted) {}

  /**
   * The answer with everything known, and the one with the cabinet alone.
   *
   * @param best from every class known
   * @param inStock from what is in date in the cabinet and enough for the joint; its decision may
   *     be a no
   * @param day the day the cabinet was judged on
   * @param draw what the answer from the cabinet takes out of it; empty when that uses no compound
   * @param tooLittle what would have done, were there enough of it
   */
  public record Preferred(
      Advice best,
      Advice inStock,
      LocalDate day,
      Optional<Need.Option> draw,
      List<TooLittle> tooLittle) {
    public Preferred {
      tooLittle = List.copyOf(tooLittle);
    }

    /** Whether the cabinet gives a yes, and holds enough; an order may insist on a primer. */
    public boolean cabinetWillDo() {
      return inStock.decision().kind().isYes()
          && tooLittle.stream().noneMatch(t -> draw.filter(d -> takes(d, t.item())).isPresent());
    }

    private static boolean takes(Need.Option draw, String item) {
      return draw.item().equals(item) || draw.primer().equals(Optional.of(item));
    }

    /** Whether what is in the cabinet is as good as the best. */
    public boolean sameChoice() {
      return best.decision().kind() == inStock.decision().kind()
          && id(best).equals(id(inStock))
          && best.decision().primer().equals(inStock.decision().primer());
    }

    private static Optional<String> id(Advice advice) {
      return advice.decision().compound().map(CompoundClass::id);
    }
  }

  /**
   * Both answers to an order.
   *
   * @param order the joint
   * @param today the cabinet is judged on the later of this and the day the joint is closed
   * @param cabinet what is there
   */
  public Preferred prefer(JointOrder order, LocalDate today, Cabinet cabinet) {
    LocalDate day = later(day(order), today);
    Map<String, Millilitres> left = new TreeMap<>(cabinet.inDate(day, StockItem.Kind.COMPOUND));
    left.putAll(cabinet.inDate(day, StockItem.Kind.PRIMER));
    List<TooLittle> tooLittle = new ArrayList<>();
    while (true) {
      Advice inStock = only(best.knowledge(), left.keySet(), left.keySet()).advise(order);
      Optional<Need.Option> draw = draw(inStock);
      Optional<TooLittle> missing = draw.flatMap(d -> missing(d, left));
      missing.filter(m -> !tooLittle.contains(m)).ifPresent(tooLittle::add);
      if (missing.isEmpty() || left.remove(missing.get().item()) == null) {
        return new Preferred(best.advise(order), inStock, day, draw, tooLittle);
      }
    }
  }

  private static Optional<TooLittle> missing(Need.Option draw, Map<String, Millilitres> left) {
    return missing(draw.item(), draw.amount(), left)
        .or(() -> draw.primer().flatMap(p -> missing(p, draw.primerAmount(), left)));
  }

  private static Optional<TooLittle> missing(
      String item, Millilitres wanted, Map<String, Millilitres> left) {
    Millilitres there = left.getOrDefault(item, Millilitres.NONE);
    return there.compareTo(wanted) < 0
        ? Optional.of(new TooLittle(item, there, wanted))
        : Optional.empty();
  }

  private static LocalDate day(JointOrder order) {
    return order.start().atZone(order.zone()).toLocalDate();
  }

  private static LocalDate later(LocalDate a, LocalDate b) {
    return a.isAfter(b) ? a : b;
  }

  /**
   * The need of one job.
   *
   * @param order the job
   * @param line its line in the list
   * @param today the cabinet is judged on the later of this and the day the joint is closed
   * @param cabinet what is there
   */
  public Need of(JointOrder order, long line, LocalDate today, Cabinet cabinet) {
    Advice advice = best.advise(order);
    LocalDate day = day(order);
    String answer = advice.decision().kind().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    if (advice.decision().kind() != Kind.USE_COMPOUND) {
      return new Need(order.job(), line, day, List.of(), answer);
    }
    List<Need.Option> options = new ArrayList<>();
    options.add(option(advice));
    LocalDate judged = later(day, today);
    Set<String> left = new TreeSet<>(cabinet.inDateClasses(judged));
    Set<String> primers = cabinet.inDatePrimers(judged);
    while (!left.isEmpty()) {
      Advice other = only(best.knowledge(), left, primers).advise(order);
      if (other.decision().kind() != Kind.USE_COMPOUND) {
        break;
      }
      Need.Option option = option(other);
      if (!options.contains(option)) {
        options.add(option);
      }
      left.remove(option.item());
    }
    return new Need(order.job(), line, day, options, answer);
  }

  /** What a joint draws as its answer has it; empty when it takes no compound. */
  public Optional<Need.Option> draw(Advice advice) {
    return advice.decision().kind() == Kind.USE_COMPOUND
        ? Optional.of(option(advice))
        : Optional.empty();
  }

  private Need.Option option(Advice advice) {
    CompoundClass compound = advice.decision().compound().orElseThrow();
    JointOrder order = advice.order();
    double diameter = advice.gap().gap().nominalMm();
    Millilitres amount = best.draw(order, advice.gap());
    Optional<PlannedPrimer> primer = advice.decision().primer().filter(p -> !isOn(order));
    int faces = primer.map(p -> (p.onBore() ? 1 : 0) + (p.onPart() ? 1 : 0)).orElse(0);
    return new Need.Option(
        compound.id(),
        amount,
        primer.map(p -> p.primer().id()),
        Draw.primer(diameter, order.engagementMm(), faces, stock.value("primer-ml-per-m2")),
        advice.handBack().map(Advice.HandBack::at),
        compound.strengthMPa().likely(),
        compound.permanence() != CompoundClass.Permanence.RELEASABLE);
  }

  /** Primer that is on the part already is drawn no more. */
  private static boolean isOn(JointOrder order) {
    return order.primer() instanceof JointOrder.PrimerPlan.Used used
        && used.age().compareTo(Duration.ZERO) > 0;
  }

  /**
   * An advisor that knows only what is in a cabinet.
   *
   * @param knowledge everything known
   * @param classes ids of the classes in the cabinet
   * @param primers ids of the primers in the cabinet
   */
  public static Advisor only(Knowledge knowledge, Set<String> classes, Set<String> primers) {
    Catalog all = knowledge.catalog();
    Map<String, CompoundClass> compounds = new LinkedHashMap<>(all.compounds());
    compounds.keySet().retainAll(classes);
    Map<String, Primer> inStock = new LinkedHashMap<>(all.primers());
    inStock.keySet().retainAll(primers);
    Catalog catalog =
        new Catalog(
            all.version(),
            all.materials(),
            all.finishes(),
            all.activities(),
            compounds,
            inStock,
            all.instruments(),
            all.release(),
            all.cautions(),
            all.ranks(),
            all.limitedUse(),
            all.policy());
    return new Advisor(knowledge.withCatalog(catalog));
  }
}
