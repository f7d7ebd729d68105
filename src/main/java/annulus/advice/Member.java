package annulus.advice;

import annulus.catalog.Activity;
import annulus.catalog.Finish;
import annulus.catalog.Instrument;
import annulus.catalog.Material;
import annulus.measure.Reading;
import annulus.measure.Side;
import annulus.quantity.Check;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One of the two members of a joint.
 *
 * @param side bore or part
 * @param name what the shop calls it; may be empty
 * @param material base material
 * @param finish layer on the face
 * @param readings diameters, mm; empty only where the gap itself was given
 * @param instrument what they were read with; empty only where the gap itself was given
 * @param measuredAtC temperature when measured, °C
 * @param measuredPlusMinusC doubt in it, half-width, °C
 * @param arrivesAtC temperature when the joint is closed, °C; empty: that of the room
 * @param state state of the face as it came
 * @param otherDiameterMm outside diameter of the bore's member or inside diameter of the part, mm
 */
public record Member(
    Side side,
    String name,
    Material material,
    Finish finish,
    List<Reading> readings,
    Optional<Instrument> instrument,
    double measuredAtC,
    double measuredPlusMinusC,
    OptionalDouble arrivesAtC,
    FaceState state,
    OptionalDouble otherDiameterMm) {
  public Member {
    readings = List.copyOf(readings);
    Check.within("temperatureC", measuredAtC, -30, 60, "°C");
    Check.within("temperaturePlusMinusC", measuredPlusMinusC, 0, 20, "°C");
  }

  /** State of a face as it came in. */
  public enum FaceState {
    /** Wiped until a white cloth stays white. */
    CLEAN,
    OILY,
    OLD_COMPOUND,
    UNKNOWN
  }

  /** Id of what stands for the measurement of a bearing that nobody measured. */
  public static final String BY_TOLERANCE = "bearing-class-normal";

  /** Whether it is a bearing that goes by its tolerance, as nobody measured it. */
  boolean isByTolerance() {
    return instrument.filter(i -> i.id().equals(BY_TOLERANCE)).isPresent();
  }

  /** Activity of the face before primer: the finish's, or the base material's. */
  public Activity.Level activity() {
    return finish.activity().orElse(material.activity());
  }
}
