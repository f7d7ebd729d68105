package annulus.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * Fifty screens at a board with many jobs. Each keeps its event stream open, and turn by turn asks
 * for something and for the empty answer, so that both meet the same crowd.
 */
final class BoardLoad {
  private static final int SCREENS = 50;
  private static final int WARM_S = 20;
  private static final int MEASURED_S = 40;
  private static final int PAUSE_MS = 500;

  private final BoardProcess board;
  private final List<String> jobs;
  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
  private final Map<String, ConcurrentLinkedQueue<Double>> times = new ConcurrentHashMap<>();
  private volatile boolean counts;
  private volatile boolean ended;

  private BoardLoad(BoardProcess board, List<String> jobs) {
    this.board = board;
    this.jobs = jobs;
  }

  static List<Line> run(Path folder, int jobs) throws IOException {
    try {
      Path database = folder.resolve("board.db");
      List<String> today = BoardJobs.fill(database, jobs);
      try (BoardProcess board = new BoardProcess(database)) {
        List<Line> lines = new ArrayList<>(new BoardLoad(board, today).lines(jobs));
        lines.addAll(weights(board));
        lines.addAll(FirstPaint.lines(board));
        return lines;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }

  private List<Line> lines(int jobs) throws InterruptedException {
    List<Thread> screens = new ArrayList<>();
    for (int i = 0; i < SCREENS; i++) {
      int seed = i;
      Thread screen = new Thread(() -> screen(new Random(seed)), "screen-" + i);
      screens.add(screen);
      screen.start();
    }
    Thread.sleep(WARM_S * 1000L);
    counts = true;
    Thread.sleep(MEASURED_S * 1000L);
    counts = false;
    ended = true;
    for (Thread screen : screens) {
      screen.join();
    }
    return told(jobs);
  }

  private List<Line> told(int jobs) {
    Map<String, double[]> sorted = new TreeMap<>();
    times.forEach(
        (k, v) -> sorted.put(k, v.stream().mapToDouble(Double::doubleValue).sorted().toArray()));
    double[] empty = sorted.remove("empty");
    double[] all = sorted.values().stream().flatMapToDouble(Arrays::stream).sorted().toArray();
    String work = "board, " + SCREENS + " screens, " + jobs + " jobs";
    String other = "empty answer of the same server";
    List<Line> lines = new ArrayList<>();
    lines.add(Line.most(work + ", median", at(all, 0.5), other, at(empty, 0.5), 3, "ms"));
    lines.add(
        Line.most(work + ", 99th percentile", at(all, 0.99), other, at(empty, 0.99), 10, "ms"));
    sorted.forEach(
        (k, v) ->
            lines.add(Line.beside("  " + k + ", median", at(v, 0.5), other, at(empty, 0.5), "ms")));
    return lines;
  }

  private static double at(double[] sorted, double share) {
    return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  }

  private void screen(Random random) {
    try {
      var events =
          client.sendAsync(
              HttpRequest.newBuilder(board.page("/events"))
                  .header("Accept", "text/event-stream")
                  .build(),
              HttpResponse.BodyHandlers.discarding());
      while (!ended) {
        switch (random.nextInt(4)) {
          case 0 -> ask("counter page", board.page("/counter"));
          case 1 -> ask("list, JSON", board.page("/api/jobs"));
          default -> ask("job page", board.page("/job/" + jobs.get(random.nextInt(jobs.size()))));
        }
        Thread.sleep(PAUSE_MS / 2 + random.nextInt(PAUSE_MS));
        ask("empty", board.empty());
        Thread.sleep(PAUSE_MS / 2 + random.nextInt(PAUSE_MS));
      }
      events.cancel(true);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private void ask(String what, URI uri) throws IOException, InterruptedException {
    long start = System.nanoTime();
    HttpResponse<byte[]> response =
        client.send(
            HttpRequest.newBuilder(uri).header("Accept-Encoding", "gzip").build(),
            HttpResponse.BodyHandlers.ofByteArray());
    double ms = (System.nanoTime() - start) / 1e6;
    if (response.statusCode() != 200) {
      throw new IllegalStateException(uri + " gave " + response.statusCode());
    }
    if (counts) {
      times.computeIfAbsent(what, k -> new ConcurrentLinkedQueue<>()).add(ms);
    }
  }

  /** What a browser is sent for a page with its style and script. */
  private static List<Line> weights(BoardProcess board) throws IOException, InterruptedException {
    HttpClient client = HttpClient.newHttpClient();
    int shared = 0;
    for (String path : List.of("/board.css", "/board.js", "/mark.svg")) {
      shared += bytes(client, board.page(path));
    }
    List<Line> lines = new ArrayList<>();
    for (String page : List.of("/bench", "/counter", "/cabinet")) {
      int own = bytes(client, board.page(page));
      lines.add(
          Line.figure(
              "page " + page + " with style and script",
              Line.figure((own + shared) / 1024.0) + " KB"));
    }
    return lines;
  }

  private static int bytes(HttpClient client, URI uri) throws IOException, InterruptedException {
    return client
        .send(
            HttpRequest.newBuilder(uri).header("Accept-Encoding", "gzip").build(),
            HttpResponse.BodyHandlers.ofByteArray())
        .body()
        .length;
  }
}
