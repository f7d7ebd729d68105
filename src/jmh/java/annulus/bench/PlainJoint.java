package annulus.bench;

import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.advice.Member;
import annulus.catalog.Activity;
import annulus.catalog.Policy;
import annulus.catalog.ReleaseRule;
import annulus.quantity.Estimate;

/** All numbers that one advice needs, laid out flat: what the plain kernel reads. */
final class PlainJoint {
  final PlainMember bore;
  final PlainMember part;
  final PlainClass[] classes;
  final double[] rateLow = new double[3];
  final double[] rate = new double[3];
  final double[] rateHigh = new double[3];
  final PlainCurve gapFactor;
  final PlainCurve engagementFactor;
  final double engagement;
  final double roomC;
  final double roomPlusMinusC;
  final double serviceLow;
  final double serviceHigh;
  final double confidence;
  final int consequence;
  final boolean comesApart;
  final boolean seal;
  final boolean electronics;
  final boolean warranty;
  final boolean finishSaid;
  final boolean loaded;
  final double axial;
  final double torque;
  final double safety;
  final double dynamicLow;
  final double dynamic;
  final double dynamicHigh;
  final int releaseStage;
  final boolean slowPractice;
  final long startSecond;
  final double dryFrom;
  final double lineToLine;
  final double rest;
  final double waste;
  final double wettingFilm;
  final double leastDraw;
  final double press;
  final double wrench;
  final double ovalNote;
  final double taperNote;
  final double repeatNote;
  final double steps;
  final double dominant;
  final double scaleExpansion;

  PlainJoint(JointOrder order, Knowledge knowledge) {
    bore = member(order.bore(), knowledge);
    part = member(order.part(), knowledge);
    classes =
        knowledge.catalog().compounds().values().stream()
            .map(PlainClass::new)
            .toArray(PlainClass[]::new);
    for (Activity.Level level : Activity.Level.values()) {
      Estimate of = knowledge.catalog().activities().get(level).rate();
      rateLow[level.ordinal()] = of.low();
      rate[level.ordinal()] = of.likely();
      rateHigh[level.ordinal()] = of.high();
    }
    gapFactor = new PlainCurve(knowledge.hold().gap());
    engagementFactor = new PlainCurve(knowledge.hold().engagement());
    engagement = order.engagementMm();
    roomC = order.cure().history().celsiusAt(0);
    roomPlusMinusC = order.cure().plusMinusC();
    serviceLow = order.service().low();
    serviceHigh = order.service().high();
    confidence = order.confidence();
    consequence = order.consequence().ordinal();
    comesApart = order.surroundings().comesApartLater();
    seal = order.surroundings().sealNear();
    electronics = order.surroundings().electronicsNear();
    warranty = order.surroundings().warranty();
    ReleaseRule rule = knowledge.catalog().release().get(order.consequence());
    releaseStage = rule.stage().ordinal();
    slowPractice = rule.slowPractice();
    finishSaid = order.assumptions().stream().noneMatch(a -> a.field().endsWith(".finish"));
    loaded = order.load().isPresent();
    axial = order.load().map(JointOrder.Load::axialN).orElse(0.0);
    torque = order.load().map(JointOrder.Load::torqueNm).orElse(0.0);
    safety = order.load().map(l -> l.safetyFactor().orElse(rule.safetyFactor())).orElse(0.0);
    Estimate repeats =
        order
            .load()
            .map(l -> knowledge.hold().dynamics().get(l.repeats()).value())
            .orElse(Estimate.exactly(1));
    dynamicLow = repeats.low();
    dynamic = repeats.likely();
    dynamicHigh = repeats.high();
    startSecond = order.start().getEpochSecond();
    Policy policy = knowledge.catalog().policy();
    dryFrom = policy.value("dry-press-from-um");
    lineToLine = policy.value("line-to-line-um");
    rest = policy.value("undisturbed-after-fixture-min");
    waste = policy.value("waste-factor");
    wettingFilm = knowledge.hold().wettingFilmUm().value().high();
    leastDraw = policy.value("least-draw-ml");
    press = policy.value("tool-press-n");
    wrench = policy.value("tool-wrench-nm");
    ovalNote = policy.value("oval-note");
    taperNote = policy.value("taper-note");
    repeatNote = policy.value("repeat-note");
    steps = policy.value("single-reading-steps");
    dominant = policy.value("dominant-share");
    scaleExpansion = policy.value("instrument-expansion");
  }

  private static PlainMember member(Member member, Knowledge knowledge) {
    return new PlainMember(
        member, knowledge.hold().surfaces().get(member.material().bondFace()).value());
  }
}
