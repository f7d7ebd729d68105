package annulus.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

class ClockWordsTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  private static final ClockWords TIMES =
      new ClockWords(ZONE, Clock.fixed(Instant.parse("2027-12-31T22:59:00Z"), ZONE));

  @Test
  void the_year_stands_where_it_is_another_one_than_now() {
    assertEquals("Thu 23 Dec 10:00", TIMES.full(Instant.parse("2027-12-23T09:00:00Z")));
    assertEquals("Wed 23 Dec 2099 10:00", TIMES.full(Instant.parse("2099-12-23T09:00:00Z")));
    assertEquals("Sat 1 Jan 2028 00:00", TIMES.full(Instant.parse("2027-12-31T22:59:30Z")));
    assertEquals("Thu 31 Dec 2026 09:00", TIMES.past(Instant.parse("2026-12-31T08:00:59Z")));
    assertEquals("Sat 2 Jan 09:00", TIMES.past(Instant.parse("2027-01-02T08:00:59Z")));
  }

  @Test
  void an_hour_that_comes_twice_carries_its_offset() {
    assertEquals("Sun 31 Oct 02:40 (+02:00)", TIMES.past(Instant.parse("2027-10-31T00:40:00Z")));
    assertEquals("Sun 31 Oct 02:40 (+01:00)", TIMES.past(Instant.parse("2027-10-31T01:40:00Z")));
    assertEquals("Sun 31 Oct 02:40 (+01:00)", TIMES.full(Instant.parse("2027-10-31T01:39:30Z")));
    assertEquals("Sun 31 Oct 03:00", TIMES.past(Instant.parse("2027-10-31T02:00:00Z")));
  }
}
