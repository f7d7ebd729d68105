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
    Set<String> names = new TreeSet<>(mine.keySet());
    names.addAll(theirs.fields().keySet());
    for (String name : names) {
      String own = mine.getOrDefault(name, "");
      if (!own.equals(theirs.field(name))) {
        lines.add(line(name, own, theirs.field(name)));
      }
    }
    return lines;
  }

  /** What the job is now beside what was typed here, field by field. */
  static List<String> ofJob(Job current, Draft mine) {
    List<String> lines = new ArrayList<>();
    lines.add(
        current.changedBy()
            + " has changed this job ("
            + current.content().state().words()
            + "). Yours is below and kept; \"Change the job\" again puts it in force.");
    Map<String, String> theirs = BenchOrder.fields(current.content());
    for (Map.Entry<String, String> field : mine.fields().entrySet()) {
      boolean own = !field.getKey().startsWith("of");
      String other = theirs.getOrDefault(field.getKey(), "");
      if (own && !field.getValue().equals(other)) {
        lines.add(line(field.getKey(), field.getValue(), other));
      }
    }
    return lines;
  }

  private static String line(String field, String mine, String theirs) {
    return BenchLabels.of(field) + ": yours \"" + mine + "\", theirs \"" + theirs + "\"";
  }
}
