package annulus.advice;

import annulus.advice.Advice.GapFinding;
import annulus.advice.Advice.PlannedPrimer;
import annulus.catalog.Activity;
import annulus.catalog.CompoundClass;
import annulus.catalog.Material;
import annulus.fit.Gap;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Note;
import annulus.select.Fact;
import annulus.select.Facts;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Puts what is known of a joint and of a class into the words of the rules. */
final class JointFacts {
  private final JointOrder order;
  private final GapFinding found;
  private final Optional<PressReport> press;
  private final FitBelief fit;
  private final List<Covered> covered = new ArrayList<>();
  private final Facts joint;

  JointFacts(JointOrder order, GapFinding found, FitBelief fit, Optional<PressReport> press) {
    this.order = order;
    this.found = found;
    this.fit = fit;
    this.press = press;
    this.joint = withoutPrimer();
  }

  /** Facts of the joint with this primer. */
  Facts joint(Optional<PlannedPrimer> primer) {
    boolean bore = primer.isPresent() && primer.get().onBore();
    boolean part = primer.isPresent() && primer.get().onPart();
    boolean boreInert = order.bore().activity() == Activity.Level.INERT;
    boolean partInert = order.part().activity() == Activity.Level.INERT;
    Facts.Builder facts = joint.and();
    facts
        .number(Fact.PRIMED_FACES, (bore ? 1 : 0) + (part ? 1 : 0))
        .number(Fact.UNPRIMED_INERT, (boreInert && !bore ? 1 : 0) + (partInert && !part ? 1 : 0));
    Which.of(boreInert && !bore, partInert && !part)
        .ifPresent(w -> facts.word(Fact.UNPRIMED_INERT_WHICH, w));
    return facts.build();
  }

  private Facts withoutPrimer() {
    Facts.Builder facts = Facts.builder();
    gap(facts);
    members(facts);
    primerAge(facts);
    cure(facts);
    return facts
        .number(Fact.SERVICE_LOW, order.service().low())
        .number(Fact.SERVICE_HIGH, order.service().high())
        .flag(Fact.COMES_APART, order.surroundings().comesApartLater())
        .word(Fact.CONSEQUENCE, order.consequence())
        .flag(Fact.SEAL_NEAR, order.surroundings().sealNear())
        .flag(Fact.ELECTRONICS_NEAR, order.surroundings().electronicsNear())
        .flag(Fact.WARRANTY, order.surroundings().warranty())
        .flag(Fact.FINISH_SAID, finishSaid())
        .flag(Fact.LOAD_GIVEN, order.load().isPresent())
        .number(Fact.WANTED_CONFIDENCE, order.confidence())
        .build();
  }

  private boolean finishSaid() {
    for (JointOrder.Assumption assumption : order.assumptions()) {
      if (assumption.field().endsWith(".finish")) {
        return false;
      }
    }
    return true;
  }

  private void gap(Facts.Builder facts) {
    Gap gap = found.gap();
    Gap.Limits limits = found.limits();
    facts
        .number(Fact.GAP_LIKELY, gap.largestUm())
        .number(Fact.GAP_LARGEST, limits.upperUm())
        .number(Fact.GAP_SMALLEST, limits.lowerUm())
        .number(Fact.GAP_ONE_SIDED, limits.oneSidedUm())
        .number(Fact.GAP_GROWTH, found.inService().growthUm())
        .number(Fact.GAP_TIGHTEST, found.inService().tightestUm())
        .number(Fact.GAP_TIGHTEST_AT, found.inService().tightestAtC())
        .word(Fact.FIT, fit.kind())
        .number(Fact.ENGAGEMENT_RATIO, order.engagementMm() / gap.nominalMm());
    press.ifPresent(
        p ->
            facts
                .word(Fact.PRESS, p.standing())
                .number(Fact.PRESS_AT, p.standsSoAtC())
                .number(Fact.GAP_LOOSEST, p.loosestRadialUm())
                .number(Fact.GAP_LOOSEST_AT, found.inService().loosestAtC()));
    pressesWhen().ifPresent(w -> facts.word(Fact.GAP_PRESSES, w));
    if (found.bore().isPresent() || found.part().isPresent()) {
      form(facts);
    }
  }

  private Optional<PressesWhen> pressesWhen() {
    double assemblyC = order.cure().history().celsiusAt(0);
    boolean inUse = found.inService().tightestUm() < 0;
    boolean atOnce = inUse && found.inService().tightestAtC() == assemblyC;
    if (atOnce || found.limits().lowerUm() < 0) {
      return Optional.of(PressesWhen.ON_THE_WAY_IN);
    }
    return inUse ? Optional.of(PressesWhen.ONLY_IN_USE) : Optional.empty();
  }

  private void form(Facts.Builder facts) {
    double ovality = 0;
    double taper = 0;
    for (MeasuredDiameter m : measured()) {
      ovality = Math.max(ovality, m.ovalityUm().orElse(0));
      taper = Math.max(taper, m.taperUm().orElse(0));
    }
    Optional<Which> readOnce =
        Which.of(readOnce(order.bore(), found.bore()), readOnce(order.part(), found.part()));
    facts
        .number(Fact.OVALITY, ovality / 2)
        .number(Fact.TAPER, taper / 2)
        .flag(Fact.ONE_READING, readOnce.isPresent());
    readOnce.ifPresent(w -> facts.word(Fact.ONE_READING_WHICH, w));
    if (found.bore().isPresent()) {
      MeasuredDiameter bore = found.bore().get();
      facts
          .flag(Fact.TWO_POINT, bore.span().contacts() == 2)
          .flag(
              Fact.THREE_POINT,
              !order.bore().isByTolerance() && bore.has(Note.THREE_POINT_BLIND_TO_OVAL));
    }
  }

  /** A bearing that goes by its tolerance was not read at all. */
  private static boolean readOnce(Member member, Optional<MeasuredDiameter> measured) {
    return !member.isByTolerance() && measured.filter(m -> m.has(Note.ONE_READING)).isPresent();
  }

  private List<MeasuredDiameter> measured() {
    List<MeasuredDiameter> measured = new ArrayList<>(2);
    found.bore().ifPresent(measured::add);
    found.part().ifPresent(measured::add);
    return measured;
  }

  private void members(Facts.Builder facts) {
    Member bore = order.bore();
    Member part = order.part();
    facts
        .word(Fact.BORE_KIND, bore.material().kind())
        .word(Fact.PART_KIND, part.material().kind())
        .word(Fact.BORE_ACTIVITY, bore.activity())
        .word(Fact.PART_ACTIVITY, part.activity())
        .word(Fact.BORE_FILM, bore.finish().film())
        .word(Fact.PART_FILM, part.finish().film())
        .word(Fact.BORE_ATTACK, attack(bore))
        .word(Fact.PART_ATTACK, attack(part))
        .word(Fact.BORE_STATE, bore.state())
        .word(Fact.PART_STATE, part.state());
    facts
        .number(Fact.INERT_FACES, faces(Activity.Level.INERT))
        .number(Fact.SLOW_FACES, faces(Activity.Level.SLOW));
  }

  private static Material.Attack attack(Member member) {
    return member.material().attack();
  }

  private int faces(Activity.Level wanted) {
    return (order.bore().activity() == wanted ? 1 : 0)
        + (order.part().activity() == wanted ? 1 : 0);
  }

  private void primerAge(Facts.Builder facts) {
    if (order.primer() instanceof JointOrder.PrimerPlan.Used used) {
      Duration age = used.age();
      facts
          .number(Fact.PRIMER_AGE, used.ageShare())
          .flag(
              Fact.PRIMER_WET,
              age.toSeconds() < used.primer().flashOffMinutes().high() * 60 && !age.isZero());
    }
  }

  private void cure(Facts.Builder facts) {
    double tolerance = order.cure().plusMinusC();
    double room = order.cure().air().celsiusAt(0);
    double boreColder = room - order.bore().arrivesAtC().orElse(room);
    double partColder = room - order.part().arrivesAtC().orElse(room);
    Which.of(boreColder > 0, partColder > 0).ifPresent(w -> facts.word(Fact.PART_COLDER_WHICH, w));
    facts
        .number(Fact.COLDEST_CURE, order.cure().history().coldestC() - tolerance)
        .number(Fact.WARMEST_CURE, order.cure().history().warmestC() - tolerance)
        .number(Fact.PART_COLDER, Math.max(0, Math.max(boreColder, partColder)));
  }

  /** Facts of the joint with this primer, and of a class in it. */
  Facts ofClass(
      Facts joint, CompoundClass compound, ClassFacts known, Optional<PlannedPrimer> primer) {
    boolean bothPrimed = primer.isPresent() && primer.get().onBore() && primer.get().onPart();
    double high = bothPrimed ? compound.primedGapMaxUm() : compound.gapUm().high();
    return joint
        .about(bothPrimed ? known.primed() : known.bare())
        .and()
        .number(Fact.CLASS_COVERS, covered(compound.gapUm().low(), high))
        .number(Fact.CLASS_HOT_FRACTION, compound.hotFraction(order.service().high()).likely())
        .build();
  }

  /** Several classes fill the same gaps, and are tried again with primer. */
  private double covered(double lowUm, double highUm) {
    for (int i = 0; i < covered.size(); i++) { // quicker than an iterator; asked for every class
      Covered known = covered.get(i);
      if (known.lowUm() == lowUm && known.highUm() == highUm) {
        return known.probability();
      }
    }
    double probability = fit.largest().within(lowUm, highUm);
    covered.add(new Covered(lowUm, highUm, probability));
    return probability;
  }

  private record Covered(double lowUm, double highUm, double probability) {}
}
