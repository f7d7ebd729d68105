package annulus.cli;

import static java.util.stream.Collectors.toSet;

import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.advice.PromiseDesk;
import annulus.advice.PromiseDesk.Option;
import annulus.advice.PromiseDesk.Shift;
import annulus.advice.PromiseDesk.Told;
import annulus.advice.Reassessment;
import annulus.advice.Shop;
import annulus.catalog.Policy;
import annulus.exchange.CalendarState;
import annulus.exchange.ClockWord;
import annulus.exchange.DataFiles;
import annulus.exchange.JobLog;
import annulus.exchange.KnowledgeFiles;
import annulus.exchange.OrderReader;
import annulus.exchange.ReadingText;
import annulus.exchange.SharedLog;
import annulus.exchange.ShopFile;
import annulus.handback.Promise;
import annulus.report.CalendarFile;
import annulus.report.CurePicture;
import annulus.report.HandBackNotes;
import annulus.report.JobCalendar;
import annulus.report.PromiseJson;
import annulus.report.PromiseText;
import annulus.report.ReassessmentText;
import annulus.report.TagSheet;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** {@code promise}: what to tell the customer, for one job or a day's list. */
final class PromiseCommand {
  private static final Set<String> WITH_VALUE =
      Set.of(
          "--shop",
          "--wanted",
          "--now",
          "--log",
          "--date-order",
          "--unit",
          "--column",
          "--ics",
          "--tag",
          "--picture",
          "--list",
          "--data");
  private static final Set<String> FLAGS = Set.of("--json", "--options");
  private static final List<String> FOR_ONE_JOB =
      List.of("--wanted", "--options", "--json", "--ics", "--tag", "--picture");

  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  PromiseCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  /** What one run works with. */
  private record Table(Words words, PromiseDesk desk, DataFiles files, Instant now) {
    Shop shop() {
      return desk.shop();
    }
  }

  int run(String[] args) throws IOException {
    Words words = new Words(args, WITH_VALUE, FLAGS);
    DataFiles files = Tables.files(words);
    Knowledge knowledge = KnowledgeFiles.read(files);
    Shop shop = shop(words, knowledge.catalog().policy());
    PromiseDesk desk = new PromiseDesk(knowledge, shop);
    Optional<String> said = words.value("--now");
    Instant now = said.map(t -> time("--now", t, shop)).orElse(surround.clock().instant());
    OrderReader reader = new OrderReader(knowledge, now, shop.hours().zone(), shop.places());
    if (words.has("--list")) {
      return list(new Table(words, desk, files, now), reader);
    }
    if (words.rest().size() != 1) {
      throw Words.refused(1, "promise", "needs one order", "ORDER.json, or --list JOBS.csv");
    }
    Path file = InputFile.of(words.rest().get(0));
    try (Reader in = InputFile.text(file)) {
      boolean tag = words.has("--tag");
      OrderReader fitting = tag ? reader.withJobOfAtMost(TagSheet.LONGEST_REFERENCE) : reader;
      JointOrder order = fitting.json(file.toString(), in);
      return one(new Table(words, desk, files, now), order);
    }
  }

  /** A day's list; words that are for one job are refused, not passed over. */
  private int list(Table table, OrderReader reader) throws IOException {
    for (String single : FOR_ONE_JOB) {
      if (table.words().has(single)) {
        throw Words.refused(
            0, single, "does not go with --list", "--list JOBS.csv, or one ORDER.json with it");
      }
    }
    if (!table.words().rest().isEmpty()) {
      throw Words.refused(0, "--list", "needs no order beside it", "--list JOBS.csv alone");
    }
    Path list = InputFile.of(table.words().value("--list").orElseThrow());
    Optional<SharedLog> log = logs(table).ofList();
    return new JobListRun(table.desk(), reader, table.now(), out, err).run(list, log);
  }

  private PromiseLog logs(Table table) {
    return new PromiseLog(
        table.words(), table.shop().hours().zone(), table.files(), table.now(), err);
  }

  private static Instant time(String option, String text, Shop shop) {
    return ClockWord.read("command line", 0, option, text, shop.hours().zone());
  }

  private static Shop shop(Words words, Policy policy) throws IOException {
    Path file =
        words
            .value("--shop")
            .map(InputFile::of)
            .orElseThrow(
                () -> Words.refused(0, "--shop", "is missing", "--shop SHOP.json, its hours"));
    try (Reader in = InputFile.text(file)) {
      return ShopFile.read(file.toString(), in, policy);
    }
  }

  private int one(Table table, JointOrder order) throws IOException {
    Words words = table.words();
    Papers papers = papers(table, order);
    Optional<Instant> wanted = words.value("--wanted").map(t -> time("--wanted", t, table.shop()));
    Optional<JobLog> log = logs(table).of(order);
    Optional<Reassessment> again = log.map(l -> table.desk().reassess(order, l.course()));
    Told told = again.map(Reassessment::now).orElseGet(() -> table.desk().tell(order));
    List<Shift> shifts = again.isPresent() ? List.of() : table.desk().shifts(order);
    boolean running = order.start().isBefore(table.now());
    boolean ways = !running && again.isEmpty() && (wanted.isPresent() || words.has("--options"));
    Optional<List<Option>> options =
        ways ? Optional.of(table.desk().options(order, order.start(), wanted)) : Optional.empty();
    if (words.has("--json")) {
      out.print(
          PromiseJson.of(
              new PromiseJson.Content(told, shifts, options, wanted, again, table.now()),
              table.shop()));
    } else {
      PromiseText text = new PromiseText(table.shop(), order.start());
      out.print(text.promise(told, shifts, table.now()));
      if (again.isPresent()) {
        String read = ReadingText.of(log.orElseThrow().reading(), table.shop().hours().zone());
        out.print("\n" + new ReassessmentText(table.shop()).text(again.get(), read));
      }
      options.ifPresent(o -> out.print("\n" + text.options(o, wanted, table.now())));
      if (options.isEmpty() && (wanted.isPresent() || words.has("--options"))) {
        out.print("\n" + text.closedAlready(told, wanted, table.now()));
      }
    }
    write(table, order, told, papers);
    return exit(told, options, wanted);
  }

  private static int exit(Told told, Optional<List<Option>> options, Optional<Instant> wanted) {
    boolean met =
        wanted.isEmpty()
            || told.meets(wanted.get())
            || options.stream().flatMap(List::stream).anyMatch(o -> o.told().meets(wanted.get()));
    boolean promised = told.promise().isPresent() || (wanted.isPresent() && met);
    return promised && met ? ExitCode.ANSWER : ExitCode.ANSWER_IS_NO;
  }

  /** Files asked for; told to be wrong before an answer is given. */
  private record Papers(Optional<Calendar> ics, Optional<Path> tag, Optional<Path> picture) {}

  /** A calendar file and what stands in it. */
  private record Calendar(Path file, CalendarState before) {}

  private static Papers papers(Table table, JointOrder order) throws IOException {
    Optional<Path> ics = output(table, "--ics", ".ics");
    Optional<Path> tag = output(table, "--tag", ".html");
    Optional<Path> picture = output(table, "--picture", ".svg");
    List<Map.Entry<String, Path>> outputs = new ArrayList<>();
    ics.ifPresent(f -> outputs.add(Map.entry("--ics", f)));
    picture.ifPresent(f -> outputs.add(Map.entry("--picture", f)));
    tag.ifPresent(f -> outputs.add(Map.entry("--tag", f)));
    OutputFile.requireApart(outputs);
    if (ics.isPresent() && order.job().isBlank()) {
      throw Words.refused(
          0, "--ics", "needs the job's reference to know it again", "\"job\" in the order");
    }
    Optional<Calendar> calendar = Optional.empty();
    if (ics.isPresent()) {
      CalendarState before = CalendarState.of(ics.get(), CalendarFile.PRODUCT);
      calendar = Optional.of(new Calendar(ics.get(), before));
    }
    return new Papers(calendar, tag, picture);
  }

  private void write(Table table, JointOrder order, Told told, Papers papers) throws IOException {
    if (papers.ics().isPresent()) {
      calendar(table, order, told, papers.ics().get());
    }
    Optional<Promise> promise = PromiseText.from(table.now(), told, table.shop());
    if (papers.tag().isPresent() && promise.isPresent()) {
      String job = order.job().isBlank() ? "without number" : order.job();
      List<String> meanwhile = List.of("Leave the joint alone.", "No load, no use until then.");
      TagSheet sheet =
          new TagSheet(
              job,
              order.title(),
              promise.get().promise(),
              table.shop().hours().zone(),
              meanwhile,
              limitedUse(table, told, promise.get()));
      OutputFile.write(papers.tag().get(), sheet.html());
    } else if (papers.tag().isPresent()) {
      err.println(
          "No tag was written: no time is safe for this joint. Take an earlier tag off the part.");
    }
    if (papers.picture().isPresent()) {
      picture(table, told, papers.picture().get());
    }
  }

  private static Optional<String> limitedUse(Table table, Told told, Promise promise) {
    return new HandBackNotes(told.advice())
        .limitedUse(promise.promise(), table.shop().hours().zone());
  }

  private void picture(Table table, Told told, Path file) throws IOException {
    Optional<String> svg =
        CurePicture.of(
            told,
            PromiseText.from(table.now(), told, table.shop()).map(Promise::promise),
            table.shop().hours().zone(),
            Optional.of(table.now()));
    if (svg.isPresent()) {
      OutputFile.write(file, svg.get());
    } else {
      err.println("No picture was written: there is no cure to draw.");
    }
  }

  private static Optional<Path> output(Table table, String option, String ending)
      throws IOException {
    return table.words().has(option)
        ? Optional.of(OutputFile.of(table.words(), option, ending, table.words().rest()))
        : Optional.empty();
  }

  private void calendar(Table table, JointOrder order, Told told, Calendar written)
      throws IOException {
    Path file = written.file();
    CalendarState state = written.before();
    JobCalendar calendar =
        new JobCalendar(
            order.job(),
            table.now(),
            uid ->
                state
                    .entry(uid)
                    .map(
                        e ->
                            new JobCalendar.Before(
                                e.sequence(), e.start(), e.status().equals("CANCELLED"))));
    PromiseText words = new PromiseText(table.shop(), order.start());
    Optional<Promise> promise = PromiseText.from(table.now(), told, table.shop());
    Optional<CalendarFile> entries =
        calendar.file(
            promise,
            table.shop().rule().handOverCheck(),
            "Check before hand-over. " + words.basis(told, table.now()),
            told.promise().flatMap(p -> limitedUse(table, told, p)).orElse(""));
    if (entries.isPresent()) {
      Set<String> own = entries.get().entries().stream().map(e -> e.uid()).collect(toSet());
      OutputFile.write(file, entries.get().text(state.others(own)));
    }
    if (promise.isEmpty()) {
      err.println(
          entries.isPresent()
              ? "No time is safe for this joint: "
                  + file
                  + " now takes its calendar entries back. Import it again, or they stay there."
              : "No calendar entry was written: no time is safe for this joint.");
    }
  }
}
