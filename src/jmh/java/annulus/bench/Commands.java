package annulus.bench;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The commands as a shell starts them, beside the least that such a process can do. */
final class Commands {
  private static final String JAR = "target/annulus.jar";
  private static final String ORDER = "demo-data/orders/01-good-fit.json";
  private static final String CLASSES = System.getProperty("java.class.path");
  private static final int WEEK_S = 7 * 86_400;

  private Commands() {}

  /** {@code advise ORDER.json}. */
  static List<Line> oneOrder(int rounds) throws IOException {
    Turns turns =
        new Turns()
            .and("bare", Program.java("-cp", "target/bench-classes", "annulus.bench.OneLine"))
            .and("launcher", Program.of("target/annulus", "advise", ORDER))
            .and("jar", Program.java("-jar", JAR, "advise", ORDER));
    Map<String, Double> ms = turns.wallMs(rounds);
    Map<String, Double> mb = turns.mostMb(Math.min(rounds, 7));
    String bare = "bare JVM, one line";
    return List.of(
        Line.most("advise ORDER.json, launcher", ms.get("launcher"), bare, ms.get("bare"), 2, "ms"),
        Line.beside("advise ORDER.json, java -jar", ms.get("jar"), bare, ms.get("bare"), "ms"),
        Line.most("its memory, launcher", mb.get("launcher"), bare, mb.get("bare"), 2.5, "MB"),
        Line.beside("its memory, java -jar", mb.get("jar"), bare, mb.get("bare"), "MB"));
  }

  /** {@code advise --batch}, on one core and on two. */
  static List<Line> batch(Path folder, int rows, int rounds) throws IOException {
    Path jobs = MadeFiles.jobs(folder, rows);
    String copy = folder.resolve("copy.csv").toString();
    Turns turns =
        new Turns()
            .and(
                "bare",
                Program.java(
                        "-Xmx64m", "-cp", CLASSES, "annulus.bench.BareCsv", "copy", "" + jobs, copy)
                    .on("0"))
            .and("one", batchOf(jobs, folder.resolve("one.csv")).on("0"))
            .and("jar", batchByJar(jobs, folder.resolve("jar.csv")).on("0"))
            .and("two", batchOf(jobs, folder.resolve("two.csv")).on("0,1"));
    Map<String, Double> ms = turns.wallMs(rounds);
    String work = "advise --batch, " + rows + " rows, 64 MB";
    List<Line> lines = new ArrayList<>();
    lines.add(
        Line.most(
            work + ", one core",
            ms.get("one") / 1000,
            "Commons CSV read + write",
            ms.get("bare") / 1000,
            3,
            "s"));
    lines.add(
        Line.beside(
            "the same by java -jar",
            ms.get("jar") / 1000,
            "Commons CSV read + write",
            ms.get("bare") / 1000,
            "s"));
    lines.add(
        Line.beside(
            "the same on two cores", ms.get("two") / 1000, "one core", ms.get("one") / 1000, "s"));
    lines.add(
        Line.figure(
            "same bytes with any number of threads", sameBytes(folder, jobs) ? "yes" : "NO"));
    return lines;
  }

  private static Program batchByJar(Path jobs, Path results) {
    return Program.java(
        "-Xmx64m", "-jar", JAR, "advise", "--batch", "" + jobs, "--out", "" + results);
  }

  /** As the launcher starts it, with the heap fixed. */
  private static Program batchOf(Path jobs, Path results, String... more) {
    List<String> words = new ArrayList<>(List.of(more));
    words.addAll(
        List.of(
            "-Xmx64m",
            "-Xshare:auto",
            "-XX:SharedArchiveFile=target/annulus.jsa",
            "-XX:-UsePerfData",
            "-Xlog:disable",
            "-XX:+UseSerialGC",
            "-XX:InlineSmallCode=500",
            "-XX:FreqInlineSize=60",
            "-jar",
            JAR,
            "advise",
            "--batch",
            "" + jobs,
            "--out",
            "" + results));
    return Program.java(words.toArray(String[]::new));
  }

  /** On as many threads as the machine is said to have cores: one, two, four. */
  private static boolean sameBytes(Path folder, Path jobs) throws IOException {
    String first = "";
    for (int threads : new int[] {1, 2, 4}) {
      Path results = folder.resolve("threads-" + threads + ".csv");
      batchOf(jobs, results, "-XX:ActiveProcessorCount=" + threads).wallMs();
      String print = print(results);
      if (!first.isEmpty() && !first.equals(print)) {
        return false;
      }
      first = print;
    }
    return first.equals(print(folder.resolve("one.csv")));
  }

  private static String print(Path file) throws IOException {
    try (var in = Files.newInputStream(file)) {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      byte[] part = new byte[1 << 16];
      for (int n = in.read(part); n >= 0; n = in.read(part)) {
        digest.update(part, 0, n);
      }
      return new BigInteger(1, digest.digest()).toString(16);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** {@code promise --log} with a week of seconds. */
  static List<Line> logger(Path folder, int rounds) throws IOException {
    Path log = MadeFiles.logger(folder, LocalDateTime.of(2027, 3, 11, 15, 0), WEEK_S);
    Turns turns =
        new Turns()
            .and(
                "bare",
                Program.java("-Xmx64m", "-cp", CLASSES, "annulus.bench.BareCsv", "read", "" + log))
            .and(
                "promise",
                // as the launcher starts it, with the heap fixed
                Program.java(
                    "-Xmx64m",
                    "-Xshare:auto",
                    "-XX:SharedArchiveFile=target/annulus.jsa",
                    "-XX:-UsePerfData",
                    "-Xlog:disable",
                    "-XX:TieredStopAtLevel=1",
                    "-XX:+UseSerialGC",
                    "-jar",
                    JAR,
                    "promise",
                    ORDER,
                    "--shop",
                    "demo-data/shop.json",
                    "--log",
                    "" + log,
                    "--now",
                    "2027-03-18T14:00"));
    Map<String, Double> ms = turns.wallMs(rounds);
    return List.of(
        Line.most(
            "promise --log, a week of seconds, 64 MB",
            ms.get("promise") / 1000,
            "Commons CSV read",
            ms.get("bare") / 1000,
            1.5,
            "s"));
  }
}
