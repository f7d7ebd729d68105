package annulus.handback;

import java.time.Instant;

/** An open piece of the time line, {@code start} included, {@code end} not. */
record OpenStretch(Instant start, Instant end) {}
