package annulus.exchange;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;

/** A clock time from the command line or a cell, by the same rules as those of an order file. */
public final class ClockWord {
  private ClockWord() {}

  /**
   * Reads a time with an offset, or a local one where it is not ambiguous.
   *
   * @param file where it stands, such as {@code command line}
   * @param line its line, 0 where there is none
   * @param field its name, for messages
   * @param text such as 2027-03-12T17:30 or 2027-03-12T17:30+01:00
   * @param zone zone of a local time
   * @throws InputRefused when it is no such time
   */
  public static Instant read(String file, int line, String field, String text, ZoneId zone) {
    Problems problems = new Problems();
    Node.Place place = new Node.Place(file, line, 0);
    Node.Obj object = new Node.Obj(place, Map.of(field, new Node.Text(place, text)));
    Fields fields = new Fields(object, problems, "");
    var instant = new ClockTimes(problems).instant(fields, field, zone);
    problems.throwIfAny();
    return instant.orElseThrow();
  }
}
