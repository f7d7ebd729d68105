package annulus.build;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;

/** Every kind of lambda and method reference that Java has, each leaving a word of what it did. */
public final class Lambdas implements Supplier<String> {
  private final List<String> said = new ArrayList<>();
  private final String own = "own";

  /** With a private method of its own, called from a lambda. */
  interface Greets {
    private String hello(String name) {
      return "hello " + name;
    }

    default Supplier<String> later(String name) {
      return () -> hello(name);
    }
  }

  /** Declares an exception and a type that is not erased to Object. */
  interface Strict<T extends Number> {
    T of(T first, long second) throws Exception;
  }

  /** A member of the nest. */
  static final class Inside implements Greets {
    private int count;

    private int next() {
      return ++count;
    }
  }

  @Override
  public String get() {
    try {
      functions();
      captures((byte) 1, (short) 2, 'c', 4, 5L, 6f, 7d, true, "text");
      boxes();
      nests();
      exceptions();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
    return String.join("\n", said);
  }

  private void functions() {
    Function<String, Integer> ofClass = Integer::parseInt;
    Function<String, Integer> ofAnyObject = String::length;
    Supplier<String> ofOneObject = own::toUpperCase;
    Function<String, StringBuilder> making = StringBuilder::new;
    IntFunction<String[]> array = String[]::new;
    BiFunction<String, String, Boolean> two = String::equals;
    Consumer<String> dropsAnswer = said::add;
    Consumer<Integer> dropsLong = Lambdas::twice;
    Runnable nothing = () -> {};
    Supplier<Greets> face = Inside::new;
    Supplier<String> up = super::toString;
    nothing.run();
    dropsAnswer.accept("added");
    dropsLong.accept(3);
    said.add("" + ofClass.apply("12") + ofAnyObject.apply("four") + ofOneObject.get());
    said.add("" + making.apply("made") + array.apply(3).length + two.apply("a", "a"));
    said.add(face.get().later("you").get() + up.get().isEmpty());
    List<String> words = new ArrayList<>(List.of("ccc", "a", "bb"));
    words.sort(Comparator.comparing(String::length).reversed());
    said.add("" + words);
  }

  private static long twice(int value) {
    return 2L * value;
  }

  private void captures(
      byte b, short s, char c, int i, long l, float f, double d, boolean z, String t) {
    Supplier<String> all = () -> "" + b + s + c + i + l + f + d + z + t + own;
    DoubleFunction<Function<Long, String>> nested = x -> y -> "" + x + y + l + d + own;
    said.add(all.get() + nested.apply(0.5).apply(9L));
  }

  private void boxes() {
    Function<Integer, Integer> unboxed = x -> x + 1;
    ToDoubleFunction<Double> half = x -> x / 2;
    ToLongFunction<Long> same = Long::longValue;
    IntPredicate even = x -> x % 2 == 0;
    DoubleUnaryOperator root = Math::sqrt;
    Function<Double, Double> boxedRoot = Math::sqrt;
    BiFunction<Integer, Integer, Integer> most = Math::max;
    IntFunction<Object> boxed = Integer::valueOf;
    Function<Integer, Double> widened = Lambdas::tenth;
    Supplier<Object> character = own.chars()::findFirst;
    said.add("" + unboxed.apply(1) + half.applyAsDouble(5d) + same.applyAsLong(7L) + even.test(4));
    said.add("" + root.applyAsDouble(9) + boxedRoot.apply(16d) + most.apply(2, 3));
    said.add("" + boxed.apply(8) + widened.apply(5) + character.get());
  }

  private static double tenth(double value) {
    return value / 10;
  }

  private void nests() {
    Inside inside = new Inside();
    IntSupplier counting = inside::next;
    said.add("" + counting.getAsInt() + counting.getAsInt() + inside.count);
    Supplier<Supplier<String>> deep =
        () ->
            new Supplier<>() {
              @Override
              public String get() {
                Supplier<String> inner = () -> own + said.size();
                return inner.get();
              }
            };
    said.add(deep.get().get());
  }

  private void exceptions() throws Exception {
    Strict<Integer> strict = (first, second) -> first + (int) second;
    Callable<String> fails =
        () -> {
          throw new IOException("as thrown");
        };
    said.add("" + strict.of(1, 2L));
    try {
      fails.call();
    } catch (IOException e) {
      said.add(e.getMessage());
    }
  }
}
