package annulus.web;

import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Whoever works at a screen: the page that asks for the name, and the cookie that keeps it. */
final class Doer {
  private static final int YEAR_SECONDS = 365 * 24 * 3600;

  private final Board board;

  Doer(Board board) {
    this.board = board;
  }

  void routes(Javalin app) {
    app.get("/who", this::ask);
    app.post("/who", this::say);
  }

  /**
   * The name of whoever works at this screen; remembered in a cookie. One that can't be read is no
   * name: the page that tells of a failure asks here too, and must not fail in its turn.
   */
  static String at(Context ctx) {
    String cookie = ctx.cookie("who");
    try {
      return cookie == null ? "" : URLDecoder.decode(cookie, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      return "";
    }
  }

  /** The name that a form brings, remembered for the next one. */
  String of(Context ctx) {
    String said = Optional.ofNullable(ctx.formParam("who")).orElse("").strip();
    String who = said.isEmpty() ? at(ctx) : said;
    remember(ctx, board.stamp(who).who());
    return who;
  }

  private static void remember(Context ctx, String who) {
    String value = URLEncoder.encode(who, StandardCharsets.UTF_8);
    ctx.cookie(
        new Cookie("who", value, "/", YEAR_SECONDS, false, 0, true, null, null, SameSite.STRICT));
  }

  private void ask(Context ctx) {
    Markup page = new Markup();
    page.element("h1", "Who is working here?");
    page.open("form", "method", "post", "action", "/who");
    page.open("p", "class", "field").element("label", "Your name or initials", "for", "who");
    page.single(
        "input", "id", "who", "name", "who", "required", "", "maxlength", "40", "value", at(ctx));
    page.close();
    page.element("button", "That's me", "class", "main", "type", "submit").close();
    page.element("p", "Every change is kept with this name and the time.", "class", "hint");
    ctx.html(Layout.page("Who is working here?", Layout.Place.NONE, at(ctx), page));
  }

  private void say(Context ctx) {
    of(ctx);
    Form.go(ctx, "/counter");
  }
}
