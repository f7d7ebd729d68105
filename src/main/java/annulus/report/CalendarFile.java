package annulus.report;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Calendar entries of jobs as an iCalendar file (RFC 5545). All instants are written in UTC, so the
 * file needs no time zone definition. The text is for UTF-8, with CRLF line ends.
 *
 * <p>An entry keeps its UID for as long as its job and kind stay the same; when it moves, the
 * caller raises the sequence. No entry takes a customer's name: the summary is made from the job's
 * reference.
 *
 * @param stamp when this version was made (DTSTAMP)
 * @param sender who sends it as a message between calendars; empty for a plain file
 * @param entries at least one, no job with two of a kind
 */
public record CalendarFile(Instant stamp, Optional<Sender> sender, List<Entry> entries) {
  /** PRODID of every file this program writes. */
  public static final String PRODUCT = "-//annulus//hand-back//EN";

  /**
   * @throws InvalidValue when empty, an entry comes twice, or a live entry is sent as cancelled
   */
  public CalendarFile {
    entries = List.copyOf(entries);
    if (entries.isEmpty()) {
      throw new InvalidValue("entries", "is empty", "at least one entry");
    }
    Set<String> seen = new HashSet<>();
    for (Entry entry : entries) {
      if (!seen.add(entry.uid())) {
        throw new InvalidValue(
            "entries", entry.jobId() + " has two of a kind", "one check and one ready per job");
      }
    }
    boolean cancels = sender.filter(s -> s.method() == Method.CANCEL).isPresent();
    if (cancels && entries.stream().anyMatch(e -> e.status() != Status.CANCELLED)) {
      throw new InvalidValue(
          "method", "CANCEL with an entry that is not cancelled", "cancelled entries only");
    }
  }

  /** A plain file without METHOD. */
  public static CalendarFile of(Instant stamp, List<Entry> entries) {
    return new CalendarFile(stamp, Optional.empty(), entries);
  }

  /** What an entry is for. */
  public enum Kind {
    /** The check before hand-over: for the shop, keeps the time busy. */
    CHECK("Check", "OPAQUE"),
    /** The promised time: for the counter, a mark that blocks nobody. */
    READY("Ready", "TRANSPARENT");

    private final String word;
    private final String transparency;

    Kind(String word, String transparency) {
      this.word = word;
      this.transparency = transparency;
    }
  }

  /** RFC 5545 section 3.8.1.11. */
  public enum Status {
    TENTATIVE,
    CONFIRMED,
    CANCELLED
  }

  /** RFC 5546 section 3.2. */
  public enum Method {
    PUBLISH,
    CANCEL
  }

  /**
   * Method and organizer, which RFC 5546 asks for together.
   *
   * @param method what the message does
   * @param organizerMail the shop's mail address
   */
  public record Sender(Method method, String organizerMail) {
    public Sender {
      if (!organizerMail.matches("[A-Za-z0-9._+-]+@[A-Za-z0-9.-]+")) {
        throw new InvalidValue(
            "organizerMail", "\"" + organizerMail + "\" is not a mail address", "name@host");
      }
    }
  }

  /**
   * One entry.
   *
   * @param kind check or ready
   * @param jobId the job's lasting identity; the UID comes from it
   * @param jobReference what the shop calls the job; shown in the summary. Never a customer's name
   * @param start UTC instant; rounded up to the second
   * @param length 0 for a mark without extent
   * @param sequence 0 at first, raised by one whenever the entry moves
   * @param status cancelled to take an entry back
   * @param note description, may be empty. Never a customer's name
   */
  public record Entry(
      Kind kind,
      String jobId,
      String jobReference,
      Instant start,
      Duration length,
      int sequence,
      Status status,
      String note) {
    public Entry {
      Check.text("jobId", jobId);
      Check.text("jobReference", jobReference);
      Check.within("sequence", sequence, 0, Integer.MAX_VALUE, "");
      if (length.isNegative()) {
        throw new InvalidValue("length", length + " is negative", "0 or more");
      }
    }

    /** The same for every version of this job's entry, and tells nothing about the job. */
    public String uid() {
      String name = "annulus hand-back\n" + kind.name() + "\n" + jobId;
      return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)).toString();
    }
  }

  /** The whole file; write it as UTF-8. */
  public String text() {
    return text(List.of());
  }

  /**
   * The whole file with entries of other jobs that stood in it before; write it as UTF-8.
   *
   * @param others each from BEGIN:VEVENT to the line end after END:VEVENT
   */
  public String text(List<String> others) {
    ContentLines lines = new ContentLines();
    lines.line("BEGIN", "VCALENDAR").line("VERSION", "2.0").line("PRODID", PRODUCT);
    sender.ifPresent(s -> lines.line("METHOD", s.method().name()));
    entries.forEach(e -> write(e, lines));
    others.forEach(lines::written);
    return lines.line("END", "VCALENDAR").toString();
  }

  private void write(Entry entry, ContentLines lines) {
    lines.line("BEGIN", "VEVENT").text("UID", entry.uid()).instant("DTSTAMP", stamp);
    lines.instant("DTSTART", entry.start());
    if (!entry.length().isZero()) {
      lines.instant("DTEND", entry.start().plus(entry.length()));
    }
    lines.line("SEQUENCE", Integer.toString(entry.sequence()));
    lines.line("STATUS", entry.status().name());
    sender.ifPresent(s -> lines.line("ORGANIZER", "mailto:" + s.organizerMail()));
    lines.text("SUMMARY", entry.kind().word + ": job " + entry.jobReference());
    if (!entry.note().isEmpty()) {
      lines.text("DESCRIPTION", entry.note());
    }
    lines.line("TRANSP", entry.kind().transparency).line("END", "VEVENT");
  }
}
