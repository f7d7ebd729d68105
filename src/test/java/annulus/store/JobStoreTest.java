package annulus.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.stock.Lot;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.SafetySheet;
import annulus.store.JobStore.Edit;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class JobStoreTest {
  private static final Instant NOW = Instant.parse("2027-03-11T09:00:00Z");
  private static final Stamp MIRA = new Stamp("Mira", NOW);
  private static final Stamp EDE = new Stamp("Ede", NOW.plusSeconds(60));

  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private static JobContent content(String reference) {
    return JobContent.booked(reference, "a cup ' \" <b> ü", "frame 3", "{\"a\":1}", "{}");
  }

  private static JobStore.Change put(JobState to) {
    return j -> new Edit(JobChange.Kind.STATE, to.words(), j.content().in(to));
  }

  private static Job put(JobStore store, Job job, JobState to, Stamp stamp) {
    return store.change(job.id(), job.version(), put(to), Optional.empty(), stamp);
  }

  @ParameterizedTest
  @MethodSource("databases")
  void what_was_written_is_there_after_opening_again(String name) {
    String url = Databases.fresh(name, folder);
    Job job;
    try (Database database = Database.open(url)) {
      JobStore store = new JobStore(database);
      job = put(store, store.enter(content("HL-1"), MIRA), JobState.IN_WORK, EDE);
    }
    try (Database database = Database.open(url)) {
      JobStore store = new JobStore(database);
      assertEquals(Optional.of(job), store.job(job.id()));
      assertEquals(List.of(job), store.onTheBoard(NOW));
      List<JobChange> changes = store.changes(job.id());
      assertEquals(List.of("Mira", "Ede"), changes.stream().map(JobChange::who).toList());
      assertEquals(EDE.at(), changes.get(1).at());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void the_second_editor_is_told_and_nothing_is_written(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      JobStore store = new JobStore(database);
      Job seen = store.enter(content("HL-1"), MIRA);
      Job first = put(store, seen, JobState.IN_WORK, MIRA);
      Stale stale = assertThrows(Stale.class, () -> put(store, seen, JobState.WAITING_PARTS, EDE));
      assertEquals(first, stale.current());
      assertEquals(2, store.changes(seen.id()).size());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void of_many_at_once_exactly_one_wins_each_version(String name) throws Exception {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      JobStore store = new JobStore(database);
      Job job = store.enter(content("HL-1"), MIRA);
      ExecutorService threads = Executors.newFixedThreadPool(8);
      List<Future<Boolean>> results = new ArrayList<>();
      for (int i = 0; i < 40; i++) {
        Stamp stamp = new Stamp("editor " + i, NOW);
        long version = 1L + i % 4;
        results.add(
            threads.submit(
                () -> {
                  try {
                    store.change(job.id(), version, put(JobState.IN_WORK), Optional.empty(), stamp);
                    return true;
                  } catch (Stale e) {
                    return false;
                  }
                }));
      }
      int won = 0;
      for (Future<Boolean> result : results) {
        won += result.get() ? 1 : 0;
      }
      threads.shutdown();
      assertTrue(won >= 1);
      assertEquals(won + 1L, store.job(job.id()).orElseThrow().version());
      assertEquals(won + 1, store.changes(job.id()).size());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void undoing_everything_leads_back_to_the_first_entry_and_keeps_every_row(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      JobStore store = new JobStore(database);
      Random random = new Random(7407);
      Job job = store.enter(content("HL-1"), MIRA);
      JobContent first = job.content();
      int rows = 1;
      int open = 0;
      for (int i = 0; i < 40; i++) {
        boolean back = open > 0 && random.nextInt(3) == 0;
        JobState to = List.of(JobState.IN_WORK, JobState.WAITING_PARTS).get(random.nextInt(2));
        job = back ? store.undo(job.id(), job.version(), EDE) : put(store, job, to, MIRA);
        open += back ? -1 : 1;
        rows++;
      }
      assertTrue(open > 3);
      while (open-- > 0) {
        job = store.undo(job.id(), job.version(), EDE);
        rows++;
      }
      assertEquals(first, job.content());
      assertEquals(rows, store.changes(job.id()).size());
      Job last = job;
      assertThrows(Refused.class, () -> store.undo(last.id(), last.version(), EDE));
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_fit_that_was_taken_back_leaves_the_history_of_the_bore(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      JobStore store = new JobStore(database);
      Job job = store.enter(content("HL-1"), MIRA);
      for (double mm : new double[] {41.960, 41.990}) {
        BoreFit fit = new BoreFit("frame 3", "HL-1", NOW, mm, 8);
        job = store.change(job.id(), job.version(), put(JobState.IN_WORK), Optional.of(fit), MIRA);
      }
      BoreTrend trend = BoreTrend.of(store.fits("frame 3"));
      assertEquals(30, trend.grownUm(), 1e-6);
      assertEquals(8 * Math.sqrt(2), trend.doubtUm(), 1e-9);
      assertTrue(trend.isSure());
      store.undo(job.id(), job.version(), EDE);
      assertEquals(1, store.fits("frame 3").size());
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void drafts_keep_what_was_typed_and_tell_the_second_writer(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      DraftStore store = new DraftStore(database);
      Draft draft = store.begin(Map.of("bore-1", "41,97 ü"), NOW, "Mira");
      assertEquals("41,97 ü", store.draft(draft.id()).orElseThrow().field("bore-1"));
      assertTrue(store.save(draft.id(), 1, Map.of("bore-1", "41.97"), NOW, "Ede").isPresent());
      assertTrue(store.save(draft.id(), 1, Map.of("bore-1", "40"), NOW, "Mira").isEmpty());
      assertEquals("41.97", store.all().get(0).field("bore-1"));
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void nobody_can_draw_more_than_is_in_a_lot_and_the_same_movement_counts_once(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      CabinetStore store = new CabinetStore(database);
      Lot lot = lot();
      assertTrue(store.receive(lot, Optional.of(movement("in", Movement.Kind.RECEIVE, 10))));
      assertTrue(!store.receive(lot, Optional.empty()));
      store.move(movement("a", Movement.Kind.USE, 6));
      store.move(movement("a", Movement.Kind.USE, 6));
      assertEquals(Millilitres.of(4), store.contents().ledger().left("007"));
      assertThrows(
          annulus.quantity.InvalidValue.class,
          () -> store.move(movement("b", Movement.Kind.USE, 4.001)));
      assertEquals(lot, store.contents().lots().get(0));
      assertEquals(2, store.contents().ledger().movements().size());
    }
  }

  private static Lot lot() {
    return new Lot(
        "007",
        "medium-lasting",
        "Orla's",
        Millilitres.of(10),
        Millilitres.of(10),
        Optional.of(LocalDate.of(2027, 1, 2)),
        Optional.empty(),
        Optional.of(LocalDate.of(2028, 1, 2)),
        "cupboard",
        new SafetySheet(true, Optional.of(LocalDate.of(2026, 5, 5))),
        OptionalDouble.of(8.5),
        OptionalDouble.empty());
  }

  private static Movement movement(String id, Movement.Kind kind, double ml) {
    return new Movement(
        id,
        NOW,
        LocalDate.of(2027, 3, 11),
        kind,
        "Mira",
        "HL-1",
        "007",
        "medium-lasting",
        Millilitres.of(ml),
        "",
        "");
  }
}
