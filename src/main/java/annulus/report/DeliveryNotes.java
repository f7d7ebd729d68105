package annulus.report;

import annulus.stock.Ledger;
import annulus.stock.Movement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** What a ledger that was taken over tells of a lot that came here and there. */
public final class DeliveryNotes {
  private DeliveryNotes() {}

  /**
   * One line for each lot that somebody took in here and somebody there: counted once, as it may be
   * one bottle.
   *
   * @param others what is taken over
   * @param before the ledger without it
   */
  public static List<String> of(Collection<Movement> others, Ledger before) {
    List<String> notes = new ArrayList<>();
    for (Movement there : others) {
      before
          .cameTwice(there)
          .ifPresent(
              here ->
                  notes.add(
                      "lot "
                          + here.lot()
                          + ": "
                          + took(here)
                          + " here, "
                          + took(there)
                          + " there; counted as ONE bottle of "
                          + here.amount()
                          + " mL. If there are two, take the other one in as "
                          + here.lot()
                          + "-2"));
    }
    return notes;
  }

  private static String took(Movement m) {
    return m.who() + " took it in on " + m.day();
  }
}
