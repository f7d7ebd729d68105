package annulus.web;

import annulus.exchange.LoggerSource;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;

/**
 * A file that was sent with a form, or the text pasted in its place.
 *
 * @param name name of the file, for messages
 * @param text what is in it
 */
record Upload(String name, String text) {
  static final String FILE = "file";
  static final String TEXT = "text";
  private static final int LONGEST_NAME = 100;

  /** The file if there is one, else what was pasted. */
  static Upload of(Context ctx) {
    UploadedFile file = ctx.uploadedFile(FILE);
    if (file != null && file.size() > 0) {
      return new Upload(shortened(file.filename()), text(file));
    }
    String pasted = Optional.ofNullable(ctx.formParam(TEXT)).orElse("");
    if (pasted.isBlank()) {
      throw Api.refused("file", "is missing", "choose a file or paste its text");
    }
    return new Upload("pasted text", pasted);
  }

  /** A browser may send the folder too; only the name counts. */
  private static String shortened(String name) {
    String last = name.replaceAll("^.*[/\\\\]", "").replaceAll("\\p{Cntrl}", "");
    String kept = last.isBlank() ? "file" : last;
    return kept.length() > LONGEST_NAME ? kept.substring(0, LONGEST_NAME) : kept;
  }

  private static String text(UploadedFile file) {
    try (InputStream in = file.content()) {
      return LoggerSource.text(in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A field to choose a file with. */
  static void field(Markup form, String id, String label) {
    form.open("p", "class", "field").element("label", label, "for", id);
    form.single("input", "type", "file", "id", id, "name", FILE).close();
  }

  /** A field to paste into. */
  static void paste(Markup form, String id, String label) {
    form.open("p", "class", "field").element("label", label, "for", id);
    form.element("textarea", "", "id", id, "name", TEXT, "rows", "6", "spellcheck", "false");
    form.close();
  }
}
