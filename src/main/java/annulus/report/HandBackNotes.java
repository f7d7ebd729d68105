package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.Limit;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * What has to stand beside a hand-back time wherever it is told: how long the use is limited after
 * it, and that a primer is not counted in it.
 */
public final class HandBackNotes {
  private final Advice advice;

  /**
   * @param advice the answer that the time comes from
   */
  public HandBackNotes(Advice advice) {
    this.advice = advice;
  }

  /** The limit at the shop's clock; empty where the joint is fully cured when it goes. */
  public Optional<String> limitedUse() {
    ShopTime time = new ShopTime(advice.order().zone(), advice.order().start());
    return advice.limited().map(l -> limited(l.until().map(time::brief)));
  }

  /**
   * The limit for whoever takes the joint; empty where it is fully cured by then.
   *
   * @param taken when it is taken
   * @param zone the shop's zone
   */
  public Optional<String> limitedUse(Instant taken, ZoneId zone) {
    return advice
        .limited()
        .map(Limit::until)
        .filter(until -> until.map(at -> at.isAfter(taken)).orElse(true))
        .map(until -> limited(until.map(at -> new ShopTime(zone, at).longDay(at))));
  }

  private String limited(Optional<String> until) {
    String when =
        until
            .map(u -> "Limited use until " + u)
            .orElse("Limited use for good, as full cure can't be promised");
    return when + ": " + advice.limitedUse().notAllowed() + ".";
  }

  /** That a primer is to go on which the time does not count; empty where that is not so. */
  public Optional<String> primer() {
    if (!advice.primerNotCounted()) {
      return Optional.empty();
    }
    String time = advice.handBack().isPresent() ? "in this time" : "here";
    String sooner = "";
    for (HandBack primed : advice.primed()) {
      if (advice.handBack().map(h -> primed.after().compareTo(h.after()) < 0).orElse(true)) {
        sooner = ": about " + ShopTime.up(primed.after()) + " after closing";
      }
    }
    return Optional.of(
        "The primer is not counted "
            + time
            + ". When it is on, enter it and ask again"
            + sooner
            + ".");
  }
}
