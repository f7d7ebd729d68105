package annulus.exchange;

import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.lang.reflect.Type;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.tools.ToolProvider;

/**
 * A step of the build: writes what the program's own tables say as Java source that makes the same
 * objects, and compiles it. Reading and checking the tables takes most of a start; they can't
 * change after the build.
 */
public final class TablesAsCode {
  /** The class it makes; {@link BuiltTables} finds it by this name. */
  static final String NAME = "TablesAsBuilt";

  /** What makes a thing as its constructor does, without checks that take long. */
  private static final String UNCHECKED = "ofChecked";

  private static final String HEAD =
      """
      package annulus.exchange;

      import java.util.*;

      /** What data/ says. Made by the build; not to be changed by hand. */
      final class %s implements BuiltTables.Tables {
        @SuppressWarnings("unchecked")
        private static <K, V> Map<K, V> map(Object... pairs) {
          Map<K, V> map = new LinkedHashMap<>();
          for (int i = 0; i < pairs.length; i += 2) {
            map.put((K) pairs[i], (V) pairs[i + 1]);
          }
          return map;
        }
      """;

  private final StringBuilder methods = new StringBuilder();
  private int made;

  private TablesAsCode() {}

  /**
   * Writes and compiles the class.
   *
   * @param args folder for the source; folder of the compiled classes
   * @throws IOException when a file can't be read or written
   */
  public static void main(String[] args) throws IOException {
    Path source = Path.of(args[0], "annulus", "exchange", NAME + ".java");
    Files.createDirectories(source.getParent());
    Files.writeString(source, of(all(DataFiles.bundled())));
    int code =
        ToolProvider.getSystemJavaCompiler()
            .run(
                null,
                null,
                null,
                "-proc:none",
                "-XDstringConcat=inline",
                "-encoding",
                "UTF-8",
                "-cp",
                args[1],
                "-d",
                args[1],
                source.toString());
    if (code != 0) {
      throw new IllegalStateException(source + " does not compile");
    }
  }

  /** Everything that is made, read from the files. */
  static List<Object> all(DataFiles files) throws IOException {
    return List.of(
        KnowledgeFiles.readFiles(files),
        LoggerRules.readFiles(files),
        Iso286Files.readFiles(files));
  }

  /** The source of a class that makes these. */
  static String of(List<Object> all) {
    TablesAsCode code = new TablesAsCode();
    StringBuilder of = new StringBuilder("\n  @Override\n  public Object of(Class<?> type) {\n");
    for (Object each : all) {
      String made = code.method(each.getClass(), code.call(each));
      of.append("    if (type == ").append(name(each.getClass())).append(".class) {\n");
      of.append("      return ").append(made).append(";\n    }\n");
    }
    of.append("    throw new IllegalArgumentException(type + \" is no table\");\n  }\n");
    return HEAD.formatted(NAME) + code.methods + of + "}\n";
  }

  /** An expression that makes an equal value. */
  private String value(Object value, Type type) {
    if (value instanceof String text) {
      return quoted(text);
    } else if (value instanceof Enum<?> word) {
      return name(word.getDeclaringClass()) + "." + word.name();
    } else if (value instanceof Double || value instanceof Integer || value instanceof Boolean) {
      return number(value);
    } else if (value instanceof Optional<?> optional) {
      return optional
          .map(v -> "Optional.of(" + value(v, v.getClass()) + ")")
          .orElse("Optional.empty()");
    } else if (value instanceof List<?> list) {
      return method(type, "List.of(" + each(list) + ")");
    } else if (value instanceof Set<?> set) {
      return method(type, "Set.of(" + each(sorted(set)) + ")");
    } else if (value instanceof Map<?, ?> map) {
      return method(type, "map(" + pairs(map) + ")");
    }
    return made(value);
  }

  /** Larger things get a method of their own, for those of the JVM are short. */
  private String made(Object value) {
    boolean large = value.getClass().getDeclaredFields().length > 3;
    return large ? method(value.getClass(), call(value)) : call(value);
  }

  /** A call of the constructor; what it takes are the first fields, in their order. */
  private String call(Object value) {
    Constructor<?>[] all = value.getClass().getConstructors();
    if (all.length != 1) {
      throw new IllegalStateException(value.getClass() + " has no single public constructor");
    }
    Type[] takes = all[0].getGenericParameterTypes();
    Iterator<Field> fields =
        Arrays.stream(value.getClass().getDeclaredFields())
            .filter(f -> !Modifier.isStatic(f.getModifiers()))
            .iterator();
    String arguments =
        Arrays.stream(takes)
            .map(type -> value(held(fields.next(), value), type))
            .collect(Collectors.joining(", "));
    String maker = name(value.getClass());
    boolean alike = isMadeUnchecked(value.getClass(), all[0].getParameterTypes());
    return (alike ? maker + "." + UNCHECKED : "new " + maker) + "(" + arguments + ")";
  }

  /** Whether it can be made without checking again what was checked when the tables were read. */
  private static boolean isMadeUnchecked(Class<?> type, Class<?>... takes) {
    return Arrays.stream(type.getMethods())
        .anyMatch(
            m -> m.getName().equals(UNCHECKED) && Arrays.equals(m.getParameterTypes(), takes));
  }

  private static Object held(Field field, Object holder) {
    try {
      field.setAccessible(true);
      return field.get(holder);
    } catch (IllegalAccessException e) {
      throw new IllegalStateException(e);
    }
  }

  private String method(Type type, String expression) {
    String name = "m" + made++;
    methods.append("\n  static ").append(name(type)).append(' ').append(name).append("() {\n");
    methods.append("    return ").append(expression).append(";\n  }\n");
    return name + "()";
  }

  private String each(Collection<?> values) {
    return values.stream()
        .map(v -> value(v, v.getClass()))
        .collect(Collectors.joining(",\n        "));
  }

  /** What has no order of its own is written sorted, so that a build can be repeated. */
  private static List<?> sorted(Set<?> values) {
    return values.stream().sorted(Comparator.comparing(Object::toString)).toList();
  }

  private String pairs(Map<?, ?> map) {
    Map<?, ?> ordered =
        map.getClass().getName().contains("ImmutableCollections") ? new TreeMap<>(map) : map;
    return ordered.entrySet().stream()
        .map(
            e ->
                value(e.getKey(), e.getKey().getClass())
                    + ", "
                    + value(e.getValue(), e.getValue().getClass()))
        .collect(Collectors.joining(",\n        "));
  }

  private static String number(Object value) {
    if (value instanceof Double d && !Double.isFinite(d)) {
      throw new IllegalStateException(d + " is in no table");
    }
    return value.toString();
  }

  private static String name(Type type) {
    return type.getTypeName().replace('$', '.');
  }

  private static String quoted(String text) {
    String plain = text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n");
    return '"' + plain + '"';
  }
}
