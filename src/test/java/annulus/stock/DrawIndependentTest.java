package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The ring's volume by the theorem of Pappus and by counting points on a grid. */
class DrawIndependentTest {
  @Property
  void the_draw_is_the_volume_of_a_turned_rectangle(
      @ForAll @IntRange(min = 5_000, max = 200_000) int diameterUm,
      @ForAll @IntRange(min = 1, max = 400) int gapUm,
      @ForAll @IntRange(min = 1_000, max = 90_000) int lengthUm) {
    double d = diameterUm / 1000.0;
    double g = gapUm / 1000.0;
    double l = lengthUm / 1000.0;
    double centroidPath = 2 * Math.PI * (d / 2 - g / 2);
    double ml = centroidPath * g * l / 1000;
    double drawn = Draw.compound(d, gapUm, 0, l, 2, 0).value();
    assertTrue(drawn >= 2 * ml - 1e-9, "never less");
    assertEquals(2 * ml, drawn, 0.00101);
  }

  @Test
  void the_ring_counted_on_a_grid_is_as_large() {
    double outer = 21;
    double inner = 20.6;
    int count = 0;
    double step = 0.01;
    for (double x = step / 2; x < outer; x += step) {
      for (double y = step / 2; y < outer; y += step) {
        double r = Math.hypot(x, y);
        count += r <= outer && r >= inner ? 1 : 0;
      }
    }
    double ml = 4 * count * step * step * 15 / 1000;
    assertEquals(ml, Draw.compound(42, 400, 10, 15, 1, 0).value(), 0.001 * ml + 0.001);
  }

  @Test
  void a_tight_joint_still_draws_the_least_and_primer_follows_the_faces() {
    assertEquals(Millilitres.of(0.01), Draw.compound(40, -5, 0, 20, 2, 0.01));
    // Two faces of 40 mm by 25 mm are 0.00628 m²; 60 mL/m² make 0.377 mL.
    assertEquals(0.377, Draw.primer(40, 25, 2, 60).value(), 0.001);
    assertEquals(Millilitres.NONE, Draw.primer(40, 25, 0, 60));
  }

  /** pi 80 mm 60 mm = 151 cm², so 10 µm of film are 0.1508 mL; half of what is drawn gets there. */
  @Test
  void a_tight_joint_draws_what_wets_its_faces() {
    assertEquals(0.302, Draw.compound(80, -5, 10, 60, 2, 0.01).value(), 0.001);
    assertEquals(Draw.compound(80, 10, 0, 60, 2, 0.01), Draw.compound(80, 4, 10, 60, 2, 0.01));
    assertEquals(Draw.compound(80, 30, 0, 60, 2, 0.01), Draw.compound(80, 30, 10, 60, 2, 0.01));
  }
}
