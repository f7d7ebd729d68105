package annulus.badhouse.cli;

/** A face; nothing below may know it. */
public final class Command {}
