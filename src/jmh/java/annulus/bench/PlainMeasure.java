package annulus.bench;

/**
 * One member's diameter, form and uncertainty from its readings in plain arithmetic: the formulas
 * of {@code annulus.measure} without a single object. Results stand in the fields until the next
 * call.
 */
final class PlainMeasure {
  static final int ONE_READING = 1;
  static final int ANGLES_NOT_GIVEN = 2;
  static final int BLIND_TO_ODD_LOBES = 4;
  static final int BLIND_TO_OVAL = 8;
  static final int OVAL = 16;
  static final int TAPERED = 32;
  static final int JAWS = 64;
  static final int DISAGREE = 128;
  static final int SPREAD = 256;
  static final int INSTRUMENT_RULES = 512;

  private static final int MOST = 64;
  private static final double ROOT_3 = Math.sqrt(3);

  double mean;
  double largest;
  double smallest;
  double ovality;
  double taper;
  double variance;
  double extremeVariance;
  double repeatVariance;
  double repeatFreedom;
  double extremeRepeatVariance;
  double extremeFreedom;
  int notes;

  private final double[] mm = new double[MOST];
  private final double[] depth = new double[MOST];
  private final double[] angle = new double[MOST];
  private final double[] placeMean = new double[MOST];
  private final double[] placeDepth = new double[MOST];
  private final double[] placeAngle = new double[MOST];
  private final double[] depthMean = new double[MOST];
  private int places;
  private double high;
  private double low;
  private double noiseVariance;
  private int noiseFreedom;

  void measure(PlainMember m, PlainJoint joint) {
    int n = sort(m);
    double inverse = 0;
    double allSquares = 0;
    int allFreedom = 0;
    double knownSquares = 0;
    int knownFreedom = 0;
    double worstRepeat = 0;
    boolean angleMissing = false;
    places = 0;
    high = Double.NEGATIVE_INFINITY;
    low = Double.POSITIVE_INFINITY;
    for (int i = 0; i < n; ) {
      int end = i + 1;
      while (end < n && depth[end] == depth[i] && angle[end] == angle[i]) {
        end++;
      }
      double mid = mean(mm, i, end);
      double squares = 0;
      for (int k = i; k < end; k++) {
        squares += (mm[k] - mid) * (mm[k] - mid);
      }
      inverse += 1.0 / (end - i);
      allSquares += squares;
      allFreedom += end - i - 1;
      boolean known = angle[i] >= 0;
      angleMissing |= !known;
      if (known) {
        knownSquares += squares;
        knownFreedom += end - i - 1;
        worstRepeat = Math.max(worstRepeat, micrometres(mm[end - 1] - mm[i]));
      }
      high = Math.max(high, mm[end - 1]);
      low = Math.min(low, mm[i]);
      placeMean[places] = mid;
      placeDepth[places] = depth[i];
      placeAngle[places] = angle[i];
      places++;
      i = end;
    }
    double spread = micrometres(high - low);
    form(m.contacts);
    double placesMean = mean(placeMean, 0, places);
    double jaws =
        m.inside && m.jawFlat > 0
            ? 0.5
                * m.jawFlat
                * m.jawFlat
                / (placesMean + Math.sqrt(placesMean * placesMean - m.jawFlat * m.jawFlat))
            : 0;
    double scale = 1 - m.expansion * 1e-6 * (m.celsius - 20);
    mean = (placesMean + jaws) * scale;
    largest = (high + jaws) * scale;
    smallest = (low + jaws) * scale;

    double offset = Math.abs(m.celsius - 20);
    double instrument = square(m.mpe / ROOT_3);
    double jawsVariance = square(jaws * 1000 / ROOT_3);
    double perK = placesMean * 1e-3;
    double steepest = Math.max(Math.abs(m.expansionLow), Math.abs(m.expansionHigh));
    double halfWidth = Math.max(m.expansionHigh - m.expansion, m.expansion - m.expansionLow);
    double fixed =
        instrument
            + square(m.resolution / 2 / ROOT_3)
            + jawsVariance
            + square(perK * steepest * m.plusMinusC / ROOT_3)
            + square(perK * halfWidth * offset / ROOT_3)
            + square(perK * joint.scaleExpansion * offset / ROOT_3);

    double least = joint.steps * m.resolution / ROOT_3;
    double seen = allFreedom == 0 ? 0 : 1000 * Math.sqrt(allSquares / allFreedom);
    repeatVariance = square(Math.max(seen, least)) * inverse / places / places;
    repeatFreedom = seen > least ? allFreedom : Double.POSITIVE_INFINITY;
    double between = 0;
    if (places > 1) {
      for (int i = 0; i < places; i++) {
        between += square(placeMean[i] - placesMean);
      }
      between = 1e6 * between / (places - 1) / places;
    }
    variance = repeatVariance + between + fixed;

    double knownSeen = knownFreedom == 0 ? 0 : 1000 * Math.sqrt(knownSquares / knownFreedom);
    extremeRepeatVariance = square(Math.max(knownSeen, least));
    extremeFreedom = knownSeen > least ? knownFreedom : Double.POSITIVE_INFINITY;
    double unplaced = angleMissing ? square(spread / ROOT_3) : 0;
    if (unplaced > 0) {
      oneAngle(n);
      boolean knownIsSeen = extremeFreedom < Double.POSITIVE_INFINITY;
      if (knownIsSeen || noiseVariance > extremeRepeatVariance) {
        extremeRepeatVariance = Math.max(noiseVariance, extremeRepeatVariance + unplaced);
        extremeFreedom = Math.min(noiseFreedom, extremeFreedom);
        unplaced = 0;
      }
    }
    extremeVariance = extremeRepeatVariance + unplaced + fixed;

    notes = n == 1 ? ONE_READING : angleMissing ? ANGLES_NOT_GIVEN : 0;
    notes |= Double.isNaN(ovality) ? 0 : BLIND_TO_ODD_LOBES;
    notes |= m.contacts == 3 ? BLIND_TO_OVAL : 0;
    notes |= ovality > Math.max(joint.ovalNote, m.resolution) ? OVAL : 0;
    notes |= taper > Math.max(joint.taperNote, m.resolution) ? TAPERED : 0;
    notes |= jaws > 0 ? JAWS : 0;
    double repeat = Math.max(joint.repeatNote, 2 * m.mpe);
    notes |= worstRepeat > repeat ? DISAGREE : 0;
    notes |= angleMissing && spread > repeat ? SPREAD : 0;
    notes |= (instrument + jawsVariance) / variance > joint.dominant ? INSTRUMENT_RULES : 0;
  }

  /** Scatter as if all readings had been taken at one angle of their depth. */
  private void oneAngle(int n) {
    double squares = 0;
    noiseFreedom = 0;
    for (int i = 0; i < n; ) {
      int end = depth[0] < 0 ? n : i + 1;
      while (end < n && depth[end] == depth[i]) {
        end++;
      }
      double mid = mean(mm, i, end);
      for (int k = i; k < end; k++) {
        squares += (mm[k] - mid) * (mm[k] - mid);
      }
      noiseFreedom += end - i - 1;
      i = end;
    }
    noiseVariance = noiseFreedom == 0 ? 0 : 1e6 * squares / noiseFreedom;
  }

  private int sort(PlainMember m) {
    double period = m.contacts == 3 ? 120 : 180;
    int n = m.mm.length;
    for (int i = 0; i < n; i++) {
      double a = m.angle[i] < 0 ? -1 : Math.rint(m.angle[i] % period * 1e6) / 1e6;
      double d = m.depth[i];
      double v = m.mm[i];
      int k = i;
      while (k > 0
          && (depth[k - 1] > d
              || (depth[k - 1] == d
                  && (angle[k - 1] > a || (angle[k - 1] == a && mm[k - 1] > v))))) {
        depth[k] = depth[k - 1];
        angle[k] = angle[k - 1];
        mm[k] = mm[k - 1];
        k--;
      }
      depth[k] = d;
      angle[k] = a;
      mm[k] = v;
    }
    return n;
  }

  /** Ovality, taper and the extremes that the form adds. */
  private void form(int contacts) {
    ovality = Double.NaN;
    taper = Double.NaN;
    int depths = 0;
    for (int i = 0; i < places; ) {
      int end = i + 1;
      while (end < places && placeDepth[end] == placeDepth[i]) {
        end++;
      }
      if (contacts == 2) {
        oval(placeAngle[i] < 0 ? i + 1 : i, end);
      }
      if (placeDepth[i] >= 0) {
        depthMean[depths++] = mean(placeMean, i, end);
      }
      i = end;
    }
    if (depths >= 2) {
      taper = micrometres(range(depthMean, 0, depths));
    }
  }

  private void oval(int from, int end) {
    if (end - from < 2) {
      return;
    }
    double seen = micrometres(range(placeMean, from, end));
    if (end - from == 3
        && Math.abs(placeAngle[from + 1] - placeAngle[from] - 60) < 1e-9
        && Math.abs(placeAngle[from + 2] - placeAngle[from + 1] - 60) < 1e-9) {
      double real = placeMean[from] - 0.5 * placeMean[from + 1] - 0.5 * placeMean[from + 2];
      double imaginary = Math.sqrt(0.75) * (placeMean[from + 1] - placeMean[from + 2]);
      double amplitude = 2.0 / 3 * Math.sqrt(real * real + imaginary * imaginary);
      double middle = mean(placeMean, from, end);
      high = Math.max(high, middle + amplitude);
      low = Math.min(low, middle - amplitude);
      seen = Math.max(seen, micrometres(2 * amplitude));
    }
    ovality = Double.isNaN(ovality) ? seen : Math.max(ovality, seen);
  }

  private static double mean(double[] x, int from, int end) {
    double first = 0;
    for (int i = from; i < end; i++) {
      first += x[i];
    }
    first /= end - from;
    double rest = 0;
    for (int i = from; i < end; i++) {
      rest += x[i] - first;
    }
    return first + rest / (end - from);
  }

  private static double range(double[] x, int from, int end) {
    double least = x[from];
    double most = x[from];
    for (int i = from + 1; i < end; i++) {
      least = Math.min(least, x[i]);
      most = Math.max(most, x[i]);
    }
    return most - least;
  }

  private static double micrometres(double mm) {
    return Math.rint(mm * 1e9) / 1e6;
  }

  private static double square(double x) {
    return x * x;
  }
}
