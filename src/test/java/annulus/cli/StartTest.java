package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a start must not load: a JVM that writes classes of its own spends a tenth of it on that.
 */
class StartTest {
  @TempDir Path folder;

  /** The names of the classes that one call loads, in order. */
  private List<String> loadedBy(String... words) throws Exception {
    Path log = folder.resolve("loaded.txt");
    Path said = folder.resolve("said.txt");
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    ProcessBuilder call =
        new ProcessBuilder(
            java,
            "-Xlog:class+load=info:file=" + log + "::filecount=0",
            "-cp",
            System.getProperty("java.class.path"),
            "annulus.cli.Main");
    call.command().addAll(List.of(words));
    Process process = call.redirectErrorStream(true).redirectOutput(said.toFile()).start();
    assertEquals(0, process.waitFor(), () -> read(said));
    return Files.readAllLines(log, StandardCharsets.UTF_8).stream()
        .map(l -> l.substring(l.lastIndexOf(']') + 1).trim().split(" ")[0])
        .toList();
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      return e.toString();
    }
  }

  @Test
  void the_usual_answer_has_no_class_written_for_a_stream_or_lambda() throws Exception {
    String orders = "demo-data" + File.separator + "orders" + File.separator;
    for (String order : List.of("01-good-fit.json", "02-good-fit-primed.json")) {
      List<String> loaded = loadedBy("advise", orders + order);
      assertTrue(loaded.contains("annulus.report.TextReport"), order);
      List<String> written =
          loaded.stream()
              .filter(c -> c.contains("$$Lambda") || c.contains("LambdaForm$MH"))
              .filter(c -> !c.startsWith("java.time.temporal.TemporalAdjusters$$Lambda"))
              .toList();
      assertEquals(List.of(), written, order + ": the JVM's own summer time needs one, no more");
    }
  }
}
