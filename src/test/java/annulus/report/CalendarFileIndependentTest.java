package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.report.CalendarFile.Entry;
import annulus.report.CalendarFile.Kind;
import annulus.report.CalendarFile.Method;
import annulus.report.CalendarFile.Sender;
import annulus.report.CalendarFile.Status;
import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.ParseWarning;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

/** Read back by biweekly 0.6.8, a calendar library that shares nothing with this project. */
class CalendarFileIndependentTest {
  private static final Instant STAMP = Instant.parse("2027-03-11T08:00:00Z");
  private static final Instant START = Instant.parse("2027-03-28T00:45:00Z");

  private static Entry entry(Kind kind, String reference, Status status, String note) {
    Duration length = kind == Kind.CHECK ? Duration.ofMinutes(15) : Duration.ZERO;
    return new Entry(kind, "job-17", reference, START, length, 2, status, note);
  }

  private static ICalendar parsed(CalendarFile file) {
    List<List<ParseWarning>> warnings = new ArrayList<>();
    List<ICalendar> all = Biweekly.parse(file.text()).warnings(warnings).all();
    assertEquals(1, all.size());
    assertTrue(warnings.stream().allMatch(List::isEmpty), warnings.toString());
    assertTrue(all.get(0).validate(ICalVersion.V2_0).isEmpty());
    return all.get(0);
  }

  @Test
  void a_check_and_a_ready_entry_are_read_back_whole() {
    ICalendar calendar =
        parsed(
            CalendarFile.of(
                STAMP,
                List.of(
                    entry(Kind.CHECK, "L-0417", Status.CONFIRMED, "Basis: bench at 18 °C; planned"),
                    entry(Kind.READY, "L-0417", Status.TENTATIVE, ""))));
    assertEquals("-//annulus//hand-back//EN", calendar.getProductId().getValue());
    assertEquals(null, calendar.getMethod());
    VEvent check = calendar.getEvents().get(0);
    assertEquals(START, check.getDateStart().getValue().toInstant());
    assertTrue(check.getDateStart().getValue().hasTime());
    assertEquals(START.plusSeconds(900), check.getDateEnd().getValue().toInstant());
    assertEquals(STAMP, check.getDateTimeStamp().getValue().toInstant());
    assertEquals(2, check.getSequence().getValue());
    assertTrue(check.getStatus().isConfirmed());
    assertFalse(check.getTransparency().isTransparent());
    assertEquals("Check: job L-0417", check.getSummary().getValue());
    assertEquals("Basis: bench at 18 °C; planned", check.getDescription().getValue());
    VEvent ready = calendar.getEvents().get(1);
    assertEquals("Ready: job L-0417", ready.getSummary().getValue());
    assertEquals(null, ready.getDateEnd());
    assertTrue(ready.getStatus().isTentative());
    assertTrue(ready.getTransparency().isTransparent());
    assertFalse(ready.getUid().getValue().equals(check.getUid().getValue()));
  }

  @Test
  void a_cancelled_entry_is_sent_with_method_and_organizer() {
    Sender sender = new Sender(Method.CANCEL, "bench@shop.example");
    Entry cancelled = entry(Kind.READY, "L-0417", Status.CANCELLED, "");
    ICalendar calendar = parsed(new CalendarFile(STAMP, Optional.of(sender), List.of(cancelled)));
    assertEquals("CANCEL", calendar.getMethod().getValue());
    VEvent event = calendar.getEvents().get(0);
    assertTrue(event.getStatus().isCancelled());
    assertEquals("bench@shop.example", event.getOrganizer().getEmail());
  }

  @Provide
  Arbitrary<String> texts() {
    Arbitrary<String> part =
        Arbitraries.of(
            "\\", ";", ",", ":", "\"", "n", "N", " ", "\n", "\t", "ü", "°", "€", "水", "🔩");
    return Arbitraries.oneOf(
            part.list().ofMinSize(1).ofMaxSize(30), part.list().ofMinSize(31).ofMaxSize(150))
        .map(parts -> "j" + String.join("", parts) + ".");
  }

  @Property(tries = 500)
  void any_text_survives_folding_and_escaping(@ForAll("texts") String text) {
    CalendarFile file =
        CalendarFile.of(STAMP, List.of(entry(Kind.CHECK, text, Status.CONFIRMED, text)));
    VEvent event = parsed(file).getEvents().get(0);
    assertEquals("Check: job " + text, lineFeeds(event.getSummary().getValue()));
    assertEquals(text, lineFeeds(event.getDescription().getValue()));
  }

  @Property(tries = 500)
  void no_line_is_over_75_octets_and_none_splits_a_character(@ForAll("texts") String text)
      throws CharacterCodingException {
    String file =
        CalendarFile.of(STAMP, List.of(entry(Kind.READY, text, Status.CONFIRMED, text))).text();
    List<String> lines = List.of(file.split("\r\n", -1));
    boolean folded = lines.stream().anyMatch(l -> l.startsWith(" "));
    Statistics.label("folded").collect(folded);
    Statistics.label("folded").coverage(c -> c.check(true).percentage(p -> p > 20));
    byte[] bytes = file.getBytes(StandardCharsets.UTF_8);
    int start = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        assertEquals('\r', bytes[i - 1]);
        assertTrue(i - 1 - start <= 75);
        byte[] line = Arrays.copyOfRange(bytes, start, i);
        StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(line));
        start = i + 1;
      }
    }
    assertEquals(bytes.length, start);
  }

  /** The library turns a line break in a text into the one of the system. */
  private static String lineFeeds(String text) {
    return text.replace(System.lineSeparator(), "\n");
  }
}
