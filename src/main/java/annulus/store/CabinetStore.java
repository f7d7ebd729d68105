package annulus.store;

import annulus.stock.HeldBack;
import annulus.stock.HeldUses;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.SafetySheet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Lots of the cabinet and every movement; what is left is always the sum of the movements. */
public final class CabinetStore {
  private static final String LOT = "SELECT " + CabinetRows.sealed(CabinetRows.LOT) + " FROM lot";
  private static final String ONE_LOT = LOT + " WHERE lot = ?";
  private static final String MOVEMENT =
      "SELECT " + CabinetRows.sealed(CabinetRows.MOVEMENT) + " FROM movement";
  private static final String LOTS = LOT + " ORDER BY lot";
  private static final String MOVEMENTS = MOVEMENT + " ORDER BY position";
  private static final String USES = MOVEMENT + " WHERE kind IN ('USE', 'TAKE_BACK')";
  static final String USES_FOR = USES + " AND job = ? ORDER BY position";
  static final String HOLDING =
      MOVEMENT + " WHERE kind IN ('HOLD_BACK', 'CLEAR') ORDER BY position";
  static final String USES_OF = USES + " AND lot = ? ORDER BY position";
  private static final String PUT_LOT =
      "INSERT INTO lot ("
          + CabinetRows.sealed(CabinetRows.LOT)
          + ") VALUES ("
          + CabinetRows.marks(CabinetRows.LOT)
          + ") ON CONFLICT DO NOTHING";
  private static final String SET_LOT =
      "UPDATE lot SET "
          + CabinetRows.sealed(CabinetRows.LOT).replace(",", " = ?,")
          + " = ? WHERE lot = ?";
  private static final String PUT_MOVEMENT =
      "INSERT INTO movement ("
          + CabinetRows.sealed(CabinetRows.MOVEMENT)
          + ") VALUES ("
          + CabinetRows.marks(CabinetRows.MOVEMENT)
          + ")";

  private final Database database;

  /**
   * @param database where they lie
   */
  public CabinetStore(Database database) {
    this.database = database;
  }

  /**
   * What is in the cabinet.
   *
   * @param lots as they came
   * @param ledger all movements
   */
  public record Contents(List<Lot> lots, Ledger ledger) {}

  /**
   * Reads every lot and movement, of a backup for instance.
   *
   * @throws StoreFailed when a seal does not fit
   */
  static void requireWhole(Sql sql) throws SQLException {
    sql.rows(CabinetRows::lot, LOTS);
    sql.rows(CabinetRows::movement, MOVEMENTS);
  }

  /**
   * Lots and movements of one moment.
   *
   * @throws StoreFailed when one is damaged
   */
  public Contents contents() {
    return database.transaction(
        sql ->
            new Contents(
                sql.rows(CabinetRows::lot, LOTS),
                Ledger.of(sql.rows(CabinetRows::movement, MOVEMENTS))));
  }

  /** A lot as it was taken in, without its movements. */
  public Optional<Lot> lot(String number) {
    return database.transaction(sql -> sql.row(CabinetRows::lot, ONE_LOT, number));
  }

  /** What was used for a job, in the order recorded. */
  public List<Movement> usesFor(String job) {
    return database.transaction(sql -> inForce(sql, USES_FOR, job));
  }

  /** Uses without those that were taken back: what takes one back names its lot and job too. */
  private static List<Movement> inForce(Sql sql, String uses, String of) throws SQLException {
    return Ledger.of(sql.rows(CabinetRows::movement, uses, of)).uses(m -> true);
  }

  /** Which jobs got some of a lot that is held back. */
  public HeldUses heldUses() {
    return database.transaction(
        sql -> {
          Map<String, List<HeldBack>> held =
              Ledger.of(sql.rows(CabinetRows::movement, HOLDING)).heldBack();
          List<Movement> uses = new ArrayList<>();
          for (String lot : held.keySet()) {
            uses.addAll(inForce(sql, USES_OF, lot));
          }
          return HeldUses.of(held, uses);
        });
  }

  /**
   * Takes in a lot; of one that is there already the stricter dates and storage of both count, and
   * no second amount.
   *
   * @param lot the lot
   * @param received the movement that brings what is in it; empty for an empty container
   * @return whether anything was written
   * @throws annulus.quantity.InvalidValue when the lot there is of another class, or its dates
   *     contradict these
   */
  public boolean receive(Lot lot, Optional<Movement> received) {
    return database.transaction(
        sql -> {
          boolean isNew = insert(sql, lot) > 0;
          if (isNew && received.isPresent()) {
            insert(sql, received.get());
          }
          return isNew || tighten(sql, lot);
        });
  }

  private static boolean tighten(Sql sql, Lot again) throws SQLException {
    Lot here = sql.row(CabinetRows::lot, ONE_LOT, again.lot()).orElseThrow();
    Lot stricter = here.stricter(again);
    if (stricter.equals(here)) {
      return false;
    }
    Object[] values = CabinetRows.values(stricter);
    Object[] arguments = Arrays.copyOf(values, values.length + 1);
    arguments[values.length] = here.lot();
    return sql.update(SET_LOT, arguments) > 0;
  }

  /**
   * What came of movements that were recorded elsewhere.
   *
   * @param isNew how many were not here before
   * @param newLots lots that came with them; nothing is known of their dates
   * @param unknownItems lots left out, because nobody says what they are
   * @param openedTwice lots whose opening balance was left out, because there is one here
   * @param otherItems lots that are of another class here: what came in was left out, what was used
   *     is taken over, so that a recall finds it
   */
  public record TakenOver(
      int isNew,
      Set<String> newLots,
      Set<String> unknownItems,
      Set<String> openedTwice,
      Set<String> otherItems) {}

  /**
   * Takes over movements recorded elsewhere, all or none; those already here are left alone. What
   * was used elsewhere was used, so no use is refused.
   *
   * @param items what lots can be
   * @throws annulus.quantity.InvalidValue when an id stands for another movement here, or a lot
   *     would have more than the largest container holds
   */
  public TakenOver takeOver(List<Movement> movements, Set<String> items) {
    return database.transaction(
        sql -> {
          Map<String, String> lots = new TreeMap<>();
          sql.rows(CabinetRows::lot, LOTS).forEach(l -> lots.put(l.lot(), l.item()));
          Ledger before = Ledger.of(sql.rows(CabinetRows::movement, MOVEMENTS));
          Ledger after = before;
          TakenOver taken =
              new TakenOver(0, new TreeSet<>(), new TreeSet<>(), new TreeSet<>(), new TreeSet<>());
          int isNew = 0;
          for (Movement m : movements) {
            if (takes(sql, m, items, lots, after, taken)) {
              isNew += after.has(m.id()) ? 0 : insert(sql, m);
              after = after.with(m);
            }
          }
          after.requireRoom(before);
          return new TakenOver(
              isNew,
              taken.newLots(),
              taken.unknownItems(),
              taken.openedTwice(),
              taken.otherItems());
        });
  }

  private static boolean takes(
      Sql sql,
      Movement m,
      Set<String> items,
      Map<String, String> lots,
      Ledger here,
      TakenOver taken)
      throws SQLException {
    String item = lots.getOrDefault(m.lot(), m.item());
    if (!m.item().isEmpty() && !m.item().equals(item) && !here.has(m.id())) {
      taken.otherItems().add(m.lot());
      if (m.change().isPositive() && m.takesBack().isEmpty()) {
        return false;
      }
    }
    if (here.opensAgain(m)) {
      taken.openedTwice().add(m.lot());
      return false;
    }
    if (lots.containsKey(m.lot())) {
      return true;
    }
    if (!items.contains(m.item())) {
      taken.unknownItems().add(m.lot());
      return false;
    }
    insert(sql, dateless(m));
    lots.put(m.lot(), m.item());
    taken.newLots().add(m.lot());
    return true;
  }

  private static Lot dateless(Movement m) {
    // the least a lot may hold; it grows with what is in it
    boolean enough = m.amount().compareTo(Lot.LEAST_CONTAINER) > 0;
    Millilitres size = enough ? m.amount() : Lot.LEAST_CONTAINER;
    return new Lot(
        m.lot(),
        m.item(),
        "",
        size,
        new Millilitres(0),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        "",
        SafetySheet.NONE,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of());
  }

  /**
   * Records a movement; the same one again changes nothing.
   *
   * @throws annulus.quantity.InvalidValue when it takes more than is left, its lot is of another
   *     class or held back, its id is taken, or it takes back what can't be
   * @throws Unknown when there is no such lot
   */
  public Ledger move(Movement movement) {
    return database.transaction(
        sql -> {
          sql.row(CabinetRows::lot, ONE_LOT, movement.lot())
              .orElseThrow(
                  () -> new Unknown("There is no lot " + movement.lot() + " in the cabinet."))
              .requireItem(movement.item());
          // on PostgreSQL a second server waits here, so that two can't draw the same millilitre
          sql.update("UPDATE lot SET place = place WHERE lot = ?", movement.lot());
          Ledger ledger = Ledger.of(sql.rows(CabinetRows::movement, MOVEMENTS));
          ledger.requireLeft(movement);
          ledger.requireNotHeldBack(movement);
          ledger.requireTakesBack(movement);
          Ledger after = ledger.with(movement);
          if (!ledger.has(movement.id())) {
            insert(sql, movement);
          }
          return after;
        });
  }

  private static int insert(Sql sql, Lot lot) throws SQLException {
    return sql.update(PUT_LOT, CabinetRows.values(lot));
  }

  private static int insert(Sql sql, Movement movement) throws SQLException {
    return sql.update(PUT_MOVEMENT, CabinetRows.values(movement));
  }
}
