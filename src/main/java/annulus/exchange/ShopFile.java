package annulus.exchange;

import annulus.advice.Shop;
import annulus.advice.ShopPlace;
import annulus.catalog.Policy;
import annulus.handback.Closure;
import annulus.handback.ExtraOpening;
import annulus.handback.OpenSpan;
import annulus.handback.OpeningHours;
import annulus.handback.PromiseRule;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.io.Reader;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Reads a shop's file: hours, closures, promise rule and places, as {@code shop.schema.json}. */
public final class ShopFile {
  private static final String CHECK = "hand-over-check-min";
  private static final String ROUNDING = "promise-rounding-min";
  private static final String TOUCH = "touch-min";

  private final Problems problems = new Problems();
  private final Policy policy;

  private ShopFile(Policy policy) {
    this.policy = policy;
  }

  /**
   * Reads one shop.
   *
   * @param policy numbers that hold where the file says nothing
   * @throws InputRefused with every problem found
   * @throws IOException when the document can't be read
   */
  public static Shop read(String file, Reader reader, Policy policy) throws IOException {
    return new ShopFile(policy).shop(JsonNodes.read(file, reader));
  }

  /** A shop whose hours nobody has told: every time counts as open. */
  public static Shop withoutHours(ZoneId zone, Policy policy) {
    Map<DayOfWeek, List<OpenSpan>> always = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      always.put(day, List.of(OpenSpan.of("00:00", "24:00")));
    }
    return new Shop(
        "",
        OpeningHours.weekly(zone, always),
        new PromiseRule(
            Duration.ofMinutes((long) policy.value(CHECK)), (int) policy.value(ROUNDING)),
        Duration.ofMinutes((long) policy.value(TOUCH)),
        List.of());
  }

  private Shop shop(Node node) {
    Optional<Shop> shop = Fields.of(node, problems, "").flatMap(this::shop);
    problems.throwIfAny();
    return shop.orElseThrow();
  }

  private Optional<Shop> shop(Fields f) {
    f.requiredNumber("format", 1, 1, "");
    f.allow("$schema");
    String name = f.text("name").orElse("");
    f.required("zone");
    ZoneId zone = new ClockTimes(problems).zone(f, "zone").orElse(ZoneOffset.UTC);
    Map<DayOfWeek, List<OpenSpan>> weekly =
        f.requiredObject("hours").map(this::week).orElse(Map.of());
    List<Closure> closures = f.list("closures", n -> element(n, "closures", this::closure));
    List<ExtraOpening> extra =
        f.list("extraOpenings", n -> element(n, "extraOpenings", this::extra));
    long check = whole(f, "handOverCheckMinutes", 0, 480, CHECK);
    long round = whole(f, "roundUpToMinutes", 1, 60, ROUNDING);
    Duration touch = Duration.ofMinutes(whole(f, "touchMinutes", 0, 480, TOUCH));
    List<ShopPlace> places =
        new CurePlaceReader(problems).places(f, zone, touch, policy.value("default-bench-c"));
    f.done();
    return Values.build(
        f,
        problems,
        () ->
            new Shop(
                name,
                new OpeningHours(zone, weekly, closures, extra),
                new PromiseRule(Duration.ofMinutes(check), (int) round),
                touch,
                places));
  }

  private interface ElementReader<T> {
    T read(Fields f);
  }

  private <T> Optional<T> element(Node node, String path, ElementReader<T> read) {
    return Fields.of(node, problems, path)
        .flatMap(f -> Values.build(f, problems, () -> finished(f, read)));
  }

  private static <T> T finished(Fields f, ElementReader<T> read) {
    T value = read.read(f);
    f.done();
    return value;
  }

  private long whole(Fields f, String name, int low, int high, String otherwise) {
    double value = f.number(name, low, high, "min").orElseGet(() -> policy.value(otherwise));
    if (value != Math.rint(value)) {
      problems.add(f.placeOf(name), f.path(name), value + " is not whole", "whole minutes");
    }
    return (long) value;
  }

  private Map<DayOfWeek, List<OpenSpan>> week(Fields f) {
    Map<DayOfWeek, List<OpenSpan>> week = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      week.put(day, spans(f, day.name().toLowerCase(Locale.ROOT)));
    }
    f.done();
    return week;
  }

  private List<OpenSpan> spans(Fields f, String name) {
    return f.list(
        name,
        n ->
            element(
                n, f.path(name), s -> OpenSpan.of(s.requiredText("from"), s.requiredText("to"))));
  }

  private Closure closure(Fields f) {
    LocalDate from = date(f, "from", f.requiredText("from"));
    LocalDate to = f.text("to").map(t -> date(f, "to", t)).orElse(from);
    return new Closure(from, to, f.requiredText("reason"));
  }

  private ExtraOpening extra(Fields f) {
    LocalDate date = date(f, "date", f.requiredText("date"));
    f.required("spans");
    return new ExtraOpening(date, spans(f, "spans"));
  }

  private LocalDate date(Fields f, String name, String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      if (!text.isEmpty()) {
        problems.add(
            f.placeOf(name),
            f.path(name),
            Fields.quoted(text) + " is no date",
            "YYYY-MM-DD, such as 2027-03-17");
      }
      return LocalDate.EPOCH;
    }
  }

  /** A time of day as minutes after 00:00. */
  static int minuteOfDay(String field, String text) {
    if (!text.matches("([01][0-9]|2[0-3]):[0-5][0-9]")) {
      throw new InvalidValue(
          field, Fields.quoted(text) + " is not a time of day", "HH:MM, such as 08:30");
    }
    return Integer.parseInt(text.substring(0, 2)) * 60 + Integer.parseInt(text.substring(3));
  }
}
