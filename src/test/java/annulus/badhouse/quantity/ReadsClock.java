package annulus.badhouse.quantity;

import java.time.Instant;

/** A pure package is told the time. */
public final class ReadsClock {
  Instant time() {
    return Instant.now();
  }
}
