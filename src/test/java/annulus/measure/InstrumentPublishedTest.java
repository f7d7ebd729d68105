package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Instrument;
import annulus.quantity.Estimate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Caliper jaws (chord of a circle, computed) and ISO 1 (NPL example). */
class InstrumentPublishedTest {

  @ParameterizedTest
  @CsvSource({"22, 1, 0.023", "42, 1, 0.012", "42, 2, 0.048"})
  void flat_jaws_read_a_bore_small(double diameter, double flat, double error) {
    assertEquals(error, Jaws.readSmallMm(diameter, flat), 5e-4);
    double direct = diameter - Math.sqrt(diameter * diameter - flat * flat);
    assertEquals(direct, Jaws.readSmallMm(diameter, flat), 1e-12);
  }

  @Test
  void a_reading_one_millimetre_beside_the_centre_is_a_chord() {
    // D − √(D² − 4e²): 42 mm, e 1 mm
    assertEquals(0.048, Jaws.readSmallMm(42, 2 * 1.0), 5e-4);
  }

  @Test
  void half_the_jaws_error_is_added_to_a_bore_and_the_other_half_is_doubt() {
    MeasuredDiameter bore = Samples.bore(Samples.CALIPER, Samples.readings(42));
    double full = 1000 * (42 - Math.sqrt(42 * 42 - 1));
    assertEquals(full / 2, bore.correctionUm(), 1e-6);
    assertEquals(42 + full / 2000, bore.meanMm(), 1e-9);
    double u = bore.budget().component("jaws").orElseThrow().standardUm();
    assertEquals(full / 2 / Math.sqrt(3), u, 1e-6);
    assertTrue(bore.has(Note.JAWS_READ_SMALL));
    MeasuredDiameter part = Samples.part(Samples.CALIPER, Samples.readings(42));
    assertEquals(0, part.correctionUm());
    assertEquals(42, part.meanMm());
  }

  @Test
  void a_steel_rod_comes_back_to_20_degrees() {
    // NPL: 500.035 mm read at 23.7 °C, 11.7e-6/K
    assertEquals(500.013353485, ReferenceLength.at20(500.035, 23.7, 11.7), 1e-9);
    assertEquals(500.035, ReferenceLength.at20(500.035, 20, 11.7));
  }

  @Test
  void an_aluminium_bore_on_a_steel_part_opens_5_75_um_in_10_kelvin() {
    // computed: 50 mm · (23 − 11.5)e-6 · 10 K, diametral
    double boreRead = 50 * (1 + 23e-6 * 10);
    double partRead = 50 * (1 + 11.5e-6 * 10);
    MeasuredDiameter bore = at30(Side.BORE, Samples.DIAL_BORE, boreRead, Samples.ALUMINIUM);
    MeasuredDiameter part = at30(Side.PART, Samples.CALIPER, partRead, Samples.STEEL);
    double openedUm = 1000 * ((boreRead - partRead) - (bore.meanMm() - part.meanMm()));
    assertEquals(5.75, openedUm, 0.01);
    assertEquals(-11.5, bore.temperatureCorrectionUm(), 0.01);
    assertEquals(-5.75, part.temperatureCorrectionUm(), 0.01);
  }

  private static MeasuredDiameter at30(
      Side side, Instrument instrument, double mm, Estimate expansion) {
    List<Reading> one = List.of(Reading.of(mm));
    return MeasuredDiameter.of(side, one, instrument, 30, 1, expansion, Samples.LIMITS);
  }

  @Test
  void temperatures_have_their_lines_in_the_budget() {
    Estimate range = new Estimate(22, 23, 24.5);
    Budget budget =
        MeasuredDiameter.of(
                Side.BORE, Samples.readings(50), Samples.DIAL_BORE, 30, 2, range, Samples.LIMITS)
            .budget();
    double root3 = Math.sqrt(3);
    // 50 mm = 0.05 µm per 1e-6: α·ΔT as JCGM 100 H.1.3.4 and H.1.3.5
    assertEquals(0.05 * 24.5 * 2 / root3, standard(budget, "temperature"), 1e-9);
    assertEquals(0.05 * 1.5 * 10 / root3, standard(budget, "expansion"), 1e-9);
    assertEquals(0.05 * 11.5 * 10 / root3, standard(budget, "scale-temperature"), 1e-9);
  }

  private static double standard(Budget budget, String id) {
    return budget.component(id).orElseThrow().standardUm();
  }
}
