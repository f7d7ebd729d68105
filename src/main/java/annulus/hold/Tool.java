package annulus.hold;

import annulus.quantity.Check;

/** What a workshop has at hand to undo a joint. */
public sealed interface Tool {

  /**
   * A press or puller.
   *
   * @param capacityN force it can give, N
   */
  record Press(double capacityN) implements Tool {
    public Press {
      Check.positive("capacityN", capacityN, "N");
    }
  }

  /**
   * A wrench or spanner that turns one member in the other.
   *
   * @param capacityNm torque it can give, N·m
   */
  record Twist(double capacityNm) implements Tool {
    public Twist {
      Check.positive("capacityNm", capacityNm, "N·m");
    }
  }

  /** Drift and hammer. */
  record Drift() implements Tool {}

  /**
   * Local heat to weaken the compound, then press or twist while hot.
   *
   * @param celsius temperature of the joint, °C
   */
  record LocalHeat(double celsius) implements Tool {
    public LocalHeat {
      Check.within("celsius", celsius, 20, 400, "°C");
    }
  }
}
