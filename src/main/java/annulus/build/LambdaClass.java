package annulus.build;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * A class that does what one lambda or method reference does: it keeps what was captured and calls
 * the method that holds the body.
 */
final class LambdaClass {
  private static final String ONLY = "ONLY";
  private static final String MAKE = "with";

  private final String called;
  private final Type face;
  private final Type[] captured;
  private final Type erased;
  private final Handle body;
  private final Type instantiated;

  private LambdaClass(String called, Type site, Type erased, Handle body, Type instantiated) {
    this.called = called;
    this.face = site.getReturnType();
    this.captured = site.getArgumentTypes();
    this.erased = erased;
    this.body = body;
    this.instantiated = instantiated;
  }

  /** Empty where the call is of something else, or needs a change of types not known here. */
  static Optional<LambdaClass> of(
      String called, String site, Handle bootstrap, Object[] arguments) {
    if (!bootstrap.getOwner().equals("java/lang/invoke/LambdaMetafactory")
        || !bootstrap.getName().equals("metafactory")) {
      return Optional.empty();
    }
    LambdaClass lambda =
        new LambdaClass(
            called,
            Type.getMethodType(site),
            (Type) arguments[0],
            (Handle) arguments[1],
            (Type) arguments[2]);
    return lambda.canBeWritten() ? Optional.of(lambda) : Optional.empty();
  }

  /** Writes what stands in the place of the lambda: what it captures lies on the stack. */
  void call(MethodVisitor code, String name) {
    if (captured.length == 0) {
      code.visitFieldInsn(Opcodes.GETSTATIC, name, ONLY, "L" + name + ";");
    } else {
      code.visitMethodInsn(
          Opcodes.INVOKESTATIC, name, MAKE, Type.getMethodDescriptor(face, captured), false);
    }
  }

  /**
   * The class.
   *
   * @param name internal name
   * @param host of the nest that holds the body
   */
  byte[] bytes(String name, String host) {
    ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);
    writer.visit(
        Opcodes.V17,
        Opcodes.ACC_FINAL | Opcodes.ACC_SUPER | Opcodes.ACC_SYNTHETIC,
        name,
        null,
        "java/lang/Object",
        new String[] {face.getInternalName()});
    writer.visitNestHost(host);
    for (int i = 0; i < captured.length; i++) {
      writer.visitField(
          Opcodes.ACC_PRIVATE | Opcodes.ACC_FINAL,
          field(i),
          captured[i].getDescriptor(),
          null,
          null);
    }
    writeConstructor(writer, name);
    if (captured.length == 0) {
      writeOnly(writer, name);
    } else {
      writeMake(writer, name);
    }
    writeMethod(writer, name);
    writer.visitEnd();
    return writer.toByteArray();
  }

  private void writeConstructor(ClassWriter writer, String name) {
    MethodVisitor code =
        writer.visitMethod(Opcodes.ACC_PRIVATE, "<init>", constructor(), null, null);
    code.visitCode();
    code.visitVarInsn(Opcodes.ALOAD, 0);
    code.visitMethodInsn(Opcodes.INVOKESPECIAL, "java/lang/Object", "<init>", "()V", false);
    int local = 1;
    for (int i = 0; i < captured.length; i++) {
      code.visitVarInsn(Opcodes.ALOAD, 0);
      code.visitVarInsn(captured[i].getOpcode(Opcodes.ILOAD), local);
      code.visitFieldInsn(Opcodes.PUTFIELD, name, field(i), captured[i].getDescriptor());
      local += captured[i].getSize();
    }
    end(code, Type.VOID_TYPE);
  }

  /** A lambda that captures nothing is one object for good. */
  private void writeOnly(ClassWriter writer, String name) {
    writer.visitField(Opcodes.ACC_STATIC | Opcodes.ACC_FINAL, ONLY, "L" + name + ";", null, null);
    MethodVisitor code = writer.visitMethod(Opcodes.ACC_STATIC, "<clinit>", "()V", null, null);
    code.visitCode();
    writeNew(code, name);
    code.visitFieldInsn(Opcodes.PUTSTATIC, name, ONLY, "L" + name + ";");
    end(code, Type.VOID_TYPE);
  }

  private void writeMake(ClassWriter writer, String name) {
    MethodVisitor code =
        writer.visitMethod(
            Opcodes.ACC_STATIC, MAKE, Type.getMethodDescriptor(face, captured), null, null);
    code.visitCode();
    writeNew(code, name);
    end(code, face);
  }

  private void writeNew(MethodVisitor code, String name) {
    code.visitTypeInsn(Opcodes.NEW, name);
    code.visitInsn(Opcodes.DUP);
    int local = 0;
    for (Type each : captured) {
      code.visitVarInsn(each.getOpcode(Opcodes.ILOAD), local);
      local += each.getSize();
    }
    code.visitMethodInsn(Opcodes.INVOKESPECIAL, name, "<init>", constructor(), false);
  }

  private void writeMethod(ClassWriter writer, String name) {
    MethodVisitor code =
        writer.visitMethod(Opcodes.ACC_PUBLIC, called, erased.getDescriptor(), null, null);
    code.visitCode();
    if (makes()) {
      code.visitTypeInsn(Opcodes.NEW, body.getOwner());
      code.visitInsn(Opcodes.DUP);
    }
    List<Type> wanted = wanted();
    for (int i = 0; i < captured.length; i++) {
      code.visitVarInsn(Opcodes.ALOAD, 0);
      code.visitFieldInsn(Opcodes.GETFIELD, name, field(i), captured[i].getDescriptor());
      Boxes.change(code, captured[i], wanted.get(i));
    }
    Type[] given = erased.getArgumentTypes();
    int local = 1;
    for (int i = 0; i < given.length; i++) {
      code.visitVarInsn(given[i].getOpcode(Opcodes.ILOAD), local);
      Boxes.change(code, given[i], wanted.get(captured.length + i));
      local += given[i].getSize();
    }
    code.visitMethodInsn(
        opcode(), body.getOwner(), body.getName(), body.getDesc(), body.isInterface());
    writeReturn(code);
    code.visitMaxs(0, 0);
    code.visitEnd();
  }

  private void writeReturn(MethodVisitor code) {
    Type answer = erased.getReturnType();
    if (!answer.equals(Type.VOID_TYPE)) {
      Boxes.change(code, answered(), answer);
    } else if (answered().getSize() == 1) {
      code.visitInsn(Opcodes.POP);
    } else if (answered().getSize() == 2) {
      code.visitInsn(Opcodes.POP2);
    }
    code.visitInsn(answer.getOpcode(Opcodes.IRETURN));
  }

  private static void end(MethodVisitor code, Type answer) {
    code.visitInsn(answer.getOpcode(Opcodes.IRETURN));
    code.visitMaxs(0, 0);
    code.visitEnd();
  }

  private boolean canBeWritten() {
    List<Type> wanted = wanted();
    Type[] given = erased.getArgumentTypes();
    Type[] known = instantiated.getArgumentTypes();
    boolean can = captured.length + given.length == wanted.size();
    for (int i = 0; can && i < given.length; i++) {
      can = Boxes.canChange(given[i], known[i], wanted.get(captured.length + i));
    }
    Type answer = erased.getReturnType();
    return can
        && (answer.equals(Type.VOID_TYPE) || Boxes.canChange(answered(), answered(), answer));
  }

  /** What the body takes, the object that it is called on first. */
  private List<Type> wanted() {
    List<Type> wanted = new ArrayList<>();
    if (body.getTag() != Opcodes.H_INVOKESTATIC && !makes()) {
      wanted.add(Type.getObjectType(body.getOwner()));
    }
    wanted.addAll(Arrays.asList(Type.getArgumentTypes(body.getDesc())));
    return wanted;
  }

  private Type answered() {
    return makes() ? Type.getObjectType(body.getOwner()) : Type.getReturnType(body.getDesc());
  }

  private boolean makes() {
    return body.getTag() == Opcodes.H_NEWINVOKESPECIAL;
  }

  private int opcode() {
    return switch (body.getTag()) {
      case Opcodes.H_INVOKESTATIC -> Opcodes.INVOKESTATIC;
      case Opcodes.H_NEWINVOKESPECIAL -> Opcodes.INVOKESPECIAL;
      // A private method of the nest is called like any other.
      default -> body.isInterface() ? Opcodes.INVOKEINTERFACE : Opcodes.INVOKEVIRTUAL;
    };
  }

  private String constructor() {
    return Type.getMethodDescriptor(Type.VOID_TYPE, captured);
  }

  private static String field(int i) {
    return "captured" + i;
  }
}
