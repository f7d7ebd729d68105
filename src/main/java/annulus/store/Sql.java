package annulus.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Statements with their arguments, and the rows they give. Each text is prepared once a connection,
 * so only constant texts may be given: what varies is an argument.
 */
final class Sql implements AutoCloseable {
  private final Connection connection;
  private final Map<String, PreparedStatement> prepared = new HashMap<>();

  Sql(Connection connection) {
    this.connection = connection;
  }

  /** One row as a value. */
  @FunctionalInterface
  interface Row<T> {
    T of(ResultSet row) throws SQLException;
  }

  int update(String sql, Object... arguments) throws SQLException {
    return filled(sql, arguments).executeUpdate();
  }

  <T> List<T> rows(Row<T> row, String sql, Object... arguments) throws SQLException {
    List<T> found = new ArrayList<>();
    try (ResultSet result = filled(sql, arguments).executeQuery()) {
      while (result.next()) {
        found.add(row.of(result));
      }
    }
    return List.copyOf(found);
  }

  <T> Optional<T> row(Row<T> row, String sql, Object... arguments) throws SQLException {
    return rows(row, sql, arguments).stream().findFirst();
  }

  private PreparedStatement filled(String sql, Object... arguments) throws SQLException {
    PreparedStatement statement = prepared.get(sql);
    if (statement == null) {
      statement = connection.prepareStatement(sql);
      prepared.put(sql, statement);
    }
    for (int i = 0; i < arguments.length; i++) {
      statement.setObject(i + 1, arguments[i]);
    }
    return statement;
  }

  Connection connection() {
    return connection;
  }

  /** Forgets every statement; the connection stays open. */
  @Override
  public void close() throws SQLException {
    List<PreparedStatement> all = List.copyOf(prepared.values());
    prepared.clear();
    for (PreparedStatement statement : all) {
      statement.close();
    }
  }
}
