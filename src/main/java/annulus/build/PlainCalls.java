package annulus.build;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
  private final Map<String, List<String>> membersByHost = new LinkedHashMap<>();

  private PlainCalls() {}

  /**
   * Rewrites every class in a folder and puts the new ones beside them. A second time adds nothing.
   *
   * @param args the folder
   * @throws IOException when a file can't be read or written
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    List<byte[]> all = new ArrayList<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".class")).toList()) {
        all.add(Files.readAllBytes(file));
      }
    }
    for (Map.Entry<String, byte[]> each : of(all).entrySet()) {
      Files.write(folder.resolve(each.getKey() + ".class"), each.getValue());
    }
  }

  /**
   * The classes as they should be, with those made for them.
   *
   * @param all compiled classes; those that may call each other's private methods come together
   * @return each by its internal name
   */
  static Map<String, byte[]> of(List<byte[]> all) {
    PlainCalls plain = new PlainCalls();
    all.forEach(plain::rewrite);
    plain.membersByHost.forEach(plain::join);
    return plain.classes;
  }

  private void rewrite(byte[] bytes) {
    ClassReader reader = new ClassReader(bytes);
    ClassWriter writer = new ClassWriter(0);
    reader.accept(new OneClass(reader.getClassName(), writer), 0);
    classes.put(reader.getClassName(), writer.toByteArray());
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
      String lambdaName = name + MARK + made;
      classes.put(lambdaName, lambda.bytes(lambdaName, host));
      membersByHost.computeIfAbsent(host, h -> new ArrayList<>()).add(lambdaName);
      return lambdaName;
    }
  }
}
