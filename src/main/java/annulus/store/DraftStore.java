package annulus.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Drafts of the bench: every entry is kept as it is typed. */
public final class DraftStore {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String SELECT =
      "SELECT id, version, content, changed_at, changed_by FROM draft";

  private final Database database;

  /**
   * @param database where they lie
   */
  public DraftStore(Database database) {
    this.database = database;
  }

  /** A new draft. */
  public Draft begin(Map<String, String> fields, Instant at, String who) {
    Draft draft = new Draft(UUID.randomUUID().toString().substring(0, 13), 1, fields, at, who);
    return database.transaction(
        sql -> {
          sql.update(
              "INSERT INTO draft (id, version, content, changed_at, changed_by)"
                  + " VALUES (?, ?, ?, ?, ?)",
              draft.id(),
              1L,
              text(fields),
              at.toString(),
              who);
          return draft;
        });
  }

  /**
   * Saves what is typed.
   *
   * @param seen the version it was typed on
   * @return empty when somebody else saved in between; nothing is written then
   */
  public Optional<Draft> save(
      String id, long seen, Map<String, String> fields, Instant at, String who) {
    return database.transaction(
        sql -> {
          int written =
              sql.update(
                  "UPDATE draft SET version = ?, content = ?, changed_at = ?, changed_by = ?"
                      + " WHERE id = ? AND version = ?",
                  seen + 1,
                  text(fields),
                  at.toString(),
                  who,
                  id,
                  seen);
          return written == 0
              ? Optional.empty()
              : Optional.of(new Draft(id, seen + 1, fields, at, who));
        });
  }

  /** A draft by its identity. */
  public Optional<Draft> draft(String id) {
    return database.transaction(sql -> sql.row(DraftStore::draft, SELECT + " WHERE id = ?", id));
  }

  /** All drafts, the latest first. */
  public List<Draft> all() {
    return database.transaction(
        sql -> sql.rows(DraftStore::draft, SELECT + " ORDER BY changed_at DESC, id"));
  }

  /** Forgets a draft that has become a job or was thrown away. */
  public void remove(String id) {
    database.transaction(sql -> sql.update("DELETE FROM draft WHERE id = ?", id));
  }

  private static Draft draft(ResultSet row) throws SQLException {
    return new Draft(
        row.getString(1),
        row.getLong(2),
        fields(row.getString(3)),
        Instant.parse(row.getString(4)),
        row.getString(5));
  }

  private static String text(Map<String, String> fields) {
    return JSON.valueToTree(fields).toString();
  }

  private static Map<String, String> fields(String text) {
    try {
      return JSON.readValue(text, new TypeReference<Map<String, String>>() {});
    } catch (JsonProcessingException e) {
      throw new StoreFailed("a draft in the database is damaged", e);
    }
  }
}
