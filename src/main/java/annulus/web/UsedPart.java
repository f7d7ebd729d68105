package annulus.web;

import annulus.stock.LotCheck;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.Need;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;

/**
 * What the cabinet gave for a job, and the way to say so on its own page: lot and amount stand
 * there as the answer has them, and nobody has to type the reference.
 */
final class UsedPart {
  /** Tells the form of the cabinet which job page to go back to. */
  static final String FROM = "fromJob";

  private final Shelf shelf;
  private final JobView view;
  private final String who;

  UsedPart(Shelf shelf, JobView view, String who) {
    this.shelf = shelf;
    this.view = view;
    this.who = who;
  }

  Markup markup() {
    List<Movement> uses = shelf.usesFor(view.job().content().reference());
    boolean over = view.state().collected() || !view.answer().isYes();
    Markup part = new Markup();
    if (over && uses.isEmpty()) {
      return part;
    }
    part.element("h2", "Out of the cabinet", "id", "used");
    part.part(LotPage.lotsOf(uses));
    if (over) {
      return part;
    }
    forms(part, uses);
    part.open("p");
    part.element(
        "a",
        uses.isEmpty() ? "Another lot: to the cabinet" : "More was used: to the cabinet",
        "class",
        "button plain",
        "href",
        "/cabinet?job=" + LotPage.coded(view.job().content().reference()) + "#move");
    return part.close();
  }

  /** For what the answer draws and nobody has booked yet: compound, and the primer it goes with. */
  private void forms(Markup part, List<Movement> uses) {
    Shelf.Now now = shelf.now();
    Predicate<String> open = i -> uses.stream().noneMatch(m -> m.item().equals(i));
    Optional<Need.Option> draw = shelf.draw(view);
    draw.filter(d -> open.test(d.item()))
        .ifPresent(d -> item(part, now, d.item(), d.amount(), "used-"));
    draw.flatMap(Need.Option::primer)
        .filter(open)
        .ifPresent(p -> item(part, now, p, draw.get().primerAmount(), "used-primer-"));
  }

  private void item(Markup part, Shelf.Now now, String item, Millilitres amount, String id) {
    List<LotCheck> usable =
        now.checks(shelf.soonDays()).stream()
            .filter(c -> c.usable() && c.item().id().equals(item))
            .toList();
    if (usable.isEmpty()) {
      String name = shelf.items().get(item).name();
      part.element(
          "p", "No lot of " + name + " in the cabinet may be used today.", "class", "hint");
      return;
    }
    List<LotCheck> drawn = now.cabinet().toDraw(item, amount, now.day());
    String first = (drawn.isEmpty() ? usable : drawn).get(0).lot().lot();
    part.open("form", "method", "post", "action", "/cabinet/move", "class", "row");
    FormField.hidden(part, "id", UUID.randomUUID().toString());
    FormField.hidden(part, "kind", "USE");
    FormField.hidden(part, "job", view.job().content().reference());
    FormField.hidden(part, FROM, view.job().id());
    part.open("p", "class", "field").element("label", "Used from lot", "for", id + "lot");
    part.open("select", "id", id + "lot", "name", "lot");
    usable.forEach(c -> lot(part, c, first));
    part.close().close();
    part.open("p", "class", "field").element("label", "Amount, mL", "for", id + "ml");
    part.single(
        "input",
        "id",
        id + "ml",
        "name",
        "ml",
        "value",
        amount.toString(),
        "inputmode",
        FormField.DECIMAL,
        "required",
        "",
        "autocomplete",
        "off");
    part.close();
    Layout.who(part, who, id);
    part.element("button", "Used for this job", "type", "submit").close();
  }

  private static void lot(Markup part, LotCheck check, String chosen) {
    String lot = check.lot().lot();
    part.element(
        "option",
        lot + ", " + check.item().name() + ", " + check.lot().left() + " mL",
        "value",
        lot,
        "selected",
        lot.equals(chosen) ? "" : null);
  }
}
