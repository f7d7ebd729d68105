package annulus.report;

import annulus.handback.Promise;
import annulus.quantity.Check;
import annulus.report.CalendarFile.Entry;
import annulus.report.CalendarFile.Kind;
import annulus.report.CalendarFile.Status;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * The two calendar entries of a job: the check for the shop, ready for the counter. The sequence is
 * raised only when an entry moved, was taken back or comes back; a promise that is gone cancels the
 * entries that were there.
 */
public final class JobCalendar {
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ENGLISH);

  /**
   * An entry as written before.
   *
   * @param sequence its SEQUENCE
   * @param start its DTSTART as written
   * @param cancelled whether it was taken back
   */
  public record Before(int sequence, String start, boolean cancelled) {}

  private final String job;
  private final Instant stamp;
  private final Function<String, Optional<Before>> before;

  /**
   * @param job the job's reference; the entries' identity comes from it
   * @param stamp when this version is made
   * @param before the entry of a UID in the last version
   */
  public JobCalendar(String job, Instant stamp, Function<String, Optional<Before>> before) {
    this.job = Check.text("job", job);
    this.stamp = stamp;
    this.before = before;
  }

  /**
   * The file, or empty when there is nothing to enter and nothing to take back.
   *
   * @param promise what is promised
   * @param check length of the check
   * @param note what the shop reads in the check's description
   * @param ready what the counter reads in that of the hand-over; may be empty
   */
  public Optional<CalendarFile> file(
      Optional<Promise> promise, Duration check, String note, String ready) {
    List<Entry> entries = new ArrayList<>();
    if (promise.isPresent()) {
      entries.add(entry(Kind.CHECK, promise.get().checkStart(), check, note));
      entries.add(entry(Kind.READY, promise.get().promise(), Duration.ZERO, ready));
    } else {
      cancelled(Kind.CHECK).ifPresent(entries::add);
      cancelled(Kind.READY).ifPresent(entries::add);
    }
    return entries.isEmpty() ? Optional.empty() : Optional.of(CalendarFile.of(stamp, entries));
  }

  private Entry entry(Kind kind, Instant start, Duration length, String note) {
    Entry first = new Entry(kind, job, job, start, length, 0, Status.CONFIRMED, note);
    Optional<Before> last = before.apply(first.uid());
    int sequence = last.map(l -> same(l, start) ? l.sequence() : l.sequence() + 1).orElse(0);
    return new Entry(kind, job, job, start, length, sequence, Status.CONFIRMED, note);
  }

  private static boolean same(Before last, Instant start) {
    Instant second = Instant.ofEpochSecond(start.getEpochSecond() + (start.getNano() > 0 ? 1 : 0));
    String written = UTC.format(second.atOffset(ZoneOffset.UTC));
    return !last.cancelled() && last.start().equals(written);
  }

  private Optional<Entry> cancelled(Kind kind) {
    String uid = new Entry(kind, job, job, stamp, Duration.ZERO, 0, Status.CONFIRMED, "").uid();
    Optional<Before> last = before.apply(uid).filter(l -> l.start().matches("[0-9]{8}T[0-9]{6}Z"));
    return last.map(
        l -> {
          Instant start = LocalDateTime.parse(l.start(), UTC).toInstant(ZoneOffset.UTC);
          int sequence = l.cancelled() ? l.sequence() : l.sequence() + 1;
          return new Entry(kind, job, job, start, Duration.ZERO, sequence, Status.CANCELLED, "");
        });
  }
}
