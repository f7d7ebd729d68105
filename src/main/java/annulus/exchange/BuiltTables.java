package annulus.exchange;

import java.io.IOException;
import java.util.Optional;

/** What the build made of the program's own tables, so that no start has to read them. */
final class BuiltTables {
  private BuiltTables() {}

  /** Reads tables from files. */
  interface Reading<T> {
    T read(DataFiles files) throws IOException;
  }

  /**
   * The tables as built, or read from the files where a shop's folder lies over them or nothing was
   * built.
   *
   * @throws IOException when a file can't be read
   */
  static <T> T orRead(DataFiles files, Class<T> type, Reading<T> reading) throws IOException {
    Optional<T> built = files.hasShop() ? Optional.empty() : of(type);
    return built.isPresent() ? built.get() : reading.read(files);
  }

  /** The tables of this type; empty where the build made none. */
  static <T> Optional<T> of(Class<T> type) {
    try {
      Class<?> made = Class.forName("annulus.exchange." + TablesAsCode.NAME);
      return Optional.of(type.cast(made.getDeclaredMethod(method(type)).invoke(null)));
    } catch (ClassNotFoundException e) {
      return Optional.empty();
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The method that makes the tables of this type. */
  static String method(Class<?> type) {
    return "the" + type.getSimpleName();
  }
}
