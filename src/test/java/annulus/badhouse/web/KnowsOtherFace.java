package annulus.badhouse.web;

import annulus.badhouse.cli.Command;

/** One face that knows the other. */
public record KnowsOtherFace(Command command) {}
