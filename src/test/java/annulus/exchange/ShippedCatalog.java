package annulus.exchange;

import annulus.catalog.Catalog;
import annulus.select.RuleBook;
import java.io.IOException;
import java.io.UncheckedIOException;

/** The catalogue and the rule book as shipped. */
final class ShippedCatalog {
  static final Catalog CATALOG;
  static final RuleBook RULES;

  static {
    try {
      CATALOG = CatalogFiles.read(DataFiles.bundled());
      RULES = RuleFile.read(DataFiles.bundled());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private ShippedCatalog() {}
}
