package annulus.bench;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Large inputs, made from the demo data. */
final class MadeFiles {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

  private MadeFiles() {}

  /** The demo job list over and over with ids of their own, without the row that is wrong. */
  static Path jobs(Path folder, int rows) throws IOException {
    List<String> lines = Files.readAllLines(Path.of("demo-data/jobs.csv"));
    List<String> good =
        lines.subList(1, lines.size()).stream().filter(l -> !l.startsWith("HL-203")).toList();
    Path file = folder.resolve("jobs-" + rows + ".csv");
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write(lines.get(0) + "\n");
      for (int i = 0; i < rows; i++) {
        String line = good.get(i % good.size());
        out.write("J" + i + line.substring(line.indexOf(',')) + "\n");
      }
    }
    return file;
  }

  /** A logger that wrote every second: warm by day, cold by night, in tenths. */
  static Path logger(Path folder, LocalDateTime start, int rows) throws IOException {
    Path file = folder.resolve("logger-" + rows + ".csv");
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write("time,temperature (°C)\n");
      for (int i = 0; i < rows; i++) {
        double day = Math.sin(2 * Math.PI * i / 86_400);
        long tenths = Math.round(10 * (18 + 4 * day + 0.3 * Math.sin(i * 0.7)));
        out.write(
            STAMP.format(start.plusSeconds(i)) + "," + tenths / 10 + "." + tenths % 10 + "\n");
      }
    }
    return file;
  }
}
