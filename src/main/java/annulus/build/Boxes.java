package annulus.build;

import java.util.Map;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/** Changes a value on the stack from one type to another, as a lambda's call does. */
final class Boxes {
  private static final Map<Type, Type> BOXES =
      Map.of(
          Type.BOOLEAN_TYPE, Type.getType(Boolean.class),
          Type.BYTE_TYPE, Type.getType(Byte.class),
          Type.CHAR_TYPE, Type.getType(Character.class),
          Type.SHORT_TYPE, Type.getType(Short.class),
          Type.INT_TYPE, Type.getType(Integer.class),
          Type.LONG_TYPE, Type.getType(Long.class),
          Type.FLOAT_TYPE, Type.getType(Float.class),
          Type.DOUBLE_TYPE, Type.getType(Double.class));

  private Boxes() {}

  static boolean isPrimitive(Type type) {
    return BOXES.containsKey(type);
  }

  static Type boxOf(Type primitive) {
    return BOXES.get(primitive);
  }

  /** Whether {@link #change} knows how; where not, the lambda is left as it was. */
  static boolean canChange(Type from, Type known, Type to) {
    if (isPrimitive(from)) {
      return from.equals(to) || !isPrimitive(to);
    }
    return !isPrimitive(to) || known.equals(boxOf(to));
  }

  /**
   * Changes the value on top of the stack.
   *
   * @param from as it lies there
   * @param to as it is wanted
   */
  static void change(MethodVisitor code, Type from, Type to) {
    if (from.equals(to)) {
      return;
    }
    if (isPrimitive(from)) {
      Type box = boxOf(from);
      code.visitMethodInsn(
          Opcodes.INVOKESTATIC,
          box.getInternalName(),
          "valueOf",
          Type.getMethodDescriptor(box, from),
          false);
    } else if (isPrimitive(to)) {
      Type box = boxOf(to);
      cast(code, from, box);
      code.visitMethodInsn(
          Opcodes.INVOKEVIRTUAL,
          box.getInternalName(),
          to.getClassName() + "Value",
          Type.getMethodDescriptor(to),
          false);
    } else {
      cast(code, from, to);
    }
  }

  private static void cast(MethodVisitor code, Type from, Type to) {
    if (!from.equals(to) && !to.equals(Type.getType(Object.class))) {
      code.visitTypeInsn(Opcodes.CHECKCAST, to.getInternalName());
    }
  }
}
