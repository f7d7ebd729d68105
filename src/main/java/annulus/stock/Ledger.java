package annulus.stock;

import annulus.quantity.InvalidValue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Every movement ever recorded; what is left of a lot is always their sum. */
public final class Ledger {
  /** A ledger without movements. */
  public static final Ledger EMPTY = new Ledger(Map.of());

  private final Map<String, Movement> byId;
  private final Map<String, String> items;
  private final Set<String> takenBack;

  private Ledger(Map<String, Movement> byId) {
    this.byId = Collections.unmodifiableMap(new LinkedHashMap<>(byId));
    Map<String, String> named = new TreeMap<>();
    byId.values().stream()
        .filter(m -> !m.item().isEmpty())
        .forEach(m -> named.putIfAbsent(m.lot(), m.item()));
    this.items = Collections.unmodifiableMap(named);
    Set<String> back = new HashSet<>();
    byId.values().forEach(m -> m.takesBack().ifPresent(back::add));
    this.takenBack = Collections.unmodifiableSet(back);
  }

  /**
   * A ledger of these movements.
   *
   * @throws InvalidValue when one id stands for two different movements
   */
  public static Ledger of(List<Movement> movements) {
    Map<String, Movement> byId = new LinkedHashMap<>();
    movements.forEach(m -> add(byId, m));
    return new Ledger(byId);
  }

  /**
   * The ledger with one more movement. A movement that is already there changes nothing.
   *
   * @throws InvalidValue when its id stands for another movement
   */
  public Ledger with(Movement movement) {
    Map<String, Movement> more = new LinkedHashMap<>(byId);
    add(more, movement);
    return new Ledger(more);
  }

  private static void add(Map<String, Movement> byId, Movement movement) {
    Movement known = byId.putIfAbsent(movement.id(), movement);
    if (known != null && !same(known, movement)) {
      throw new InvalidValue(
          "movement",
          movement.id() + " already stands for another movement of lot " + known.lot(),
          "a new id, or the same movement again");
    }
  }

  /** Recording again later is still the same movement. */
  private static boolean same(Movement a, Movement b) {
    return a.kind() == b.kind()
        && a.lot().equals(b.lot())
        && a.job().equals(b.job())
        && a.amount().equals(b.amount());
  }

  /** Whether a movement counts no more, because it did not take place. */
  public boolean isTakenBack(Movement movement) {
    return takenBack.contains(movement.id());
  }

  /** A movement by its id. */
  public Optional<Movement> movement(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /**
   * The movement of a lot that can be taken back: the last that moved something and stands. One
   * before it can't be, as the count since rests on it; nor can an arrival, of which the lot itself
   * would be left.
   */
  public Optional<Movement> toTakeBack(String lot) {
    return byId.values().stream()
        .filter(m -> m.lot().equals(lot) && m.kind().moves() && m.takesBack().isEmpty())
        .filter(m -> !isTakenBack(m))
        .reduce((earlier, later) -> later)
        .filter(m -> m.kind() != Movement.Kind.RECEIVE);
  }

  /**
   * The movement that can be taken back under this id.
   *
   * @throws InvalidValue when it is not here, was taken back, or is not the last one of its lot
   */
  public Movement requireToTakeBack(String id) {
    Movement taken =
        movement(id)
            .orElseThrow(
                () ->
                    new InvalidValue(
                        "movement", id + " is not in the ledger", "the id of a movement"));
    Optional<Movement> last = toTakeBack(taken.lot());
    if (last.filter(l -> l.id().equals(id)).isEmpty()) {
      throw new InvalidValue(
          "movement",
          id + " can't be taken back" + (isTakenBack(taken) ? ": it was already" : ""),
          last.map(l -> "the last movement of lot " + taken.lot() + ", " + l.id())
              .orElse("a count: correct what is left of lot " + taken.lot()));
    }
    return taken;
  }

  /**
   * What a taking back under this id is about; what was taken back already is, too, so that doing
   * it twice is no fault.
   *
   * @throws InvalidValue as {@link #requireToTakeBack}
   */
  public Movement takenOrToTakeBack(String id) {
    return movement(id).filter(this::isTakenBack).orElseGet(() -> requireToTakeBack(id));
  }

  /**
   * Refuses a movement that takes back what can't be; the same one again is let through.
   *
   * @throws InvalidValue with what can be taken back
   */
  public void requireTakesBack(Movement movement) {
    if (has(movement.id()) || movement.takesBack().isEmpty()) {
      return;
    }
    Movement taken = requireToTakeBack(movement.takesBack().get());
    if (!taken.lot().equals(movement.lot()) || !taken.undone().equals(movement.amount())) {
      throw new InvalidValue(
          "movement",
          movement.id() + " does not undo " + taken.id(),
          taken.undone() + " mL of lot " + taken.lot());
    }
  }

  /** Whether this movement is in it. */
  public boolean has(String id) {
    return byId.containsKey(id);
  }

  /**
   * Whether a movement would open the count of a lot that was opened here by another one; what is
   * in one container must not be counted twice.
   */
  public boolean opensAgain(Movement movement) {
    Movement known = byId.get(movement.id());
    boolean here = known != null && same(known, movement);
    return !here
        && movement.isOpening()
        && byId.values().stream().anyMatch(m -> m.isOpening() && m.lot().equals(movement.lot()));
  }

  /**
   * The delivery of a lot here, where another one of the same number, name and amount was recorded
   * elsewhere by itself: one bottle entered twice, or two that look like one. Empty for a copy of
   * the one here, and for what a sheet opened in both places.
   */
  public Optional<Movement> cameTwice(Movement there) {
    return Optional.ofNullable(byId.get(there.id()))
        .filter(here -> here.isDelivery() && there.isDelivery() && same(here, there))
        .filter(here -> !(here.at().equals(there.at()) && here.who().equals(there.who())));
  }

  /** In the order recorded. */
  public List<Movement> movements() {
    return List.copyOf(byId.values());
  }

  /** Whether a lot is counted here: something of it came, went or was corrected. */
  public boolean knows(String lot) {
    return byId.values().stream().anyMatch(m -> m.lot().equals(lot) && m.kind().moves());
  }

  /** What holds a lot back and is not cleared, in the order recorded. */
  public List<HeldBack> heldBack(String lot) {
    return heldBack().getOrDefault(lot, List.of());
  }

  /** What holds lots back and is not cleared: by lot, sorted, each in the order recorded. */
  public Map<String, List<HeldBack>> heldBack() {
    Set<String> cleared = new TreeSet<>();
    byId.values().forEach(m -> m.clears().ifPresent(cleared::add));
    Map<String, List<HeldBack>> held = new TreeMap<>();
    for (Movement m : byId.values()) {
      if (m.kind() == Movement.Kind.HOLD_BACK && !cleared.contains(m.id())) {
        held.computeIfAbsent(m.lot(), l -> new ArrayList<>()).add(HeldBack.by(m));
      }
    }
    return held;
  }

  /** What holds a lot of a sheet back and was never recorded here, cleared since or not. */
  public List<HeldBack> unheard(Lot lot) {
    return lot.heldBack().stream().filter(h -> !hasHeldBack(lot.lot(), h)).toList();
  }

  /** Whether it was ever recorded that a lot is held back for this, cleared since or not. */
  public boolean hasHeldBack(String lot, HeldBack held) {
    return byId.values().stream()
        .filter(m -> m.kind() == Movement.Kind.HOLD_BACK && m.lot().equals(lot))
        .anyMatch(m -> HeldBack.by(m).isSame(held));
  }

  /**
   * Refuses a use of a lot that is held back, and a clearing of what holds nothing back.
   *
   * @throws InvalidValue with what holds it back, or what could be cleared
   */
  public void requireNotHeldBack(Movement movement) {
    if (has(movement.id())) {
      return;
    }
    List<HeldBack> held = heldBack(movement.lot());
    for (HeldBack one : held) {
      if (one.stops(movement)) {
        throw new InvalidValue(
            "lot",
            "lot " + movement.lot() + " has been " + one.words(),
            "another lot; this one when somebody has cleared it");
      }
    }
    movement.clears().ifPresent(id -> requireClears(movement, id, held));
  }

  /**
   * What a clearing of a lot is about: the one that is named, or the only one there is.
   *
   * @param id of the movement that holds it back; empty if nobody names it
   * @throws InvalidValue when nothing holds it back, or nobody says which of several is meant
   */
  public HeldBack toClear(String lot, Optional<String> id) {
    List<HeldBack> held = heldBack(lot);
    if (held.isEmpty()) {
      throw new InvalidValue("lot", "lot " + lot + " is not held back", "a lot that is");
    }
    List<HeldBack> meant =
        held.stream().filter(h -> id.isEmpty() || h.id().equals(id.get())).toList();
    if (meant.size() != 1) {
      throw new InvalidValue(
          "movement",
          id.map(i -> i + " does not hold lot " + lot + " back")
              .orElse("lot " + lot + " is held back " + held.size() + " times"),
          held.stream()
              .map(h -> h.id() + " (" + h.words() + ")")
              .collect(Collectors.joining(", or ")));
    }
    return meant.get(0);
  }

  private static void requireClears(Movement movement, String id, List<HeldBack> held) {
    HeldBack cleared =
        held.stream()
            .filter(h -> h.id().equals(id))
            .findFirst()
            .orElseThrow(
                () ->
                    new InvalidValue(
                        "movement",
                        id + " does not hold lot " + movement.lot() + " back",
                        held.isEmpty()
                            ? "nothing: it is not held back"
                            : String.join(", ", held.stream().map(HeldBack::id).toList())));
    if (movement.day().isBefore(cleared.day())) {
      throw new InvalidValue(
          "day", movement.day() + " is before that: " + cleared.words(), "that day or later");
    }
  }

  /** What is left of a lot: the sum of its movements; below zero when more was used than came. */
  public Millilitres left(String lot) {
    return Millilitres.sum(
        byId.values().stream()
            .filter(m -> m.lot().equals(lot))
            .mapToLong(m -> m.change().microlitres())
            .sum());
  }

  /** What is left by lot, sorted. */
  public Map<String, Millilitres> left() {
    Map<String, Long> sums = new TreeMap<>();
    byId.values().forEach(m -> sums.merge(m.lot(), m.change().microlitres(), Long::sum));
    Map<String, Millilitres> left = new TreeMap<>();
    sums.forEach((lot, sum) -> left.put(lot, Millilitres.sum(sum)));
    return left;
  }

  /** The first day something was used from a lot: by then it was open. */
  public Optional<LocalDate> firstUse(String lot) {
    return byId.values().stream()
        .filter(m -> m.lot().equals(lot) && m.kind() == Movement.Kind.USE && !isTakenBack(m))
        .map(Movement::day)
        .min(LocalDate::compareTo);
  }

  /**
   * Refuses a use or discard of more than is left, and more in than the largest container holds.
   *
   * @throws InvalidValue with what is left
   */
  public void requireLeft(Movement movement) {
    boolean takes = movement.change().microlitres() < 0;
    Millilitres left = left(movement.lot());
    if (takes && !has(movement.id()) && left.plus(movement.change()).microlitres() < 0) {
      throw new InvalidValue(
          "ml",
          movement.amount() + " mL is more than the " + left + " mL left of lot " + movement.lot(),
          "at most " + left + " mL; correct the count first if the container holds more");
    }
    if (!has(movement.id())) {
      long then = left.microlitres() + movement.change().microlitres();
      requireRoom(movement.lot(), left, Millilitres.sum(then));
    }
  }

  /**
   * Refuses that a lot came to more than the largest container holds; one that had more before may
   * come down in steps.
   *
   * @param before the ledger without what is to be recorded
   * @throws InvalidValue with the lot and what would be in it
   */
  public void requireRoom(Ledger before) {
    Map<String, Millilitres> was = before.left();
    left().forEach((lot, then) -> requireRoom(lot, was.getOrDefault(lot, Millilitres.NONE), then));
  }

  private static void requireRoom(String lot, Millilitres was, Millilitres then) {
    if (then.compareTo(was) > 0 && then.compareTo(Lot.LARGEST_CONTAINER) > 0) {
      throw new InvalidValue(
          "ml",
          "lot " + lot + " would then have " + then + " mL",
          "at most " + Lot.LARGEST_CONTAINER + " mL in one container");
    }
  }

  /** What a lot is, as the first movement that names it says. */
  public Optional<String> itemOf(String lot) {
    return Optional.ofNullable(items.get(lot));
  }

  /** Whether a movement that is not in it names another class than its lot has here. */
  public boolean isOtherItem(Movement movement) {
    Optional<String> here = itemOf(movement.lot());
    boolean names = !movement.item().isEmpty() && here.isPresent();
    return names && !here.get().equals(movement.item()) && !has(movement.id());
  }

  /**
   * Refuses a movement of another class than its lot has here.
   *
   * @throws InvalidValue with both
   */
  public void requireItem(Movement movement) {
    if (isOtherItem(movement)) {
      throw otherItem(movement.lot(), itemOf(movement.lot()).orElseThrow(), movement.item());
    }
  }

  static InvalidValue otherItem(String lot, String here, String other) {
    return new InvalidValue(
        "class",
        "lot " + lot + " is " + here + ", not " + other,
        here + ", or a lot number of its own");
  }

  /** Other lots that the same number may stand for, as another hand writes it; sorted. */
  public List<String> lotsLike(String lot) {
    return Spelling.alike(lot, left().keySet());
  }

  /** Other jobs that the same reference may stand for, as another hand writes it; sorted. */
  public List<String> jobsLike(String job) {
    return Spelling.jobsAlike(
        job, uses(m -> !m.job().isEmpty()).stream().map(Movement::job).toList());
  }

  /** Which jobs got a lot, sorted. */
  public Set<String> jobsOf(String lot) {
    Set<String> jobs = new TreeSet<>();
    uses(m -> m.lot().equals(lot)).forEach(m -> jobs.add(m.job()));
    jobs.remove("");
    return jobs;
  }

  /** Which lots went into a job, sorted. */
  public Set<String> lotsOf(String job) {
    Set<String> lots = new TreeSet<>();
    uses(m -> m.job().equals(job)).forEach(m -> lots.add(m.lot()));
    return lots;
  }

  /** Uses that match and took place, in the order recorded. */
  public List<Movement> uses(Predicate<Movement> wanted) {
    List<Movement> found = new ArrayList<>();
    for (Movement movement : byId.values()) {
      boolean used = movement.kind() == Movement.Kind.USE && !isTakenBack(movement);
      if (used && wanted.test(movement)) {
        found.add(movement);
      }
    }
    return found;
  }
}
