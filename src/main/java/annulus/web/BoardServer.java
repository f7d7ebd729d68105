package annulus.web;

import annulus.advice.Knowledge;
import annulus.advice.PromiseDesk;
import annulus.advice.Shop;
import annulus.catalog.Policy;
import annulus.exchange.DataFiles;
import annulus.exchange.KnowledgeFiles;
import annulus.exchange.LoggerRules;
import annulus.exchange.ShopFile;
import annulus.store.CabinetStore;
import annulus.store.Database;
import annulus.store.DraftStore;
import annulus.store.JobStore;
import io.javalin.Javalin;
import io.javalin.config.SizeUnit;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HttpResponseException;
import io.javalin.http.SameSite;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The running board: database, tables, pages and JSON interface on one port. */
final class BoardServer implements AutoCloseable {
  private static final long MOST_BYTES = 512 * 1024;

  /** Logs, job lists, observations and ledgers. */
  private static final long MOST_FILE_BYTES = 5 * 1024 * 1024;

  /** Of 1 to 9: on a shop's own network the packing takes longer than the bytes it saves. */
  private static final int QUICK_GZIP = 1;

  private static final Set<String> FILE_PATHS = Set.of("log", "batch", "ready", "learn", "ledger");

  private final Database database;
  private final LiveFeed feed = new LiveFeed();
  private final Guard guard;
  private final Clock clock;
  private final Shelf shelf;
  private final Javalin app;

  private BoardServer(ServeOptions options, Clock clock, ZoneId zone) throws IOException {
    this.clock = clock;
    this.guard = new Guard(options.passcode(), Guard.nameIn(options.address(), options.listen()));
    DataFiles files = DataFiles.of(options.data());
    Knowledge knowledge = KnowledgeFiles.read(files);
    Shop shop = shop(options.shop(), zone, knowledge.catalog().policy());
    PromiseDesk desk = new PromiseDesk(knowledge, shop);
    this.database = Database.open(options.database());
    CabinetStore cabinet = new CabinetStore(database);
    Board board =
        new Board(
            knowledge,
            desk,
            LoggerRules.read(files),
            new JobStore(database),
            cabinet,
            clock,
            options.shop().isPresent());
    this.shelf = new Shelf(knowledge, files, cabinet, clock, shop.hours().zone());
    if (options.stock().isPresent()) {
      shelf.takeIn(options.stock().get(), "stock sheet");
    }
    ShopTools tools = new ShopTools(knowledge, files, options.data(), desk, clock);
    Api api = new Api(board, shelf, tools);
    this.app = Javalin.create(BoardServer::configure);
    guarded();
    api.routes(app);
    new Pages(board, shelf, api, new DraftStore(database), feed, options.address()).routes(app);
    new ToolPages(board, shelf, tools).routes(app);
    resources();
    new Failures(board).handle(app);
  }

  /**
   * Starts a board.
   *
   * @throws annulus.store.StoreFailed when the database can't be opened
   */
  static BoardServer start(ServeOptions options, Clock clock, ZoneId zone) throws IOException {
    BoardServer server = new BoardServer(options, clock, zone);
    server.feed.start();
    server.app.start(options.listen().getHostAddress(), options.port());
    return server;
  }

  /** What somebody should look at before the board is used. */
  List<String> notes() {
    return shelf.now().notes();
  }

  int port() {
    return app.port();
  }

  private static void configure(io.javalin.config.JavalinConfig config) {
    config.showJavalinBanner = false;
    config.startupWatcherEnabled = false;
    config.http.maxRequestSize = MOST_FILE_BYTES;
    config.jetty.multipartConfig.maxInMemoryFileSize((int) (MOST_FILE_BYTES >> 20), SizeUnit.MB);
    config.http.prefer405over404 = true;
    config.http.gzipOnlyCompression(QUICK_GZIP);
    // open screens must not hold up the end; what is being written is waited for by the database
    config.jetty.modifyServer(s -> s.setStopTimeout(0));
    config.jetty.modifyHttpConfiguration(
        http -> {
          http.setSendServerVersion(false);
          http.setRequestHeaderSize(16 * 1024);
        });
  }

  private static Shop shop(Optional<Path> file, ZoneId zone, Policy policy) throws IOException {
    if (file.isEmpty()) {
      return ShopFile.withoutHours(zone, policy);
    }
    try (Reader in = DataFiles.utf8(Files.newInputStream(file.get()))) {
      return ShopFile.read(file.get().toString(), in, policy);
    }
  }

  private void guarded() {
    app.before(
        ctx -> {
          guard.headers(ctx);
          Guard.Verdict verdict = guard.judge(ctx, clock.instant());
          if (verdict == Guard.Verdict.WELCOME) {
            requireSmall(ctx);
            return;
          }
          turnAway(ctx, verdict);
          ctx.skipRemainingHandlers();
        });
    app.get("/enter", ctx -> ctx.html(enterPage("")));
    app.post("/enter", this::enter);
  }

  /** Before anything of it is read; a length that is not said is refused as well. */
  private static void requireSmall(Context ctx) {
    String path = ctx.path();
    boolean file = FILE_PATHS.contains(path.substring(path.lastIndexOf('/') + 1));
    if (ctx.header("Transfer-Encoding") != null) {
      throw new HttpResponseException(411, "The length of what is sent must be said first.");
    }
    if (ctx.req().getContentLengthLong() > (file ? MOST_FILE_BYTES : MOST_BYTES)) {
      throw new HttpResponseException(413, "");
    }
  }

  private static void turnAway(Context ctx, Guard.Verdict verdict) {
    boolean page = verdict == Guard.Verdict.NO_PASSCODE && !ctx.path().startsWith("/api/");
    if (page) {
      ctx.redirect("/enter", io.javalin.http.HttpStatus.SEE_OTHER);
      return;
    }
    ctx.status(verdict == Guard.Verdict.NO_PASSCODE ? 401 : 403);
    ctx.contentType("application/json");
    String problem =
        switch (verdict) {
          case WRONG_HOST -> "this board does not answer to that host name";
          case OTHER_SITE -> "a page of another site may not do this";
          default -> "a passcode is needed: Authorization: Bearer PASSCODE";
        };
    ctx.result(Failures.problem(problem, List.of()).toString());
  }

  private static String enterPage(String problem) {
    Markup page = new Markup();
    page.element("h1", "Passcode");
    if (!problem.isEmpty()) {
      page.element("p", problem, "class", "problem", "role", "alert");
    }
    page.open("form", "method", "post", "action", "/enter");
    page.open("p", "class", "field").element("label", "Passcode of the shop", "for", "passcode");
    page.single(
        "input",
        "id",
        "passcode",
        "name",
        "passcode",
        "type",
        "password",
        "required",
        "",
        "autocomplete",
        "current-password");
    page.close().element("button", "Enter", "class", "main", "type", "submit").close();
    return Layout.page("Passcode", Layout.Place.NONE, "", page);
  }

  private void enter(Context ctx) {
    String given = Optional.ofNullable(ctx.formParam("passcode")).orElse("");
    if (!guard.right(given, clock.instant())) {
      ctx.status(401);
      ctx.html(enterPage("That is not the passcode. After many wrong ones it waits a minute."));
      return;
    }
    ctx.cookie(
        new Cookie(
            Guard.SESSION,
            guard.session(clock.instant()),
            "/",
            -1,
            false,
            0,
            true,
            null,
            null,
            SameSite.STRICT));
    ctx.redirect("/counter", io.javalin.http.HttpStatus.SEE_OTHER);
  }

  private void resources() {
    resource("/board.css", "text/css; charset=utf-8");
    resource("/board.js", "text/javascript; charset=utf-8");
    resource("/mark.svg", "image/svg+xml");
    resource("/openapi.json", "application/json");
  }

  private void resource(String path, String type) {
    try (InputStream in = BoardServer.class.getResourceAsStream("/web" + path)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks " + path);
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      app.get(
          path,
          ctx -> {
            ctx.header("Cache-Control", "no-cache");
            ctx.contentType(type);
            ctx.result(text);
          });
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    feed.close();
    app.stop();
    database.close();
  }
}
