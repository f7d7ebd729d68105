package annulus.handback;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Invented shops near nights on which the clock changes, for properties. */
final class DrawnShops {
  private DrawnShops() {}

  /** A shop and an instant within about two days of a clock change of its zone, in 2027. */
  record Drawn(OpeningHours hours, Instant instant) {}

  private record Night(String zone, String change) {}

  private static final List<Night> NIGHTS =
      List.of(
          new Night("Europe/Berlin", "2027-03-28T01:00:00Z"),
          new Night("Europe/Berlin", "2027-10-31T01:00:00Z"),
          new Night("America/New_York", "2027-03-14T07:00:00Z"),
          new Night("America/New_York", "2027-11-07T06:00:00Z"),
          new Night("Australia/Lord_Howe", "2027-04-03T15:00:00Z"),
          new Night("Australia/Lord_Howe", "2027-10-02T15:30:00Z"),
          new Night("America/Havana", "2027-03-14T05:00:00Z"),
          new Night("Asia/Kathmandu", "2028-02-29T00:00:00Z"));

  static Arbitrary<Drawn> drawn() {
    Arbitrary<Integer> minutes = Arbitraries.integers().between(-3 * 1440, 2 * 1440);
    return Combinators.combine(Arbitraries.of(NIGHTS), minutes, week(), closedDays(), extra())
        .as(
            (night, minute, week, closed, extra) -> {
              Instant instant = Instant.parse(night.change()).plusSeconds(minute * 60L);
              LocalDate date = LocalDate.ofInstant(instant, ZoneId.of(night.zone()));
              List<Closure> closures =
                  closed.stream().map(d -> Closure.on(date.plusDays(d), "closed")).toList();
              List<ExtraOpening> extras =
                  closed.isEmpty() || extra.isEmpty()
                      ? List.of()
                      : List.of(new ExtraOpening(date.plusDays(closed.get(0)), extra));
              return new Drawn(
                  new OpeningHours(ZoneId.of(night.zone()), week, closures, extras), instant);
            })
        .withoutEdgeCases();
  }

  private static Arbitrary<Map<DayOfWeek, List<OpenSpan>>> week() {
    return spans()
        .list()
        .ofSize(7)
        .map(
            days -> {
              Map<DayOfWeek, List<OpenSpan>> week = new EnumMap<>(DayOfWeek.class);
              for (DayOfWeek day : DayOfWeek.values()) {
                week.put(day, days.get(day.getValue() - 1));
              }
              return week;
            });
  }

  private static Arbitrary<List<Integer>> closedDays() {
    return Arbitraries.integers().between(-1, 4).list().ofMaxSize(2);
  }

  private static Arbitrary<List<OpenSpan>> extra() {
    return spans();
  }

  /** Up to three spans between sorted cuts; cuts at the night hours come often. */
  private static Arbitrary<List<OpenSpan>> spans() {
    Arbitrary<Integer> cut =
        Arbitraries.oneOf(
            Arbitraries.integers().between(0, 1440),
            Arbitraries.of(0, 60, 90, 115, 120, 125, 150, 180, 480, 720, 780, 1080, 1440));
    return cut.set()
        .ofMaxSize(6)
        .map(
            cuts -> {
              List<Integer> sorted = cuts.stream().sorted().toList();
              List<OpenSpan> spans = new ArrayList<>();
              for (int i = 1; i < sorted.size(); i += 2) {
                spans.add(new OpenSpan(sorted.get(i - 1), sorted.get(i)));
              }
              return spans;
            });
  }
}
