package annulus.web;

import io.javalin.http.sse.SseClient;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/**
 * Sends every screen what it should show, whenever that has changed. It is made here, once a
 * second, from the database: no screen reckons for itself.
 */
final class LiveFeed implements AutoCloseable {
  private static final int MOST_SCREENS = 200;

  private final Set<Screen> screens = ConcurrentHashMap.newKeySet();
  private final Thread ticker = thread(this::ticks);
  private final ExecutorService senders = Executors.newCachedThreadPool(LiveFeed::thread);

  /** What one kind of screen shows; equal keys show the same. */
  record Show(String key, Supplier<String> content) {}

  private static final class Screen {
    private final SseClient client;
    private final Show show;
    private final AtomicBoolean sending = new AtomicBoolean();
    private volatile String last = "";
    private final AtomicInteger quietTicks = new AtomicInteger();

    private Screen(SseClient client, Show show) {
      this.client = client;
      this.show = show;
    }
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "live-feed");
    thread.setDaemon(true);
    return thread;
  }

  void start() {
    ticker.start();
  }

  private void ticks() {
    try {
      while (!Thread.currentThread().isInterrupted()) {
        TimeUnit.SECONDS.sleep(1);
        tick();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Takes in a screen. */
  void add(SseClient client, Show show) {
    if (screens.size() >= MOST_SCREENS) {
      client.close();
      return;
    }
    Screen screen = new Screen(client, show);
    client.onClose(() -> screens.remove(screen));
    client.keepAlive();
    screens.add(screen);
  }

  private void tick() {
    Map<String, String> made = new HashMap<>();
    for (Screen screen : screens) {
      try {
        String content = made.computeIfAbsent(screen.show.key(), k -> screen.show.content().get());
        boolean quiet = content.equals(screen.last) && screen.quietTicks.incrementAndGet() < 15;
        if (!quiet && screen.sending.compareAndSet(false, true)) {
          senders.execute(() -> send(screen, content));
        }
      } catch (RuntimeException e) {
        // the screen keeps what it has; its page says so when nothing comes any more
        screen.quietTicks.incrementAndGet();
      }
    }
  }

  /** A slow screen holds up nobody but itself. */
  private void send(Screen screen, String content) {
    try {
      String event = content.equals(screen.last) ? "still" : "show";
      screen.client.sendEvent(event, content.equals(screen.last) ? "." : content);
      screen.last = content;
      screen.quietTicks.set(0);
    } catch (RuntimeException e) {
      screens.remove(screen);
    } finally {
      screen.sending.set(false);
    }
  }

  @Override
  public void close() {
    ticker.interrupt();
    screens.forEach(s -> s.client.close());
    senders.shutdownNow();
  }
}
