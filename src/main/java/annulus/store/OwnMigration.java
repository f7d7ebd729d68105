package annulus.store;

import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.migration.JavaMigration;

/** A step that brings the tables up to date and that SQL alone can't make. */
abstract class OwnMigration implements JavaMigration {
  private final String version;
  private final String description;

  OwnMigration(String version, String description) {
    this.version = version;
    this.description = description;
  }

  @Override
  public final MigrationVersion getVersion() {
    return MigrationVersion.fromVersion(version);
  }

  @Override
  public final String getDescription() {
    return description;
  }

  @Override
  public final Integer getChecksum() {
    return null;
  }

  @Override
  public final boolean canExecuteInTransaction() {
    return true;
  }
}
