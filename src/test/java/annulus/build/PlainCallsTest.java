package annulus.build;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/** The rewritten classes do what the same classes do as the compiler left them. */
class PlainCallsTest {
  /** Finds the rewritten classes before all others. */
  private static final class Rewritten extends ClassLoader {
    private final Map<String, byte[]> classes;

    Rewritten(Map<String, byte[]> classes) {
      super(PlainCallsTest.class.getClassLoader());
      this.classes = classes;
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      byte[] bytes = classes.get(name.replace('.', '/'));
      Class<?> loaded = findLoadedClass(name);
      if (bytes == null || loaded != null) {
        return loaded == null ? super.loadClass(name, resolve) : loaded;
      }
      return defineClass(name, bytes, 0, bytes.length);
    }
  }

  @ParameterizedTest
  @ValueSource(classes = {Lambdas.class, Records.class})
  void a_rewritten_class_does_the_same(Class<? extends Supplier<String>> type) throws Exception {
    String expected = type.getConstructor().newInstance().get();
    assertEquals(expected, said(PlainCalls.of(compiled(type)), type));
    assertTrue(expected.lines().count() > 10, expected);
  }

  private static Object said(Map<String, byte[]> rewritten, Class<?> type) throws Exception {
    Class<?> again = new Rewritten(rewritten).loadClass(type.getName());
    assertFalse(again.equals(type), "loaded as it was");
    return ((Supplier<?>) again.getConstructor().newInstance()).get();
  }

  @Test
  void none_is_left_to_link_but_one_of_a_kind_that_is_not_known() throws Exception {
    // It makes an Integer a double.
    assertEquals(List.of("annulus/build/Lambdas.boxes apply"), linkedAfter(Lambdas.class));
    assertEquals(List.of(), linkedAfter(Records.class));
  }

  private static List<String> linkedAfter(Class<?> type) throws Exception {
    List<byte[]> before = compiled(type);
    assertTrue(linked(before).size() > 5);
    return linked(PlainCalls.of(before).values());
  }

  @Test
  void a_second_time_adds_nothing() throws Exception {
    Map<String, byte[]> once = PlainCalls.of(compiled(Lambdas.class));
    Map<String, byte[]> twice = PlainCalls.of(List.copyOf(once.values()));
    assertEquals(once.keySet(), twice.keySet());
    assertEquals(new Lambdas().get(), said(twice, Lambdas.class));
  }

  /** An older state of the class, of which one more is left than is made now. */
  @Test
  void what_was_made_for_an_older_state_goes() throws Exception {
    List<byte[]> all = new ArrayList<>(compiled(Lambdas.class));
    Map<String, byte[]> made = PlainCalls.of(all);
    String first = "annulus/build/Lambdas$$1";
    byte[] old = renamed(made.get("annulus/build/Lambdas$$2"), first);
    all.add(old);
    all.add(renamed(old, "annulus/build/Lambdas$$999"));
    Map<String, byte[]> again = PlainCalls.of(all);
    assertEquals(made.keySet(), again.keySet());
    assertArrayEquals(made.get(first), again.get(first));
  }

  private static byte[] renamed(byte[] bytes, String name) {
    ClassWriter writer = new ClassWriter(0);
    new ClassReader(bytes)
        .accept(
            new ClassVisitor(Opcodes.ASM9, writer) {
              @Override
              public void visit(
                  int version, int access, String was, String sign, String above, String[] faces) {
                super.visit(version, access, name, sign, above, faces);
              }
            },
            0);
    return writer.toByteArray();
  }

  @Test
  void the_build_left_none_in_the_program() throws Exception {
    List<byte[]> program = classes(Path.of(of(PlainCalls.class)), "");
    assertTrue(program.size() > 1000, "only " + program.size() + " classes found");
    assertEquals(List.of(), linked(program));
  }

  private static List<byte[]> compiled(Class<?> type) throws Exception {
    return classes(Path.of(of(type)), type.getSimpleName());
  }

  private static URI of(Class<?> type) throws URISyntaxException {
    return type.getProtectionDomain().getCodeSource().getLocation().toURI();
  }

  private static List<byte[]> classes(Path folder, String start) throws IOException {
    List<byte[]> all = new ArrayList<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted().toList()) {
        String name = file.getFileName().toString();
        if (name.endsWith(".class") && name.startsWith(start)) {
          all.add(Files.readAllBytes(file));
        }
      }
    }
    return all;
  }

  /** What is linked at run time, but for the texts of records. */
  private static List<String> linked(Iterable<byte[]> classes) {
    List<String> found = new ArrayList<>();
    for (byte[] bytes : classes) {
      ClassReader reader = new ClassReader(bytes);
      reader.accept(
          new ClassVisitor(Opcodes.ASM9) {
            @Override
            public MethodVisitor visitMethod(
                int access, String method, String type, String signature, String[] exceptions) {
              return new MethodVisitor(Opcodes.ASM9) {
                @Override
                public void visitInvokeDynamicInsn(
                    String called, String descriptor, Handle bootstrap, Object... arguments) {
                  if (!called.equals("toString")) {
                    found.add(reader.getClassName() + "." + method + " " + called);
                  }
                }
              };
            }
          },
          0);
    }
    return found;
  }
}
