/** The command line: one class per command, exit codes, nothing else. */
package annulus.cli;
