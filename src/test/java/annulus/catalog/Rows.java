package annulus.catalog;

import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Rows with round figures, and the same rows with one field changed. */
public final class Rows {
  static final Provenance SHOP = new Provenance("shop", Confidence.LOW);

  static final CompoundClass.Cure CURE =
      new CompoundClass.Cure(
          22,
          25,
          Estimate.exactly(1),
          Estimate.exactly(45),
          5,
          15,
          60,
          0.4,
          List.of(
              new CompoundClass.StagePoint(Stage.FIXTURE, 0.01, 0.5),
              new CompoundClass.StagePoint(Stage.HANDLING, 0.1, 1),
              new CompoundClass.StagePoint(Stage.FUNCTIONAL, 0.6, 6),
              new CompoundClass.StagePoint(Stage.FULL, 0.95, 24)),
          72,
          72,
          new Estimate(2, 5, 10));

  /** 100 % at 22 °C, 75/82/90 % at 60 °C, 55/62/70 % at 100 °C; in service to 150 °C. */
  public static final CompoundClass COMPOUND =
      new CompoundClass(
          "thin-lasting",
          "thin",
          "A thin one.",
          CompoundClass.Permanence.LASTING,
          CompoundClass.Role.RETAIN,
          new Interval(10, 50),
          100,
          new Interval(100, 200),
          new Estimate(15, 20, 25),
          CURE,
          new Interval(-50, 150),
          List.of(
              new CompoundClass.HotPoint(22, Estimate.exactly(1)),
              new CompoundClass.HotPoint(60, new Estimate(0.75, 0.82, 0.9)),
              new CompoundClass.HotPoint(100, new Estimate(0.55, 0.62, 0.7))),
          Estimate.exactly(250),
          new Interval(8, 21),
          Estimate.exactly(12),
          Estimate.exactly(6),
          SHOP);

  static final Material MATERIAL =
      new Material(
          "steel",
          "Steel",
          Material.Kind.METAL,
          Estimate.exactly(11.5),
          Estimate.exactly(207),
          Estimate.exactly(0.29),
          Activity.Level.ACTIVE,
          Material.Attack.NONE,
          250,
          "steel",
          Optional.of(Estimate.exactly(350)),
          SHOP);

  static final Finish FINISH =
      new Finish(
          "bare",
          "Bare",
          Finish.Film.BARE,
          Optional.empty(),
          Estimate.exactly(1),
          Estimate.exactly(6),
          SHOP);

  static final Primer PRIMER =
      new Primer(
          "quick",
          "Quick",
          Primer.Application.WIPE,
          Estimate.exactly(4),
          Estimate.exactly(0.8),
          Estimate.exactly(2),
          Estimate.exactly(7),
          Estimate.exactly(0.3),
          24,
          SHOP);

  static final Instrument.Span SPAN =
      new Instrument.Span(Instrument.Use.INSIDE, 25, 50, 4, 1, 3, 0, SHOP);

  static final ReleaseRule RELEASE =
      new ReleaseRule(Consequence.STRANDING, Stage.FUNCTIONAL, false, 2, SHOP);

  private Rows() {}

  /** The row with one field changed; throws what its constructor throws. */
  public static <R extends Record> R with(R row, String field, Object value) {
    RecordComponent[] parts = row.getClass().getRecordComponents();
    Class<?>[] types = Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new);
    Object[] values = new Object[parts.length];
    boolean found = false;
    try {
      for (int i = 0; i < parts.length; i++) {
        boolean here = parts[i].getName().equals(field);
        values[i] = here ? value : parts[i].getAccessor().invoke(row);
        found |= here;
      }
      if (!found) {
        throw new AssertionError(field + " is no field of " + row.getClass());
      }
      Constructor<?> made = row.getClass().getDeclaredConstructor(types);
      @SuppressWarnings("unchecked")
      R changed = (R) made.newInstance(values);
      return changed;
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      throw new AssertionError(e);
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(e.getMessage(), e);
    }
  }
}
