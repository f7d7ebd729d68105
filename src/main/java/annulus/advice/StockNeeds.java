package annulus.advice;

import annulus.advice.Advice.Kind;
import annulus.advice.Advice.PlannedPrimer;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Policy;
import annulus.catalog.Primer;
import annulus.select.RuleBook;
import annulus.stock.Draw;
import annulus.stock.Millilitres;
import annulus.stock.Need;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What jobs want from a cabinet: the best class, and what of the cabinet would do instead. */
public final class StockNeeds {
  private final Advisor best;
  private final RuleBook rules;
  private final Policy stock;

  /**
   * @param catalog everything known
   * @param rules what is known about choosing
   * @param stock the numbers of the stock
   */
  public StockNeeds(Catalog catalog, RuleBook rules, Policy stock) {
    this.best = new Advisor(catalog, rules);
    this.rules = rules;
    this.stock = stock;
  }

  /**
   * The need of one job.
   *
   * @param order the job
   * @param line its line in the list
   * @param classes ids of the classes in the cabinet
   * @param primers ids of the primers in the cabinet
   */
  public Need of(JointOrder order, long line, Set<String> classes, Set<String> primers) {
    Advice advice = best.advise(order);
    var day = order.start().atZone(order.zone()).toLocalDate();
    String answer = advice.decision().kind().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    if (advice.decision().kind() != Kind.USE_COMPOUND) {
      return new Need(order.job(), line, day, List.of(), answer);
    }
    List<Need.Option> options = new ArrayList<>();
    options.add(option(advice));
    Set<String> left = new TreeSet<>(classes);
    while (!left.isEmpty()) {
      Advice other = new Advisor(only(left, primers), rules).advise(order);
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

  private Need.Option option(Advice advice) {
    CompoundClass compound = advice.decision().compound().orElseThrow();
    JointOrder order = advice.order();
    double diameter = advice.gap().gap().nominalMm();
    Millilitres amount =
        Draw.compound(
            diameter,
            advice.gap().gap().upperUm(order.confidence()),
            order.engagementMm(),
            best.catalog().policy().value("waste-factor"),
            stock.value("least-draw-ml"));
    Optional<PlannedPrimer> primer = advice.decision().primer().filter(p -> !isOn(order));
    int faces = primer.map(p -> (p.onBore() ? 1 : 0) + (p.onPart() ? 1 : 0)).orElse(0);
    return new Need.Option(
        compound.id(),
        amount,
        primer.map(p -> p.primer().id()),
        Draw.primer(diameter, order.engagementMm(), faces, stock.value("primer-ml-per-m2")),
        advice.handBack().map(Advice.HandBack::at),
        compound.strengthMPa().likely());
  }

  /** Primer that is on the part already is drawn no more. */
  private static boolean isOn(JointOrder order) {
    return order.primer() instanceof JointOrder.PrimerPlan.Used used
        && used.age().compareTo(Duration.ZERO) > 0;
  }

  private Catalog only(Set<String> classes, Set<String> primers) {
    Catalog all = best.catalog();
    Map<String, CompoundClass> compounds = new LinkedHashMap<>(all.compounds());
    compounds.keySet().retainAll(classes);
    Map<String, Primer> inStock = new LinkedHashMap<>(all.primers());
    inStock.keySet().retainAll(primers);
    return new Catalog(
        all.version(),
        all.materials(),
        all.finishes(),
        all.activities(),
        compounds,
        inStock,
        all.instruments(),
        all.release(),
        all.cautions(),
        all.policy());
  }
}
