package annulus.exchange;

import annulus.cure.PieceConsumer;
import annulus.exchange.LoggerReading.Gap;
import annulus.exchange.LoggerReading.SkipReason;
import annulus.exchange.LoggerReading.Skipped;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The second pass: rows in the order of time become linear pieces. In the autumn hour that comes
 * twice the second time round is known by the clock running back. A row in the spring hour that
 * does not exist shows that the logger's clock was not put forward: it and all later rows are in
 * winter time. Were the clock put forward later after all, they would come out an hour late, which
 * is the slow side.
 *
 * <p>Rows of one time, or so close that they are one look at several probes, are one reading: the
 * coldest of them. It is held back until a later row comes, so that their order makes no
 * difference.
 */
final class LoggerPieces {
  private static final double HOUR_S = 3600;
  private static final long DAY_MILLIS = 86_400_000L;

  private final boolean absolute;
  private final ZoneId zone;
  private final OptionalDouble floorC;
  private final double intervalSeconds;
  private final double gapLimitSeconds;
  private final double powerOnJumpK;
  private final double togetherMillis;
  private final double differK;
  private final int listed;
  private final PieceConsumer consumer;
  private final LoggerValue values;
  private final Map<SkipReason, Integer> skipCounts = new EnumMap<>(SkipReason.class);
  private final List<Skipped> skipped = new ArrayList<>();
  private final List<Gap> gaps = new ArrayList<>();
  private int rowsSkipped;
  private int gapCount;
  private double gapSeconds;
  private int read;
  private long firstMillis;
  private boolean open;
  private long groupFrom;
  private long groupUntil;
  private double coldestC;
  private double warmestC;
  private boolean closed;
  private long lastMillis;
  private double lastC;
  private final int differTold;
  private int differing;
  private double differMostK;
  private long lastLocal = Long.MIN_VALUE;
  private long offsetDay = Long.MIN_VALUE;
  private List<ZoneOffset> dayOffsets = List.of();
  private boolean lastInOverlap;
  private boolean secondTime;
  private ZoneOffset lastOffset = ZoneOffset.UTC;
  private boolean winterTimeKept;
  private Optional<ZoneOffset> keptOffset = Optional.empty();

  LoggerPieces(
      LoggerSurvey.Plan plan, LoggerOptions options, LoggerRules rules, PieceConsumer consumer) {
    this.absolute = plan.absolute();
    this.zone = options.zone();
    this.floorC = options.floorC();
    this.intervalSeconds = plan.intervalSeconds();
    this.gapLimitSeconds = rules.gapLimitSeconds(plan.intervalSeconds());
    this.powerOnJumpK = rules.value("power-on-jump-k");
    this.togetherMillis = plan.togetherSeconds() * 1000;
    this.differK = rules.value("together-differ-k");
    this.differTold = rules.count("together-differ-least");
    this.listed = rules.count("listed-most");
    this.values = new LoggerValue(rules);
    this.consumer = consumer;
  }

  void skip(int line, SkipReason reason) {
    rowsSkipped++;
    skipCounts.merge(reason, 1, Integer::sum);
    if (skipped.size() < listed) {
      skipped.add(new Skipped(line, reason));
    }
  }

  /** A row with a temperature within range; its time as the file gives it. */
  void row(int line, long written, double celsius) {
    long time = absolute ? written : utc(written);
    if (values.isPowerOn(celsius) && !known(time, celsius)) {
      skip(line, SkipReason.POWER_ON_VALUE);
      return;
    }
    place(line, time, celsius);
  }

  /** Whether the reading before this time was close to it. */
  private boolean known(long millis, double celsius) {
    boolean groupIsBefore = open && !isTogether(millis);
    boolean before = groupIsBefore || closed;
    return before && Math.abs(celsius - (groupIsBefore ? coldestC : lastC)) <= powerOnJumpK;
  }

  private boolean isTogether(long millis) {
    return millis - groupFrom <= togetherMillis;
  }

  private long utc(long local) {
    List<ZoneOffset> offsets = offsets(local);
    boolean overlap = offsets.size() == 2;
    boolean back = local < lastLocal || (local == lastLocal && intervalSeconds >= HOUR_S);
    boolean ranOn = lastInOverlap && !secondTime && !overlap && !back;
    if (ranOn && local - lastLocal <= gapLimitSeconds * 1000) {
      // The hour came only once: the logger's clock was not put back, so its summer time goes on.
      keptOffset = Optional.of(lastOffset);
    }
    secondTime = overlap && (secondTime || (lastInOverlap && back));
    lastInOverlap = overlap;
    lastLocal = local;
    if (offsets.isEmpty() && keptOffset.isEmpty()) {
      keptOffset = Optional.of(zone.getRules().getTransition(clock(local)).getOffsetBefore());
      winterTimeKept = true;
    }
    lastOffset = keptOffset.isPresent() ? keptOffset.get() : offsets.get(secondTime ? 1 : 0);
    return local - lastOffset.getTotalSeconds() * 1000L;
  }

  /** Offsets that a local time may have; looked up once for a day far from any change. */
  private List<ZoneOffset> offsets(long local) {
    long day = Math.floorDiv(local, DAY_MILLIS);
    if (day != offsetDay) {
      offsetDay = day;
      boolean still = !changesNear(day * DAY_MILLIS);
      dayOffsets = still ? zone.getRules().getValidOffsets(clock(local)) : List.of();
    }
    return dayOffsets.isEmpty() ? zone.getRules().getValidOffsets(clock(local)) : dayOffsets;
  }

  /** Whether the offset changes from two days before until two days after a day's begin. */
  private boolean changesNear(long localMillis) {
    Instant before = Instant.ofEpochMilli(localMillis - 2 * DAY_MILLIS);
    ZoneOffsetTransition next = zone.getRules().nextTransition(before);
    return next != null && next.getInstant().toEpochMilli() < localMillis + 3 * DAY_MILLIS;
  }

  private static LocalDateTime clock(long local) {
    return LocalDateTime.ofEpochSecond(
        Math.floorDiv(local, 1000L), (int) Math.floorMod(local, 1000L) * 1_000_000, ZoneOffset.UTC);
  }

  private void place(int line, long millis, double celsius) {
    if (open && millis < groupFrom) {
      skip(line, SkipReason.BACK_IN_TIME);
    } else if (open && isTogether(millis)) {
      together(line, millis, celsius);
    } else {
      closeGroup();
      firstMillis = read == 0 ? millis : firstMillis;
      open = true;
      groupFrom = millis;
      groupUntil = millis;
      coldestC = celsius;
      warmestC = celsius;
      read++;
    }
  }

  private void together(int line, long millis, double celsius) {
    boolean sameTime = millis == groupFrom && millis == groupUntil;
    if (sameTime && (celsius == coldestC || celsius == warmestC)) {
      skip(line, SkipReason.REPEATED);
      return;
    }
    groupUntil = Math.max(groupUntil, millis);
    coldestC = Math.min(coldestC, celsius);
    warmestC = Math.max(warmestC, celsius);
    read++;
  }

  /** Gives the pieces up to the end of the rows held back; to be called after the last row. */
  void closeGroup() {
    if (!open) {
      return;
    }
    if (closed) {
      piece(groupFrom, coldestC);
    }
    if (groupUntil > groupFrom) {
      consumer.piece(groupFrom / 1000.0, coldestC, groupUntil / 1000.0, coldestC);
    }
    differing += warmestC - coldestC > differK ? 1 : 0;
    differMostK = Math.max(differMostK, warmestC - coldestC);
    lastMillis = groupUntil;
    lastC = coldestC;
    closed = true;
    open = false;
  }

  private void piece(long millis, double celsius) {
    double seconds = (millis - lastMillis) / 1000.0;
    if (seconds <= gapLimitSeconds) {
      consumer.piece(lastMillis / 1000.0, lastC, millis / 1000.0, celsius);
      return;
    }
    double neighbour = Math.min(lastC, celsius);
    double cold = Math.min(neighbour, floorC.orElse(neighbour));
    gapCount++;
    gapSeconds += seconds;
    if (gaps.size() < listed) {
      gaps.add(new Gap(Instant.ofEpochMilli(lastMillis), Instant.ofEpochMilli(millis), cold));
    }
    consumer.piece(lastMillis / 1000.0, cold, millis / 1000.0, cold);
  }

  int read() {
    return read;
  }

  LoggerReading reading(String file, LoggerLayout layout, LoggerSurvey.Plan plan) {
    return new LoggerReading(
        file,
        layout.delimiter(),
        plan.decimalMark(),
        plan.form(),
        plan.order(),
        plan.orderBasis(),
        absolute,
        zone,
        layout.columnName(),
        plan.unit(),
        plan.unitAssumed(),
        plan.newestFirst(),
        keptOffset.isPresent() && !winterTimeKept,
        winterTimeKept,
        intervalSeconds,
        gapLimitSeconds,
        layout.titleLines(),
        read,
        rowsSkipped,
        skipCounts,
        skipped,
        gapCount,
        gapSeconds,
        gaps,
        differing < differTold ? 0 : differing,
        differMostK,
        Instant.ofEpochMilli(firstMillis),
        Instant.ofEpochMilli(lastMillis));
  }
}
