package annulus.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Statements with their arguments, and the rows they give. */
final class Sql {
  private final Connection connection;

  Sql(Connection connection) {
    this.connection = connection;
  }

  /** One row as a value. */
  @FunctionalInterface
  interface Row<T> {
    T of(ResultSet row) throws SQLException;
  }

  int update(String sql, Object... arguments) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      fill(statement, arguments);
      return statement.executeUpdate();
    }
  }

  <T> List<T> rows(Row<T> row, String sql, Object... arguments) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      fill(statement, arguments);
      List<T> found = new ArrayList<>();
      try (ResultSet result = statement.executeQuery()) {
        while (result.next()) {
          found.add(row.of(result));
        }
      }
      return List.copyOf(found);
    }
  }

  <T> Optional<T> row(Row<T> row, String sql, Object... arguments) throws SQLException {
    return rows(row, sql, arguments).stream().findFirst();
  }

  private static void fill(PreparedStatement statement, Object... arguments) throws SQLException {
    for (int i = 0; i < arguments.length; i++) {
      statement.setObject(i + 1, arguments[i]);
    }
  }
}
