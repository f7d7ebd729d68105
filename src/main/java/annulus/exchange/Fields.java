package annulus.exchange;

import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Typed access to the fields of one JSON object. Problems are collected, not thrown; after the last
 * access {@link #done} reports fields nobody asked for.
 */
final class Fields {
  /** About as many names as are asked for in an order. */
  private static final int EXPECTED = 48;

  private final Node.Obj object;
  private final Problems problems;
  private final String path;

  /** The members asked for, each once; few of the many names that are asked for stand there. */
  private final Node[] asked;

  private int askedCount;

  /** The names asked for, in that order; a name may stand twice. */
  private final List<String> known = new ArrayList<>(EXPECTED);

  Fields(Node.Obj object, Problems problems, String path) {
    this.object = object;
    this.problems = problems;
    this.path = path;
    this.asked = new Node[object.members().size()];
  }

  /** The fields of a node, or empty with a problem when it is not an object. */
  static Optional<Fields> of(Node node, Problems problems, String path) {
    if (node instanceof Node.Obj obj) {
      return Optional.of(new Fields(obj, problems, path));
    }
    problems.add(node.place(), path, "is " + kind(node), "an object { … }");
    return Optional.empty();
  }

  Node.Place place() {
    return object.place();
  }

  Node.Place placeOf(String name) {
    Node node = object.members().get(name);
    return node == null ? object.place() : node.place();
  }

  /**
   * The place of the value that a record's field came from, such as {@code gapUm.low}; in a table
   * the column {@code gapUm_low}. Where there is no such value, the place of what would hold it.
   */
  Node.Place placeOfPart(String field) {
    Node node = object.members().get(field.replace('.', '_'));
    if (node != null) {
      return node.place();
    }
    node = object;
    for (String name : field.split("\\.")) {
      Node next = node instanceof Node.Obj o ? o.members().get(name) : null;
      if (next == null) {
        break;
      }
      node = next;
    }
    return node.place();
  }

  String path() {
    return path;
  }

  String path(String name) {
    return path.isEmpty() ? name : path + "." + name;
  }

  /** Whether a name stands there; it stays unknown to {@link #done}. */
  boolean stands(String name) {
    return object.members().containsKey(name);
  }

  /** The names the object has, in file order. */
  List<String> names() {
    return List.copyOf(object.members().keySet());
  }

  boolean has(String name) {
    known.add(name);
    Node node = object.members().get(name);
    if (node != null) {
      ask(node);
    }
    return node != null && !(node instanceof Node.Nothing);
  }

  Optional<Node> node(String name) {
    known.add(name);
    Node node = object.members().get(name);
    if (node == null) {
      return Optional.empty();
    }
    ask(node);
    return node instanceof Node.Nothing ? Optional.empty() : Optional.of(node);
  }

  Optional<Node> required(String name) {
    Optional<Node> node = node(name);
    if (node.isEmpty()) {
      problems.add(object.place(), path(name), "is missing", "this field is needed");
    }
    return node;
  }

  Optional<String> text(String name) {
    Optional<Node> node = node(name);
    return node.isPresent() ? asText(node.get(), name) : Optional.empty();
  }

  String requiredText(String name) {
    return required(name).flatMap(n -> asText(n, name)).orElse("");
  }

  private Optional<String> asText(Node node, String name) {
    if (node instanceof Node.Text t && !t.value().isBlank()) {
      return Optional.of(t.value().strip());
    }
    if (node instanceof Node.Num n && n.cell()) {
      return Optional.of(n.written());
    }
    problems.add(node.place(), path(name), "is " + kind(node), "some text in quotes");
    return Optional.empty();
  }

  OptionalDouble number(String name, double low, double high, String unit) {
    Optional<Node> node = node(name);
    return node.isPresent()
        ? asNumber(node.get(), path(name), low, high, unit)
        : OptionalDouble.empty();
  }

  double requiredNumber(String name, double low, double high, String unit) {
    Optional<Node> node = required(name);
    return node.isPresent()
        ? asNumber(node.get(), path(name), low, high, unit).orElse(Double.NaN)
        : Double.NaN;
  }

  private OptionalDouble asNumber(Node node, String field, double low, double high, String unit) {
    if (!(node instanceof Node.Num n)) {
      String allowed = "a number, " + range(low, high, unit);
      problems.add(node.place(), field, "is " + kind(node), allowed);
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(n.written());
    if (!(value >= low && value <= high)) {
      problems.add(node.place(), field, n.written() + " is out of range", range(low, high, unit));
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(value);
  }

  private static String range(double low, double high, String unit) {
    return Numbers.plain(low) + " to " + Numbers.plain(high) + (unit.isEmpty() ? "" : " " + unit);
  }

  /** A whole number; NaN and a problem when it is none. */
  double requiredWhole(String name, int low, int high, String unit) {
    double value = requiredNumber(name, low, high, unit);
    if (value != Math.rint(value) && !Double.isNaN(value)) {
      problems.add(
          placeOf(name), path(name), Numbers.plain(value) + " is not whole", low + " to " + high);
      return Double.NaN;
    }
    return value;
  }

  Optional<Boolean> flag(String name) {
    Optional<Node> node = node(name);
    if (node.isEmpty()) {
      return Optional.empty();
    }
    if (node.get() instanceof Node.Bool b) {
      return Optional.of(b.value());
    }
    problems.add(node.get().place(), path(name), "is " + kind(node.get()), "true or false");
    return Optional.empty();
  }

  /** One of an enum's names, written in lower case with dashes. */
  <E extends Enum<E>> Optional<E> choice(String name, E[] values) {
    Optional<String> text = text(name);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    for (E value : values) {
      if (isWord(text.get(), value.name())) {
        return Optional.of(value);
      }
    }
    List<String> words = Arrays.stream(values).map(Fields::word).toList();
    problems.add(
        placeOf(name),
        path(name),
        quoted(text.get()) + " is unknown",
        Nearest.allowed(text.get(), words));
    return Optional.empty();
  }

  /** Whether a text is {@link #word} of a constant, without making that word. */
  private static boolean isWord(String text, String constant) {
    if (text.length() != constant.length()) {
      return false;
    }
    for (int i = 0; i < text.length(); i++) {
      char c = constant.charAt(i);
      char wanted = c == '_' ? '-' : c >= 'A' && c <= 'Z' ? (char) (c + 'a' - 'A') : c;
      if (text.charAt(i) != wanted) {
        return false;
      }
    }
    return true;
  }

  <E extends Enum<E>> E requiredChoice(String name, E[] values) {
    return required(name).isPresent() ? choice(name, values).orElse(values[0]) : values[0];
  }

  /** The elements of a list, each read by a function; a missing list is empty. */
  <T> List<T> list(String name, Function<Node, Optional<T>> read) {
    List<T> result = new ArrayList<>();
    Optional<Node> node = node(name);
    if (node.isPresent() && node.get() instanceof Node.Arr array) {
      array.elements().forEach(e -> read.apply(e).ifPresent(result::add));
    } else if (node.isPresent()) {
      problems.add(node.get().place(), path(name), "is " + kind(node.get()), "a list [ … ]");
    }
    return result;
  }

  /** The elements of a list that must be there and hold at least one. */
  <T> List<T> requiredList(String name, Function<Node, Optional<T>> read) {
    Optional<Node> node = required(name);
    if (node.isPresent() && node.get() instanceof Node.Arr array && array.elements().isEmpty()) {
      problems.add(node.get().place(), path(name), "is an empty list", "at least one element");
    }
    return list(name, read);
  }

  /** A nested object. */
  Optional<Fields> object(String name) {
    return node(name).flatMap(n -> of(n, problems, path(name)));
  }

  Optional<Fields> requiredObject(String name) {
    return required(name).flatMap(n -> of(n, problems, path(name)));
  }

  /** Declares a name as known without reading it. */
  void allow(String name) {
    known.add(name);
    Node node = object.members().get(name);
    if (node != null) {
      ask(node);
    }
  }

  private void ask(Node member) {
    if (!isAsked(member)) {
      asked[askedCount++] = member;
    }
  }

  /** Members are told apart by what they are, not by what they say. */
  private boolean isAsked(Node member) {
    for (int i = 0; i < askedCount; i++) {
      if (asked[i] == member) {
        return true;
      }
    }
    return false;
  }

  /** Reports fields that were never asked for, with the nearest known name. */
  void done() {
    if (askedCount == asked.length) {
      return;
    }
    for (var entry : object.members().entrySet()) {
      if (!isAsked(entry.getValue())) {
        problems.add(
            entry.getValue().place(),
            path(entry.getKey()),
            "is not a field here",
            Nearest.allowed(entry.getKey(), new LinkedHashSet<>(known)));
      }
    }
  }

  static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static List<String> words(Enum<?>[] values) {
    return Arrays.stream(values).map(Fields::word).toList();
  }

  static String quoted(String text) {
    return "\"" + (text.length() > 60 ? text.substring(0, 57) + "…" : text) + "\"";
  }

  static String kind(Node node) {
    if (node instanceof Node.Text t) {
      return "the text " + quoted(t.value());
    } else if (node instanceof Node.Num n) {
      return "the number " + n.written();
    } else if (node instanceof Node.Bool b) {
      return String.valueOf(b.value());
    } else if (node instanceof Node.Obj) {
      return "an object";
    } else if (node instanceof Node.Arr) {
      return "a list";
    }
    return "null";
  }

  /** Reports an unknown reference, with the nearest known one. */
  void unknown(String name, String value, Collection<String> candidates) {
    problems.add(
        placeOf(name),
        path(name),
        quoted(value) + " is unknown",
        Nearest.allowed(value, candidates));
  }
}
