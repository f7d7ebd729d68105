package annulus.exchange;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/** Reads clock times with an offset, or local ones in a zone where they are not ambiguous. */
final class ClockTimes {
  private static final String USUAL = "0000-00-00T00:00";

  private final Problems problems;

  ClockTimes(Problems problems) {
    this.problems = problems;
  }

  Optional<ZoneId> zone(Fields f, String name) {
    Optional<String> text = f.text(name);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(ZoneId.of(text.get()));
    } catch (DateTimeException e) {
      problems.add(
          f.placeOf(name),
          f.path(name),
          Fields.quoted(text.get()) + " is no time zone",
          "a zone such as Europe/Dublin or an offset such as +01:00");
      return Optional.empty();
    }
  }

  Optional<Instant> instant(Fields f, String name, ZoneId zone) {
    Optional<String> text = f.text(name);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    String written = text.get().replace(' ', 'T');
    try {
      if (written.length() > USUAL.length() && hasOffset(written)) {
        return Optional.of(OffsetDateTime.parse(written).toInstant());
      }
      return local(f, name, parsed(written), zone);
    } catch (DateTimeException e) {
      problems.add(
          f.placeOf(name),
          f.path(name),
          Fields.quoted(text.get()) + " is no date and time",
          "such as 2026-11-25T15:30 or 2026-11-25T15:30+01:00");
      return Optional.empty();
    }
  }

  /** As {@link LocalDateTime#parse}; the usual {@code 2026-11-25T15:30} without its formatter. */
  static LocalDateTime parsed(String written) {
    return isUsual(written)
        ? LocalDateTime.of(
            number(written, 0, 4),
            number(written, 5, 7),
            number(written, 8, 10),
            number(written, 11, 13),
            number(written, 14, 16))
        : LocalDateTime.parse(written);
  }

  private static boolean isUsual(String written) {
    return looksLike(USUAL, written);
  }

  /** Whether it ends with {@code Z}, {@code +01:00} or {@code +0100}. */
  static boolean hasOffset(String written) {
    int sign = Math.max(written.lastIndexOf('+'), written.lastIndexOf('-'));
    String after = written.substring(sign + 1);
    return written.endsWith("Z") || looksLike("00:00", after) || looksLike("0000", after);
  }

  /** Whether it has a digit where the pattern has 0, and else the same characters. */
  private static boolean looksLike(String pattern, String written) {
    if (written.length() != pattern.length()) {
      return false;
    }
    for (int i = 0; i < pattern.length(); i++) {
      char c = written.charAt(i);
      boolean digit = c >= '0' && c <= '9';
      if (pattern.charAt(i) == '0' ? !digit : c != pattern.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private static int number(String written, int from, int to) {
    int number = 0;
    for (int i = from; i < to; i++) {
      number = 10 * number + written.charAt(i) - '0';
    }
    return number;
  }

  private Optional<Instant> local(Fields f, String name, LocalDateTime local, ZoneId zone) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.size() == 1) {
      return Optional.of(local.toInstant(offsets.get(0)));
    }
    boolean missing = offsets.isEmpty();
    String problem =
        local
            + (missing ? " does not exist in " : " happens twice in ")
            + zone
            + (missing ? ": the clocks go forward" : ": the clocks go back");
    String allowed =
        missing
            ? "another time"
            : local + offsets.get(0).toString() + " or " + local + offsets.get(1);
    problems.add(f.placeOf(name), f.path(name), problem, allowed);
    return Optional.empty();
  }
}
