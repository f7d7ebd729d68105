package annulus.measure;

import annulus.catalog.Confidence;
import annulus.catalog.Instrument;
import annulus.catalog.Instrument.Span;
import annulus.catalog.Instrument.Use;
import annulus.catalog.Provenance;
import annulus.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/** Instruments and limits of the tests, built here so that the data files may change. */
final class Samples {
  static final FormLimits LIMITS = new FormLimits(20, 20, 30, 1, 0.5, 11.5, 20);
  static final Estimate STEEL = Estimate.exactly(11.5);
  static final Estimate ALUMINIUM = Estimate.exactly(23);

  static final Instrument CALIPER =
      new Instrument(
          "caliper",
          "caliper",
          List.of(span(Use.OUTSIDE, 0, 150, 20, 10, 2, 0), span(Use.INSIDE, 0, 150, 40, 10, 2, 1)));
  static final Instrument TELESCOPIC = one("telescopic", Use.INSIDE, 8, 150, 20, 10, 2);
  static final Instrument DIAL_BORE = one("dial-bore", Use.INSIDE, 18, 150, 9, 1, 2);
  static final Instrument THREE_POINT = one("three-point", Use.INSIDE, 6, 100, 4, 1, 3);
  static final Instrument MICROMETER = one("micrometer", Use.OUTSIDE, 0, 50, 4, 1, 2);

  /** Error limit and step so small that only form and scatter are left. */
  static final Instrument IDEAL_BORE = one("ideal", Use.INSIDE, 0, 500, 0.1, 0.1, 2);

  static final List<Instrument> ALL =
      List.of(CALIPER, TELESCOPIC, DIAL_BORE, THREE_POINT, MICROMETER);

  private Samples() {}

  static Instrument one(
      String id, Use use, double over, double upTo, double mpe, double step, int contacts) {
    return new Instrument(id, id, List.of(span(use, over, upTo, mpe, step, contacts, 0)));
  }

  static Span span(
      Use use, double over, double upTo, double mpe, double step, int contacts, double flat) {
    Provenance test = new Provenance("test", Confidence.LOW);
    return new Span(use, over, upTo, mpe, step, contacts, flat, test);
  }

  static MeasuredDiameter bore(Instrument instrument, List<Reading> readings) {
    return MeasuredDiameter.of(Side.BORE, readings, instrument, 20, 0, ALUMINIUM, LIMITS);
  }

  static MeasuredDiameter part(Instrument instrument, List<Reading> readings) {
    return MeasuredDiameter.of(Side.PART, readings, instrument, 20, 0, STEEL, LIMITS);
  }

  static List<Reading> readings(double... mm) {
    return new ArrayList<>(DoubleStream.of(mm).mapToObj(Reading::of).toList());
  }

  static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  static Component normal(String id, double um, double degreesOfFreedom) {
    return new Component(id, id, um, degreesOfFreedom, Component.Shape.NORMAL, "test");
  }
}
