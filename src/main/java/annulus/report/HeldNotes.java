package annulus.report;

import annulus.stock.Cabinet;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.Movement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What lots that are held back mean for a ledger taken over, and for a plan. */
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

  /**
   * The lots that a plan leaves out because they are held back, though something is left in them.
   *
   * @return text for a terminal; empty when there are none
   */
  public static String leftOut(Cabinet cabinet) {
    List<Lot> held =
        cabinet.lots().stream().filter(l -> l.isHeldBack() && l.left().isPositive()).toList();
    if (held.isEmpty()) {
      return "";
    }
    TextLines out = new TextLines().heading("Held back, so not counted");
    for (Lot lot : held) {
      lot.heldBack()
          .forEach(
              h ->
                  out.hanging(
                      "  ",
                      lot.left() + " mL " + lot.item() + ", lot " + lot.lot() + ": " + h.words()));
    }
    return out.toString();
  }
}
