package annulus.cli;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A file that a command writes: never one that it reads, never one of another kind. */
final class OutputFile {
  /** Options that name a file which a command reads, or a ledger. */
  private static final List<String> INPUTS =
      List.of("--ledger", "--stock", "--from", "--jobs", "--shop", "--log", "--list", "--batch");

  private OutputFile() {}

  /**
   * The file that an option names.
   *
   * @param ending how names of its kind end, such as {@code .svg}; a file that is there already and
   *     ends otherwise is somebody's other work
   * @param read files that this run reads, besides those that an option names
   * @throws annulus.exchange.InputRefused when it can't or must not be written
   */
  static Path of(Words words, String option, String ending, List<String> read) throws IOException {
    return check(words, option, Path.of(words.value(option).orElseThrow()), ending, read);
  }

  /** The same for a file whose name is not the option's very value. */
  static Path check(Words words, String option, Path file, String ending, List<String> read)
      throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder) || Files.isDirectory(file)) {
      throw Words.refused(
          0, option, file + " can't be written", "a file name in a folder that is there");
    }
    if (!Files.isRegularFile(file)) {
      return file;
    }
    List<String> inputs = new ArrayList<>(read);
    words.among(INPUTS).forEach(w -> inputs.add(w.value()));
    for (String name : inputs) {
      if (Files.exists(Path.of(name)) && Files.isSameFile(file, Path.of(name))) {
        throw Words.refused(0, option, file + " would be overwritten", "another file name");
      }
    }
    if (!file.toString().toLowerCase(Locale.ROOT).endsWith(ending)) {
      throw Words.refused(
          0, option, file + " is there already", "a new file, or one that ends in " + ending);
    }
    return file;
  }

  /**
   * Refuses two outputs of one run that are the same file: the later would take the place of the
   * earlier. A device may take both.
   *
   * @param outputs each option that names one, with the file
   */
  static void requireApart(List<Map.Entry<String, Path>> outputs) throws IOException {
    Map<Path, String> seen = new HashMap<>();
    for (Map.Entry<String, Path> output : outputs) {
      Path file = output.getValue();
      if (Files.exists(file) && !Files.isRegularFile(file)) {
        continue;
      }
      String other = seen.put(resolved(file), output.getKey());
      if (other != null) {
        throw Words.refused(
            0, output.getKey(), file + " is also what " + other + " writes", "another file name");
      }
    }
  }

  /** The one name of a file that may not be there yet, whatever links and dots lead to it. */
  private static Path resolved(Path file) throws IOException {
    return Files.exists(file)
        ? file.toRealPath()
        : file.toAbsolutePath().getParent().toRealPath().resolve(file.getFileName());
  }

  /** Something that fills a file. */
  @FunctionalInterface
  interface Content {
    void into(Writer out) throws IOException;
  }

  static void write(Path file, String text) throws IOException {
    write(file, out -> out.write(text));
  }

  /**
   * Writes a whole file or nothing: what was there before stays until all is written, so that a
   * full disk leaves no card that ends before its cautions.
   */
  static void write(Path file, Content content) throws IOException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      try (Writer out = Files.newBufferedWriter(file)) {
        content.into(out);
      }
      return;
    }
    Path part = file.resolveSibling(file.getFileName() + ".part");
    part.toFile().deleteOnExit(); // when somebody breaks the answer off, nothing below runs
    try {
      try (Writer out = Files.newBufferedWriter(part)) {
        content.into(out);
      }
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(part);
    }
  }
}
