package annulus.cli;

import annulus.exchange.InputRefused;
import annulus.exchange.Nearest;
import annulus.exchange.PlacedProblem;
import annulus.quantity.InvalidValue;
import annulus.store.StoreFailed;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Finds the command, runs it, and turns every failure into one clear line and an exit code. */
final class Cli {
  /** What can be asked; each is called as it is written here, in lower case. */
  private enum Name {
    ADVISE,
    SOURCES,
    FIT,
    STOCK,
    PROMISE,
    LEARN,
    SERVE,
    BACKUP,
    RESTORE,
    HELP;

    static List<String> all() {
      return Arrays.stream(values()).map(Name::said).toList();
    }

    /** By hand: the first stream of a start costs a tenth of it. */
    static Optional<Name> of(String said) {
      for (Name name : values()) {
        if (name.said().equals(said)) {
          return Optional.of(name);
        }
      }
      return Optional.empty();
    }

    private String said() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What a decoder puts in the place of bytes that are no character. */
  private static final char NO_CHARACTER = '\uFFFD';

  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  /** A command: words in, exit code out. */
  @FunctionalInterface
  interface Command {
    int run(String[] args) throws IOException;
  }

  Cli(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  private Command command(Name name) {
    return switch (name) {
      case ADVISE -> new AdviseCommand(surround, out, err)::run;
      case SOURCES -> new SourcesCommand(surround, out)::run;
      case FIT -> new FitCommand(out, err)::run;
      case STOCK -> new StockCommand(surround, out, err)::run;
      case PROMISE -> new PromiseCommand(surround, out, err)::run;
      case LEARN -> new LearnCommand(out)::run;
      case SERVE -> new ServeCommand(out, err)::run;
      case BACKUP, RESTORE -> new BackupCommand(out)::run;
      case HELP -> this::help;
    };
  }

  int run(String[] args) {
    Optional<PlacedProblem> lost = lostLetters(args);
    if (lost.isPresent()) {
      err.println(lost.get());
      return ExitCode.BAD_INPUT;
    }
    List<String> words = List.of(args);
    if (words.isEmpty() || words.contains("--help") || words.contains("-h")) {
      out.print(Help.text());
      return args.length == 0 ? ExitCode.BAD_INPUT : ExitCode.ANSWER;
    }
    if (args[0].equals("--version")) {
      out.println("annulus " + version());
      return ExitCode.ANSWER;
    }
    Optional<Name> name = Name.of(args[0]);
    if (name.isEmpty()) {
      String allowed = Nearest.allowed(args[0], Name.all());
      err.println(new PlacedProblem("command line", 0, 1, args[0], "is not a command", allowed));
      return ExitCode.BAD_INPUT;
    }
    return guarded(command(name.get()), args);
  }

  /**
   * Where the shell's locale has no letters beyond ASCII, the JVM gets a word with its letters
   * already gone: two names would be the same in a ledger, and a recall would mix jobs.
   */
  private static Optional<PlacedProblem> lostLetters(String[] args) {
    for (int i = 0; i < args.length; i++) {
      if (args[i].indexOf(NO_CHARACTER) >= 0) {
        return Optional.of(
            new PlacedProblem(
                "command line",
                0,
                i + 1,
                args[i],
                "letters of this word are lost, the shell is not UTF-8",
                "such letters with LC_ALL=C.UTF-8 set, or words without them"));
      }
    }
    return Optional.empty();
  }

  private int help(String[] args) {
    new Words(args, Set.of(), Set.of());
    out.print(Help.text());
    return ExitCode.ANSWER;
  }

  /** As the jar says; classes outside a jar have none. */
  private static String version() {
    return Optional.ofNullable(Cli.class.getPackage().getImplementationVersion())
        .orElse("not from a jar, without a version");
  }

  private int guarded(Command command, String[] args) {
    try {
      return command.run(args);
    } catch (InputRefused e) {
      e.problems().forEach(err::println);
    } catch (InvalidValue e) {
      say("command line", e.field(), e.problem(), e.allowed());
    } catch (InvalidPathException e) {
      String problem = e.getReason().toLowerCase(Locale.ROOT) + " in a file name";
      say("command line", "", problem, "a file name");
    } catch (IOException e) {
      say(e);
    } catch (UncheckedIOException e) {
      say(e.getCause());
    } catch (StoreFailed e) {
      err.println(e.getMessage());
    } catch (OutOfMemoryError e) {
      err.println("the memory is full and there is no answer; allowed: less input at once");
      return ExitCode.INTERNAL;
    } catch (RuntimeException | StackOverflowError e) {
      err.println("annulus made a mistake of its own and gives no answer: " + e);
      err.println("Please report this with the input that caused it.");
      return ExitCode.INTERNAL;
    }
    return ExitCode.BAD_INPUT;
  }

  private void say(IOException e) {
    if (e instanceof NoSuchFileException gone) {
      say(gone.getFile(), "", "no such file", "the name of a file that is there");
    } else if (e instanceof AccessDeniedException denied) {
      say(denied.getFile(), "", "access denied", "a file that may be read or written");
    } else if (e instanceof FileSystemException failed) {
      String reason = Optional.ofNullable(failed.getReason()).orElse("can't be read or written");
      say(failed.getFile(), "", reason.toLowerCase(Locale.ROOT), "a file that can be");
    } else {
      say("files", "", "can't be read or written: " + e.getMessage(), "files that can be");
    }
  }

  /** One clear line, whatever characters a file's name has. */
  private void say(String file, String field, String problem, String allowed) {
    String named = file == null || file.isBlank() ? "file without a name" : file;
    err.println(new PlacedProblem(named, 0, 0, field, problem, allowed));
  }
}
