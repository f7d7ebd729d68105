package annulus.report;

import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.Millilitres;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What a ledger says of lots that can't be: somebody has to look at the bottle. */
public final class CountNotes {
  private CountNotes() {}

  /**
   * One line for each lot of which more is booked than its container holds.
   *
   * @param lots as a sheet or the cabinet has them, with their own containers; the container of one
   *     without dates is not known
   * @param ledger what is booked
   */
  public static List<String> of(List<Lot> lots, Ledger ledger) {
    List<String> notes = new ArrayList<>();
    Map<String, Millilitres> left = ledger.left();
    for (Lot lot : lots) {
      Millilitres booked = left.getOrDefault(lot.lot(), Millilitres.NONE);
      if (!lot.isDateless() && booked.compareTo(lot.container()) > 0) {
        notes.add(
            "lot "
                + lot.lot()
                + ": "
                + booked
                + " mL are booked in a container of "
                + lot.container()
                + " mL: count it again");
      }
    }
    return notes;
  }
}
