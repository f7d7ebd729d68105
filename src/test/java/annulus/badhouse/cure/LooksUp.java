package annulus.badhouse.cure;

import annulus.badhouse.cli.Command;

/** A lower package that knows an upper one. */
public record LooksUp(Command command) {}
