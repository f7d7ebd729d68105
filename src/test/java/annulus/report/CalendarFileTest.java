package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import annulus.report.CalendarFile.Entry;
import annulus.report.CalendarFile.Kind;
import annulus.report.CalendarFile.Method;
import annulus.report.CalendarFile.Sender;
import annulus.report.CalendarFile.Status;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CalendarFileTest {
  private static final Instant STAMP = Instant.parse("2027-03-11T08:00:00Z");

  private static Entry entry(Kind kind, String jobId, String start, int sequence, Status status) {
    return new Entry(
        kind, jobId, "L-0417", Instant.parse(start), Duration.ZERO, sequence, status, "");
  }

  @Test
  void a_moved_or_cancelled_entry_keeps_its_uid() {
    Entry first = entry(Kind.READY, "17", "2027-03-12T09:00:00Z", 0, Status.CONFIRMED);
    Entry moved = entry(Kind.READY, "17", "2027-03-12T12:00:00Z", 1, Status.CONFIRMED);
    Entry cancelled = entry(Kind.READY, "17", "2027-03-12T12:00:00Z", 2, Status.CANCELLED);
    assertEquals(first.uid(), moved.uid());
    assertEquals(first.uid(), cancelled.uid());
    assertNotEquals(
        first.uid(), entry(Kind.CHECK, "17", "2027-03-12T09:00:00Z", 0, Status.CONFIRMED).uid());
    assertNotEquals(
        first.uid(), entry(Kind.READY, "18", "2027-03-12T09:00:00Z", 0, Status.CONFIRMED).uid());
  }

  @Test
  void the_uid_tells_nothing_about_the_job() {
    Entry entry = entry(Kind.READY, "Lindqvist", "2027-03-12T09:00:00Z", 0, Status.CONFIRMED);
    assertFalse(entry.uid().contains("Lindqvist"));
    assertTrue(entry.uid().matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}"));
  }

  @Test
  void a_part_of_a_second_never_makes_an_entry_earlier() {
    CalendarFile file =
        CalendarFile.of(
            STAMP,
            List.of(
                entry(Kind.READY, "17", "2027-03-12T08:59:59.000000001Z", 0, Status.CONFIRMED)));
    assertTrue(file.text().contains("DTSTART:20270312T090000Z\r\n"));
  }

  @Test
  void the_same_entries_give_the_same_bytes() {
    List<Entry> entries =
        List.of(entry(Kind.READY, "17", "2027-03-12T09:00:00Z", 0, Status.CONFIRMED));
    assertEquals(CalendarFile.of(STAMP, entries).text(), CalendarFile.of(STAMP, entries).text());
  }

  @Test
  void what_a_calendar_could_not_tell_apart_is_refused() {
    Entry ready = entry(Kind.READY, "17", "2027-03-12T09:00:00Z", 0, Status.CONFIRMED);
    Entry again = entry(Kind.READY, "17", "2027-03-13T09:00:00Z", 1, Status.CONFIRMED);
    assertThrows(InvalidValue.class, () -> CalendarFile.of(STAMP, List.of()));
    assertThrows(InvalidValue.class, () -> CalendarFile.of(STAMP, List.of(ready, again)));
    Optional<Sender> cancel = Optional.of(new Sender(Method.CANCEL, "bench@shop.example"));
    assertThrows(InvalidValue.class, () -> new CalendarFile(STAMP, cancel, List.of(ready)));
    assertThrows(
        InvalidValue.class,
        () -> entry(Kind.READY, "17", "2027-03-12T09:00:00Z", -1, Status.CONFIRMED));
  }

  @Test
  void a_control_character_and_a_broken_address_are_refused() {
    Entry bell =
        new Entry(Kind.CHECK, "17", "a\u0007b", STAMP, Duration.ZERO, 0, Status.CONFIRMED, "");
    CalendarFile file = CalendarFile.of(STAMP, List.of(bell));
    InvalidValue refused = assertThrows(InvalidValue.class, file::text);
    assertEquals("character U+0007 cannot be written", refused.problem());
    assertThrows(InvalidValue.class, () -> new Sender(Method.PUBLISH, "a@b.example\r\nATTENDEE:x"));
  }
}
