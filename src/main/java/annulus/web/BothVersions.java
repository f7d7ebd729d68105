package annulus.web;

import annulus.store.Draft;
import annulus.store.Job;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** What is told to somebody when another was quicker: both versions, field by field. */
final class BothVersions {

  private BothVersions() {}

  /** Both versions, field by field; what was typed here stays in the form. */
  static List<String> ofDraft(Draft theirs, Map<String, String> mine) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "Somebody else"
            + (theirs.changedBy().isEmpty() ? "" : " (" + theirs.changedBy() + ")")
            + " has changed this draft. Yours is below and not saved yet; save again to keep it.");
    lines.addAll(differences(mine, theirs.fields()));
    return lines;
  }

  /** What the job is now beside what was typed here, field by field. */
  static List<String> ofJob(Job current, Draft mine, ClockWords times) {
    BenchFields theirs = new BenchFields(current.content(), times);
    List<String> lines = new ArrayList<>();
    lines.add(
        current.changedBy()
            + " has changed this job ("
            + current.content().state().words()
            + "). Yours is below and kept; \"Change the job\" again puts it in force.");
    if (theirs.moved()) {
      lines.add("The part was moved after closing; that stays, whatever the order says.");
    }
    lines.addAll(differences(mine.fields(), theirs.byName()));
    return lines;
  }

  /** Over the fields of both: what only the other one filled in would be lost unseen. */
  private static List<String> differences(Map<String, String> mine, Map<String, String> theirs) {
    Set<String> names = new TreeSet<>(mine.keySet());
    names.addAll(theirs.keySet());
    names.removeAll(Set.of(BenchPage.JOB, BenchPage.JOB_VERSION));
    return names.stream()
        .filter(n -> !mine.getOrDefault(n, "").equals(theirs.getOrDefault(n, "")))
        .map(n -> line(n, mine.getOrDefault(n, ""), theirs.getOrDefault(n, "")))
        .toList();
  }

  private static String line(String field, String mine, String theirs) {
    return BenchLabels.of(field) + ": yours \"" + mine + "\", theirs \"" + theirs + "\"";
  }
}
