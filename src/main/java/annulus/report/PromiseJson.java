package annulus.report;

import annulus.advice.MeasuredCourse;
import annulus.advice.PromiseDesk.Option;
import annulus.advice.PromiseDesk.Shift;
import annulus.advice.PromiseDesk.Told;
import annulus.advice.Reassessment;
import annulus.advice.Shop;
import annulus.catalog.CompoundClass;
import annulus.catalog.Primer;
import annulus.handback.LatestStart;
import annulus.handback.Promise;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** A promise as JSON, following {@code data/schema/promise.schema.json}, format 1. */
public final class PromiseJson {
  private final Shop shop;
  private final ShopTime time;
  private final PromiseText words;
  private final JsonOut out;

  private PromiseJson(Shop shop, Instant start, JsonOut out) {
    this.shop = shop;
    this.time = new ShopTime(shop.hours().zone(), start);
    this.words = new PromiseText(shop, start);
    this.out = out;
  }

  /**
   * What is written.
   *
   * @param told the answer that holds now
   * @param shifts what would move it
   * @param options other ways; empty when they were not asked for
   * @param wanted the pickup asked for
   * @param again the judgement by a log
   * @param now when this is judged
   */
  public record Content(
      Told told,
      List<Shift> shifts,
      Optional<List<Option>> options,
      Optional<Instant> wanted,
      Optional<Reassessment> again,
      Instant now) {
    public Content {
      shifts = List.copyOf(shifts);
    }
  }

  /** The whole document, two spaces, LF, one LF at the end. */
  public static String of(Content content, Shop shop) {
    Instant start = content.told().advice().order().start();
    return JsonOut.document(out -> new PromiseJson(shop, start, out).write(content));
  }

  private void write(Content content) {
    Told told = content.told();
    out.whole("format", 1).text("dataVersion", told.advice().dataVersion());
    out.text("job", told.advice().order().job());
    out.text("zone", shop.hours().zone().getId()).text("judged", time.iso(content.now()));
    out.text("start", time.iso(told.advice().order().start()));
    out.text("decision", StageTexts.id(told.advice().decision().kind()));
    out.text("class", told.advice().decision().compound().map(CompoundClass::id));
    Optional<Promise> promise = PromiseText.from(content.now(), told, shop);
    told(told, promise);
    if (promise.isEmpty()) {
      out.text("why", words.whyNone(told));
    }
    ZoneId zone = shop.hours().zone();
    out.text("customer", promise.map(p -> PromiseText.customer(p.promise(), zone, told.advice())));
    HandBackNotes notes = new HandBackNotes(told.advice());
    JsonReport.limitedUse(
        out, told.advice(), promise.flatMap(p -> notes.limitedUse(p.promise(), zone)), time);
    out.text("primerNotCounted", notes.primer());
    out.list(
        "movesMost",
        content.shifts().stream().limit(2).toList(),
        s ->
            out.text("input", StageTexts.id(s.input()))
                .text("atBest", s.atBest())
                .text("ready", time.iso(s.ready()))
                .text("promise", s.promise().map(p -> time.iso(p.promise())))
                .whole("soonerMinutes", s.sooner().toMinutes()));
    out.text("basis", words.basis(told, content.now()));
    out.text("wanted", content.wanted().map(time::iso));
    if (content.options().isPresent()) {
      out.list("options", content.options().get(), this::option);
    }
    out.object("log", content.again(), this::again);
  }

  private void told(Told told, Optional<Promise> promise) {
    out.text("earliest", told.ready().map(time::iso));
    out.text("likely", told.likely().map(time::iso));
    out.text("check", promise.map(p -> time.iso(p.checkStart())));
    out.text("promise", promise.map(p -> time.iso(p.promise())));
    out.text("promiseReason", promise.map(Promise::reason).map(StageTexts::id));
  }

  private void option(Option o) {
    out.text("class", o.compound().id());
    out.text("primer", o.primer().map(Primer::id));
    out.text("place", o.place().map(p -> p.name()));
    out.text("work", time.iso(o.work()));
    told(o.told(), o.told().promise());
    out.number("strengthMPa", o.strengthMPa()).flag("releasable", o.releasable());
    out.whole("workingMinutes", o.workingTime().toMinutes());
    out.whole("touchMinutes", ShopTime.minutesUp(o.touch()));
    out.flag("noBetter", o.noBetter());
    Optional<LatestStart.Found> found =
        o.latest().filter(LatestStart.Found.class::isInstance).map(LatestStart.Found.class::cast);
    out.text("latestStart", found.map(f -> time.iso(f.start())));
    out.text("latestStartLimit", found.map(f -> StageTexts.id(f.limit())));
    out.text(
        "noLatestStart",
        o.latest()
            .filter(LatestStart.None.class::isInstance)
            .map(n -> StageTexts.id(((LatestStart.None) n).reason())));
  }

  private void again(Reassessment again) {
    out.text("plannedReady", again.planned().ready().map(time::iso));
    out.whole("movedMinutes", again.moved().map(d -> d.toMinutes()));
    out.probability("likelyFraction", again.typicalFraction());
    out.probability("sureFraction", again.sureFraction());
    out.text("stage", again.stage().map(StageTexts::id));
    out.number("plannedC", again.plannedC()).number("measuredC", again.measuredC());
    out.whole("missingMinutes", ShopTime.minutesUp(again.course().missing()));
    out.list("missing", again.course().holes(), h -> hole(again, h));
    out.text(
        "readyIfMissingRanStraight", again.holesStraight().flatMap(Told::ready).map(time::iso));
  }

  private void hole(Reassessment again, MeasuredCourse.Hole hole) {
    Instant start = again.now().advice().order().start();
    out.text("from", time.iso(start.plus(hole.from())));
    out.text("to", time.iso(start.plus(hole.to())));
    out.number("takenC", hole.takenC());
  }
}
