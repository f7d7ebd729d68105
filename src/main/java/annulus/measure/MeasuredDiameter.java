package annulus.measure;

import annulus.catalog.Instrument;
import annulus.catalog.Instrument.Span;
import annulus.measure.ErrorSources.Single;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * A member's diameter at 20 °C from its readings, with form, uncertainty and notes.
 *
 * @param side bore or part
 * @param instrument what it was measured with
 * @param span the instrument's span that covers it
 * @param readings the readings in a fixed order
 * @param meanMm mean of the places' means, corrected, mm
 * @param largestMm largest single or fitted diameter, corrected, mm: for class and cure
 * @param smallestMm smallest single or fitted diameter, corrected, mm: for assembly
 * @param spreadUm largest less smallest reading, µm
 * @param ovalityUm largest less smallest diameter at one depth, µm; empty when it cannot be seen
 * @param taperUm difference of the depths' mean diameters, µm; empty for one depth
 * @param correctionUm added for flat jaws, µm on the diameter
 * @param temperatureCorrectionUm added to come to 20 °C, µm on the diameter
 * @param budget uncertainty of the mean diameter
 * @param extremeBudget uncertainty of the largest and of the smallest diameter
 * @param notes what the reader must know, in the order of {@link Note}
 */
public record MeasuredDiameter(
    Side side,
    Instrument instrument,
    Span span,
    List<Reading> readings,
    double meanMm,
    double largestMm,
    double smallestMm,
    double spreadUm,
    OptionalDouble ovalityUm,
    OptionalDouble taperUm,
    double correctionUm,
    double temperatureCorrectionUm,
    Budget budget,
    Budget extremeBudget,
    List<Note> notes) {

  public MeasuredDiameter {
    readings = List.copyOf(readings);
    notes = List.copyOf(notes);
  }

  /**
   * The diameter at 20 °C and its uncertainty.
   *
   * <p>{@code D = (mean of places + c/2)·(1 − α·(T − 20))}, c the most that flat jaws read small.
   * The scale is taken as true at 20 °C; that the instrument may have had the member's temperature
   * is a line of the budget. Uncertainty: scatter within a place, form between places, error limit,
   * resolution, jaws, temperatures.
   *
   * @param side bore or part
   * @param readings at least one, mm on the diameter
   * @param instrument must have a span for the side and the diameter
   * @param memberTemperatureC the member's temperature while measured, °C, -40 to 80
   * @param temperatureUncertaintyC ± °C, rectangular, 0 to 50
   * @param expansionPerK1e6 the member's expansion coefficient, 1e-6/K
   * @param limits the model's choices
   * @return diameter in mm, uncertainties in µm on the diameter
   *     <p>Valid for: a round, oval or tapered face; unseen lobes are not in the budget, see the
   *     notes.
   *     <p>Source: JCGM 100:2008, 4.2 to 5.1; ISO 1.
   * @throws InvalidValue when there is no reading or the instrument cannot measure this
   */
  public static MeasuredDiameter of(
      Side side,
      List<Reading> readings,
      Instrument instrument,
      double memberTemperatureC,
      double temperatureUncertaintyC,
      Estimate expansionPerK1e6,
      FormLimits limits) {
    if (readings.isEmpty()) {
      throw new InvalidValue("readings", "is empty", "at least one reading");
    }
    Thermal thermal = new Thermal(memberTemperatureC, temperatureUncertaintyC, expansionPerK1e6);
    List<Reading> sorted = new ArrayList<>(readings);
    sorted.sort(Reading.ORDER);
    double[] rising = mm(sorted);
    Arrays.sort(rising);
    double rough = Sample.mean(rising);
    Span span = spanOrThrow(instrument, side, rough);
    return new Measurement(side, instrument, span, sorted, thermal, limits).result();
  }

  /** True when the note applies. */
  public boolean has(Note note) {
    return notes.contains(note);
  }

  private static double[] mm(List<Reading> readings) {
    double[] mm = new double[readings.size()];
    for (int i = 0; i < mm.length; i++) {
      mm[i] = readings.get(i).mm();
    }
    return mm;
  }

  private static Span spanOrThrow(Instrument instrument, Side side, double mm) {
    return instrument
        .spanFor(side.use(), mm)
        .orElseThrow(
            () ->
                new InvalidValue(
                    "instrument",
                    instrument.id()
                        + " does not measure "
                        + (side == Side.BORE ? "a bore of " : "a part of ")
                        + Numbers.plain(Places.micrometres(mm) / 1000)
                        + " mm",
                    covered(instrument)));
  }

  private static String covered(Instrument instrument) {
    return instrument.spans().stream()
        .map(
            s ->
                (s.use() == Instrument.Use.INSIDE ? "inside " : "outside ")
                    + Numbers.plain(s.overMm())
                    + " to "
                    + Numbers.plain(s.upToMm())
                    + " mm")
        .collect(Collectors.joining(", "));
  }

  /** The steps from readings to result. */
  private record Measurement(
      Side side,
      Instrument instrument,
      Span span,
      List<Reading> readings,
      Thermal thermal,
      FormLimits limits) {

    MeasuredDiameter result() {
      Places places = Places.of(readings, span.contacts());
      Form form = Form.of(places, span.contacts());
      double mean = places.meanMm();
      double jawsMm = ErrorSources.jawsHalfUm(span, mean) / 1000;
      double read = mean + jawsMm;
      List<Component> ofInstrument = notOfReadings(mean);
      Budget budget = meanBudget(places, ofInstrument);
      double spread = Places.micrometres(Sample.range(mm(readings)));
      return new MeasuredDiameter(
          side,
          instrument,
          span,
          readings,
          thermal.at20(read),
          thermal.at20(form.largestMm() + jawsMm),
          thermal.at20(form.smallestMm() + jawsMm),
          spread,
          form.ovalityUm(),
          form.taperUm(),
          jawsMm * 1000,
          (thermal.at20(read) - read) * 1000,
          budget,
          extremeBudget(places, spread, ofInstrument),
          notes(places, form, budget, jawsMm, spread));
    }

    private Budget meanBudget(Places places, List<Component> ofInstrument) {
      List<Component> lines = new ArrayList<>();
      lines.add(ErrorSources.single(places, false, span, limits).asComponent(places.meanFactor()));
      if (places.all().size() > 1) {
        lines.add(ErrorSources.form(places.betweenUm(), places.all().size()));
      }
      lines.addAll(ofInstrument);
      return new Budget(lines);
    }

    /**
     * An extreme is one reading, or as good as one. Where angles are unknown nobody can tell form
     * from noise, and the worse of both counts.
     */
    private Budget extremeBudget(Places places, double spread, List<Component> ofInstrument) {
      List<Component> lines = new ArrayList<>();
      Single known = ErrorSources.single(places, true, span, limits);
      if (places.angleMissing() && spread > 0) {
        lines.addAll(ErrorSources.unplaced(places, spread, known));
      } else {
        lines.add(known.asComponent(1));
      }
      lines.addAll(ofInstrument);
      return new Budget(lines);
    }

    /** The lines that stay the same whatever the readings say. */
    private List<Component> notOfReadings(double mean) {
      List<Component> lines = new ArrayList<>();
      lines.addAll(ErrorSources.instrument(span, mean));
      lines.addAll(ErrorSources.thermal(thermal, mean, limits));
      return lines;
    }

    private List<Note> notes(
        Places places, Form form, Budget budget, double jawsMm, double spread) {
      List<Note> notes = new ArrayList<>();
      boolean several = readings.size() > 1;
      boolean ovalitySeen = form.ovalityUm().isPresent();
      addIf(notes, !several, Note.ONE_READING);
      addIf(notes, several && places.angleMissing(), Note.ANGLES_NOT_GIVEN);
      addIf(notes, ovalitySeen, Note.TWO_POINT_BLIND_TO_ODD_LOBES);
      addIf(notes, span.contacts() == 3, Note.THREE_POINT_BLIND_TO_OVAL);
      addIf(notes, above(form.ovalityUm(), limits.ovalNoteUm()), Note.OVAL);
      addIf(notes, above(form.taperUm(), limits.taperNoteUm()), Note.TAPERED);
      addIf(notes, jawsMm > 0, Note.JAWS_READ_SMALL);
      double repeat = Math.max(limits.repeatNoteUm(), 2 * span.mpeUm());
      addIf(notes, places.worstRepeatUm() > repeat, Note.READINGS_DISAGREE);
      addIf(notes, places.angleMissing() && spread > repeat, Note.READINGS_SPREAD);
      double share = budget.share(ErrorSources.INSTRUMENT) + budget.share(ErrorSources.JAWS);
      addIf(notes, share > limits.dominantShare(), Note.INSTRUMENT_RULES);
      return notes;
    }

    /** A difference of no more than a resolution step is not form. */
    private boolean above(OptionalDouble um, double limitUm) {
      return um.isPresent() && um.getAsDouble() > Math.max(limitUm, span.resolutionUm());
    }

    private static void addIf(List<Note> notes, boolean condition, Note note) {
      if (condition) {
        notes.add(note);
      }
    }
  }
}
