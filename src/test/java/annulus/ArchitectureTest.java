package annulus;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Keeps the house as DESIGN draws it: arrows point down only and the packages from {@code quantity}
 * to {@code advice} are pure. Every rule is also run on {@code annulus.badhouse}, a small house
 * built wrong on purpose, to show that the rule can fail.
 */
class ArchitectureTest {
  /** Top to bottom; the steps of the build first, which nothing uses, then the two faces. */
  private static final List<List<String>> ORDER =
      List.of(
          List.of("build"),
          List.of("cli", "web"),
          List.of("store"),
          List.of("report"),
          List.of("exchange"),
          List.of("advice"),
          List.of("handback"),
          List.of("stock"),
          List.of("select"),
          List.of("cure"),
          List.of("hold"),
          List.of("fit"),
          List.of("measure"),
          List.of("catalog"),
          List.of("quantity"));

  private static final List<String> PURE =
      ORDER.subList(5, ORDER.size()).stream().flatMap(List::stream).toList();

  private static final Set<String> EMPTY_WORDS =
      Set.of("util", "utils", "common", "manager", "impl");

  private static final JavaClasses HOUSE =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("annulus");
  private static final JavaClasses BAD_HOUSE =
      new ClassFileImporter().importPackages("annulus.badhouse");

  static Stream<String> ruleNames() {
    return rules("annulus").keySet().stream();
  }

  @ParameterizedTest
  @MethodSource("ruleNames")
  void the_house_keeps_its_rules(String name) {
    rules("annulus").get(name).check(HOUSE);
  }

  @Test
  void every_rule_is_shown_to_fail() {
    rules("annulus.badhouse")
        .forEach(
            (name, rule) -> assertTrue(rule.evaluate(BAD_HOUSE).hasViolation(), name + " held"));
  }

  @ParameterizedTest
  @CsvSource({
    "cure uses nothing above it, cure.LooksUp",
    "cli and web do not know each other, web.KnowsOtherFace",
    "pure packages touch no file, quantity.TouchesFiles",
    "pure packages know no clock or zone of the machine, quantity.ReadsClock",
    "pure packages roll no dice, quantity.RollsDice",
    "pure packages know no locale of the machine, quantity.ReadsLocale",
    "static fields are final, quantity.Counts",
    "static fields hold nothing that changes, quantity.Counts",
    "no name is an empty word, util.Bag",
    "no name is an empty word, fit.ShapeManager",
    "no interface has one implementation, fit.Shape",
    "every class lives in a package of the design, util.Bag",
  })
  void a_bad_class_is_named(String rule, String culprit) {
    String report =
        rules("annulus.badhouse")
            .get(rule)
            .evaluate(BAD_HOUSE)
            .getFailureReport()
            .getDetails()
            .stream()
            .collect(Collectors.joining("\n"));
    assertTrue(report.contains("annulus.badhouse." + culprit), report);
    assertFalse(report.contains("annulus.badhouse.quantity.Innocent"), report);
  }

  @Test
  void the_bad_house_is_not_part_of_the_house() {
    assertTrue(HOUSE.stream().noneMatch(c -> c.getName().startsWith("annulus.badhouse")));
    assertEquals(
        Set.of("cli", "web", "cure", "quantity", "util", "fit"),
        BAD_HOUSE.stream()
            .filter(c -> !c.getSimpleName().equals("package-info"))
            .map(c -> c.getPackageName().substring("annulus.badhouse.".length()))
            .collect(Collectors.toSet()));
  }

  /** Every other caller has not checked anything. */
  @Test
  void only_the_tables_of_the_build_are_made_unchecked() {
    Set<String> callers =
        HOUSE.stream()
            .flatMap(c -> c.getMethodCallsFromSelf().stream())
            .filter(call -> call.getTarget().getName().equals("ofChecked"))
            .map(call -> call.getOriginOwner().getName())
            .collect(Collectors.toSet());
    assertEquals(Set.of("annulus.exchange.TablesAsBuilt"), callers);
  }

  @Test
  void the_import_saw_the_packages_that_matter() {
    for (String name : List.of("quantity", "catalog", "measure", "fit", "cure", "select")) {
      assertTrue(HOUSE.stream().anyMatch(c -> c.getPackageName().equals("annulus." + name)), name);
    }
  }

  private static Map<String, ArchRule> rules(String base) {
    Map<String, ArchRule> rules = new LinkedHashMap<>();
    List<String> above = new ArrayList<>();
    for (List<String> level : ORDER) {
      for (String name : level) {
        if (!above.isEmpty() && (base.equals("annulus") || name.equals("cure"))) {
          rules.put(name + " uses nothing above it", nothingAbove(base, name, above));
        }
      }
      above.addAll(level);
    }
    rules.put("cli and web do not know each other", faces(base));
    if (base.equals("annulus")) {
      rules.put(
          "report makes text from what it is given and reads nothing itself",
          nothingAbove(base, "report", List.of("exchange")));
    }
    pureRules(base, rules);
    rules.put("no name is an empty word", ArchRuleDefinition.classes().should(haveMeaning()));
    rules.put(
        "no interface has one implementation",
        ArchRuleDefinition.classes().that().areInterfaces().should(haveReasonToExist()));
    rules.put(
        "every class lives in a package of the design",
        ArchRuleDefinition.classes()
            .should()
            .resideInAnyPackage(packages(base, ORDER.stream().flatMap(List::stream).toList())));
    rules.replaceAll((name, rule) -> rule.allowEmptyShould(true));
    return rules;
  }

  private static void pureRules(String base, Map<String, ArchRule> rules) {
    String[] pure = packages(base, PURE);
    rules.put(
        "pure packages touch no file",
        noClasses()
            .that()
            .resideInAnyPackage(pure)
            .should()
            .dependOnClassesThat(
                com.tngtech.archunit.base.DescribedPredicate.describe(
                    "read or write",
                    c ->
                        !c.getName().equals("java.io.Serializable")
                            && (c.getPackageName().equals("java.io")
                                || c.getPackageName().startsWith("java.nio.file")
                                || c.getPackageName().startsWith("java.nio.channels")
                                || c.getPackageName().startsWith("java.net")))));
    rules.put(
        "pure packages know no clock or zone of the machine",
        noClasses()
            .that()
            .resideInAnyPackage(pure)
            .should(callAny("java.time.[A-Za-z]+\\.now", "java.time.ZoneId.systemDefault"))
            .orShould(callAny("java.lang.System.(currentTimeMillis|nanoTime|getProperty|getenv)"))
            .orShould(callAny("java.util.(Date.<init>|TimeZone.getDefault|Calendar.getInstance)"))
            .orShould()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.time.Clock"));
    rules.put(
        "pure packages roll no dice",
        noClasses()
            .that()
            .resideInAnyPackage(pure)
            .should(callAny("java.lang.Math.random", "java.util.UUID.randomUUID"))
            .orShould()
            .dependOnClassesThat()
            .haveNameMatching(
                "java\\.util\\.(Random|SplittableRandom|concurrent\\.ThreadLocalRandom)|"
                    + "java\\.security\\.SecureRandom|java\\.util\\.random\\..*"));
    rules.put(
        "pure packages know no locale of the machine",
        noClasses()
            .that()
            .resideInAnyPackage(pure)
            .should(callAny("java.util.Locale.getDefault", "java.lang.String.formatted"))
            .orShould(formatWithoutLocale()));
    rules.put(
        "static fields are final",
        fields()
            .that()
            .areStatic()
            .and()
            .areDeclaredInClassesThat()
            .resideInAnyPackage(pure)
            .should()
            .beFinal());
    rules.put(
        "static fields hold nothing that changes",
        fields()
            .that()
            .areStatic()
            .and()
            .areDeclaredInClassesThat()
            .resideInAnyPackage(pure)
            .should()
            .notHaveRawType(
                com.tngtech.archunit.base.DescribedPredicate.describe(
                    "are a builder, an atomic or a mutable collection class",
                    c ->
                        c.getName()
                            .matches(
                                "java\\.util\\.(concurrent\\.)?(atomic\\..*|(Array|Linked|Hash|"
                                    + "Tree|Enum|LinkedHash|CopyOnWrite|Concurrent|Weak|Identity)"
                                    + "[A-Za-z]*(List|Map|Set|Deque|Queue))|"
                                    + "java\\.lang\\.String(Builder|Buffer)"))));
  }

  private static ArchRule nothingAbove(String base, String name, List<String> above) {
    return noClasses()
        .that()
        .resideInAPackage(base + "." + name + "..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(packages(base, above))
        .as(name + " should use nothing of " + String.join(", ", above));
  }

  private static ArchRule faces(String base) {
    return com.tngtech.archunit.lang.CompositeArchRule.of(
            nothingAbove(base, "cli", List.of("web")).allowEmptyShould(true))
        .and(nothingAbove(base, "web", List.of("cli")).allowEmptyShould(true));
  }

  private static String[] packages(String base, List<String> names) {
    return names.stream().map(n -> base + "." + n + "..").toArray(String[]::new);
  }

  private static ArchCondition<JavaClass> callAny(String... patterns) {
    return condition(
        "call " + String.join(" or ", patterns),
        (item, events) ->
            Stream.concat(
                    item.getCodeUnitCallsFromSelf().stream(),
                    item.getCodeUnitReferencesFromSelf().stream())
                .filter(
                    call ->
                        Arrays.stream(patterns)
                            .anyMatch(
                                p ->
                                    (call.getTargetOwner().getName() + "." + call.getName())
                                        .matches(p)))
                .forEach(
                    call ->
                        events.add(SimpleConditionEvent.satisfied(item, call.getDescription()))));
  }

  private static ArchCondition<JavaClass> formatWithoutLocale() {
    Set<String> names = Set.of("format", "toLowerCase", "toUpperCase", "printf");
    return condition(
        "make text without a locale",
        (item, events) ->
            item.getMethodCallsFromSelf().stream()
                .filter(c -> names.contains(c.getName()))
                .filter(c -> c.getTargetOwner().isEquivalentTo(String.class))
                .filter(
                    c ->
                        c.getTarget().getRawParameterTypes().stream()
                            .noneMatch(t -> t.isEquivalentTo(java.util.Locale.class)))
                .forEach(
                    c -> events.add(SimpleConditionEvent.satisfied(item, c.getDescription()))));
  }

  private static ArchCondition<JavaClass> haveMeaning() {
    return condition(
        "have no package or class named util, common, manager or impl",
        (item, events) -> {
          List<String> words = new ArrayList<>(List.of(item.getPackageName().split("\\.")));
          words.addAll(List.of(item.getSimpleName().split("(?<=[a-z0-9])(?=[A-Z])")));
          for (String word : words) {
            if (EMPTY_WORDS.contains(word.toLowerCase(java.util.Locale.ROOT))) {
              events.add(SimpleConditionEvent.violated(item, item.getName() + " is named " + word));
            }
          }
        });
  }

  /** An interface is for several implementations, or for a lambda. */
  private static ArchCondition<JavaClass> haveReasonToExist() {
    return condition(
        "have several implementations or be functional",
        (item, events) -> {
          if (item.isAnnotation() || isFunctional(item)) {
            return;
          }
          long known = item.getAllSubclasses().stream().filter(c -> !c.isInterface()).count();
          if (known == 1) {
            events.add(
                SimpleConditionEvent.violated(item, item.getName() + " has one implementation"));
          }
        });
  }

  private static boolean isFunctional(JavaClass item) {
    List<JavaMethod> open =
        item.getAllMethods().stream()
            .filter(m -> m.getModifiers().contains(JavaModifier.ABSTRACT))
            .toList();
    return open.size() == 1 && !isSealed(item);
  }

  private static boolean isSealed(JavaClass item) {
    try {
      return Class.forName(item.getName(), false, ArchitectureTest.class.getClassLoader())
          .isSealed();
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException(e);
    }
  }

  private static ArchCondition<JavaClass> condition(
      String description, java.util.function.BiConsumer<JavaClass, ConditionEvents> check) {
    return new ArchCondition<>(description) {
      @Override
      public void check(JavaClass item, ConditionEvents events) {
        check.accept(item, events);
      }
    };
  }
}
