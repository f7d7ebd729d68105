package annulus.bench;

import annulus.advice.RuleInputs;
import annulus.catalog.CompoundClass;
import annulus.select.Condition;
import annulus.select.Fact;
import annulus.select.Facts;
import annulus.select.Rule;
import annulus.select.RuleBook;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.drools.model.codegen.ExecutableModelProject;
import org.kie.api.KieBase;
import org.kie.api.KieServices;
import org.kie.api.builder.KieBuilder;
import org.kie.api.builder.KieFileSystem;
import org.kie.api.builder.Message;
import org.kie.api.definition.type.FactType;
import org.kie.api.runtime.KieSession;

/**
 * The declared rules in a general rules engine: every rule of the rule book written in its language
 * with typed facts, compiled ahead to plain code (its fastest way), and asked in a session of its
 * own for each joint. The same choice is made from what spoke.
 */
public final class RuleEngine {
  /** A rule that spoke about a class, or about the joint when there is none. */
  public static final class Spoken {
    final int rule;
    final Object about;

    /** What a rule of the text says. */
    public Spoken(int rule, Object about) {
      this.rule = rule;
      this.about = about;
    }
  }

  private final KieBase base;
  private final List<Rule> rules;
  private final Object joint;
  private final List<CompoundClass> compounds = new ArrayList<>();
  private final List<Object> classes = new ArrayList<>();

  RuleEngine(RuleBook book, RuleInputs inputs) throws ReflectiveOperationException {
    rules = book.rules();
    base = built(text(rules));
    joint = fact("Joint", inputs.joint());
    for (Map.Entry<CompoundClass, Facts> entry : inputs.classes().entrySet()) {
      compounds.add(entry.getKey());
      classes.add(fact("Kind", entry.getValue()));
    }
  }

  private static KieBase built(String text) {
    KieServices services = KieServices.Factory.get();
    KieFileSystem files = services.newKieFileSystem();
    files.write("src/main/resources/bench/rules.drl", text);
    KieBuilder builder = services.newKieBuilder(files);
    builder.buildAll(ExecutableModelProject.class);
    if (builder.getResults().hasMessages(Message.Level.ERROR)) {
      throw new IllegalStateException(builder.getResults() + "\n" + text);
    }
    return services.newKieContainer(services.getRepository().getDefaultReleaseId()).getKieBase();
  }

  private static String text(List<Rule> rules) {
    StringBuilder text = new StringBuilder("package bench\n");
    text.append("import annulus.bench.RuleEngine.Spoken\n");
    text.append("global java.util.List spoken\n");
    declare(text, "Joint", false);
    declare(text, "Kind", true);
    for (int i = 0; i < rules.size(); i++) {
      Rule rule = rules.get(i);
      text.append("rule \"").append(rule.id()).append("\" when\n");
      if (rule.ofJoint()) {
        text.append("  Joint(").append(test(rule.when(), "")).append(")\nthen\n");
        text.append("  spoken.add(new Spoken(").append(i).append(", null));\nend\n");
      } else {
        text.append("  $j : Joint()\n  $c : Kind(").append(test(rule.when(), "$j."));
        text.append(")\nthen\n  spoken.add(new Spoken(").append(i).append(", $c));\nend\n");
      }
    }
    return text.toString();
  }

  private static void declare(StringBuilder text, String name, boolean ofClass) {
    text.append("declare ").append(name).append("\n");
    for (Fact fact : Fact.values()) {
      if (fact.ofClass() == ofClass) {
        String type =
            switch (fact.kind()) {
              case NUMBER -> "Double";
              case WORD -> "String";
              case FLAG -> "Boolean";
            };
        text.append("  ").append(field(fact)).append(" : ").append(type).append("\n");
      }
    }
    text.append("end\n");
  }

  private static String field(Fact fact) {
    return "f" + fact.ordinal();
  }

  private static String read(Fact fact, String joint) {
    return (fact.ofClass() ? "" : joint) + field(fact);
  }

  private static String test(Condition when, String joint) {
    if (when instanceof Condition.All all) {
      return all.parts().stream()
          .map(p -> "(" + test(p, joint) + ")")
          .collect(Collectors.joining(" && "));
    }
    if (when instanceof Condition.Any any) {
      return any.parts().stream()
          .map(p -> "(" + test(p, joint) + ")")
          .collect(Collectors.joining(" || "));
    }
    if (when instanceof Condition.Against a) {
      return present(a.fact(), joint) + read(a.fact(), joint) + sign(a.comparison()) + a.limit();
    }
    if (when instanceof Condition.Between b) {
      return present(b.fact(), joint)
          + present(b.other(), joint)
          + read(b.fact(), joint)
          + sign(b.comparison())
          + read(b.other(), joint);
    }
    Condition.Is is = (Condition.Is) when;
    return is.values().stream()
        .map(
            v -> read(is.fact(), joint) + " == " + (v instanceof String ? "\"" + v + "\"" : "" + v))
        .collect(Collectors.joining(" || "));
  }

  private static String present(Fact fact, String joint) {
    return read(fact, joint) + " != null && ";
  }

  private static String sign(Condition.Comparison comparison) {
    return switch (comparison) {
      case ABOVE -> " > ";
      case AT_LEAST -> " >= ";
      case BELOW -> " < ";
      case AT_MOST -> " <= ";
    };
  }

  private Object fact(String name, Facts facts) throws ReflectiveOperationException {
    FactType type = base.getFactType("bench", name);
    Object made = type.newInstance();
    boolean ofClass = name.equals("Kind");
    for (Map.Entry<Fact, Object> entry : facts.all().entrySet()) {
      if (entry.getKey().ofClass() == ofClass) {
        type.set(made, field(entry.getKey()), entry.getValue());
      }
    }
    return made;
  }

  /** Every rule on every class: the bits of what spoke, by class id. */
  Map<String, Long> select() {
    List<Spoken> spoken = new ArrayList<>();
    KieSession session = base.newKieSession();
    try {
      session.setGlobal("spoken", spoken);
      session.insert(joint);
      for (Object kind : classes) {
        session.insert(kind);
      }
      session.fireAllRules();
    } finally {
      session.dispose();
    }
    return verdicts(spoken);
  }

  private Map<String, Long> verdicts(List<Spoken> spoken) {
    Map<String, Long> bits = new LinkedHashMap<>();
    for (int i = 0; i < compounds.size(); i++) {
      long of = 0;
      for (Spoken s : spoken) {
        of |= s.about == null || s.about == classes.get(i) ? 1L << s.rule : 0;
      }
      bits.put(compounds.get(i).id(), of);
    }
    return bits;
  }

  /** Bits of the rules in the order of the rule book, as {@link #select} gives them. */
  long bits(List<annulus.select.Finding> findings) {
    long bits = 0;
    for (annulus.select.Finding finding : findings) {
      bits |= 1L << rules.indexOf(finding.rule());
    }
    return bits;
  }
}
