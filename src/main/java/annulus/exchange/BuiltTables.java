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

  /** What the build made. */
  interface Tables {
    /** The tables of this type. */
    Object of(Class<?> type);
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
      Tables tables = (Tables) made.getDeclaredConstructor().newInstance();
      return Optional.of(type.cast(tables.of(type)));
    } catch (ClassNotFoundException e) {
      return Optional.empty();
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }
}
