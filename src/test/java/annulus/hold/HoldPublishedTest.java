package annulus.hold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.fit.PressAnswer;
import annulus.fit.PressFit;
import annulus.fit.PressGeometry;
import annulus.fit.RingMaterial;
import annulus.quantity.Estimate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Printed and exactly computed holds and volumes. */
class HoldPublishedTest {
  private static Estimate just(double value) {
    return Estimate.exactly(value);
  }

  /**
   * ISO 10123:1990 specimen: collar bore 12.700 mm, 11.10 mm wide: 442.87 mm²; 10 kN: 22.58 MPa.
   */
  @Test
  void the_specimen_area_and_strength_are_the_printed_ones() {
    BondHold specimen = new BondHold(12.7, 11.10, just(22.58), List.of());
    assertEquals(442.87, specimen.areaMm2(), 0.005);
    assertEquals(10_000, specimen.axialN().likely(), 2.3);
  }

  /** Computed: d 25, L 20, 20 MPa, factors 0.8 0.85 0.7 0.5: 31 416 N, 7 477 N, 93.46 N·m. */
  @Test
  void factors_lower_the_hold_as_computed() {
    BondHold full = new BondHold(25, 20, just(20), List.of());
    assertEquals(31_416, full.axialN().likely(), 0.5);
    BondHold lowered =
        full.with(HoldFactor.Kind.GAP, just(0.8))
            .with(HoldFactor.Kind.SURFACE, just(0.85))
            .with(HoldFactor.Kind.HOT_STRENGTH, just(0.7))
            .with(HoldFactor.Kind.DYNAMIC, just(0.5));
    assertEquals(7_477, lowered.axialN().likely(), 0.5);
    assertEquals(93.46, lowered.torqueNm().likely(), 0.005);
  }

  /** Computed: bearing seat d 52, L 15, 12 MPa: 29 405 N, 764.5 N·m. */
  @Test
  void a_bearing_seat_holds_as_computed() {
    BondHold seat = new BondHold(52, 15, just(12), List.of());
    assertEquals(29_405, seat.axialN().likely(), 0.5);
    assertEquals(764.5, seat.torqueNm().likely(), 0.05);
  }

  /**
   * Croccolo, De Agostinis, Mauri: 2454 mm², friction 0.207; 5.4 MPa and 22.9 MPa shear: 58 940 N;
   * 15.8 and 34.7: 93 180 N. Printed to four digits.
   */
  @ParameterizedTest
  @CsvSource({"5.4,22.9,58940", "15.8,34.7,93180"})
  void press_and_bond_add_as_croccolo_measured(double pressure, double shear, double newtons) {
    double length = 2454 / (Math.PI * 30);
    BondHold bond = new BondHold(30, length, just(shear), List.of());
    FrictionHold grip = new FrictionHold(just(0.207 * pressure * 2454), just(pressure), true);
    HybridHold hybrid = new HybridHold(bond, grip, HoldData.TABLES.limits());
    assertEquals(HybridHold.Basis.SUM, hybrid.basis());
    assertEquals(newtons, hybrid.axialN().likely(), 5);
    assertEquals(newtons, hybrid.axialN().low(), 5);
  }

  /** Computed: d 30, D 60, L 30, 20 µm, E 206, friction 0.15, 15 MPa: 64 253 N, 963.8 N·m. */
  @Test
  void a_pressed_and_bonded_pin_adds_up_as_computed() {
    RingMaterial steel = RingMaterial.ductile(206, 0.3, 350);
    PressFit press =
        new PressFit(new PressGeometry(30, 60, 0, 30), steel, steel, just(20), just(0), just(0.15));
    PressAnswer answer = press.answer();
    BondHold bond = new BondHold(30, 30, just(15), List.of());
    HybridHold.Limits open = new HybridHold.Limits(1000, 0);
    HybridHold hybrid = new HybridHold(bond, FrictionHold.of(answer), open);
    assertEquals(64_253, hybrid.axialN().likely(), 0.5);
    assertEquals(963.8, hybrid.torqueNm().likely(), 0.05);
  }

  /** Computed volumes, mm³: 25.1/25/20, 52.2/52/15, 30.4/30/30. */
  @ParameterizedTest
  @CsvSource({"25.1,25,20,78.70,0.005", "52.2,52,15,245.52,0.005", "30.4,30,30,569.26,0.005"})
  void volumes_are_the_computed_ones(
      double bore, double part, double length, double volume, double digit) {
    assertEquals(volume, BondVolume.netMm3(bore, part, length), digit);
  }

  /** The thin-film form pi d L g of the first: 78.54 mm³. */
  @Test
  void the_volume_nears_area_times_gap() {
    double film = Math.PI * 25 * 20 * 0.05;
    assertEquals(78.54, film, 0.005);
    assertEquals(film, BondVolume.netMm3(25.1, 25, 20), 0.003 * film);
  }

  /** Petrie, Handbook of Adhesives and Sealants: no cure above about 0.76 mm between faces. */
  @Test
  void above_the_handbooks_widest_gap_no_factor_is_given() {
    assertTrue(HoldData.TABLES.gapFactor(760).isPresent());
    assertTrue(HoldData.TABLES.gapFactor(760.1).isEmpty());
  }
}
