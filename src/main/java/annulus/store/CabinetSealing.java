package annulus.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.flywaydb.core.api.migration.Context;

/**
 * Gives lots and movements the column of their seal, and seals those that an older version wrote,
 * once. From then on a row whose seal is missing is a damaged row.
 */
final class CabinetSealing extends OwnMigration {
  CabinetSealing() {
    super("4", "seals of lots and movements");
  }

  @Override
  public void migrate(Context context) throws SQLException {
    seal(context.getConnection(), "lot", CabinetRows.LOT);
    seal(context.getConnection(), "movement", CabinetRows.MOVEMENT);
  }

  /** The first column tells the row. */
  private static void seal(Connection connection, String table, List<String> columns)
      throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("ALTER TABLE " + table + " ADD COLUMN seal TEXT NOT NULL DEFAULT ''");
    }
    String all = "SELECT " + String.join(", ", columns) + " FROM " + table;
    String one = "UPDATE " + table + " SET seal = ? WHERE " + columns.get(0) + " = ?";
    try (Sql sql = new Sql(connection)) {
      for (Object[] values : sql.rows(r -> Seal.row(r, columns.size()), all)) {
        sql.update(one, Seal.ofRow(values), values[0]);
      }
    }
  }
}
