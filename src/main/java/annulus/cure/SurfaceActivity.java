package annulus.cure;

import annulus.quantity.Check;
import java.util.OptionalDouble;

/**
 * How a member's surface drives the cure: as a rate beside the reference surface, or not at all.
 */
public sealed interface SurfaceActivity {
  /**
   * A surface on which the compound cures.
   *
   * @param rate cure rate relative to the reference active surface, above 0
   */
  record Active(double rate) implements SurfaceActivity {
    /**
     * @throws annulus.quantity.InvalidValue when not above 0
     */
    public Active {
      Check.positive("rate", rate, "");
    }
  }

  /**
   * A surface on which the compound does not cure by itself.
   *
   * @param rateBesideActive the rate the data credits it when the other member is active; empty
   *     when it is credited none
   */
  record Inert(OptionalDouble rateBesideActive) implements SurfaceActivity {
    /**
     * @throws annulus.quantity.InvalidValue when present and not above 0
     */
    public Inert {
      rateBesideActive.ifPresent(rate -> Check.positive("rateBesideActive", rate, ""));
    }

    /** Inert, and credited no rate even when the other member is active. */
    public static Inert always() {
      return new Inert(OptionalDouble.empty());
    }
  }

  /**
   * This surface under a primer: active, at the primer's rate or its own, whichever is higher.
   *
   * @param primerRate rate of a primed surface relative to the reference active surface, above 0
   */
  default Active primed(double primerRate) {
    double own = this instanceof Active active ? active.rate() : 0;
    return new Active(Math.max(own, Check.positive("primerRate", primerRate, "")));
  }

  /**
   * Cure rate of a joint of two surfaces.
   *
   * <p>{@code x = 2/(1/x₁ + 1/x₂)}; an inert member counts with the rate credited beside an active
   * one, two inert members have no rate.
   *
   * @param one a member's surface
   * @param other the other member's surface
   * @return rate relative to the reference pair, above 0; empty when the joint cannot cure
   *     <p>Valid for: surfaces clean and dry, declared by the catalog.
   *     <p>Source: common practice, no source.
   */
  static OptionalDouble pairRate(SurfaceActivity one, SurfaceActivity other) {
    OptionalDouble first = rateBeside(one, other);
    OptionalDouble second = rateBeside(other, one);
    if (first.isEmpty() || second.isEmpty()) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(2 / (1 / first.getAsDouble() + 1 / second.getAsDouble()));
  }

  /**
   * Time factor of a joint of two surfaces.
   *
   * <p>{@code F_surface = 1/x}, x from {@link #pairRate}.
   *
   * @param one a member's surface
   * @param other the other member's surface
   * @return factor on the time, above 0; empty when the joint cannot cure
   *     <p>Valid for: as {@link #pairRate}.
   *     <p>Source: as {@link #pairRate}.
   */
  static OptionalDouble surfaceFactor(SurfaceActivity one, SurfaceActivity other) {
    OptionalDouble rate = pairRate(one, other);
    return rate.isEmpty() ? rate : OptionalDouble.of(1 / rate.getAsDouble());
  }

  private static OptionalDouble rateBeside(SurfaceActivity one, SurfaceActivity other) {
    if (one instanceof Active active) {
      return OptionalDouble.of(active.rate());
    }
    Inert inert = (Inert) one;
    return other instanceof Active ? inert.rateBesideActive() : OptionalDouble.empty();
  }
}
