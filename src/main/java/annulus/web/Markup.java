package annulus.web;

import annulus.report.Html;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * Writes HTML; every text and every attribute value is escaped here and nowhere else. Parts are
 * kept as they are and joined once: a picture is long, and a page is put together in four layers.
 */
final class Markup {
  private final List<String> done = new ArrayList<>();
  private final StringBuilder out = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  /**
   * Opens an element.
   *
   * @param attributes names and values by turns; a null value leaves the attribute out, an empty
   *     one writes its name alone
   */
  Markup open(String tag, String... attributes) {
    start(tag, attributes);
    open.push(tag);
    return this;
  }

  /** An element that has no inside, such as an input. */
  Markup single(String tag, String... attributes) {
    return start(tag, attributes);
  }

  /** An element with text in it. */
  Markup element(String tag, String text, String... attributes) {
    return open(tag, attributes).text(text).close();
  }

  private Markup start(String tag, String... attributes) {
    out.append('<').append(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      if (attributes[i + 1] != null) {
        out.append(' ').append(attributes[i]);
        if (!attributes[i + 1].isEmpty() || attributes[i].equals("value")) {
          out.append("=\"").append(Html.attr(attributes[i + 1])).append('"');
        }
      }
    }
    out.append('>');
    return this;
  }

  Markup text(String text) {
    out.append(Html.text(text));
    return this;
  }

  /** Closes the element opened last. */
  Markup close() {
    out.append("</").append(open.pop()).append('>');
    return this;
  }

  /** What another writer has escaped. */
  Markup part(Markup other) {
    other.finish();
    finishText();
    done.addAll(other.done);
    return this;
  }

  /** One of the program's own pictures. */
  Markup picture(String svg) {
    finishText();
    done.add(svg);
    return this;
  }

  private void finishText() {
    if (!out.isEmpty()) {
      done.add(out.toString());
      out.setLength(0);
    }
  }

  private void finish() {
    if (!open.isEmpty()) {
      throw new IllegalStateException(open.peek() + " is not closed");
    }
    finishText();
  }

  String html() {
    finish();
    return String.join("", done);
  }
}
