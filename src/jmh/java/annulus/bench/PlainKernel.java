package annulus.bench;

import org.apache.commons.numbers.gamma.Erfc;
import org.apache.commons.numbers.gamma.InverseErf;
import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.numbers.gamma.RegularizedBeta;

/**
 * The floor: one whole advice in plain arithmetic, without an object, a list, a word or a check.
 * Same formulas, same figures: {@link PlainCheck} holds it to the advice before it is timed. For
 * two metal members without primer at one temperature, glued.
 */
final class PlainKernel {
  static final int POINTS = 49;
  static final int CHOSEN = 3;
  static final int SUITABLE = 2;
  static final int NEEDS_PRIMER = 1;
  static final int EXCLUDED = 0;

  private static final double LIMIT_Z = 1.6448536269514722;
  private static final double GAS = 8.31446261815324;
  private static final double ROUNDING = 1e-13;

  private static final int PLASTIC = 2;
  private static final int LAMINATE = 3;
  private static final int TEST_FIRST = 1;
  private static final int CRACKS = 2;
  private static final int PLATED = 1;
  private static final int CONVERSION = 2;
  private static final int COAT = 3;
  private static final int OILY = 1;
  private static final int OLD = 2;
  private static final int UNKNOWN = 3;
  private static final int SLOW = 1;
  private static final int INERT = 2;
  private static final int INJURY = 2;

  private final PlainMeasure bore = new PlainMeasure();
  private final PlainMeasure part = new PlainMeasure();

  double gapMean;
  double gapLargest;
  double gapSmallest;
  double gapUncertainty;
  double gapUpper;
  double gapLower;
  double meanStandard;
  double meanFreedom;
  double atAssembly;
  double atLow;
  double atHigh;
  double growth;
  double tightest;
  private double wider;
  private double closedUpper;
  double dryProbability;
  final long[] rules = new long[16];
  final int[] standing = new int[16];
  final double[] covers = new double[16];
  int chosen;
  double surfaceFactor;
  double sigma;
  final double[] typicalS = new double[4];
  final double[] sureS = new double[4];
  double slowPracticeS;
  double workingS;
  final double[] pointS = new double[POINTS];
  final double[] pointTypical = new double[POINTS];
  final double[] pointSure = new double[POINTS];
  double coldLow;
  double cold;
  double coldHigh;
  double hotLow;
  double hot;
  double hotHigh;
  double torqueHot;
  double wanted;
  double fractionWanted;
  double safetyLow;
  double breakLoose;
  double breakLooseHigh;
  double breakTorque;
  double heatedBreak;
  int ways;
  double heldAtHandBack;
  double drawMl;
  long handBackSecond;

  int boreNotes() {
    return bore.notes;
  }

  int partNotes() {
    return part.notes;
  }

  void run(PlainJoint j) {
    bore.measure(j.bore, j);
    part.measure(j.part, j);
    gap(j);
    select(j);
    if (chosen < 0) {
      handBackSecond = -1;
      return;
    }
    PlainClass c = j.classes[chosen];
    faces(j);
    double spread = Math.sqrt(c.spread * c.spread + sigma * sigma);
    double sureSpread = Math.exp(normalQuantile(j.confidence) * spread);
    double centred = Math.max(0, gapLargest + wider);
    double upper = Math.max(0, closedUpper);
    double typicalGap = gapFactor(centred, c.referenceGap, c.exponent);
    double slowGap = Math.max(typicalGap, gapFactor(upper, c.referenceGap, c.exponentHigh));
    double rate = rate(c, c.activation, j.roomC);
    double coldC = j.roomC - j.roomPlusMinusC;
    double slowRate = Math.min(rate(c, c.activationLow, coldC), rate(c, c.activationHigh, coldC));
    double typicalFactor = surfaceFactor * typicalGap;
    double slowFactor = surfaceFactor * slowGap * sureSpread;
    for (int i = 0; i < 4; i++) {
      typicalS[i] = seconds(c.hours[i] * typicalFactor, rate);
      sureS[i] = seconds(c.hours[i] * slowFactor, slowRate);
    }
    slowPracticeS = seconds(c.slowFullHours * slowGap, rate);
    working(j, c);
    points(c, rate, typicalFactor, slowRate, slowFactor);
    hold(j, c);
    release(j, c, slowRate, slowFactor);
  }

  private void gap(PlainJoint j) {
    gapMean = (bore.mean - part.mean) * 500;
    gapLargest = (bore.largest - part.smallest) * 500;
    gapSmallest = (bore.smallest - part.largest) * 500;
    double variance = (bore.extremeVariance + part.extremeVariance) / 4;
    double freedom =
        freedom(
            bore.extremeRepeatVariance / 4 / variance,
            bore.extremeFreedom,
            part.extremeRepeatVariance / 4 / variance,
            part.extremeFreedom);
    double standard = Math.sqrt(variance);
    gapUncertainty = quantile((1 + j.confidence) / 2, whole(freedom)) * standard;
    gapUpper = gapLargest + gapUncertainty;
    gapLower = gapSmallest - gapUncertainty;
    double meanVariance = (bore.variance + part.variance) / 4;
    meanStandard = Math.sqrt(meanVariance);
    meanFreedom =
        freedom(
            bore.repeatVariance / 4 / meanVariance,
            bore.repeatFreedom,
            part.repeatVariance / 4 / meanVariance,
            part.repeatFreedom);
    double here = movement(j, j.roomC);
    atAssembly = gapMean + here;
    wider = j.roomC < 20 ? Math.max(0, here) : 0;
    double coldC = j.roomC - j.roomPlusMinusC;
    closedUpper = gapUpper + (coldC < 20 ? Math.max(0, movement(j, coldC)) : 0);
    atLow = gapMean + movement(j, j.serviceLow);
    atHigh = gapMean + movement(j, j.serviceHigh);
    double most = Math.max(atMost(j, j.serviceLow, true), atMost(j, j.serviceHigh, true)) - here;
    growth = Math.max(0, most);
    tightest =
        gapMean
            + Math.min(
                atMost(j, j.roomC, false),
                Math.min(atMost(j, j.serviceLow, false), atMost(j, j.serviceHigh, false)));
    dryProbability = cumulative((j.dryFrom - gapLargest) / standard, freedom);
    for (int i = 0; i < j.classes.length; i++) {
      double below = (j.classes[i].gapLow - gapLargest) / standard;
      double above = (j.classes[i].gapHigh - gapLargest) / standard;
      covers[i] =
          below > 0
              ? cumulative(-below, freedom) - cumulative(-above, freedom)
              : cumulative(above, freedom) - cumulative(below, freedom);
    }
  }

  private double movement(PlainJoint j, double celsius) {
    return bore.mean * (j.bore.expansion - j.part.expansion) * (celsius - 20) / 2000;
  }

  /** Movement by the ends of both expansions that open the gap most; or close it most. */
  private double atMost(PlainJoint j, double celsius, boolean opening) {
    double difference =
        (celsius >= 20) == opening
            ? j.bore.expansionHigh - j.part.expansionLow
            : j.bore.expansionLow - j.part.expansionHigh;
    return bore.mean * difference * (celsius - 20) / 2000;
  }

  private void select(PlainJoint j) {
    long joint = jointRules(j);
    boolean interference = dryProbability >= j.confidence;
    boolean line = !interference && gapMean <= j.lineToLine;
    double oneSided = Math.max(0, 2 * gapUpper);
    chosen = -1;
    for (int i = 0; i < j.classes.length; i++) {
      PlainClass c = j.classes[i];
      double hotShare =
          j.serviceHigh > c.serviceHigh ? 0 : PlainCurve.at(c.hotC, c.hot, hotAt(j, c));
      long r = joint;
      if (gapLargest > c.gapHigh) {
        r |= Rules.GAP_TOO_WIDE;
      }
      if (gapLargest < c.gapLow) {
        r |= Rules.GAP_TOO_NARROW;
      }
      if (gapLargest >= c.gapLow && gapLargest <= c.gapHigh && covers[i] < j.confidence) {
        r |= Rules.GAP_NOT_SURE;
      }
      if (line && c.film) {
        r |= Rules.LINE_TO_LINE_FILM;
      }
      if (c.rebuild && gapUpper > 150) {
        r |= Rules.REBUILD_NEEDS_PRIMER;
      }
      if (j.roomC - j.roomPlusMinusC < c.minimumC) {
        r |= Rules.TOO_COLD;
      }
      if (j.roomC - j.roomPlusMinusC < c.cautionC) {
        r |= Rules.COLD;
      }
      if (j.serviceHigh > c.serviceHigh) {
        r |= Rules.SERVICE_TOO_HOT;
      }
      if (j.serviceLow < c.serviceLow) {
        r |= Rules.SERVICE_TOO_COLD;
      }
      if (hotShare < 0.6) {
        r |= Rules.WEAK_WHEN_HOT;
      }
      if (j.serviceHigh > 90 && hotShare >= 0.7) {
        r |= Rules.HOT_CLASS;
      }
      boolean fragile = j.bore.kind >= PLASTIC || j.part.kind >= PLASTIC;
      if (j.comesApart && c.lasting && fragile) {
        r |= Rules.APART_FRAGILE;
      }
      if (j.comesApart && c.lasting) {
        r |= Rules.APART_LASTING;
      }
      if (j.comesApart && !c.lasting) {
        r |= Rules.APART_RELEASABLE;
      }
      if (oneSided > c.gapHigh) {
        r |= Rules.OFF_CENTRE;
      }
      if (c.film && j.consequence == INJURY && gapLargest > 4) {
        r |= Rules.PRESS_FILM_HURTS;
      }
      rules[i] = r;
      standing[i] =
          (r & Rules.EXCLUDING) != 0
              ? EXCLUDED
              : (r & Rules.NEEDING_PRIMER) != 0 ? NEEDS_PRIMER : SUITABLE;
      if (standing[i] == SUITABLE && (chosen < 0 || before(j, i, chosen))) {
        chosen = i;
      }
    }
    if (chosen >= 0) {
      standing[chosen] = CHOSEN;
    }
  }

  private static double hotAt(PlainJoint j, PlainClass c) {
    return Math.min(j.serviceHigh, c.hotC[c.hotC.length - 1]);
  }

  private boolean before(PlainJoint j, int one, int other) {
    PlainClass a = j.classes[one];
    PlainClass b = j.classes[other];
    if (j.comesApart && a.lasting != b.lasting) {
      return b.lasting;
    }
    if (a.gapHigh != b.gapHigh) {
      return a.gapHigh < b.gapHigh;
    }
    int preferred = Long.bitCount(rules[one] & Rules.PREFERRING);
    int against = Long.bitCount(rules[other] & Rules.PREFERRING);
    if (preferred != against) {
      return preferred > against;
    }
    return a.strength != b.strength ? a.strength > b.strength : a.id.compareTo(b.id) < 0;
  }

  private long jointRules(PlainJoint j) {
    PlainMember b = j.bore;
    PlainMember p = j.part;
    boolean interference = dryProbability >= j.confidence;
    boolean clear = !interference && gapMean > j.lineToLine;
    int inert = (b.activity == INERT ? 1 : 0) + (p.activity == INERT ? 1 : 0);
    int slow = (b.activity == SLOW ? 1 : 0) + (p.activity == SLOW ? 1 : 0);
    double coldest = j.roomC - j.roomPlusMinusC;
    double oval = Math.max(or0(bore.ovality), or0(part.ovality)) / 2;
    double taper = Math.max(or0(bore.taper), or0(part.taper)) / 2;
    long r = 0;
    if (Math.max(0, 2 * gapUpper) > 760) {
      r |= Rules.FACE_TO_FACE_LIMIT;
    }
    if (interference) {
      r |= Rules.DRY_PRESS | Rules.MAYBE_SWAPPED;
    }
    if (inert >= 2) {
      r |= Rules.TWO_INERT_FACES;
    }
    if (inert == 1 && coldest < 15) {
      r |= Rules.ONE_INERT_FACE_COLD;
    }
    if (inert == 1) {
      r |= Rules.ONE_INERT_FACE;
    }
    if (inert >= 1 && slow >= 1) {
      r |= Rules.INERT_BESIDE_SLOW;
    }
    if (slow >= 2 && coldest < 12) {
      r |= Rules.SLOW_PAIR_COLD;
    }
    if (slow >= 2) {
      r |= Rules.SLOW_PAIR;
    }
    if (gapUpper > 75 && (slow >= 1 || inert >= 1)) {
      r |= Rules.WIDE_SLOW;
    }
    if (b.attack == CRACKS) {
      r |= Rules.STRESS_CRACKING_BORE;
    }
    if (p.attack == CRACKS) {
      r |= Rules.STRESS_CRACKING_PART;
    }
    if (b.attack == TEST_FIRST || p.attack == TEST_FIRST) {
      r |= Rules.TEST_PLASTIC_FIRST;
    }
    if (b.kind == LAMINATE || p.kind == LAMINATE) {
      r |= Rules.LAMINATE_MEMBER | (clear ? 0 : Rules.LAMINATE_BOND);
    }
    if (b.kind == PLASTIC || p.kind == PLASTIC) {
      r |= Rules.PLASTIC_MEMBER;
    }
    if (b.film == COAT) {
      r |= Rules.COATED_BORE;
    }
    if (p.film == COAT) {
      r |= Rules.COATED_PART;
    }
    if (b.film == PLATED || p.film == PLATED) {
      r |= Rules.PLATED_FACE;
    }
    if (b.film == CONVERSION || p.film == CONVERSION) {
      r |= Rules.CONVERSION_FACE;
    }
    if (b.state == OILY || p.state == OILY || b.state == UNKNOWN || p.state == UNKNOWN) {
      r |= Rules.GREASY_FACE;
    }
    if (b.state == OLD || p.state == OLD) {
      r |= Rules.OLD_COMPOUND;
    }
    if (j.seal) {
      r |= Rules.SEAL_NEAR;
    }
    if (j.electronics) {
      r |= Rules.ELECTRONICS_NEAR;
    }
    if (!j.finishSaid) {
      r |= Rules.FINISH_NOT_SAID;
    }
    if (j.consequence == INJURY && !j.loaded) {
      r |= Rules.INJURY_WITHOUT_LOAD;
    }
    if (j.engagement / bore.mean < 0.3) {
      r |= Rules.SHORT_ENGAGEMENT;
    }
    if (oval > 10) {
      r |= Rules.OVAL_RULE;
    }
    if (oval > 40) {
      r |= Rules.BADLY_OVAL;
    }
    if (taper > 10) {
      r |= Rules.TAPERED_RULE;
    }
    if (b.contacts == 2 && gapLargest < 25 && !interference) {
      r |= Rules.TWO_POINT_BLIND;
    }
    if (growth > 10 && !interference) {
      r |= Rules.OPENS_IN_SERVICE;
    }
    if (clear && (gapLower < 0 || tightest < 0)) {
      r |= Rules.CLOSES_UP;
    }
    if (j.warranty) {
      r |= Rules.WARRANTY;
    }
    if (((bore.notes | part.notes) & PlainMeasure.ONE_READING) != 0) {
      r |= Rules.ONE_READING;
    }
    if ((bore.notes & PlainMeasure.BLIND_TO_OVAL) != 0) {
      r |= Rules.THREE_POINT_BLIND;
    }
    return r;
  }

  private static double or0(double x) {
    return Double.isNaN(x) ? 0 : x;
  }

  /** Slowest of all pairs of faces that are at least as active. */
  private void faces(PlainJoint j) {
    surfaceFactor = 0;
    sigma = 0;
    for (int b = 0; b <= j.bore.activity; b++) {
      for (int p = 0; p <= j.part.activity; p++) {
        if (b == INERT && p == INERT) {
          continue;
        }
        double likely = (1 / j.rate[b] + 1 / j.rate[p]) / 2;
        double low = (1 / j.rateLow[b] + 1 / j.rateLow[p]) / 2;
        surfaceFactor = Math.max(surfaceFactor, likely);
        sigma = Math.max(sigma, Math.log(low / likely) / LIMIT_Z);
      }
    }
  }

  private static double gapFactor(double gap, double reference, double exponent) {
    return gap <= reference ? 1 : Math.pow(gap / reference, exponent);
  }

  private static double rate(PlainClass c, double activationKJ, double celsius) {
    if (celsius < c.minimumC) {
      return 0;
    }
    return unheldRate(c, activationKJ, Math.min(celsius, c.heldC));
  }

  private static double unheldRate(PlainClass c, double activationKJ, double celsius) {
    double kelvin = celsius + 273.15;
    return Math.exp(-activationKJ * 1000 / GAS * (1 / kelvin - 1 / (c.referenceC + 273.15)));
  }

  private static double seconds(double hours, double rate) {
    return rate > 0 ? Math.ceil(hours * (1 - ROUNDING) / (rate / 3600)) : Double.POSITIVE_INFINITY;
  }

  private void working(PlainJoint j, PlainClass c) {
    double warmest = Math.max(j.roomC + j.roomPlusMinusC, c.minimumC);
    double quickest =
        Math.max(unheldRate(c, c.activationLow, warmest), unheldRate(c, c.activationHigh, warmest));
    double quick = (1 / j.rateHigh[j.bore.activity] + 1 / j.rateHigh[j.part.activity]) / 2;
    workingS = Math.floor(c.workingLow * Math.max(1, quick) / quickest * 60);
  }

  private static double fraction(PlainClass c, double hours) {
    int after = 0;
    while (after < c.hours.length && c.hours[after] <= hours) {
      after++;
    }
    if (after == 0 || after == c.hours.length) {
      return after == 0 ? 0 : c.fraction[after - 1];
    }
    double low = c.hours[after - 1];
    double share = Math.log(hours / low) / Math.log(c.hours[after] / low);
    return c.fraction[after - 1] + (c.fraction[after] - c.fraction[after - 1]) * share;
  }

  private static double hoursTo(PlainClass c, double fraction) {
    int after = 0;
    while (after < c.fraction.length && c.fraction[after] < fraction) {
      after++;
    }
    if (after == c.fraction.length) {
      return Double.POSITIVE_INFINITY;
    }
    if (after == 0) {
      return c.hours[0];
    }
    double share = (fraction - c.fraction[after - 1]) / (c.fraction[after] - c.fraction[after - 1]);
    return c.hours[after - 1] * Math.pow(c.hours[after] / c.hours[after - 1], share);
  }

  private void points(
      PlainClass c, double rate, double typicalFactor, double slowRate, double slowFactor) {
    double first = Math.max(60, typicalS[0] / 2);
    double last = Math.max(first * 2, sureS[3] * 1.1);
    for (int i = 0; i < POINTS; i++) {
      double s = Math.rint(first * Math.pow(last / first, i / 48.0));
      pointS[i] = s;
      pointTypical[i] = fraction(c, s * (rate / 3600) / typicalFactor);
      pointSure[i] = fraction(c, s * (slowRate / 3600) / slowFactor);
    }
  }

  private void hold(PlainJoint j, PlainClass c) {
    PlainCurve g = j.gapFactor;
    double from = Math.max(0, gapLower);
    double to = Math.max(0, gapUpper);
    double ratio = j.engagement / bore.mean;
    PlainCurve e = j.engagementFactor;
    int end = e.at.length - 1;
    double beyond = ratio > e.at[end] ? e.at[end] / ratio : 1;
    double where = Math.min(ratio, e.at[end]);
    double area = Math.PI * bore.mean * j.engagement;
    double low =
        area
            * c.strengthLow
            * PlainCurve.least(g.at, g.low, from, to)
            * Math.min(j.bore.faceLow, j.part.faceLow)
            * Math.min(1, Math.min(j.bore.finishLow, j.part.finishLow))
            * PlainCurve.at(e.at, e.low, where)
            * beyond;
    double likely =
        area
            * c.strength
            * PlainCurve.least(g.at, g.likely, from, to)
            * Math.min(j.bore.face, j.part.face)
            * Math.min(1, Math.min(j.bore.finish, j.part.finish))
            * PlainCurve.at(e.at, e.likely, where)
            * beyond;
    double high =
        area
            * c.strengthHigh
            * PlainCurve.most(g.at, g.high, from, to)
            * Math.min(j.bore.faceHigh, j.part.faceHigh)
            * Math.min(1, Math.min(j.bore.finishHigh, j.part.finishHigh))
            * PlainCurve.at(e.at, e.high, where)
            * beyond;
    coldLow = low * j.dynamicLow;
    cold = likely * j.dynamic;
    coldHigh = high * j.dynamicHigh;
    double at = hotAt(j, c);
    hotLow = coldLow * PlainCurve.at(c.hotC, c.hotLow, at);
    hot = cold * PlainCurve.at(c.hotC, c.hot, at);
    hotHigh = coldHigh * PlainCurve.at(c.hotC, c.hotHigh, at);
    torqueHot = hot * bore.mean / 2000;
    breakLoose = likely;
    breakLooseHigh = high;
    breakTorque = likely * bore.mean / 2000;
    removal(j, c, likely);
    wanted = 0;
    fractionWanted = Double.NaN;
    if (j.loaded) {
      double side = 2000 * j.torque / bore.mean;
      double combined = Math.sqrt(j.axial * j.axial + side * side);
      wanted = j.safety * combined;
      fractionWanted = wanted > hotLow ? Double.POSITIVE_INFINITY : wanted / hotLow;
      safetyLow = hotLow / combined;
    }
  }

  /** Press, wrench and heat: 0 not enough, 1 doubtful, 2 enough, 3 refused. */
  private void removal(PlainJoint j, PlainClass c, double likely) {
    double toTorque = bore.mean / 2000;
    int press = j.press < likely ? 0 : 1;
    int wrench = j.wrench < likely * toTorque ? 0 : 1;
    double at = Math.min(c.removalC, c.hotC[c.hotC.length - 1]);
    heatedBreak = likely * PlainCurve.at(c.hotC, c.hot, at);
    int heated = j.press < heatedBreak && j.wrench < heatedBreak * toTorque ? 0 : 1;
    if (c.removalC > Math.min(j.bore.heatLimit, j.part.heatLimit) || j.seal || j.electronics) {
      heated = 3;
    }
    ways = press + 4 * wrench + 16 * heated;
  }

  private void release(PlainJoint j, PlainClass c, double slowRate, double slowFactor) {
    double upper = Math.max(j.wettingFilm, closedUpper);
    double partMm = Math.max(0.5, bore.mean - 2 * upper / 1000);
    double net = Math.PI / 4 * (bore.mean + partMm) * (bore.mean - partMm) * j.engagement / 1000;
    drawMl = Math.ceil(Math.max(j.leastDraw, net * j.waste) * 1000 - 1e-6) / 1000;
    double after = Math.max(sureS[0] + Math.ceil(60 * j.rest), sureS[j.releaseStage]);
    if (j.slowPractice) {
      after = Math.max(after, slowPracticeS);
    }
    if (j.loaded) {
      double hours =
          fractionWanted <= 1
              ? hoursTo(c, Math.max(fractionWanted, 1e-9)) * slowFactor
              : Double.POSITIVE_INFINITY;
      after = Math.max(after, seconds(hours, slowRate));
    }
    if (!(after < 1e11)) {
      handBackSecond = -1;
      return;
    }
    long minutes = ((long) after + 59) / 60;
    handBackSecond = Math.floorDiv(j.startSecond + minutes * 60 + 59, 60L) * 60;
    double reached = fraction(c, minutes * 60 * (slowRate / 3600) / slowFactor);
    heldAtHandBack = hot * Math.min(1, reached);
  }

  private static double freedom(double share1, double nu1, double share2, double nu2) {
    double sum = share1 * share1 / nu1 + share2 * share2 / nu2;
    return sum == 0 ? Double.POSITIVE_INFINITY : 1 / sum;
  }

  private static double whole(double freedom) {
    return Math.max(1, Math.floor(freedom + 1e-9));
  }

  private static double normalQuantile(double p) {
    return Math.sqrt(2) * InverseErf.value(2 * p - 1);
  }

  private static double cumulative(double x, double freedom) {
    if (Double.isInfinite(freedom)) {
      return 0.5 * Erfc.value(-x / Math.sqrt(2));
    }
    double tail = 0.5 * RegularizedBeta.value(freedom / (freedom + x * x), freedom / 2, 0.5);
    return x > 0 ? 1 - tail : tail;
  }

  /** Newton's method from a series in 1/ν. */
  private static double quantile(double p, double freedom) {
    double z = normalQuantile(p);
    if (Double.isInfinite(freedom)) {
      return z;
    }
    double t = z + z * (z * z + 1) / (4 * freedom);
    double scale =
        Math.exp(LogGamma.value((freedom + 1) / 2) - LogGamma.value(freedom / 2))
            / Math.sqrt(freedom * Math.PI);
    for (int i = 0; i < 20; i++) {
      double density = scale * Math.pow(1 + t * t / freedom, -(freedom + 1) / 2);
      double step = (cumulative(t, freedom) - p) / density;
      t -= step;
      if (Math.abs(step) < 1e-12 * t) {
        return t;
      }
    }
    return t;
  }
}
