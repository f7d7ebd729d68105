package annulus.report;

import annulus.stock.Ledger;
import annulus.stock.Movement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What a ledger that was taken over has to do with lots that are held back. */
public final class HeldNotes {
  private HeldNotes() {}

  /**
   * One line for each thing that holds a lot of these movements back, with the jobs that got it.
   *
   * @param others what was taken over
   * @param after the ledger with it
   */
  public static List<String> of(Collection<Movement> others, Ledger after) {
    Set<String> lots = new HashSet<>();
    others.forEach(m -> lots.add(m.lot()));
    List<String> notes = new ArrayList<>();
    after
        .heldBack()
        .forEach(
            (lot, reasons) -> {
              if (lots.contains(lot)) {
                Set<String> jobs = after.jobsOf(lot);
                String got = jobs.isEmpty() ? "" : "; jobs that got it: " + String.join(", ", jobs);
                reasons.forEach(h -> notes.add(StockCheckReport.heldBack(lot, h) + got));
              }
            });
    return notes;
  }
}
