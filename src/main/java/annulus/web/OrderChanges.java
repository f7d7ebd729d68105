package annulus.web;

import annulus.store.JobContent;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What is different in an order that was changed, in the words of the bench.
 *
 * @param choices tells what a chosen value is called
 * @param times of the shop
 */
record OrderChanges(Choices choices, ClockWords times) {
  /** A job keeps its reference; the start is told as a time. */
  private static final Set<String> TOLD_APART = Set.of("reference", "start", BenchOrder.START_HOUR);

  /** Fields that mean nothing without whether it is per side or across. */
  private static final Set<String> OF_A_GAP = Set.of("gap", "gapPlusMinus");

  private static final String BASIS = "gapBasis";

  /** A line for the history of the job. */
  String words(JobContent before, JobContent now) {
    BenchFields was = new BenchFields(before, times);
    BenchFields is = new BenchFields(now, times);
    List<String> lines = new ArrayList<>(fields(was.byName(), is.byName()));
    Instant started = Orders.start(before.order());
    Instant starts = Orders.start(now.order());
    if (!started.equals(starts)) {
      String line = " " + times.past(started) + " → " + times.past(starts);
      lines.add(BenchLabels.of("start") + line);
    }
    lines.addAll(BenchFields.changedUnseen(was, is));
    return lines.isEmpty()
        ? "order entered again, nothing in it changed"
        : "order changed: " + String.join("; ", lines);
  }

  List<String> fields(Map<String, String> before, Map<String, String> now) {
    Set<String> names = new TreeSet<>(before.keySet());
    names.addAll(now.keySet());
    names.removeAll(TOLD_APART);
    return names.stream()
        .filter(n -> !said(n, before).equals(said(n, now)))
        .map(n -> BenchLabels.of(n) + " " + said(n, before) + " → " + said(n, now))
        .toList();
  }

  private String said(String field, Map<String, String> fields) {
    String words = choices.words(field, fields.getOrDefault(field, ""));
    if (words.isEmpty()) {
      return "not said";
    }
    return OF_A_GAP.contains(field) ? words + " " + said(BASIS, fields) : words;
  }
}
