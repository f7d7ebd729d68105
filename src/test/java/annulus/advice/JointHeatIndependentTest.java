package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.JointOrder.CurePlace;
import annulus.cure.TemperatureHistory;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/**
 * The heating of parts and the cure by the clock against the ODE integrator of Hipparchus 4.0.3 and
 * against wall-clock temperatures worked out here by hand.
 */
class JointHeatIndependentTest {
  private static double integrate(
      java.util.function.DoubleBinaryOperator slope, double from, double until) {
    OrdinaryDifferentialEquation equation =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return 1;
          }

          @Override
          public double[] computeDerivatives(double t, double[] y) {
            return new double[] {slope.applyAsDouble(t, y[0])};
          }
        };
    return new DormandPrince853Integrator(1e-3, 60, 1e-9, 1e-9)
        .integrate(equation, new ODEState(0, new double[] {from}), until)
        .getPrimaryState()[0];
  }

  /**
   * A steel cup of 42 mm in a 46 mm shell of 11 mm, as the order says; slow side of
   * data/warm-up.csv.
   */
  private static double slowConstant() {
    double outside = 46;
    double inside = 41.92;
    double face = Math.PI / 4 * (outside * outside - inside * inside);
    double area = 2 * face + Math.PI * (outside + inside) * 11;
    double shell = face * 11 * 1e-9 * 7900 * 500 / (area * 1e-6 * 2);
    double cupFace = Math.PI / 4 * (inside * inside - 37 * 37);
    double cupArea = 2 * cupFace + Math.PI * (inside + 37) * 11;
    double cup = cupFace * 11 * 1e-9 * 7900 * 500 / (cupArea * 1e-6 * 2);
    return Math.max(shell, cup);
  }

  @Test
  void a_cold_part_follows_its_room_at_or_below_the_equation_of_one_lump() {
    JointOrder order =
        DeskData.order(
            "2027-03-11T15:30",
            o ->
                ((com.fasterxml.jackson.databind.node.ObjectNode) o.get("part"))
                    .put("arrivesAtC", 2));
    CurePlace felt =
        JointHeat.felt(
                OrderChange.cure(order, CurePlace.constant(18, 1, "room")),
                JointHeat.Entry.LIES_THERE,
                DeskData.WARM_UP,
                false)
            .orElseThrow();
    double constant = slowConstant();
    for (int minutes = 10; minutes < 400; minutes += 30) {
      double exact = integrate((t, y) -> (18 - y) / constant, 2, minutes * 60.0);
      double ours = felt.history().celsiusAt(minutes * 60.0 - 1e-6);
      assertTrue(ours <= exact + 0.02, minutes + ": " + ours + " above " + exact);
      // steps of 10 min on the cold side lag by no more than 10 min
      double before =
          integrate((t, y) -> (18 - y) / constant, 2, Math.max(1, minutes * 60.0 - 660));
      assertTrue(ours >= before - 0.4, minutes + ": " + ours + " far below " + before);
    }
  }

  /** The invented bench by hand: 13 °C at 06:30, 19 at 09:00 and 18:30, 15 at 22:00. */
  private static double bench(Instant at) {
    ZonedDateTime local = at.atZone(DeskData.VIENNA);
    double minute = local.toLocalTime().toNanoOfDay() / 6e10;
    if (minute < 390) {
      return 15 - 2 * (minute + 120) / 510;
    } else if (minute < 540) {
      return 13 + 6 * (minute - 390) / 150;
    } else if (minute < 1110) {
      return 19;
    } else if (minute < 1320) {
      return 19 - 4 * (minute - 1110) / 210;
    }
    return 15 - 2 * (minute - 1320) / 510;
  }

  @Test
  void away_from_the_changing_hour_the_bench_is_what_the_wall_clock_says() {
    ShopPlace bench = DeskData.SHOP.place("bench").orElseThrow();
    Instant start = DeskData.at("2027-03-27T10:00");
    TemperatureHistory history = bench.climate().from(start);
    for (int minutes = 0; minutes < 3 * 24 * 60; minutes += 7) {
      Instant at = start.plusSeconds(minutes * 60L);
      LocalTime local = at.atZone(DeskData.VIENNA).toLocalTime();
      boolean night = local.isBefore(LocalTime.of(6, 31)) || local.isAfter(LocalTime.of(21, 59));
      if (!night) {
        assertEquals(bench(at), history.celsiusAt(minutes * 60.0), 1e-6, at.toString());
      }
    }
  }

  @Test
  void hours_gathered_by_the_clock_over_both_changing_nights_agree_with_the_integrator() {
    for (String start : new String[] {"2027-03-27T10:00", "2027-10-30T10:00", "2028-02-28T10:00"}) {
      Instant at = DeskData.at(start);
      ShopPlace bench = DeskData.SHOP.place("bench").orElseThrow();
      annulus.cure.ArrheniusRate rate = new annulus.cure.ArrheniusRate(45, 22, 5, 40);
      double closed =
          new annulus.cure.ReducedTime(bench.climate().from(at), rate).hoursAt(48 * 3600);
      double steps = 0;
      for (int hour = 0; hour < 48; hour++) {
        Instant from = at.plusSeconds(hour * 3600L);
        steps +=
            integrate(
                (t, y) -> {
                  double kelvin = bench(from.plusMillis((long) (t * 1000))) + 273.15;
                  return Math.exp(-45_000 / 8.31446261815324 * (1 / kelvin - 1 / 295.15)) / 3600;
                },
                0,
                3600);
      }
      // the night's straight line is an hour shorter or longer: a few hundredths of an hour
      assertEquals(steps, closed, 0.05, start);
    }
  }
}
