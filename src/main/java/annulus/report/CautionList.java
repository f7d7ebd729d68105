package annulus.report;

import annulus.advice.Advice;
import annulus.catalog.Catalog;
import annulus.catalog.CautionRank;
import annulus.catalog.Severity;
import annulus.catalog.StandingCaution;
import annulus.select.Finding;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** What to take care of, gravest first: in the same order in text, JSON, on cards and on pages. */
final class CautionList {
  private final Catalog catalog;
  private final Map<String, Integer> places = new HashMap<>();

  CautionList(Catalog catalog) {
    this.catalog = catalog;
    for (String id : catalog.ranks().keySet()) {
      places.put(id, places.size());
    }
  }

  /**
   * One caution.
   *
   * @param id of the rule or the caution
   * @param text the words in full
   * @param card words that always stand on the card
   * @param everyJoint whether it is told with every joint
   */
  record Caution(String id, String text, Optional<String> card, boolean everyJoint) {}

  /**
   * All of an answer; that it can't be undone comes first of all, for nothing mends that later.
   *
   * @param advice the answer
   */
  List<Caution> of(Advice advice) {
    List<Caution> ranked = new ArrayList<>();
    for (Finding finding : advice.cautions()) {
      String id = finding.rule().id();
      ranked.add(new Caution(id, RuleTexts.reason(finding), card(id), false));
    }
    for (StandingCaution standing : catalog.cautions().values()) {
      ranked.add(new Caution(standing.id(), standing.text(), card(standing.id()), true));
    }
    List<Caution> all = new ArrayList<>();
    new RemovalTexts(advice)
        .caution()
        .forEach(c -> all.add(new Caution("", c, Optional.empty(), false)));
    all.addAll(byRank(ranked, Caution::id));
    return all;
  }

  /** What the rules say of the joint, gravest first. */
  List<Finding> findings(Advice advice) {
    return byRank(advice.cautions(), f -> f.rule().id());
  }

  /** What is told with every joint, gravest first. */
  List<StandingCaution> standing() {
    return byRank(catalog.cautions().values(), StandingCaution::id);
  }

  /** How grave; one that no row ranks may be of the worst kind. */
  Severity severity(String id) {
    CautionRank rank = catalog.ranks().get(id);
    return rank == null ? Severity.HURTS_PEOPLE : rank.severity();
  }

  private Optional<String> card(String id) {
    return Optional.ofNullable(catalog.ranks().get(id)).flatMap(CautionRank::card);
  }

  private <T> List<T> byRank(Collection<T> cautions, Function<T, String> id) {
    List<T> sorted = new ArrayList<>(cautions);
    sorted.sort((a, b) -> compare(id.apply(a), id.apply(b)));
    return sorted;
  }

  private int compare(String one, String other) {
    int graver = severity(one).compareTo(severity(other));
    return graver != 0 ? graver : Integer.compare(place(one), place(other));
  }

  private int place(String id) {
    return places.getOrDefault(id, places.size());
  }
}
