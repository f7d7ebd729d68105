package annulus.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The data tables: those in the program, and over them those of a shop's own folder. Every byte
 * read goes into the version.
 */
public final class DataFiles {
  /** One table as found in one layer. */
  static final class Layer {
    private final String name;
    private final byte[] bytes;

    Layer(String name, byte[] bytes) {
      this.name = name;
      this.bytes = bytes;
    }

    String name() {
      return name;
    }

    /**
     * The text.
     *
     * @throws InputRefused with line and column of the first byte that is not UTF-8
     */
    Reader reader() {
      CharBuffer text = CharBuffer.allocate(bytes.length + 1);
      CoderResult end = strict().decode(ByteBuffer.wrap(bytes), text, true);
      text.flip();
      if (end.isError()) {
        throw new InputRefused(List.of(wrongByte(text.toString())));
      }
      return new StringReader(text.toString());
    }

    private PlacedProblem wrongByte(String before) {
      int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
      int column = before.length() - before.lastIndexOf('\n');
      return new PlacedProblem(name, line, column, "", "is not UTF-8 text", "text saved as UTF-8");
    }
  }

  /** Every table there is; a file of another name in a shop's folder would be read by nobody. */
  static final List<String> TABLES =
      List.of(
          "activities.csv",
          "bearing-normal.csv",
          "caution-ranks.csv",
          "cautions.csv",
          "compounds.json",
          "consequences.csv",
          "duty-cases.csv",
          "finishes.csv",
          "form-limits.csv",
          "friction.csv",
          "hold-factors.csv",
          "instruments.csv",
          "iso286-deviations.csv",
          "iso286-grades.csv",
          "learning.csv",
          "limited-use.csv",
          "logger-rules.csv",
          "materials.csv",
          "number-limits.csv",
          "policy.csv",
          "press-factors.csv",
          "primers.json",
          "rules.json",
          "stock-cover.csv",
          "stock-policy.csv",
          "warm-up-families.csv",
          "warm-up.csv");

  private static final long MAX_BYTES = 2_000_000;

  private final Optional<Path> shopFolder;
  private MessageDigest digest;

  private DataFiles(Optional<Path> shopFolder) {
    this.shopFolder = shopFolder;
  }

  /** Made with the first byte: tables that the build made into code need none. */
  private void digest(Layer layer) {
    try {
      if (digest == null) {
        digest = MessageDigest.getInstance("SHA-256");
      }
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
    digest.update(layer.bytes);
  }

  /** The program's own tables. */
  public static DataFiles bundled() {
    return new DataFiles(Optional.empty());
  }

  /**
   * The program's own tables, a shop's folder laid over them if there is one.
   *
   * @throws InputRefused as {@link #withShop}
   * @throws IOException when the folder can't be read
   */
  public static DataFiles of(Optional<Path> folder) throws IOException {
    return folder.isPresent() ? withShop(folder.get()) : bundled();
  }

  /**
   * The program's tables with a shop's folder laid over them.
   *
   * @throws InputRefused when the folder does not exist, or holds a CSV or JSON file that is no
   *     table
   * @throws IOException when it can't be read
   */
  public static DataFiles withShop(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      throw new InputRefused(
          List.of(
              new PlacedProblem(
                  folder.toString(),
                  0,
                  0,
                  "--data",
                  "is not a folder",
                  "a folder with data files")));
    }
    List<PlacedProblem> strange = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      files.filter(DataFiles::isStrange).sorted().forEach(f -> strange.add(noTable(f)));
    }
    if (!strange.isEmpty()) {
      throw new InputRefused(strange);
    }
    return new DataFiles(Optional.of(folder));
  }

  private static boolean isStrange(Path file) {
    String name = file.getFileName().toString();
    String lower = name.toLowerCase(Locale.ROOT);
    return (lower.endsWith(".csv") || lower.endsWith(".json")) && !TABLES.contains(name);
  }

  private static PlacedProblem noTable(Path file) {
    return new PlacedProblem(
        file.toString(),
        0,
        0,
        "",
        "is no table, nobody would read it",
        Nearest.allowed(file.getFileName().toString(), TABLES));
  }

  /** Whether a shop's folder lies over the program's tables. */
  boolean hasShop() {
    return shopFolder.isPresent();
  }

  /** All layers of a table, the program's first. */
  List<Layer> layers(String table) throws IOException {
    List<Layer> layers = new ArrayList<>();
    try (InputStream in = DataFiles.class.getResourceAsStream("/data/" + table)) {
      if (in != null) {
        layers.add(new Layer("data/" + table, in.readAllBytes()));
      }
    }
    Optional<Path> own = shopFolder.map(f -> f.resolve(table)).filter(Files::isRegularFile);
    if (own.isPresent()) {
      if (Files.size(own.get()) > MAX_BYTES) {
        throw new InputRefused(
            List.of(
                new PlacedProblem(
                    own.get().toString(), 0, 0, "", "is larger than 2 MB", "a data table")));
      }
      layers.add(new Layer(own.get().toString(), Files.readAllBytes(own.get())));
    }
    layers.forEach(this::digest);
    return layers;
  }

  /**
   * The program's own layer of a table that a shop can't lay anything over.
   *
   * @throws InputRefused when the shop tries to
   */
  Layer own(String table) throws IOException {
    Optional<Path> tried = shopFolder.map(f -> f.resolve(table)).filter(Files::exists);
    if (tried.isPresent()) {
      throw new InputRefused(
          List.of(
              new PlacedProblem(
                  tried.get().toString(),
                  0,
                  0,
                  "",
                  "can't be laid over the program's own",
                  "any other table of data/")));
    }
    try (InputStream in = DataFiles.class.getResourceAsStream("/data/" + table)) {
      Layer layer = new Layer("data/" + table, in.readAllBytes());
      digest(layer);
      return layer;
    }
  }

  /** Short digest of everything read so far. */
  String version() {
    try {
      MessageDigest copy = (MessageDigest) digest.clone();
      return HexFormat.of().formatHex(copy.digest()).substring(0, 12);
    } catch (CloneNotSupportedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Strict UTF-8; a wrong byte is an {@link java.nio.charset.CharacterCodingException}. */
  public static Reader utf8(InputStream in) {
    return new InputStreamReader(in, strict());
  }

  private static CharsetDecoder strict() {
    return StandardCharsets.UTF_8
        .newDecoder()
        .onMalformedInput(CodingErrorAction.REPORT)
        .onUnmappableCharacter(CodingErrorAction.REPORT);
  }
}
