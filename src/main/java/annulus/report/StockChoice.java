package annulus.report;

import annulus.advice.Advice;
import annulus.advice.StockNeeds;
import annulus.catalog.CompoundClass;
import annulus.quantity.Numbers;
import annulus.stock.Cabinet;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.Millilitres;
import annulus.stock.Need;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What the cabinet has for a joint, and what it costs against the best class.
 *
 * @param preferred the answer with everything known, and the one with the cabinet alone
 * @param cabinet what is there
 */
public record StockChoice(StockNeeds.Preferred preferred, Cabinet cabinet) {
  /** The answer that counts: with a class in stock where one does, else with the best of all. */
  public Advice advice() {
    return preferred.cabinetWillDo() ? preferred.inStock() : preferred.best();
  }

  /** A few lines that go with the answer. */
  public String text() {
    TextLines out = new TextLines();
    String head = "Cabinet: ";
    for (String sentence : sentences()) {
      out.hanging(head, sentence);
      head = "  ";
    }
    return out.toString();
  }

  /**
   * Something that the joint takes.
   *
   * @param item id of a class or primer
   * @param amount what the joint takes of it
   * @param lots the lots to draw from, in that order
   */
  private record Taken(String item, Millilitres amount, List<LotCheck> lots) {
    String words() {
      return item + ", " + lots.stream().map(Taken::words).collect(Collectors.joining("; then "));
    }

    private static String words(LotCheck check) {
      String left = check.lot().left() + " mL";
      return "lot " + check.lot().lot() + " with " + left + ", use by " + StockWords.useBy(check);
    }
  }

  /** What comes out of the cabinet: the compound, then the primer; nothing where it won't do. */
  private List<Taken> taken() {
    List<Taken> taken = new ArrayList<>();
    Optional<Need.Option> draw = preferred.draw().filter(d -> preferred.cabinetWillDo());
    draw.ifPresent(d -> taken.add(taken(d.item(), d.amount())));
    draw.ifPresent(d -> d.primer().ifPresent(p -> taken.add(taken(p, d.primerAmount()))));
    return taken;
  }

  private Taken taken(String item, Millilitres amount) {
    return new Taken(item, amount, cabinet.toDraw(item, amount, preferred.day()));
  }

  private List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    List<Taken> taken = taken();
    if (!preferred.cabinetWillDo()) {
      sentences.add("nothing in date does for this joint. Best: " + name(preferred.best()) + ".");
    } else if (taken.isEmpty()) {
      sentences.add("the joint takes nothing out of it.");
    } else {
      taken.forEach(t -> sentences.add(t.words() + "."));
      sentences.add(preferred.sameChoice() ? "It is also the best of all classes known." : cost());
    }
    for (StockNeeds.TooLittle few : preferred.tooLittle()) {
      String left = few.left() + " mL of the " + few.wanted() + " mL it takes.";
      sentences.add("Too little in date: " + few.item() + ", " + left);
    }
    heldBack().ifPresent(sentences::add);
    return sentences;
  }

  /** Else somebody who sees the bottle wonders why it is not offered. */
  private Optional<String> heldBack() {
    List<String> lots = new ArrayList<>();
    for (Lot lot : cabinet.lots()) {
      if (lot.isHeldBack() && lot.left().isPositive()) {
        lots.add("lot " + lot.lot() + " (" + lot.item() + ")");
      }
    }
    return lots.isEmpty()
        ? Optional.empty()
        : Optional.of("Held back, not counted: " + String.join(", ", lots) + ".");
  }

  /** The {@code cabinet} of {@code data/schema/advice.schema.json}. */
  void json(JsonOut out) {
    out.text("day", preferred.day().toString());
    out.flag("willDo", preferred.cabinetWillDo()).flag("isBest", preferred.sameChoice());
    out.list(
        "draw",
        taken(),
        t ->
            out.text("item", t.item())
                .number("ml", t.amount().value())
                .list("lots", t.lots(), c -> lot(out, c)));
    out.list(
        "tooLittle",
        preferred.tooLittle(),
        t ->
            out.text("item", t.item())
                .number("leftMl", t.left().value())
                .number("wantedMl", t.wanted().value()));
    out.texts("text", sentences());
  }

  private static void lot(JsonOut out, LotCheck check) {
    out.text("lot", check.lot().lot()).number("leftMl", check.lot().left().value());
    out.text("useBy", check.useBy().map(u -> u.date().toString()));
    out.text("rule", check.useBy().map(u -> StageTexts.id(u.rule())));
    out.text("ruleSource", check.useBy().map(u -> u.provenance().source()));
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

  private String cost() {
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
