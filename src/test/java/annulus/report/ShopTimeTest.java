package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

class ShopTimeTest {
  private static final Pattern PART = Pattern.compile("(\\d+) (d|h|min|s)");

  @Test
  void safe_times_are_rounded_up() {
    assertEquals("35 min", ShopTime.up(Duration.ofMinutes(35)));
    assertEquals("36 min", ShopTime.up(Duration.ofSeconds(35 * 60 + 1)));
    assertEquals("36 min", ShopTime.up(Duration.ofMinutes(35).plusNanos(1)));
    assertEquals("2 h 10 min", ShopTime.up(Duration.ofMinutes(130)));
    assertEquals("1 h", ShopTime.up(Duration.ofSeconds(59 * 60 + 1)));
    assertEquals("1 d", ShopTime.up(Duration.ofSeconds(86_399)));
    assertEquals("3 d 9 h", ShopTime.up(Duration.ofHours(80).plusMinutes(1)));
    assertEquals("4 d", ShopTime.up(Duration.ofHours(95).plusMinutes(1)));
  }

  @Test
  void time_that_runs_out_is_rounded_down() {
    assertEquals("24 s", ShopTime.down(Duration.ofMillis(24_900)));
    assertEquals("2 min", ShopTime.down(Duration.ofSeconds(179)));
    assertEquals("2 h 10 min", ShopTime.down(Duration.ofSeconds(130 * 60 + 59)));
    assertEquals("0 s", ShopTime.down(Duration.ofMillis(400)));
  }

  @Test
  void a_brief_time_carries_its_offset_where_the_hour_comes_twice() {
    Instant start = Instant.parse("2027-10-30T08:00:00Z");
    ShopTime time = new ShopTime(ZoneId.of("Europe/Vienna"), start);
    assertEquals(
        "Sun 2027-10-31 02:40 (+02:00)", time.brief(Instant.parse("2027-10-31T00:40:00Z")));
    assertEquals(
        "Sun 2027-10-31 02:40 (+01:00)", time.brief(Instant.parse("2027-10-31T01:40:00Z")));
    assertEquals("Sun 2027-10-31 01:40", time.brief(Instant.parse("2027-10-30T23:40:00Z")));
  }

  /** From before the first year to beyond the last short one, with offsets of seconds and none. */
  @Property
  void a_time_is_written_as_the_pattern_says(
      @ForAll @LongRange(min = -70_000_000_000L, max = 400_000_000_000L) long second,
      @ForAll("offsets") ZoneOffset offset) {
    Instant at = Instant.ofEpochSecond(second);
    ShopTime time = new ShopTime(offset, at);
    assertEquals(asPattern("uuuu-MM-dd'T'HH:mm:ssxxx", at, offset), time.iso(at));
    Instant minute = time.after(Duration.ZERO);
    assertEquals(asPattern("EEE uuuu-MM-dd HH:mm (xxx)", minute, offset), time.full(at));
    assertEquals(asPattern("EEE uuuu-MM-dd HH:mm", minute, offset), time.brief(at));
    Statistics.label("year")
        .collect(at.atZone(offset).getYear() < 0 ? "before" : at.atZone(offset).getYear() < 10_000);
  }

  private static String asPattern(String pattern, Instant at, ZoneOffset offset) {
    return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH).format(at.atZone(offset));
  }

  @Provide
  Arbitrary<ZoneOffset> offsets() {
    return Arbitraries.integers()
        .between(-18 * 3600, 18 * 3600)
        .edgeCases(e -> e.add(0, -1, -59, -60, -3600, 3600))
        .map(ZoneOffset::ofTotalSeconds);
  }

  @Property
  void no_rounding_goes_the_unsafe_way(@ForAll @IntRange(min = 0, max = 5_000_000) int seconds) {
    Duration exact = Duration.ofSeconds(seconds);
    assertTrue(read(ShopTime.up(exact)).compareTo(exact) >= 0);
    assertTrue(read(ShopTime.down(exact)).compareTo(exact) <= 0);
    assertTrue(read(ShopTime.up(exact)).minus(exact).compareTo(Duration.ofHours(1)) < 0);
  }

  private static Duration read(String text) {
    Matcher parts = PART.matcher(text);
    Duration sum = Duration.ZERO;
    while (parts.find()) {
      long count = Long.parseLong(parts.group(1));
      sum =
          switch (parts.group(2)) {
            case "d" -> sum.plusDays(count);
            case "h" -> sum.plusHours(count);
            case "min" -> sum.plusMinutes(count);
            default -> sum.plusSeconds(count);
          };
    }
    return sum;
  }

  /** Austria's clock went from 02:00 to 03:00 on 2026-03-29 (Directive 2000/84/EC). */
  @Test
  void after_the_clock_change_the_new_offset_is_said() {
    ShopTime time = new ShopTime(ZoneId.of("Europe/Vienna"), Instant.parse("2026-03-28T17:00:00Z"));
    assertEquals("Sat 2026-03-28 18:00", time.brief(time.start()));
    assertEquals("Sun 2026-03-29 07:00 (+02:00)", time.brief(time.after(Duration.ofHours(12))));
    assertEquals("2026-03-29T07:00:00+02:00", time.iso(time.after(Duration.ofHours(12))));
  }

  /** Austria's clock went back from 03:00 to 02:00 on 2026-10-25 (Directive 2000/84/EC). */
  @Test
  void a_customer_is_told_which_of_two_hours_is_meant_when_the_clock_goes_back() {
    ZoneId zone = ZoneId.of("Europe/Vienna");
    Instant first = Instant.parse("2026-10-25T00:30:00Z");
    Instant second = Instant.parse("2026-10-25T01:30:00Z");
    Advice whole = SampleOrders.goodFit(); // fully cured when it goes: nothing is limited
    assertEquals(
        "Ready on Sunday 25 October 2026, 02:30, the first 02:30 (clock goes back).",
        PromiseText.customer(first, zone, whole));
    assertEquals(
        "Ready on Sunday 25 October 2026, 02:30, the second 02:30 (clock goes back).",
        PromiseText.customer(second, zone, whole));
    assertEquals(
        "Ready on Sunday 25 October 2026, 03:30.",
        PromiseText.customer(second.plusSeconds(3600), zone, whole));
    ShopTime time = new ShopTime(zone, first.minusSeconds(86_400));
    assertEquals("Sun 2026-10-25 02:30 (+02:00)", time.wall(first));
    assertEquals("Sun 2026-10-25 03:30", time.wall(second.plusSeconds(3600)));
  }

  @Test
  void a_clock_time_is_rounded_up_to_the_minute() {
    ShopTime time = new ShopTime(ZoneId.of("UTC"), Instant.parse("2026-03-28T17:00:01Z"));
    assertEquals("Sat 2026-03-28 17:01 (+00:00)", time.full(time.start()));
    assertEquals(Instant.parse("2026-03-28T17:06:00Z"), time.after(Duration.ofMinutes(5)));
  }
}
