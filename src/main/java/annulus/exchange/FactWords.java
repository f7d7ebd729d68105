package annulus.exchange;

import annulus.advice.Member;
import annulus.advice.PressesWhen;
import annulus.advice.Which;
import annulus.catalog.Activity;
import annulus.catalog.CompoundClass;
import annulus.catalog.Consequence;
import annulus.catalog.Finish;
import annulus.catalog.Material;
import annulus.select.Fact;
import java.util.List;

/** The words that a fact can have; a rule that waits for another word would never speak. */
final class FactWords {
  private FactWords() {}

  /** All words of a word fact, empty for numbers and flags. */
  static List<String> of(Fact fact) {
    return switch (fact) {
      case FIT -> List.of("clear", "line-to-line", "interference");
      case GAP_PRESSES -> Fields.words(PressesWhen.values());
      case ONE_READING_WHICH, UNPRIMED_INERT_WHICH, PART_COLDER_WHICH ->
          Fields.words(Which.values());
      case PRESS -> Fields.words(annulus.advice.PressReport.Standing.values());
      case BORE_KIND, PART_KIND -> Fields.words(Material.Kind.values());
      case BORE_ACTIVITY, PART_ACTIVITY -> Fields.words(Activity.Level.values());
      case BORE_FILM, PART_FILM -> Fields.words(Finish.Film.values());
      case BORE_ATTACK, PART_ATTACK -> Fields.words(Material.Attack.values());
      case BORE_STATE, PART_STATE -> Fields.words(Member.FaceState.values());
      case CONSEQUENCE -> Fields.words(Consequence.values());
      case CLASS_PERMANENCE -> Fields.words(CompoundClass.Permanence.values());
      case CLASS_ROLE -> Fields.words(CompoundClass.Role.values());
      default -> List.of();
    };
  }
}
