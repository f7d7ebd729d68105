package annulus.exchange;

import annulus.quantity.InvalidValue;
import annulus.select.Condition;
import annulus.select.Fact;
import annulus.select.Rule;
import annulus.select.RuleBook;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads {@code rules.json}; a shop's rule with a known id replaces the program's. */
public final class RuleFile {
  private static final double FAR = 1e9;

  private final Problems problems = new Problems();

  /** Where each rule's id stands, for what the rule book finds wrong with it. */
  private final Map<String, Node.Place> places = new HashMap<>();

  private RuleFile() {}

  /**
   * Reads the rule book.
   *
   * @throws InputRefused with all problems
   * @throws IOException when a file can't be read
   */
  public static RuleBook read(DataFiles files) throws IOException {
    return new RuleFile().readAll(files);
  }

  private RuleBook readAll(DataFiles files) throws IOException {
    Map<String, Rule> rules = new LinkedHashMap<>();
    for (DataFiles.Layer layer : files.layers("rules.json")) {
      Optional<Fields> root = Fields.of(JsonNodes.read(layer.name(), layer.reader()), problems, "");
      if (root.isEmpty()) {
        continue;
      }
      root.get().requiredNumber("format", 1, 1, "");
      List.of("title", "source", "transcribed", "version").forEach(root.get()::allow);
      Map<String, Rule> own = new LinkedHashMap<>();
      root.get().requiredList("rules", node -> rule(node, own));
      root.get().done();
      rules.putAll(own);
    }
    problems.throwIfAny();
    try {
      return new RuleBook(new ArrayList<>(rules.values()));
    } catch (InvalidValue e) {
      Node.Place place = places.getOrDefault(e.field(), new Node.Place("data/rules.json", 0, 0));
      throw new InputRefused(List.of(place.problem(e.field(), e.problem(), e.allowed())));
    }
  }

  private Optional<Rule> rule(Node node, Map<String, Rule> own) {
    Optional<Fields> fields = Fields.of(node, problems, "rules");
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    Fields f = fields.get();
    Optional<Condition> when = f.required("when").flatMap(this::condition);
    Optional<Rule> rule =
        Values.build(
            f,
            problems,
            () ->
                new Rule(
                    f.requiredText("id"),
                    f.requiredText("summary"),
                    f.requiredChoice("verdict", Rule.Verdict.values()),
                    when.orElse(new Condition.All(List.of())),
                    f.requiredText("reason"),
                    Values.provenance(f)));
    f.done();
    if (when.isEmpty() || rule.isEmpty()) {
      return Optional.empty();
    }
    String id = rule.get().id();
    if (own.put(id, rule.get()) != null) {
      problems.add(f.placeOf("id"), f.path("id"), Fields.quoted(id) + " stands twice", "each once");
    }
    places.put(id, f.placeOf("id"));
    return rule;
  }

  private Optional<Condition> condition(Node node) {
    Optional<Fields> fields = Fields.of(node, problems, "when");
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    Fields f = fields.get();
    Optional<Condition> result;
    if (f.has("all")) {
      result = Optional.of(new Condition.All(f.requiredList("all", this::condition)));
    } else if (f.has("any")) {
      result = Optional.of(new Condition.Any(f.requiredList("any", this::condition)));
    } else {
      result = leaf(f);
    }
    f.done();
    return result;
  }

  private Optional<Condition> leaf(Fields f) {
    String name = f.requiredText("fact");
    Optional<Fact> fact = Fact.named(name);
    if (fact.isEmpty()) {
      if (!name.isEmpty()) {
        f.unknown("fact", name, Arrays.stream(Fact.values()).map(Fact::id).toList());
      }
      return Optional.empty();
    }
    return fact.get().kind() == Fact.Kind.NUMBER ? number(f, fact.get()) : word(f, fact.get());
  }

  private Optional<Condition> number(Fields f, Fact fact) {
    for (Condition.Comparison comparison : Condition.Comparison.values()) {
      String key = key(comparison);
      Optional<Node> node = f.node(key);
      if (node.isPresent() && node.get() instanceof Node.Num n) {
        return limit(f, key, n).map(limit -> new Condition.Against(fact, comparison, limit));
      } else if (node.isPresent()) {
        return other(f, key, node.get()).map(o -> new Condition.Between(fact, comparison, o));
      }
    }
    problems.add(
        f.place(), f.path(fact.id()), "has no comparison", "above, atLeast, below or atMost");
    return Optional.empty();
  }

  private Optional<Fact> other(Fields f, String key, Node node) {
    Optional<Fact> other = node instanceof Node.Text t ? Fact.named(t.value()) : Optional.empty();
    if (other.isEmpty() || other.get().kind() != Fact.Kind.NUMBER) {
      problems.add(
          node.place(),
          f.path(key),
          "is " + Fields.kind(node) + ", no number fact",
          "a number or the name of a fact that is one");
      return Optional.empty();
    }
    return other;
  }

  private Optional<Double> limit(Fields f, String key, Node.Num number) {
    double limit = Double.parseDouble(number.written());
    if (!(Math.abs(limit) <= FAR)) {
      problems.add(
          number.place(), f.path(key), number.written() + " is out of range", "-1e9 to 1e9");
      return Optional.empty();
    }
    return Optional.of(limit);
  }

  private static String key(Condition.Comparison comparison) {
    return switch (comparison) {
      case ABOVE -> "above";
      case AT_LEAST -> "atLeast";
      case BELOW -> "below";
      case AT_MOST -> "atMost";
    };
  }

  private Optional<Condition> word(Fields f, Fact fact) {
    Optional<Node> node = f.required("is");
    if (node.isEmpty()) {
      return Optional.empty();
    }
    Set<Object> values = new LinkedHashSet<>();
    List<Node> given = node.get() instanceof Node.Arr a ? a.elements() : List.of(node.get());
    if (given.isEmpty()) {
      problems.add(node.get().place(), f.path("is"), "is an empty list", "at least one word");
      return Optional.empty();
    }
    for (Node value : given) {
      if (fact.kind() == Fact.Kind.FLAG && value instanceof Node.Bool b) {
        values.add(b.value());
      } else if (fact.kind() == Fact.Kind.WORD && value instanceof Node.Text t) {
        if (!FactWords.of(fact).contains(t.value())) {
          problems.add(
              t.place(),
              f.path("is"),
              Fields.quoted(t.value()) + " is unknown",
              Nearest.allowed(t.value(), FactWords.of(fact)));
          return Optional.empty();
        }
        values.add(t.value());
      } else {
        problems.add(
            value.place(),
            f.path("is"),
            "is " + Fields.kind(value),
            fact.kind() == Fact.Kind.FLAG ? "true or false" : "a word or a list of words");
        return Optional.empty();
      }
    }
    return Optional.of(new Condition.Is(fact, values));
  }
}
