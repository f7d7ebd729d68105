package annulus.badhouse.util;

/** A package whose name says nothing. */
public final class Bag {}
