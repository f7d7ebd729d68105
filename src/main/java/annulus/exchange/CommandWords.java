package annulus.exchange;

import annulus.advice.JointOrder;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Turns the few words of a command line into an order. */
public final class CommandWords {
  private static final String FILE = "command line";

  /** Option and the flat name it fills. */
  private static final Map<String, String> OPTIONS = options();

  private CommandWords() {}

  private static Map<String, String> options() {
    Map<String, String> o = new LinkedHashMap<>();
    o.put("--job", "job");
    o.put("--title", "title");
    o.put("--bore", "bore_mm");
    o.put("--part", "part_mm");
    o.put("--bore-bearing", "bore_bearing_mm");
    o.put("--part-bearing", "part_bearing_mm");
    o.put("--engagement", "engagement_mm");
    o.put("--bore-outside", "bore_outside_mm");
    o.put("--part-inside", "part_inside_mm");
    o.put("--measured-at", "measured_at_c");
    o.put("--temp", "temperature_c");
    o.put("--temp-plus-minus", "temperature_plus_minus_c");
    o.put("--primer", "primer");
    o.put("--primer-on", "primer_on");
    o.put("--primer-minutes", "primer_minutes_on_part");
    o.put("--service-low", "service_low_c");
    o.put("--service-high", "service_high_c");
    o.put("--axial-n", "axial_n");
    o.put("--torque-nm", "torque_nm");
    o.put("--load-repeats", "load_repeats");
    o.put("--duty", "duty");
    o.put("--consequence", "consequence");
    o.put("--start", "start");
    o.put("--zone", "zone");
    o.put("--confidence", "confidence");
    o.put("--class", "class");
    o.put("--moved-at", "moved_at");
    o.put("--radial-gap-um", "radial_gap_um");
    o.put("--radial-gap-plus-minus-um", "radial_gap_plus_minus_um");
    o.put("--diametral-clearance-um", "diametral_clearance_um");
    o.put("--diametral-clearance-plus-minus-um", "diametral_clearance_plus_minus_um");
    o.put("--diameter", "diameter_mm");
    return o;
  }

  /** Options with one value each. */
  public static List<String> single() {
    return List.copyOf(OPTIONS.keySet());
  }

  /** Options with a value for the bore and one for the part, apart by a comma. */
  public static List<String> pairs() {
    return List.of("--materials", "--finish", "--instrument", "--state");
  }

  /** Options that are true when they stand there. */
  public static List<String> flags() {
    return List.of("--comes-apart-later", "--seal-near", "--electronics-near", "--warranty");
  }

  /**
   * One word of the command line.
   *
   * @param option such as {@code --bore}
   * @param value its value; {@code true} for a flag
   * @param position which word it is, from 1
   */
  public record Word(String option, String value, int position) {}

  /**
   * The order that the words make.
   *
   * @throws InputRefused with every problem; the column is the number of the word
   */
  public static JointOrder order(OrderReader reader, List<Word> words) {
    Map<String, Node> flat = new LinkedHashMap<>();
    for (Word word : words) {
      Node.Place place = new Node.Place(FILE, 0, word.position());
      if (pairs().contains(word.option())) {
        String name = word.option().equals("--materials") ? "material" : word.option().substring(2);
        String[] two = word.value().split(",", -1);
        if (two.length > 2) {
          throw new InputRefused(
              List.of(
                  place.problem(
                      word.option(),
                      two.length + " values",
                      "one for the bore, one for the part")));
        }
        flat.put("bore_" + name, text(place, two[0]));
        flat.put("part_" + name, text(place, two.length > 1 ? two[1] : two[0]));
      } else if (flags().contains(word.option())) {
        flat.put(word.option().substring(2).replace('-', '_'), new Node.Bool(place, true));
      } else {
        flat.put(OPTIONS.get(word.option()), text(place, word.value()));
      }
    }
    try {
      return reader.read(FlatOrder.toOrder(new Node.Place(FILE, 0, 0), flat), false);
    } catch (InputRefused e) {
      throw new InputRefused(e.problems().stream().map(CommandWords::byOption).toList());
    }
  }

  /** The problem by the name of the option that fills the field. */
  private static PlacedProblem byOption(PlacedProblem p) {
    String flat = FlatOrder.nameOf(p.field());
    String member = flat.replaceFirst("^(bore|part)_", "");
    String option =
        OPTIONS.entrySet().stream()
            .filter(e -> e.getValue().equals(flat))
            .map(Map.Entry::getKey)
            .findFirst()
            .orElse(
                member.equals("material")
                    ? "--materials"
                    : pairs().contains("--" + member) ? "--" + member : p.field());
    return new PlacedProblem(p.file(), p.line(), p.column(), option, p.problem(), p.allowed());
  }

  private static Node text(Node.Place place, String value) {
    return new Node.Text(place, value.strip());
  }
}
