package annulus.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.SQLException;
import java.util.HexFormat;

/**
 * The answers that jobs and their changes go with. Most changes leave the answer as it is, and it
 * is by far the longest of a job: it is kept once, and a content in the database holds its name
 * instead. The name is the digest of the text, so that it tells a damaged one, too.
 */
final class Answers {
  private static final String NAME = "sha-256:";

  private Answers() {}

  /** A content as it is written: a long answer is put aside. */
  static JobContent putAside(Sql sql, JobContent content) throws SQLException {
    String text = content.advice();
    String name = name(text);
    if (text.length() <= name.length()) {
      return content;
    }
    if (sql.row(r -> 1, "SELECT 1 FROM answer WHERE id = ?", name).isEmpty()) {
      // another server may have been quicker with the same
      sql.update(
          "INSERT INTO answer (id, text) VALUES (?, ?) ON CONFLICT (id) DO NOTHING", name, text);
    }
    return content.answered(name);
  }

  /**
   * A content as it was before it was written.
   *
   * @throws StoreFailed when its answer is damaged or not there
   */
  static JobContent whole(Sql sql, JobContent stored) throws SQLException {
    String name = stored.advice();
    if (!name.startsWith(NAME)) {
      return stored;
    }
    String text =
        sql.row(r -> r.getString(1), "SELECT text FROM answer WHERE id = ?", name).orElse("");
    Seal.require(name, name(text), "the answer to job " + stored.reference());
    return stored.answered(text);
  }

  private static String name(String text) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return NAME + HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
