package annulus.advice;

import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.Kind;
import annulus.advice.JointOrder.CurePlace;
import annulus.advice.JointOrder.PrimerPlan;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Primer;
import annulus.catalog.ReleaseRule;
import annulus.catalog.Stage;
import annulus.handback.LatestStart;
import annulus.handback.OptionTrade;
import annulus.handback.Promise;
import annulus.quantity.Check;
import annulus.select.ClassVerdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the service desk asks: when may the customer come, which other ways there are, and how late
 * each may begin. Holds no state between orders.
 */
public final class PromiseDesk {
  private final Knowledge knowledge;
  private final Advisor advisor;
  private final Shop shop;

  /**
   * @param knowledge all that answers are judged by
   * @param shop hours, promise rule and places
   */
  public PromiseDesk(Knowledge knowledge, Shop shop) {
    this.knowledge = knowledge;
    this.advisor = new Advisor(knowledge);
    this.shop = shop;
  }

  /** The shop it speaks for. */
  public Shop shop() {
    return shop;
  }

  /** The same desk in another shop. */
  public PromiseDesk in(Shop other) {
    return new PromiseDesk(knowledge, other);
  }

  /** The promise for one order; reckoned when asked for, as a list of jobs shows none. */
  public final class Told {
    private final JointOrder order;
    private final Advice advice;

    private Told(JointOrder order, Advice advice) {
      this.order = order;
      this.advice = advice;
    }

    /** The answer for the joint as it feels the place. */
    public Advice advice() {
      return advice;
    }

    /** What the customer is told; empty when nothing can be promised. */
    public Optional<Promise> promise() {
      return advice.handBack().flatMap(h -> shop.rule().promise(h.at(), shop.hours()));
    }

    /** When half of all such joints have got that far in cure; empty when never. */
    public Optional<Instant> likely() {
      return PromiseDesk.this.likely(order, advice);
    }

    /** The earliest safe hand-back. */
    public Optional<Instant> ready() {
      return advice.handBack().map(HandBack::at);
    }

    /** Whether the promise is there and meets a wanted time. */
    public boolean meets(Instant wanted) {
      return promise().filter(p -> !p.promise().isAfter(wanted)).isPresent();
    }
  }

  /**
   * One way of making the joint.
   *
   * @param compound class
   * @param primer on both faces, or as the order says; empty for none
   * @param place where it cures; empty for that of the order where it is none of the shop's
   * @param work when work begins
   * @param touch hands-on time, flash-off of the primer included; the joint is closed at its end
   * @param told the answer for it
   * @param strengthMPa shear strength likely left at the highest service temperature, MPa
   * @param releasable whether hand tools take it apart
   * @param latest latest begin of the work for the wanted pickup; empty without one
   * @param noBetter whether another way is at least as good in everything and better in something
   */
  public record Option(
      CompoundClass compound,
      Optional<Primer> primer,
      Optional<ShopPlace> place,
      Instant work,
      Duration touch,
      Told told,
      double strengthMPa,
      boolean releasable,
      Optional<LatestStart> latest,
      boolean noBetter) {
    public Option {
      Check.within("strengthMPa", strengthMPa, 0, 1000, "MPa");
    }

    /** Working time, counted on the quick side. */
    public Duration workingTime() {
      return told.advice().cure().map(Advice.CureTimes::workingTime).orElse(Duration.ZERO);
    }

    private OptionTrade trade() {
      return new OptionTrade(told.ready(), strengthMPa, releasable ? 1 : 0, workingTime(), touch);
    }

    private Option marked(boolean mark) {
      return new Option(
          compound, primer, place, work, touch, told, strengthMPa, releasable, latest, mark);
    }
  }

  /** The answer and the promise for an order as it stands; it is closed at its start. */
  public Told tell(JointOrder order) {
    return tellIn(order, shop.placeOf(order));
  }

  private Told tellIn(JointOrder order, Optional<ShopPlace> place) {
    return told(order, place.map(ShopPlace::entry).orElse(JointHeat.Entry.LIES_THERE));
  }

  /** As {@link #tell} with another course of the same place's temperature. */
  Told tellLike(JointOrder order, CurePlace other) {
    return tellIn(OrderChange.cure(order, other), shop.placeOf(order));
  }

  Catalog catalog() {
    return knowledge.catalog();
  }

  /** A running job judged again by the temperature it really had. */
  public Reassessment reassess(JointOrder order, MeasuredCourse course) {
    return Reassessment.of(this, order, course);
  }

  private Told told(JointOrder order, JointHeat.Entry entry) {
    return new Told(order, advisor.advise(order, entry));
  }

  private Optional<Instant> likely(JointOrder order, Advice advice) {
    if (advice.decision().kind() != Kind.USE_COMPOUND || advice.cure().isEmpty()) {
      return advice.handBack().map(HandBack::at);
    }
    ReleaseRule rule = knowledge.catalog().release().get(order.consequence());
    long rest = (long) knowledge.catalog().policy().value("undisturbed-after-fixture-min");
    Optional<Duration> stage = advice.cure().get().at(rule.stage()).typical();
    Optional<Duration> fixture =
        advice.cure().get().at(Stage.FIXTURE).typical().map(d -> d.plusMinutes(rest));
    if (stage.isEmpty() || fixture.isEmpty()) {
      return Optional.empty();
    }
    Duration later = stage.get().compareTo(fixture.get()) > 0 ? stage.get() : fixture.get();
    return Optional.of(order.start().plus(later));
  }

  /**
   * Every way of making the joint: each usable class with each primer on both faces or none, in the
   * order's place and in each place of the shop. Sorted by earliest safe hand-back; never last.
   *
   * @param order the joint, not yet closed
   * @param from work begins no sooner
   * @param wanted the pickup asked for, whose latest start is looked for
   */
  public List<Option> options(JointOrder order, Instant from, Optional<Instant> wanted) {
    List<Option> found = new ArrayList<>();
    for (Optional<ShopPlace> place : places(order)) {
      for (PrimerPlan primer : primers(order)) {
        found.addAll(options(OrderChange.primer(order, primer), place, from, wanted));
      }
    }
    Set<Integer> noBetter =
        OptionTrade.noBetterInAnything(found.stream().map(Option::trade).toList());
    List<Option> marked = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      marked.add(found.get(i).marked(noBetter.contains(i)));
    }
    marked.sort(
        Comparator.comparing((Option o) -> o.told().ready().orElse(Instant.MAX))
            .thenComparing(Option::noBetter)
            .thenComparing(o -> -o.strengthMPa()));
    return List.copyOf(marked);
  }

  private List<Optional<ShopPlace>> places(JointOrder order) {
    List<Optional<ShopPlace>> places = new ArrayList<>();
    if (shop.placeOf(order).isEmpty()) {
      places.add(Optional.empty());
    }
    shop.places().forEach(p -> places.add(Optional.of(p)));
    return places;
  }

  /** Faces that are primed already stay so; else no primer and each primer. */
  private List<PrimerPlan> primers(JointOrder order) {
    if (order.primer() instanceof PrimerPlan.Used used && !used.age().isZero()) {
      return List.of(used);
    }
    List<PrimerPlan> plans = new ArrayList<>(List.of(new PrimerPlan.None()));
    for (Primer primer : knowledge.catalog().primers().values()) {
      boolean named =
          order.primer() instanceof PrimerPlan.Used used && used.primer().id().equals(primer.id());
      plans.add(named ? order.primer() : new PrimerPlan.Used(primer, true, true, Duration.ZERO));
    }
    return plans;
  }

  private List<Option> options(
      JointOrder order, Optional<ShopPlace> place, Instant from, Optional<Instant> wanted) {
    Duration touch = place.map(ShopPlace::touch).orElse(shop.touch()).plus(flashOff(order));
    Optional<Instant> work = shop.hours().nextOpenFor(from, touch);
    if (work.isEmpty()) {
      return List.of();
    }
    Told first = tellAt(order, place, work.get().plus(touch));
    List<Option> found = new ArrayList<>();
    for (ClassVerdict verdict : first.advice().table()) {
      boolean asked =
          order.compound().isEmpty() || order.compound().get().id().equals(verdict.compound().id());
      if (verdict.usable() && asked) {
        option(OrderChange.compound(order, verdict.compound()), place, touch, work.get(), wanted)
            .ifPresent(found::add);
      }
    }
    return found;
  }

  private static Duration flashOff(JointOrder order) {
    return order.primer() instanceof PrimerPlan.Used used && used.age().isZero()
        ? Duration.ofSeconds((long) Math.ceil(used.primer().flashOffMinutes().high() * 60))
        : Duration.ZERO;
  }

  private Optional<Option> option(
      JointOrder order,
      Optional<ShopPlace> place,
      Duration touch,
      Instant work,
      Optional<Instant> wanted) {
    Told told = tellAt(order, place, work.plus(touch));
    if (told.advice().decision().kind() != Kind.USE_COMPOUND) {
      return Optional.empty();
    }
    Optional<LatestStart> latest = wanted.map(w -> latest(order, place, touch, work, w));
    CompoundClass compound = told.advice().decision().compound().orElseThrow();
    Optional<Primer> primer = told.advice().decision().primer().map(p -> p.primer());
    double primed = primer.map(p -> p.strengthFactor().likely()).orElse(1.0);
    double strength =
        compound.strengthMPa().likely()
            * compound.hotFraction(order.service().high()).likely()
            * primed;
    boolean releasable = compound.permanence() == CompoundClass.Permanence.RELEASABLE;
    return Optional.of(
        new Option(
            compound, primer, place, work, touch, told, strength, releasable, latest, false));
  }

  private LatestStart latest(
      JointOrder order,
      Optional<ShopPlace> place,
      Duration touch,
      Instant earliest,
      Instant wanted) {
    return LatestStart.find(
        wanted,
        earliest,
        touch,
        shop.hours(),
        work -> tellAt(order, place, work.plus(touch)).promise().map(Promise::promise));
  }

  /**
   * The answer for the joint closed at another time, in a place of the shop or in the order's own.
   *
   * @param order the joint
   * @param place empty for the order's own
   * @param closed when it is closed, not before the order's start
   */
  public Told tellAt(JointOrder order, Optional<ShopPlace> place, Instant closed) {
    JointOrder moved = OrderChange.start(order, closed);
    if (place.isEmpty()) {
      return tellIn(moved, place);
    }
    JointHeat.Entry entry = place.get().entry();
    if (shop.placeOf(order).isEmpty()) {
      // the parts lie where the order says, which the shop's file does not know
      double lies = Math.min(entry.unsaidC(), order.cure().history().coldestC());
      entry = new JointHeat.Entry(entry.warm(), entry.fan(), lies);
    }
    return told(OrderChange.cure(moved, place.get().from(closed)), entry);
  }

  /** What would move the promise most. */
  public List<Shift> shifts(JointOrder order) {
    return new PromiseShifts(knowledge, shop).of(order);
  }

  /**
   * How far one doubtful input moves the promise.
   *
   * @param input which
   * @param atBest what it would be at its better end
   * @param ready earliest safe hand-back then
   * @param promise promise then
   * @param sooner by how much the hand-back would come sooner
   */
  public record Shift(
      Input input, String atBest, Instant ready, Optional<Promise> promise, Duration sooner) {}

  /** Inputs of a promise that are in doubt. */
  public enum Input {
    TEMPERATURE,
    GAP,
    PRIMER,
    FACES,
    CLASS_TIMES,
    ACTIVATION,
    ARRIVAL
  }
}
