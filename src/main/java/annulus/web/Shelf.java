package annulus.web;

import annulus.advice.Advisor;
import annulus.advice.CoverSurvey;
import annulus.advice.Knowledge;
import annulus.advice.StockNeeds;
import annulus.catalog.Policy;
import annulus.exchange.DataFiles;
import annulus.exchange.InputRefused;
import annulus.exchange.LedgerLines;
import annulus.exchange.PlacedProblem;
import annulus.exchange.StockFiles;
import annulus.exchange.StockSheet;
import annulus.quantity.InvalidValue;
import annulus.report.CountNotes;
import annulus.report.CoverReport;
import annulus.report.DeliveryNotes;
import annulus.report.HeldNotes;
import annulus.report.LotDifference;
import annulus.report.StockCheckReport;
import annulus.report.StockPlanReport;
import annulus.stock.Allocation;
import annulus.stock.Cabinet;
import annulus.stock.Cover;
import annulus.stock.CoverAxes;
import annulus.stock.CoverCell;
import annulus.stock.EntryDays;
import annulus.stock.HeldBack;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.Need;
import annulus.stock.Reorder;
import annulus.stock.StockItem;
import annulus.store.CabinetStore;
import annulus.store.Refused;
import annulus.store.Unknown;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What can be done at the cabinet; pages and the JSON interface both go through here. */
final class Shelf {
  private final Policy policy;
  private final CoverAxes axes;
  private final List<CoverCell> cells;
  private final Map<String, StockItem> items;
  private final StockNeeds asked;
  private final CabinetStore store;
  private final Clock clock;
  private final ZoneId zone;
  private volatile List<String> fromSheet = List.of();

  Shelf(Knowledge knowledge, DataFiles files, CabinetStore store, Clock clock, ZoneId zone)
      throws IOException {
    this.policy = StockFiles.policy(files);
    this.axes = StockFiles.cover(files);
    this.cells = CoverSurvey.cells(knowledge, policy, axes);
    this.items = StockItem.all(knowledge.catalog(), policy);
    this.asked = new StockNeeds(new Advisor(knowledge), policy);
    this.store = store;
    this.clock = clock;
    this.zone = zone;
  }

  /**
   * The cabinet of one moment.
   *
   * @param day the shop's day
   * @param cabinet lots with what is left in them
   * @param ledger all movements
   * @param notes what somebody should look at
   */
  record Now(LocalDate day, Cabinet cabinet, Ledger ledger, List<String> notes) {
    List<LotCheck> checks(long withinDays) {
      return cabinet.check(day, withinDays);
    }
  }

  Now now() {
    CabinetStore.Contents contents = store.contents();
    LocalDate day = today();
    Cabinet cabinet = new Cabinet(contents.lots(), items).with(contents.ledger());
    List<String> notes = new ArrayList<>(fromSheet);
    notes.addAll(CountNotes.of(contents.lots(), contents.ledger()));
    return new Now(day, cabinet, contents.ledger(), List.copyOf(notes));
  }

  /**
   * One lot as it stands.
   *
   * @throws Unknown when it is not in the cabinet
   */
  LotCheck check(Now now, String lot) {
    return now.checks(soonDays()).stream()
        .filter(c -> c.lot().lot().equals(lot))
        .findFirst()
        .orElseThrow(() -> new Unknown("Lot \"" + lot + "\" is not in the cabinet."));
  }

  /** What the cabinet gave for a job, in the order recorded. */
  List<Movement> usesFor(String job) {
    return store.usesFor(job);
  }

  Map<String, StockItem> items() {
    return items;
  }

  long soonDays() {
    return (long) policy.value("soon-days");
  }

  /** Refuses a day to come, or one long past, for a lot's arrival or opening. */
  void requireBeen(String field, LocalDate day) {
    EntryDays.requireOfLot(field, day, today(), policy);
  }

  private LocalDate today() {
    return LocalDate.ofInstant(clock.instant(), zone);
  }

  /**
   * Takes in the lots of a sheet; of those that are there already the stricter dates and storage
   * count, and what differs stays among the notes.
   *
   * @throws InputRefused when a lot is of another class here, its dates contradict, or one of them
   *     is still to come
   */
  void takeIn(Path sheet, String who) throws IOException {
    try (Reader in = DataFiles.utf8(Files.newInputStream(sheet))) {
      StockSheet read = StockSheet.read(sheet.toString(), in, items).requireBeen(today());
      List<Lot> lots = read.cabinet().lots();
      List<String> differ = new ArrayList<>();
      for (Lot lot : lots) {
        differences(sheet, lot).ifPresent(differ::add);
      }
      for (Lot lot : lots) {
        receive(lot, who, Movement.OPENING);
        holdBackAsIn(lot, who);
      }
      fromSheet = List.copyOf(differ);
    }
  }

  /** What the sheet holds back and nobody here has heard of; what was cleared here stays so. */
  private void holdBackAsIn(Lot sheet, String who) {
    if (!sheet.heldBack().isEmpty()) {
      Ledger here = store.contents().ledger();
      here.unheard(sheet).forEach(h -> store.move(h.ofSheet(sheet, clock.instant(), who)));
    }
  }

  /**
   * Holds a lot back until somebody clears it; the same movement again changes nothing.
   *
   * @param id of the movement
   * @throws Unknown when there is no such lot
   */
  void holdBack(String id, String lot, String who, String reason) {
    Lot here = check(now(), lot).lot();
    store.move(Movement.holdBack(id, clock.instant(), today(), who, lot, here.item(), reason));
  }

  /**
   * Clears what holds a lot back.
   *
   * @param held id of the movement that holds it back; empty for the only one
   * @return the id of the clearing
   * @throws InvalidValue when nothing holds it back, or nobody says which of several is meant
   */
  String clear(String lot, Optional<String> held, String who, String reason) {
    Now now = now();
    Lot here = check(now, lot).lot();
    Movement cleared =
        Movement.clear(
            now.ledger().toClear(lot, held),
            clock.instant(),
            today(),
            who,
            lot,
            here.item(),
            reason);
    store.move(cleared);
    return cleared.id();
  }

  /**
   * Takes back a movement that did not take place; doing it twice changes nothing.
   *
   * @param id of the movement
   * @return the id of what takes it back
   * @throws InvalidValue when it is not the last one of its lot
   */
  String takeBack(String id, String who, String reason) {
    Movement taken = now().ledger().takenOrToTakeBack(id);
    Movement back = Movement.takeBack(taken, clock.instant(), today(), who, reason);
    store.move(back);
    return back.id();
  }

  private Optional<String> differences(Path sheet, Lot lot) {
    try {
      return differences(lot);
    } catch (InvalidValue e) {
      String problem = "lot " + lot.lot() + " in the cabinet: " + e.problem();
      throw new InputRefused(
          List.of(new PlacedProblem(sheet.toString(), 0, 0, e.field(), problem, e.allowed())));
    }
  }

  /** What a lot that comes again says otherwise than the one in the cabinet. */
  Optional<String> differences(Lot lot) {
    return here(lot.lot()).flatMap(here -> LotDifference.words(here, lot));
  }

  /** A lot as it was taken in, without its movements. */
  Optional<Lot> here(String lot) {
    return store.lot(lot);
  }

  /**
   * Takes in a lot; of one that is there already the stricter dates and storage count, and no
   * second amount.
   *
   * @return whether anything was written
   */
  boolean receive(Lot lot, String who, String reason) {
    if (!items.containsKey(lot.item())) {
      throw new InvalidValue(
          "class", lot.item() + " is unknown", String.join(", ", items.keySet()));
    }
    Optional<Movement> movement =
        lot.left().isPositive()
            ? Optional.of(
                new Movement(
                    "received-" + lot.lot(),
                    clock.instant(),
                    today(),
                    Movement.Kind.RECEIVE,
                    who,
                    "",
                    lot.lot(),
                    lot.item(),
                    lot.left(),
                    reason,
                    ""))
            : Optional.empty();
    return store.receive(lot, movement);
  }

  /**
   * What came of a ledger that was taken over.
   *
   * @param movements how many it holds
   * @param isNew how many were not here before
   * @param notes what somebody should look at
   */
  record TakenOver(int movements, int isNew, List<String> notes) {}

  /** All movements as a ledger file holds them. */
  String ledgerText() {
    StringBuilder text = new StringBuilder();
    now().ledger().movements().forEach(m -> text.append(LedgerLines.line(m)).append('\n'));
    return text.toString();
  }

  /**
   * Takes over the movements of a ledger file; those that are here already stay as they are. What
   * was used elsewhere was used, so no use is refused.
   */
  TakenOver takeOver(Upload file) {
    List<Movement> movements = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    String[] lines = file.text().split("\n", -1);
    for (int i = 0; i < lines.length; i++) {
      boolean last = i == lines.length - 1;
      if (last && !LedgerLines.isWhole(lines[i])) {
        notes.addAll(lines[i].isEmpty() ? List.of() : List.of("The last line is cut off."));
      } else {
        movements.add(LedgerLines.movement(file.name(), i + 1, lines[i]));
      }
    }
    notes.addAll(DeliveryNotes.of(movements, store.contents().ledger()));
    CabinetStore.TakenOver taken = store.takeOver(movements, items.keySet());
    taken.newLots().forEach(l -> notes.add(lotNote(l, NEW_LOT)));
    taken.unknownItems().forEach(l -> notes.add(lotNote(l, UNKNOWN_ITEM)));
    taken.openedTwice().forEach(l -> notes.add(lotNote(l, OPENED_TWICE)));
    taken.otherItems().forEach(l -> notes.add(lotNote(l, OTHER_CLASS)));
    CabinetStore.Contents after = store.contents();
    notes.addAll(HeldNotes.of(movements, after.ledger()));
    notes.addAll(CountNotes.of(after.lots(), after.ledger()));
    after.ledger().left().entrySet().stream()
        .filter(e -> e.getValue().microlitres() < 0)
        .forEach(e -> notes.add(lotNote(e.getKey(), e.getValue() + " mL left: count it again.")));
    return new TakenOver(movements.size(), taken.isNew(), List.copyOf(notes));
  }

  private static final String NEW_LOT =
      "it came with the ledger and its dates are not known, so it must not be used. Take it in with"
          + " its printed expiry; that adds no amount.";
  private static final String UNKNOWN_ITEM =
      "the ledger does not say what it is; its movements were left out.";
  private static final String OPENED_TWICE =
      "its opening balance was left out; the cabinet has one already.";

  private static final String OTHER_CLASS =
      "it is of another class there. What came in there was left out; what was used there is taken"
          + " over, so that a recall finds it. Give the other bottle a lot number of its own.";

  private static String lotNote(String lot, String words) {
    return "Lot " + lot + ": " + words;
  }

  /**
   * Records a use, discard or correction.
   *
   * @throws Refused for a use of what must not be used, unless a reason and a witness pair say so;
   *     for a use of a lot that is held back, unless it was used by that day and a reason says so;
   *     for a use that opens a sealed container in vain, unless a reason says so
   */
  void move(Movement movement) {
    Now now = now();
    if (!now.ledger().has(movement.id())) {
      now.cabinet()
          .lot(movement.lot())
          .ifPresent(l -> l.requireRoom(movement, now.ledger().left(l.lot())));
      if (movement.kind() == Movement.Kind.USE) {
        requireUsable(now.cabinet(), movement);
      }
    }
    store.move(movement);
  }

  private static void requireUsable(Cabinet cabinet, Movement movement) {
    boolean reason = !movement.reason().isBlank();
    Optional<Lot> lot = cabinet.lot(movement.lot());
    lot.ifPresent(l -> requireNotHeldBack(l, movement));
    Optional<String> against =
        lot.map(l -> l.heldBackFor(List.of()))
            .map(l -> LotCheck.of(l, cabinet.items().get(l.item()), movement.day(), 0))
            .filter(c -> !c.against().isEmpty())
            .map(StockCheckReport::words);
    if (against.isPresent() && (!reason || movement.witness().isBlank())) {
      throw new Refused(
          "Not recorded: "
              + against.get()
              + ". To use it all the same give a reason and the witness pair glued with it.");
    }
    Optional<String> open =
        lot.flatMap(l -> cabinet.openInstead(l, movement.amount(), movement.day()))
            .map(l -> StockCheckReport.openInstead(movement.lot(), l));
    if (open.isPresent() && !reason) {
      throw new Refused("Not recorded: " + open.get() + ". To open it all the same give a reason.");
    }
  }

  private static void requireNotHeldBack(Lot lot, Movement use) {
    for (HeldBack held : lot.heldBack()) {
      if (held.stops(use)) {
        throw new Refused(
            "Not recorded: "
                + StockCheckReport.heldBack(lot.lot(), held)
                + ". Take another lot; on its page in the cabinet it can be cleared. "
                + StockCheckReport.USED_BEFORE);
      }
    }
  }

  /**
   * The change that makes a lot's booked amount what was counted; empty when it is that already.
   *
   * @throws Unknown when there is no such lot
   */
  Optional<Millilitres> change(String lot, Millilitres counted) {
    Now now = now();
    check(now, lot);
    Millilitres change = counted.minus(now.ledger().left(lot));
    return change.equals(Millilitres.NONE) ? Optional.empty() : Optional.of(change);
  }

  /** The picture of which joints the cabinet serves. */
  CoverReport cover(Now now) {
    Set<String> there = new TreeSet<>(now.cabinet().inDateClasses(now.day()));
    there.addAll(now.cabinet().inDatePrimers(now.day()));
    return new CoverReport(new Cover(cells, there), axes);
  }

  /** What the answer to a job draws from the cabinet; empty where it needs no compound. */
  Optional<Need.Option> draw(JobView view) {
    return asked.draw(view.answer().told().advice());
  }

  /** Which lot goes to which job of the board, what is short and what to order. */
  StockPlanReport plan(Now now, List<JobView> open) {
    List<Need> needs = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      needs.add(asked.of(open.get(i).answer().order(), i + 1L, now.day(), now.cabinet()));
    }
    Allocation.Result result = Allocation.of(now.cabinet(), now.day(), needs);
    List<Reorder> orders =
        Reorder.list(result.after(), result.plans(), now.ledger(), now.day(), policy);
    return new StockPlanReport(now.day(), zone, result.plans(), orders, List.of());
  }
}
