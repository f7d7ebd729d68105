package annulus.bench;

import annulus.advice.Member;
import annulus.catalog.Instrument.Span;
import annulus.quantity.Estimate;

/** One member's numbers, laid out flat. */
final class PlainMember {
  final double[] mm;
  final double[] depth;
  final double[] angle;
  final int contacts;
  final boolean inside;
  final double mpe;
  final double resolution;
  final double jawFlat;
  final double celsius;
  final double plusMinusC;
  final double expansionLow;
  final double expansion;
  final double expansionHigh;
  final int kind;
  final int attack;
  final int film;
  final int state;
  final int activity;
  final double finishLow;
  final double finish;
  final double finishHigh;
  final double faceLow;
  final double face;
  final double faceHigh;
  final double heatLimit;

  PlainMember(Member member, Estimate faceFactor) {
    int n = member.readings().size();
    mm = new double[n];
    depth = new double[n];
    angle = new double[n];
    double sum = 0;
    for (int i = 0; i < n; i++) {
      mm[i] = member.readings().get(i).mm();
      depth[i] = member.readings().get(i).depthMm().orElse(-1);
      angle[i] = member.readings().get(i).angleDeg().orElse(-1);
      sum += mm[i];
    }
    Span span =
        member.instrument().orElseThrow().spanFor(member.side().use(), sum / n).orElseThrow();
    contacts = span.contacts();
    inside = span.use() == annulus.catalog.Instrument.Use.INSIDE;
    mpe = span.mpeUm();
    resolution = span.resolutionUm();
    jawFlat = span.jawFlatMm();
    celsius = member.measuredAtC();
    plusMinusC = member.measuredPlusMinusC();
    expansionLow = member.material().expansion().low();
    expansion = member.material().expansion().likely();
    expansionHigh = member.material().expansion().high();
    kind = member.material().kind().ordinal();
    attack = member.material().attack().ordinal();
    film = member.finish().film().ordinal();
    state = member.state().ordinal();
    activity = member.activity().ordinal();
    finishLow = member.finish().strengthFactor().low();
    finish = member.finish().strengthFactor().likely();
    finishHigh = member.finish().strengthFactor().high();
    faceLow = faceFactor.low();
    face = faceFactor.likely();
    faceHigh = faceFactor.high();
    heatLimit = member.material().heatLimitC();
  }
}
