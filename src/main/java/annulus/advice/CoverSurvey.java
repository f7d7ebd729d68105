package annulus.advice;

import annulus.advice.JointOrder.CurePlace;
import annulus.advice.JointOrder.GivenGap;
import annulus.advice.JointOrder.PrimerPlan;
import annulus.advice.JointOrder.Surroundings;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass.Permanence;
import annulus.catalog.Consequence;
import annulus.catalog.Material;
import annulus.catalog.Policy;
import annulus.catalog.Primer;
import annulus.measure.Side;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import annulus.select.ClassVerdict;
import annulus.stock.CoverAxes;
import annulus.stock.CoverCell;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/** Puts the joints of the coverage picture to the rule book. */
public final class CoverSurvey {
  private final Advisor advisor;
  private final Catalog catalog;
  private final Policy stock;

  private CoverSurvey(Knowledge knowledge, Policy stock) {
    this.advisor = new Advisor(knowledge);
    this.catalog = knowledge.catalog();
    this.stock = stock;
  }

  /**
   * All kinds of joint with what would serve them.
   *
   * @param knowledge everything known
   * @param stock the numbers of the stock
   * @param axes the joints
   */
  public static List<CoverCell> cells(Knowledge knowledge, Policy stock, CoverAxes axes) {
    CoverSurvey survey = new CoverSurvey(knowledge, stock);
    List<CoverCell> cells = new ArrayList<>();
    for (boolean releasable : new boolean[] {true, false}) {
      for (CoverAxes.Service service : axes.services()) {
        for (CoverAxes.Surfaces surfaces : axes.surfaces()) {
          for (CoverAxes.Gaps gaps : axes.gaps()) {
            cells.add(survey.cell(gaps, surfaces, service, releasable));
          }
        }
      }
    }
    return cells;
  }

  private CoverCell cell(
      CoverAxes.Gaps gaps,
      CoverAxes.Surfaces surfaces,
      CoverAxes.Service service,
      boolean releasable) {
    List<Set<String>> alternatives = new ArrayList<>();
    for (String id : usable(gaps, surfaces, service, releasable, new PrimerPlan.None())) {
      alternatives.add(Set.of(id));
    }
    for (Primer primer : catalog.primers().values()) {
      PrimerPlan plan = new PrimerPlan.Used(primer, true, true, Duration.ZERO);
      for (String id : usable(gaps, surfaces, service, releasable, plan)) {
        if (!alternatives.contains(Set.of(id))) {
          alternatives.add(Set.of(id, primer.id()));
        }
      }
    }
    return new CoverCell(gaps.id(), surfaces.id(), service.id(), releasable, alternatives);
  }

  /** Classes of the wanted permanence that do at both ends of the stretch. */
  private Set<String> usable(
      CoverAxes.Gaps gaps,
      CoverAxes.Surfaces surfaces,
      CoverAxes.Service service,
      boolean releasable,
      PrimerPlan primer) {
    double inset = stock.value("cover-gap-inset-um");
    Interval um = gaps.radialUm();
    Set<String> both =
        usable(order(um.low() + inset, surfaces, service, releasable, primer), releasable);
    if (!both.isEmpty()) {
      both.retainAll(
          usable(order(um.high() - inset, surfaces, service, releasable, primer), releasable));
    }
    return both;
  }

  private Set<String> usable(JointOrder order, boolean releasable) {
    Permanence wanted = releasable ? Permanence.RELEASABLE : Permanence.LASTING;
    Set<String> ids = new TreeSet<>();
    for (ClassVerdict verdict : advisor.advise(order).table()) {
      if (verdict.usable() && verdict.compound().permanence() == wanted) {
        ids.add(verdict.compound().id());
      }
    }
    return ids;
  }

  private JointOrder order(
      double gapUm,
      CoverAxes.Surfaces surfaces,
      CoverAxes.Service service,
      boolean releasable,
      PrimerPlan primer) {
    double room = stock.value("cover-cure-c");
    return new JointOrder(
        "",
        "",
        member(Side.BORE, surfaces.bore(), room),
        member(Side.PART, surfaces.part(), room),
        Optional.of(
            new GivenGap(
                stock.value("cover-diameter-mm"), gapUm, stock.value("cover-gap-plus-minus-um"))),
        stock.value("cover-engagement-mm"),
        CurePlace.constant(room, 0, "as planned"),
        primer,
        new Interval(stock.value("cover-service-low-c"), service.highC()),
        Optional.empty(),
        Consequence.INJURY,
        new Surroundings(releasable, false, false, false),
        Instant.EPOCH,
        ZoneOffset.UTC,
        catalog.policy().value("wanted-confidence"),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  private Member member(Side side, String id, double room) {
    Material material = catalog.materials().get(id);
    if (material == null) {
      throw new InvalidValue(
          side == Side.BORE ? "bore" : "part", id + " is not a material", "an id of materials.csv");
    }
    return new Member(
        side,
        "",
        material,
        catalog.finishes().get(material.isMetal() ? "as-machined" : "moulded"),
        List.of(),
        Optional.empty(),
        room,
        0,
        OptionalDouble.empty(),
        Member.FaceState.CLEAN,
        OptionalDouble.empty());
  }
}
