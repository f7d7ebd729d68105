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
    add(words, "container_ml", here, again, counts, l -> Optional.of(l.container()));
    add(words, "received", here, again, counts, Lot::received);
    add(words, "opened", here, again, counts, Lot::opened);
    add(words, "expires", here, again, counts, Lot::expires);
    add(words, "stored_low_c", here, again, counts, l -> celsius(l.storedLowC()));
    add(words, "stored_high_c", here, again, counts, l -> celsius(l.storedHighC()));
    return words.isEmpty()
        ? Optional.empty()
        : Optional.of("lot " + here.lot() + ": " + String.join("; ", words));
  }

  private static Optional<String> celsius(OptionalDouble value) {
    return value.isPresent() ? Optional.of(Numbers.plain(value.getAsDouble())) : Optional.empty();
  }

  private static void add(
      List<String> words,
      String field,
      Lot here,
      Lot again,
      Lot counts,
      Function<Lot, Optional<?>> value) {
    Optional<?> said = value.apply(again);
    if (said.isPresent() && !said.equals(value.apply(here))) {
      String before = value.apply(here).map(Object::toString).orElse("nothing");
      String after = value.apply(counts).map(Object::toString).orElse("nothing");
      words.add(field + " " + before + " here, " + said.get() + " said now, " + after + " counts");
    }
  }
}
