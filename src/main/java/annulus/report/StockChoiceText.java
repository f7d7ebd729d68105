package annulus.report;

import annulus.advice.Advice;
import annulus.advice.StockNeeds;
import annulus.catalog.CompoundClass;
import annulus.quantity.Numbers;
import annulus.stock.Cabinet;
import annulus.stock.Millilitres;
import annulus.stock.Need;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the cabinet has for a joint, and what it costs against the best class. */
public final class StockChoiceText {
  private StockChoiceText() {}

  /**
   * A few lines that go with the answer.
   *
   * @param preferred both answers
   * @param cabinet what is there
   */
  public static String of(StockNeeds.Preferred preferred, Cabinet cabinet) {
    TextLines out = new TextLines();
    if (!preferred.cabinetWillDo()) {
      out.line(
          "Cabinet: nothing in date does for this joint. Best: " + name(preferred.best()) + ".");
    } else if (preferred.draw().isPresent()) {
      Need.Option draw = preferred.draw().get();
      out.hanging(
          "Cabinet: ",
          draw.item() + ", " + lots(preferred, cabinet, draw.item(), draw.amount()) + ".");
      draw.primer()
          .ifPresent(
              p ->
                  out.hanging(
                      "  ", p + ", " + lots(preferred, cabinet, p, draw.primerAmount()) + "."));
      if (preferred.sameChoice()) {
        out.line("  It is also the best of all classes known.");
      } else {
        out.hanging("  ", cost(preferred));
      }
    }
    preferred
        .tooLittle()
        .forEach(
            t ->
                out.line(
                    "  Too little in date: "
                        + t.item()
                        + ", "
                        + t.left()
                        + " mL of the "
                        + t.wanted()
                        + " mL it takes."));
    heldBack(out, cabinet);
    return out.toString();
  }

  /** Else somebody who sees the bottle wonders why it is not offered. */
  private static void heldBack(TextLines out, Cabinet cabinet) {
    String lots =
        cabinet.lots().stream()
            .filter(l -> l.isHeldBack() && l.left().isPositive())
            .map(l -> "lot " + l.lot() + " (" + l.item() + ")")
            .collect(Collectors.joining(", "));
    if (!lots.isEmpty()) {
      out.hanging("  ", "Held back, not counted: " + lots + ".");
    }
  }

  private static String name(Advice advice) {
    String compound =
        advice
            .decision()
            .compound()
            .map(CompoundClass::id)
            .orElse(advice.decision().kind().isYes() ? "no compound" : "no class");
    return compound + advice.decision().primer().map(p -> " with " + p.primer().id()).orElse("");
  }

  /** The lots to draw from, in that order. */
  private static String lots(
      StockNeeds.Preferred preferred, Cabinet cabinet, String item, Millilitres amount) {
    return cabinet.toDraw(item, amount, preferred.day()).stream()
        .map(
            c ->
                "lot "
                    + c.lot().lot()
                    + " with "
                    + c.lot().left()
                    + " mL, use by "
                    + StockWords.useBy(c))
        .collect(Collectors.joining("; then "));
  }

  private static String cost(StockNeeds.Preferred preferred) {
    Advice best = preferred.best();
    Advice used = preferred.inStock();
    StringBuilder words = new StringBuilder("The best class known is " + name(best) + ": with it ");
    words.append(handBack(best, used));
    if (best.decision().compound().isPresent()) {
      CompoundClass a = best.decision().compound().get();
      CompoundClass b = used.decision().compound().orElseThrow();
      words.append(
          ", strength likely "
              + Numbers.plain(a.strengthMPa().likely())
              + " instead of "
              + Numbers.plain(b.strengthMPa().likely())
              + " MPa");
      if (a.permanence() != b.permanence()) {
        boolean apart = a.permanence() == CompoundClass.Permanence.RELEASABLE;
        words.append(apart ? ", and it would come apart" : ", and it would be lasting");
      }
    }
    return words.append('.').toString();
  }

  private static String handBack(Advice best, Advice used) {
    Optional<Instant> a = best.handBack().map(Advice.HandBack::at);
    Optional<Instant> b = used.handBack().map(Advice.HandBack::at);
    if (a.isEmpty() || b.isEmpty()) {
      return a.isEmpty() ? "no hand-back could be promised" : "a hand-back could be promised";
    }
    Duration gain = Duration.between(a.get(), b.get());
    if (gain.isZero()) {
      return "the hand-back would be the same";
    }
    String by = ShopTime.up(gain.abs());
    return "the hand-back would be " + by + (gain.isNegative() ? " later" : " earlier");
  }
}
