package annulus.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import annulus.stock.Lot;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.SafetySheet;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Lots and movements in the database: dates that come later, and damage that is told. */
class CabinetStoreTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private static Lot lot(
      String lot, Optional<LocalDate> received, Optional<LocalDate> opened, LocalDate expires) {
    return new Lot(
        lot,
        "medium-lasting",
        "Orla's",
        Millilitres.of(10),
        Millilitres.of(7),
        received,
        opened,
        Optional.ofNullable(expires),
        "cupboard",
        new SafetySheet(true, Optional.of(LocalDate.of(2026, 5, 5))),
        OptionalDouble.of(10),
        OptionalDouble.of(20.5),
        List.of());
  }

  private static Movement movement(String id, Movement.Kind kind, String lot, double ml) {
    return new Movement(
        id,
        Instant.parse("2026-11-25T10:00:00Z"),
        DAY,
        kind,
        "Orla",
        "HL-7",
        lot,
        "medium-lasting",
        Millilitres.of(ml),
        "a reason",
        "pair W-3");
  }

  private static CabinetStore filled(Database database) {
    CabinetStore store = new CabinetStore(database);
    Lot first = lot("007", Optional.of(DAY.minusDays(9)), Optional.of(DAY), DAY.plusYears(1));
    store.receive(first, Optional.of(movement("in", Movement.Kind.RECEIVE, "007", 7)));
    store.move(movement("out", Movement.Kind.USE, "007", 0.25));
    return store;
  }

  private static void set(Database database, String table, String column, Object value) {
    database.transaction(sql -> sql.update("UPDATE " + table + " SET " + column + " = ?", value));
  }

  private static Object get(Database database, String table, String column) {
    return database.transaction(
        sql -> sql.rows(r -> r.getObject(1), "SELECT " + column + " FROM " + table).get(0));
  }

  /** Another value of the same kind that reads as well as the first. */
  private static Object other(Object value) {
    if (value instanceof Double number) {
      return number + 1;
    }
    if (value instanceof Number number) {
      return number.longValue() == 1 ? 0 : number.longValue() + 1000;
    }
    return switch (value.toString()) {
      case "RECEIVE", "USE" -> "CORRECT";
      case "medium-lasting" -> "thick-lasting";
      default -> value.toString().replaceFirst("2026", "2025").replaceFirst("2027", "2028");
    };
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_lot_that_reads_well_but_otherwise_than_written_is_told_with_its_number(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = filled(database);
      CabinetStore.Contents before = store.contents();
      int told = 0;
      for (String column : CabinetRows.LOT.subList(1, CabinetRows.LOT.size())) {
        Object good = get(database, "lot", column);
        Object bad = other(good);
        set(database, "lot", column, bad.equals(good) ? good + "x" : bad);
        StoreFailed failed = assertThrows(StoreFailed.class, store::contents, column);
        assertTrue(failed.getMessage().startsWith("lot 007 in the database is damaged"), column);
        assertTrue(failed.getMessage().contains("restore BACKUP --database"), column);
        set(database, "lot", column, good);
        told++;
      }
      assertEquals(12, told);
      assertEquals(before.lots(), store.contents().lots());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_movement_that_reads_well_but_otherwise_than_written_is_told_with_its_number(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = new CabinetStore(database);
      store.receive(
          lot("007", Optional.of(DAY), Optional.empty(), null),
          Optional.of(movement("in", Movement.Kind.RECEIVE, "007", 7)));
      store.receive(lot("007x", Optional.of(DAY), Optional.empty(), null), Optional.empty());
      for (String column : CabinetRows.MOVEMENT.subList(1, CabinetRows.MOVEMENT.size())) {
        Object good = get(database, "movement", column);
        Object bad = other(good);
        set(database, "movement", column, bad.equals(good) ? good + "x" : bad);
        StoreFailed failed = assertThrows(StoreFailed.class, store::contents, column);
        String told = failed.getMessage();
        assertTrue(told.startsWith("movement in in the database is damaged"), told);
        assertThrows(
            StoreFailed.class, () -> store.move(movement("b", Movement.Kind.USE, "007", 1)));
        set(database, "movement", column, good);
      }
      assertEquals(Millilitres.of(7), store.contents().ledger().left("007"));
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_row_whose_seal_is_gone_or_turned_is_damaged_and_so_is_one_under_another_number(
      String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = filled(database);
      Object good = get(database, "lot", "seal");
      for (String bad :
          List.of("", "00000000", good.toString().toUpperCase(java.util.Locale.ROOT) + "0")) {
        set(database, "lot", "seal", bad);
        assertThrows(StoreFailed.class, store::contents, bad);
      }
      set(database, "lot", "seal", good);
      database.transaction(sql -> sql.update("UPDATE movement SET id = 'two' WHERE id = 'out'"));
      StoreFailed failed = assertThrows(StoreFailed.class, () -> store.usesFor("HL-7"));
      assertTrue(failed.getMessage().startsWith("movement two "), failed.getMessage());
    }
  }

  /** A database as version 3 of its tables left it, with rows nobody sealed. */
  private static void older(String url) {
    boolean sqlite = url.startsWith(Database.SQLITE);
    String serial =
        sqlite
            ? "INTEGER PRIMARY KEY AUTOINCREMENT"
            : "BIGINT GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY";
    Flyway.configure(Database.class.getClassLoader())
        .dataSource(url, null, null)
        .locations("classpath:db/annulus")
        .placeholders(Map.of("serial", serial))
        .target("3")
        .load()
        .migrate();
    try (java.sql.Connection c = java.sql.DriverManager.getConnection(url)) {
      Sql sql = new Sql(c);
      sql.update(
          "INSERT INTO lot (lot, item, label, container_ul, left_ul, received, opened, expires,"
              + " place, sheet_on_file, sheet_dated, stored_low_c, stored_high_c) VALUES ('007',"
              + " 'medium-lasting', '', 10000, 7000, '2026-11-01', NULL, '2027-11-01', '', 0, NULL,"
              + " 10, 20.5)");
      sql.update(
          "INSERT INTO movement (id, at, day, kind, who, job, lot, item, amount_ul, reason, witness)"
              + " VALUES ('in', '2026-11-25T10:00:00Z', '2026-11-25', 'RECEIVE', 'Orla', '', '007',"
              + " 'medium-lasting', 7000, '', '')");
    } catch (java.sql.SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void rows_of_an_older_version_are_sealed_once_and_damage_after_that_is_told(String name) {
    String url = Databases.fresh(name, folder);
    older(url);
    try (Database database = Database.open(url)) {
      CabinetStore.Contents contents = new CabinetStore(database).contents();
      assertEquals(Millilitres.of(7), contents.ledger().left("007"));
      assertEquals(OptionalDouble.of(20.5), contents.lots().get(0).storedHighC());
      set(database, "lot", "expires", "2028-11-01");
    }
    try (Database database = Database.open(url)) {
      CabinetStore store = new CabinetStore(database);
      assertThrows(StoreFailed.class, store::contents);
      set(database, "lot", "expires", "2027-11-01");
      set(database, "movement", "seal", "");
    }
    try (Database database = Database.open(url)) {
      assertThrows(StoreFailed.class, () -> new CabinetStore(database).contents());
    }
  }

  @Test
  void a_backup_of_an_older_version_is_put_back_and_sealed() {
    String old = "jdbc:sqlite:" + folder.resolve("old.db");
    older(old);
    String url = Databases.fresh("sqlite", folder);
    Database.open(url).close();
    Backup.restore(folder.resolve("old.db"), url);
    try (Database database = Database.open(url)) {
      assertEquals(1, new CabinetStore(database).contents().lots().size());
    }
  }

  @Test
  void a_damaged_row_gets_into_no_backup_and_the_last_good_one_puts_it_right() {
    String url = Databases.fresh("sqlite", folder);
    Path good = folder.resolve("good.db");
    Path bad = folder.resolve("bad.db");
    CabinetStore.Contents before;
    try (Database database = Database.open(url)) {
      before = filled(database).contents();
      Backup.take(url, good);
      set(database, "movement", "amount_ul", 9000L);
    }
    StoreFailed failed = assertThrows(StoreFailed.class, () -> Backup.take(url, bad));
    assertTrue(failed.getMessage().contains("movement in "), failed.getMessage());
    assertFalse(Files.exists(bad));
    Backup.restore(good, url);
    try (Database database = Database.open(url)) {
      CabinetStore.Contents after = new CabinetStore(database).contents();
      assertEquals(before.lots(), after.lots());
      assertEquals(before.ledger().movements(), after.ledger().movements());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_lot_of_which_only_the_opening_is_known_gets_its_other_dates_but_none_that_contradict(
      String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = new CabinetStore(database);
      store.receive(lot("V-1", Optional.empty(), Optional.of(DAY), null), Optional.empty());
      Optional<LocalDate> after = Optional.of(DAY.plusDays(1));
      Lot late = lot("V-1", after, Optional.empty(), DAY.plusYears(1));
      assertThrows(InvalidValue.class, () -> store.receive(late, Optional.empty()));
      Lot dated = lot("V-1", Optional.empty(), Optional.empty(), DAY.plusYears(1));
      assertTrue(store.receive(dated, Optional.empty()));
      Lot there = store.contents().lots().get(0);
      assertEquals(Optional.of(DAY), there.opened());
      assertEquals(Optional.of(DAY.plusYears(1)), there.expires());
      assertFalse(store.receive(dated, Optional.empty()), "its dates are known now");
    }
  }

  private static Lot stored(Lot lot, String item, double highC) {
    return new Lot(
        lot.lot(),
        item,
        lot.label(),
        lot.container(),
        lot.left(),
        lot.received(),
        lot.opened(),
        lot.expires(),
        lot.place(),
        lot.sheet(),
        OptionalDouble.of(10),
        OptionalDouble.of(highC),
        List.of());
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_lot_that_comes_again_is_only_ever_judged_more_strictly_and_never_of_another_class(
      String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = filled(database);
      Optional<LocalDate> came = Optional.of(DAY.minusDays(9));
      Lot first = lot("007", came, Optional.of(DAY.minusDays(2)), DAY.plusDays(40));
      Lot worse = stored(first, "medium-lasting", 34);
      Movement twice = movement("in-2", Movement.Kind.RECEIVE, "007", 7);
      assertTrue(store.receive(worse, Optional.of(twice)));
      assertEquals(List.of(worse), store.contents().lots());
      assertEquals(Millilitres.of(6.75), store.contents().ledger().left("007"));
      Lot better = lot("007", came, Optional.of(DAY), DAY.plusYears(1));
      assertFalse(store.receive(better, Optional.empty()));
      Lot other = stored(first, "thick-lasting", 50);
      assertThrows(InvalidValue.class, () -> store.receive(other, Optional.empty()));
      assertEquals(List.of(worse), store.contents().lots());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_lot_that_came_with_a_ledger_gets_its_storage_with_its_dates(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = new CabinetStore(database);
      Movement in = movement("r1", Movement.Kind.RECEIVE, "H-1", 7);
      store.takeOver(List.of(in), Set.of("medium-lasting"));
      Lot known = lot("H-1", Optional.of(DAY), Optional.empty(), DAY.plusYears(1));
      Lot hot = stored(known, "medium-lasting", 34);
      assertTrue(store.receive(hot, Optional.empty()));
      assertEquals(List.of(hot.withLeft(Millilitres.NONE)), store.contents().lots());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_ledger_that_brings_more_than_any_container_holds_is_refused_whole(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = filled(database);
      List<Movement> elsewhere =
          List.of(
              movement("u", Movement.Kind.USE, "007", 1),
              movement("a", Movement.Kind.RECEIVE, "BIG", 20_000),
              movement("b", Movement.Kind.RECEIVE, "BIG", 20_000));
      Set<String> items = Set.of("medium-lasting");
      InvalidValue refused =
          assertThrows(InvalidValue.class, () -> store.takeOver(elsewhere, items));
      assertEquals("lot BIG would then have 40000 mL", refused.problem());
      assertEquals(1, store.contents().lots().size());
      assertEquals(2, store.contents().ledger().movements().size());
      assertThrows(
          InvalidValue.class,
          () -> store.move(movement("c", Movement.Kind.CORRECT, "007", 19_994)));
      assertEquals(2, store.takeOver(elsewhere.subList(0, 2), items).isNew());
    }
  }

  private static Movement other(String id, Movement.Kind kind, String lot, double ml) {
    Movement m = movement(id, kind, lot, ml);
    return new Movement(
        id, m.at(), m.day(), kind, m.who(), m.job(), lot, "press-film", m.amount(), "r", "");
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_movement_of_another_class_is_refused_and_of_a_ledger_only_its_use_is_kept(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = filled(database);
      Movement use = other("x", Movement.Kind.USE, "007", 1);
      InvalidValue refused = assertThrows(InvalidValue.class, () -> store.move(use));
      assertEquals("lot 007 is medium-lasting, not press-film", refused.problem());
      List<Movement> elsewhere =
          List.of(
              other("r", Movement.Kind.RECEIVE, "007", 5),
              use,
              movement("n", Movement.Kind.RECEIVE, "N-1", 5),
              other("n2", Movement.Kind.RECEIVE, "N-1", 5));
      Set<String> items = Set.of("medium-lasting", "press-film");
      CabinetStore.TakenOver taken = store.takeOver(elsewhere, items);
      assertEquals(2, taken.isNew());
      assertEquals(Set.of("007", "N-1"), taken.otherItems());
      assertEquals(Millilitres.of(5.75), store.contents().ledger().left("007"));
      assertEquals(Millilitres.of(5), store.contents().ledger().left("N-1"));
      assertEquals(2, store.usesFor("HL-7").size());
      assertEquals(0, store.takeOver(elsewhere, items).isNew());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_ledger_opened_elsewhere_with_another_amount_opens_no_lot_again(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = new CabinetStore(database);
      Movement here = movement("opening-007", Movement.Kind.RECEIVE, "007", 7);
      store.receive(lot("007", Optional.of(DAY), Optional.empty(), null), Optional.of(here));
      List<Movement> elsewhere =
          List.of(
              movement("opening-007", Movement.Kind.RECEIVE, "007", 6.5),
              movement("received-007", Movement.Kind.RECEIVE, "007", 7),
              here,
              movement("opening-N-1", Movement.Kind.RECEIVE, "N-1", 5),
              movement("received-N-1", Movement.Kind.RECEIVE, "N-1", 5),
              movement("u", Movement.Kind.USE, "007", 1));
      CabinetStore.TakenOver taken = store.takeOver(elsewhere, Set.of("medium-lasting"));
      assertEquals(2, taken.isNew());
      assertEquals(Set.of("007", "N-1"), taken.openedTwice());
      assertEquals(Millilitres.of(6), store.contents().ledger().left("007"));
      assertEquals(Millilitres.of(5), store.contents().ledger().left("N-1"));
    }
  }
}
