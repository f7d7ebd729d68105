package annulus.build;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/**
 * A step of the build: puts a plain class in the place of each lambda and plain code in the place
 * of what a record inherits. A JVM links each of them when it first meets it, and that took half of
 * a start.
 */
public final class PlainCalls {
  /** Stands between the name of a class and the number of a class made for one of its lambdas. */
  private static final String MARK = "$$";

  private final Map<String, byte[]> classes = new TreeMap<>();
  private final Map<String, byte[]> madeBefore = new TreeMap<>();

  /** Classes that had lambdas now. */
  private final Set<String> fresh = new HashSet<>();

  private final Map<String, List<String>> membersByHost = new LinkedHashMap<>();

  private PlainCalls() {}

  /**
   * Rewrites every class in a folder and puts the new ones beside them. A second time adds nothing;
   * what was made for an older state of a class is removed.
   *
   * @param args the folder
   * @throws IOException when a file can't be read or written
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    Map<Path, byte[]> all = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".class")).toList()) {
        all.put(file, Files.readAllBytes(file));
      }
    }
    Map<Path, byte[]> plain = new TreeMap<>();
    of(all.values()).forEach((name, bytes) -> plain.put(folder.resolve(name + ".class"), bytes));
    for (Map.Entry<Path, byte[]> each : plain.entrySet()) {
      Files.write(each.getKey(), each.getValue());
    }
    all.keySet().removeAll(plain.keySet());
    for (Path old : all.keySet()) {
      Files.delete(old);
    }
  }

  /**
   * The classes as they should be, with those made for them.
   *
   * @param all compiled classes; those that may call each other's private methods come together
   * @return each by its internal name
   */
  static Map<String, byte[]> of(Collection<byte[]> all) {
    PlainCalls plain = new PlainCalls();
    all.forEach(plain::rewrite);
    plain.membersByHost.forEach(plain::join);
    plain.madeBefore.forEach(plain::keep);
    return plain.classes;
  }

  private void rewrite(byte[] bytes) {
    ClassReader reader = new ClassReader(bytes);
    String name = reader.getClassName();
    if (name.contains(MARK)) {
      madeBefore.put(name, bytes);
      return;
    }
    ClassWriter writer = new ClassWriter(0);
    reader.accept(new OneClass(name, writer), 0);
    classes.put(name, writer.toByteArray());
  }

  /** What was made for a class before is old when that was compiled anew. */
  private void keep(String name, byte[] bytes) {
    if (!fresh.contains(name.substring(0, name.indexOf(MARK)))) {
      classes.put(name, bytes);
    }
  }

  /** Lets the new classes call the private methods that hold the bodies of the lambdas. */
  private void join(String host, List<String> members) {
    ClassWriter writer = new ClassWriter(0);
    new ClassReader(classes.get(host))
        .accept(
            new ClassVisitor(Opcodes.ASM9, writer) {
              @Override
              public void visitEnd() {
                members.forEach(this::visitNestMember);
                super.visitEnd();
              }
            },
            0);
    classes.put(host, writer.toByteArray());
  }

  /** Goes through one class. */
  private final class OneClass extends ClassVisitor {
    private final String name;
    private String host;
    private int made;

    OneClass(String name, ClassVisitor next) {
      super(Opcodes.ASM9, next);
      this.name = name;
      this.host = name;
    }

    @Override
    public void visitNestHost(String nestHost) {
      host = nestHost;
      super.visitNestHost(nestHost);
    }

    @Override
    public MethodVisitor visitMethod(
        int access, String method, String descriptor, String signature, String[] exceptions) {
      MethodVisitor next = super.visitMethod(access, method, descriptor, signature, exceptions);
      return new MethodVisitor(Opcodes.ASM9, next) {
        private int room;

        @Override
        public void visitInvokeDynamicInsn(
            String called, String type, Handle bootstrap, Object... arguments) {
          Optional<RecordMethod> ofRecord = RecordMethod.of(called, bootstrap, arguments);
          Optional<LambdaClass> lambda = LambdaClass.of(called, type, bootstrap, arguments);
          if (ofRecord.isPresent()) {
            ofRecord.get().write(mv);
            room = RecordMethod.STACK;
          } else if (lambda.isPresent()) {
            lambda.get().call(mv, withClass(lambda.get()));
          } else {
            super.visitInvokeDynamicInsn(called, type, bootstrap, arguments);
          }
        }

        @Override
        public void visitMaxs(int stack, int locals) {
          super.visitMaxs(Math.max(stack, room), locals);
        }
      };
    }

    private String withClass(LambdaClass lambda) {
      made++;
      fresh.add(name);
      String lambdaName = name + MARK + made;
      classes.put(lambdaName, lambda.bytes(lambdaName, host));
      membersByHost.computeIfAbsent(host, h -> new ArrayList<>()).add(lambdaName);
      return lambdaName;
    }
  }
}
