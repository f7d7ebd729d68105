package annulus.badhouse.quantity;

import java.nio.file.Path;

/** A pure package must not know files. */
public record TouchesFiles(Path path) {}
