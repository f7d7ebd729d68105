package annulus.build;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * What a record inherits as {@code hashCode} or {@code equals}, written out with the meaning that
 * {@link Record} gives them. Its {@code toString} stays as it is: no start needs one.
 */
final class RecordMethod {
  /** The most that the code written here puts on the stack, in words. */
  static final int STACK = 6;

  private static final Type OBJECTS = Type.getObjectType("java/util/Objects");

  private final boolean equals;
  private final Type record;
  private final List<Handle> fields;

  private RecordMethod(boolean equals, Type record, List<Handle> fields) {
    this.equals = equals;
    this.record = record;
    this.fields = fields;
  }

  /** Empty where the call is of something else. */
  static Optional<RecordMethod> of(String called, Handle bootstrap, Object[] arguments) {
    boolean equals = called.equals("equals");
    if (!bootstrap.getOwner().equals("java/lang/runtime/ObjectMethods")
        || !(equals || called.equals("hashCode"))) {
      return Optional.empty();
    }
    // The names of the fields come between the record and the fields.
    return Optional.of(
        new RecordMethod(
            equals,
            (Type) arguments[0],
            Arrays.stream(arguments).skip(2).map(field -> (Handle) field).toList()));
  }

  /** Writes code that leaves the answer where the call would have left it. */
  void write(MethodVisitor code) {
    if (equals) {
      // this and the other were put on the stack for the call
      code.visitInsn(Opcodes.POP2);
      writeEquals(code);
    } else {
      code.visitInsn(Opcodes.POP);
      writeHash(code);
    }
  }

  private void writeHash(MethodVisitor code) {
    code.visitInsn(Opcodes.ICONST_0);
    for (Handle field : fields) {
      code.visitIntInsn(Opcodes.BIPUSH, 31);
      code.visitInsn(Opcodes.IMUL);
      get(code, 0, field);
      Type type = Type.getType(field.getDesc());
      Type hashing = Boxes.isPrimitive(type) ? Boxes.boxOf(type) : OBJECTS;
      String takes = Boxes.isPrimitive(type) ? type.getDescriptor() : "Ljava/lang/Object;";
      code.visitMethodInsn(
          Opcodes.INVOKESTATIC, hashing.getInternalName(), "hashCode", "(" + takes + ")I", false);
      code.visitInsn(Opcodes.IADD);
    }
  }

  private void writeEquals(MethodVisitor code) {
    code.visitVarInsn(Opcodes.ALOAD, 1);
    code.visitTypeInsn(Opcodes.INSTANCEOF, record.getInternalName());
    orFalse(code, Opcodes.IFNE);
    for (Handle field : fields) {
      get(code, 0, field);
      get(code, 1, field);
      compare(code, Type.getType(field.getDesc()));
    }
    code.visitInsn(Opcodes.ICONST_1);
  }

  private static void compare(MethodVisitor code, Type type) {
    switch (type.getSort()) {
      case Type.BOOLEAN, Type.BYTE, Type.CHAR, Type.SHORT, Type.INT ->
          orFalse(code, Opcodes.IF_ICMPEQ);
      case Type.LONG, Type.FLOAT, Type.DOUBLE -> {
        String one = type.getDescriptor();
        code.visitMethodInsn(
            Opcodes.INVOKESTATIC,
            Boxes.boxOf(type).getInternalName(),
            "compare",
            "(" + one + one + ")I",
            false);
        orFalse(code, Opcodes.IFEQ);
      }
      default -> {
        code.visitMethodInsn(
            Opcodes.INVOKESTATIC,
            OBJECTS.getInternalName(),
            "equals",
            "(Ljava/lang/Object;Ljava/lang/Object;)Z",
            false);
        orFalse(code, Opcodes.IFNE);
      }
    }
  }

  /** Goes on where the test holds; else the method ends with false. */
  private static void orFalse(MethodVisitor code, int test) {
    Label on = new Label();
    code.visitJumpInsn(test, on);
    code.visitInsn(Opcodes.ICONST_0);
    code.visitInsn(Opcodes.IRETURN);
    code.visitLabel(on);
    code.visitFrame(Opcodes.F_SAME, 0, null, 0, null);
  }

  private static void get(MethodVisitor code, int local, Handle field) {
    code.visitVarInsn(Opcodes.ALOAD, local);
    if (local > 0) {
      code.visitTypeInsn(Opcodes.CHECKCAST, field.getOwner());
    }
    code.visitFieldInsn(Opcodes.GETFIELD, field.getOwner(), field.getName(), field.getDesc());
  }
}
