package annulus.exchange;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a calendar file written before says of its entries: enough to know whether an entry moved
 * and which sequence comes next. Reads the lines of RFC 5545 that it needs and no others.
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

  private final Map<String, Entry> entries = new LinkedHashMap<>();

  private CalendarState() {}

  /**
   * Reads a file; one that does not exist has no entries.
   *
   * @throws InputRefused when it is no calendar file, so that no other file is written over
   * @throws IOException when it can't be read
   */
  public static CalendarState of(Path file) throws IOException {
    CalendarState state = new CalendarState();
    if (Files.isRegularFile(file)) {
      state.read(text(file));
    }
    return state;
  }

  private static String text(Path file) throws IOException {
    String text;
    try (Reader in = DataFiles.utf8(Files.newInputStream(file))) {
      text = WholeText.of(file.toString(), in, "a calendar file");
    }
    if (!text.isBlank() && !text.strip().startsWith("BEGIN:VCALENDAR")) {
      throw new InputRefused(
          List.of(
              new PlacedProblem(
                  file.toString(),
                  1,
                  0,
                  "",
                  "is there already and is no calendar file",
                  "a new name, or a calendar file that this program wrote")));
    }
    return text;
  }

  private void read(String text) {
    String unfolded = text.replaceAll("\r?\n[ \t]", "");
    Map<String, String> event = new LinkedHashMap<>();
    for (String line : unfolded.split("\r?\n")) {
      int colon = line.indexOf(':');
      String name = colon < 0 ? line : line.substring(0, colon);
      int parameter = name.indexOf(';');
      String property = parameter < 0 ? name : name.substring(0, parameter);
      if (line.equals("BEGIN:VEVENT")) {
        event.clear();
      } else if (line.equals("END:VEVENT")) {
        keep(event);
      } else if (colon >= 0) {
        event.put(property, line.substring(colon + 1));
      }
    }
  }

  private void keep(Map<String, String> event) {
    String sequence = event.getOrDefault("SEQUENCE", "0");
    if (event.containsKey("UID") && sequence.matches("[0-9]{1,9}")) {
      entries.put(
          event.get("UID"),
          new Entry(
              Integer.parseInt(sequence),
              event.getOrDefault("DTSTART", ""),
              event.getOrDefault("STATUS", "")));
    }
  }

  /** The entry of a UID, if the file has it. */
  public Optional<Entry> entry(String uid) {
    return Optional.ofNullable(entries.get(uid));
  }
}
