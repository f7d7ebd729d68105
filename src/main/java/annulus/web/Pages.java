package annulus.web;

import annulus.store.DraftStore;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.util.Optional;

/** The counter, what is told to open screens, and where all other pages are made. */
final class Pages {
  private final Board board;
  private final Shelf shelf;
  private final Api api;
  private final DraftStore drafts;
  private final LiveFeed feed;
  private final Optional<String> address;

  Pages(
      Board board,
      Shelf shelf,
      Api api,
      DraftStore drafts,
      LiveFeed feed,
      Optional<String> address) {
    this.board = board;
    this.shelf = shelf;
    this.api = api;
    this.drafts = drafts;
    this.feed = feed;
    this.address = address;
  }

  void routes(Javalin app) {
    Doer doer = new Doer(board);
    app.get("/", ctx -> ctx.redirect("/counter"));
    app.get("/counter", ctx -> ctx.html(new CounterPage(board, Doer.at(ctx)).html()));
    app.get("/jobs", ctx -> ctx.html(new FindPage(board, Doer.at(ctx)).html(Api.reference(ctx))));
    new DraftPages(board, drafts, doer).routes(app);
    new JobPages(board, shelf, doer).routes(app);
    new PrintPages(board, shelf, address).routes(app);
    new CabinetPages(board, shelf, api, doer).routes(app);
    doer.routes(app);
    app.sse("/events", client -> feed.add(client, show(client.ctx())));
  }

  /** What a screen that asks for events shows. */
  private LiveFeed.Show show(Context ctx) {
    String who = Doer.at(ctx);
    String id = ctx.queryParam("job");
    if (id == null) {
      return new LiveFeed.Show("counter " + who, () -> new CounterPage(board, who).live().html());
    }
    return new LiveFeed.Show(
        "job " + id,
        () -> {
          JobView view = board.view(board.job(id));
          return JobPage.version(view) + "\n" + new JobPage(board, view, "").live().html();
        });
  }
}
