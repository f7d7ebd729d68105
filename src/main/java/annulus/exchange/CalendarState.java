package annulus.exchange;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a calendar file written before says of its entries: enough to know whether an entry moved
 * and which sequence comes next, and the entries of other jobs as they stand, so that they can be
 * kept. Reads the lines of RFC 5545 that it needs and no others.
 */
public final class CalendarState {
  /**
   * One entry as it was written.
   *
   * @param sequence its SEQUENCE, 0 where there is none
   * @param start its DTSTART as written
   * @param status its STATUS; may be empty
   */
  public record Entry(int sequence, String start, String status) {}

  private static final String BEGIN = "BEGIN:VEVENT";
  private static final String END = "END:VEVENT";

  private final Map<String, Entry> entries = new LinkedHashMap<>();
  private final Map<String, String> written = new LinkedHashMap<>();

  private CalendarState() {}

  /**
   * Reads a file; one that does not exist has no entries.
   *
   * @param product what this program writes as PRODID
   * @throws InputRefused when it is no calendar file that this program wrote and nobody harmed, so
   *     that nothing of another is written over
   * @throws IOException when it can't be read
   */
  public static CalendarState of(Path file, String product) throws IOException {
    CalendarState state = new CalendarState();
    if (Files.isRegularFile(file)) {
      String text = text(file);
      if (!text.isBlank()) {
        state.read(file, text, product);
      }
    }
    return state;
  }

  private static String text(Path file) throws IOException {
    String text;
    try (Reader in = DataFiles.utf8(Files.newInputStream(file))) {
      text = WholeText.of(file.toString(), in, "a calendar file");
    }
    if (!text.isBlank() && !text.strip().startsWith("BEGIN:VCALENDAR")) {
      throw refused(file, "is there already and is no calendar file");
    }
    return text;
  }

  private static InputRefused refused(Path file, String problem) {
    return new InputRefused(
        List.of(
            new PlacedProblem(
                file.toString(),
                1,
                0,
                "",
                problem,
                "a new name, or a calendar file that this program wrote")));
  }

  private void read(Path file, String text, String product) {
    boolean own = false;
    List<String> event = new ArrayList<>();
    for (String line : text.split("\r?\n(?![ \t])")) { // a folded line stays one
      boolean inside = !event.isEmpty();
      own |= !inside && unfolded(line).equals("PRODID:" + product);
      if (inside || line.equals(BEGIN)) {
        event.add(line);
      }
      if (line.equals(END)) {
        if (!inside) {
          throw harmed(file);
        }
        keep(file, event);
        event.clear();
      }
    }
    if (!own) {
      throw refused(file, "is there already and is the calendar of another program");
    }
    if (!event.isEmpty()) {
      throw harmed(file);
    }
  }

  private static InputRefused harmed(Path file) {
    return refused(file, "is there already and has an entry that is not whole");
  }

  private static String unfolded(String line) {
    return line.replaceAll("\r?\n[ \t]", "");
  }

  private void keep(Path file, List<String> event) {
    Map<String, String> properties = new LinkedHashMap<>();
    for (String line : event.subList(1, event.size() - 1)) {
      String whole = unfolded(line);
      int colon = whole.indexOf(':');
      String name = colon < 0 ? whole : whole.substring(0, colon);
      int parameter = name.indexOf(';');
      if (colon >= 0) {
        properties.put(
            parameter < 0 ? name : name.substring(0, parameter), whole.substring(colon + 1));
      }
    }
    String sequence = properties.getOrDefault("SEQUENCE", "0");
    if (event.lastIndexOf(BEGIN) > 0
        || !properties.containsKey("UID")
        || !sequence.matches("[0-9]{1,9}")) {
      throw harmed(file);
    }
    entries.put(
        properties.get("UID"),
        new Entry(
            Integer.parseInt(sequence),
            properties.getOrDefault("DTSTART", ""),
            properties.getOrDefault("STATUS", "")));
    written.put(properties.get("UID"), String.join("\r\n", event) + "\r\n");
  }

  /** The entries of other UIDs as they were written, each with its line ends. */
  public List<String> others(Set<String> uids) {
    return written.entrySet().stream()
        .filter(e -> !uids.contains(e.getKey()))
        .map(Map.Entry::getValue)
        .toList();
  }

  /** The entry of a UID, if the file has it. */
  public Optional<Entry> entry(String uid) {
    return Optional.ofNullable(entries.get(uid));
  }
}
