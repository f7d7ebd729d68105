package annulus.report;

import annulus.quantity.Numbers;
import annulus.stock.Lot;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** What two sources say otherwise of one lot, and which of them counts. */
public final class LotDifference {
  private LotDifference() {}

  /**
   * The fields in which a lot that comes again differs.
   *
   * @param here the lot that is there
   * @param again what is now said of it
   * @return empty when they agree in all that both of them say and nothing new is said
   * @throws annulus.quantity.InvalidValue when they can't be one lot
   */
  public static Optional<String> words(Lot here, Lot again) {
    Lot counts = here.stricter(again);
    List<String> words = new ArrayList<>();
    add(words, "size", here, again, counts, l -> Optional.of(l.container() + " mL"));
    add(words, "came on", here, again, counts, Lot::received);
    add(words, "opened on", here, again, counts, Lot::opened);
    add(words, "printed expiry", here, again, counts, Lot::expires);
    add(words, "coldest it was stored", here, again, counts, l -> celsius(l.storedLowC()));
    add(words, "warmest it was stored", here, again, counts, l -> celsius(l.storedHighC()));
    return words.isEmpty()
        ? Optional.empty()
        : Optional.of("lot " + here.lot() + ": " + String.join("; ", words));
  }

  private static Optional<String> celsius(OptionalDouble value) {
    return value.isPresent()
        ? Optional.of(Numbers.plain(value.getAsDouble()) + " °C")
        : Optional.empty();
  }

  private static void add(
      List<String> words,
      String what,
      Lot here,
      Lot again,
      Lot counts,
      Function<Lot, Optional<?>> value) {
    Optional<?> said = value.apply(again);
    if (said.isPresent() && !said.equals(value.apply(here))) {
      String before = value.apply(here).map(Object::toString).orElse("not known");
      String after = value.apply(counts).map(Object::toString).orElse("neither");
      words.add(what + ": " + before + " here, " + said.get() + " said now, " + after + " counts");
    }
  }
}
