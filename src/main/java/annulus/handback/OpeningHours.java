package annulus.handback;

import annulus.quantity.InvalidValue;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * When a shop is open: it is open at an instant exactly when the wall clock of its zone, read at
 * that instant, lies in one of the date's spans (start included, end not).
 *
 * <p>A date's spans are the weekly hours of its weekday, unless a closure covers the date, together
 * with the date's extra openings. A closure takes away the weekly hours only, so a shortened day is
 * a closure plus an extra opening.
 *
 * <p>Clock changes follow from the definition. In spring the wall-clock times that are skipped
 * never come, so the shop is open for less time that day. In autumn the repeated times come twice,
 * and the shop is open both times.
 *
 * <p>Every search looks no further than {@link #SEARCH_LIMIT}; "never" is an empty answer, not an
 * error, and so is a shop without any hours.
 *
 * @param zone the shop's time zone
 * @param weekly spans per weekday, in order; a missing or empty weekday is closed
 * @param closures dates on which the weekly hours do not hold
 * @param extraOpenings additional hours per date, one entry per date
 */
public record OpeningHours(
    ZoneId zone,
    Map<DayOfWeek, List<OpenSpan>> weekly,
    List<Closure> closures,
    List<ExtraOpening> extraOpenings) {

  /** How far every search looks: two years and a leap day. */
  public static final Duration SEARCH_LIMIT = Duration.ofDays(731);

  private static final Duration MINUTE = Duration.ofMinutes(1);

  /**
   * @throws InvalidValue when a part lacks, or spans of one date overlap
   */
  public OpeningHours {
    if (zone == null) {
      throw new InvalidValue("zone", "is missing", "a time zone such as Europe/Vienna");
    }
    Map<DayOfWeek, List<OpenSpan>> ordered = new EnumMap<>(DayOfWeek.class);
    weekly.forEach((day, spans) -> ordered.put(day, inOrder(day.name(), spans)));
    weekly = Collections.unmodifiableMap(ordered);
    closures = List.copyOf(closures);
    extraOpenings = List.copyOf(extraOpenings);
    Set<LocalDate> seen = new HashSet<>();
    for (ExtraOpening extra : extraOpenings) {
      if (!seen.add(extra.date())) {
        throw new InvalidValue("extraOpenings", extra.date() + " comes twice", "each date once");
      }
      inOrder("extraOpenings", spansOn(extra.date(), weekly, closures, extraOpenings));
    }
  }

  /** Weekly hours without closures or extra openings. */
  public static OpeningHours weekly(ZoneId zone, Map<DayOfWeek, List<OpenSpan>> weekly) {
    return new OpeningHours(zone, weekly, List.of(), List.of());
  }

  /** The spans of one local date, in order of start; empty when closed all day. */
  public List<OpenSpan> spansOn(LocalDate date) {
    return spansOn(date, weekly, closures, extraOpenings);
  }

  /** Why the weekly hours do not hold on this date; empty when they do. */
  public Optional<String> closureReason(LocalDate date) {
    return closures.stream().filter(c -> c.covers(date)).map(Closure::reason).findFirst();
  }

  public boolean isOpen(Instant instant) {
    LocalDateTime local = LocalDateTime.ofInstant(instant, zone);
    int second = local.toLocalTime().toSecondOfDay();
    return spansOn(local.toLocalDate()).stream().anyMatch(s -> s.contains(second));
  }

  /** The first open instant at or after {@code from}; empty when there is none within the limit. */
  public Optional<Instant> nextOpenAtOrAfter(Instant from) {
    return nextOpenFor(from, Duration.ZERO);
  }

  /**
   * The first instant at or after {@code from} from which the shop stays open for all of {@code
   * work} without a break.
   *
   * @param work 0 or more; for 0 the first open instant
   * @return empty when no stretch within the limit is long enough
   */
  public Optional<Instant> nextOpenFor(Instant from, Duration work) {
    requireNotNegative(work);
    OpenStretches stretches = stretches(from, from.plus(SEARCH_LIMIT));
    Instant start = null;
    Instant end = null;
    while (stretches.hasNext()) {
      OpenStretch piece = stretches.next();
      start = piece.start().equals(end) ? start : piece.start();
      end = piece.end();
      if (!start.plus(work).isAfter(end)) {
        return Optional.of(start);
      }
    }
    return Optional.empty();
  }

  /**
   * The earliest instant by which {@code work} of open time has passed since {@code from}; closed
   * time does not count. May be a closing time. For no work it is {@code from} itself.
   *
   * @param work 0 or more
   * @return empty when the open time within the limit is not enough
   */
  public Optional<Instant> addOpenTime(Instant from, Duration work) {
    requireNotNegative(work);
    if (work.isZero()) {
      return Optional.of(from);
    }
    OpenStretches stretches = stretches(from, from.plus(SEARCH_LIMIT));
    Duration left = work;
    while (stretches.hasNext()) {
      OpenStretch piece = stretches.next();
      Duration length = Duration.between(piece.start(), piece.end());
      if (left.compareTo(length) <= 0) {
        return Optional.of(piece.start().plus(left));
      }
      left = left.minus(length);
    }
    return Optional.empty();
  }

  /**
   * Open time in {@code [from, to)}; zero when {@code to} is not after {@code from}. Walks the
   * whole range, however long.
   */
  public Duration openTimeBetween(Instant from, Instant to) {
    OpenStretches stretches = stretches(from, to);
    Duration open = Duration.ZERO;
    while (stretches.hasNext()) {
      OpenStretch piece = stretches.next();
      Instant end = piece.end().isBefore(to) ? piece.end() : to;
      open = open.plus(Duration.between(piece.start(), end));
    }
    return open;
  }

  /**
   * The instant itself when open, else one minute before the closing that came last before it (a
   * closing time is not open, and all hours are whole minutes).
   *
   * @return empty when there is none within the limit
   */
  public Optional<Instant> lastOpenAtOrBefore(Instant instant) {
    if (isOpen(instant)) {
      return Optional.of(instant);
    }
    for (int days = 1; days <= SEARCH_LIMIT.toDays(); days++) {
      Instant dayEnd = instant.minus(Duration.ofDays(days - 1L));
      Optional<Instant> closing = lastClosing(instant.minus(Duration.ofDays(days)), dayEnd);
      if (closing.isPresent()) {
        return closing.map(c -> c.minus(MINUTE));
      }
    }
    return Optional.empty();
  }

  OpenStretches stretches(Instant from, Instant until) {
    return new OpenStretches(this, from, until);
  }

  /** A copy in order of start. */
  static List<OpenSpan> inOrder(String field, List<OpenSpan> spans) {
    List<OpenSpan> ordered = new ArrayList<>(spans);
    ordered.sort(Comparator.comparingInt(OpenSpan::fromMinute));
    for (int i = 1; i < ordered.size(); i++) {
      OpenSpan before = ordered.get(i - 1);
      OpenSpan span = ordered.get(i);
      if (span.overlaps(before)) {
        throw new InvalidValue(
            field,
            span.text() + " overlaps " + before.text(),
            "spans that do not overlap; they may touch");
      }
    }
    return List.copyOf(ordered);
  }

  private Optional<Instant> lastClosing(Instant from, Instant until) {
    OpenStretches stretches = stretches(from, until);
    Optional<Instant> last = Optional.empty();
    while (stretches.hasNext()) {
      last = Optional.of(stretches.next().end());
    }
    return last;
  }

  private static List<OpenSpan> spansOn(
      LocalDate date,
      Map<DayOfWeek, List<OpenSpan>> weekly,
      List<Closure> closures,
      List<ExtraOpening> extraOpenings) {
    boolean closed = closures.stream().anyMatch(c -> c.covers(date));
    List<OpenSpan> usual = closed ? List.of() : weekly.getOrDefault(date.getDayOfWeek(), List.of());
    for (ExtraOpening extra : extraOpenings) {
      if (extra.date().equals(date)) {
        List<OpenSpan> all = new ArrayList<>(usual);
        all.addAll(extra.spans());
        all.sort(Comparator.comparingInt(OpenSpan::fromMinute));
        return List.copyOf(all);
      }
    }
    return usual;
  }

  private static void requireNotNegative(Duration work) {
    if (work.isNegative()) {
      throw new InvalidValue("work", work + " is negative", "0 or more");
    }
  }
}
