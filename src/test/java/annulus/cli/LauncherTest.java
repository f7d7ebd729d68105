package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The launcher, with a stand-in for the JVM that says what it was given. */
class LauncherTest {
  @TempDir Path folder;
  private Path java;
  private Path launcher;

  @BeforeEach
  void laid_out_as_the_build_does() throws IOException {
    java = Files.createDirectories(folder.resolve("jdk/bin"));
    executable(java.resolve("java"), "#!/bin/sh\necho \"letters ${LC_ALL-unset}\"\necho \"$*\"\n");
    Path program = Files.createDirectories(folder.resolve("pro gram"));
    launcher = program.resolve("annulus");
    executable(launcher, Files.readString(Path.of("src/main/launch/annulus")));
    Files.writeString(program.resolve("annulus.jar"), "");
  }

  private static void executable(Path file, String text) throws IOException {
    Files.writeString(file, text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  /** What a call said on either output, with its exit code in front. */
  private String call(Map<String, String> locale, Path program, String... words)
      throws IOException, InterruptedException {
    ProcessBuilder call = new ProcessBuilder(program.toString());
    call.command().addAll(List.of(words));
    call.environment().keySet().removeIf(n -> n.startsWith("LC_") || n.equals("LANG"));
    call.environment().putAll(locale);
    call.environment().put("JAVA_HOME", java.getParent().toString());
    Process process = call.redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return process.waitFor() + " " + said;
  }

  @ParameterizedTest
  @CsvSource({
    "'', '', '', C.UTF-8",
    "C, '', de_DE.UTF-8, C.UTF-8",
    "POSIX, de_DE.UTF-8, '', C.UTF-8",
    "'', C, de_DE.UTF-8, C.UTF-8",
    "'', '', C, C.UTF-8",
    "'', '', de_DE.UTF-8, unset",
    "'', de_DE.UTF-8, C, unset",
    "en_IE.UTF-8, C, C, en_IE.UTF-8",
  })
  void a_locale_without_letters_beyond_ascii_is_replaced_and_no_other(
      String all, String ctype, String lang, String given) throws Exception {
    Map<String, String> locale = new HashMap<>();
    if (!all.isEmpty()) {
      locale.put("LC_ALL", all);
    }
    if (!ctype.isEmpty()) {
      locale.put("LC_CTYPE", ctype);
    }
    if (!lang.isEmpty()) {
      locale.put("LANG", lang);
    }
    String said = call(locale, launcher, "help");
    assertEquals("0 letters " + given, said.lines().findFirst().orElse(""), said);
  }

  @Test
  void the_jar_is_found_beside_the_launcher_whatever_link_leads_there() throws Exception {
    Path bin = Files.createDirectories(folder.resolve("bin"));
    Path whole = Files.createSymbolicLink(bin.resolve("whole"), launcher);
    Path relative =
        Files.createSymbolicLink(bin.resolve("relative"), Path.of("../pro gram/annulus"));
    Path ofLink = Files.createSymbolicLink(bin.resolve("of-link"), Path.of("relative"));
    for (Path program : List.of(launcher, whole, relative, ofLink)) {
      String said = call(Map.of(), program, "advise", "a b");
      Matcher jar =
          Pattern.compile("-cp (.*)/annulus.jar annulus.cli.Main advise a b").matcher(said);
      assertTrue(said.startsWith("0 ") && jar.find(), said);
      assertTrue(Files.isSameFile(launcher.getParent(), Path.of(jar.group(1))), said);
      assertTrue(said.contains("SharedArchiveFile=" + jar.group(1) + "/annulus.jsa"), said);
    }
  }

  @Test
  void without_the_jar_it_says_so_in_one_line_and_is_no_answer() throws Exception {
    Path alone = folder.resolve("annulus");
    Files.copy(launcher, alone);
    String said = call(Map.of(), alone, "help");
    String jar = folder.resolve("annulus.jar").toString();
    assertEquals("3 " + jar + ": no such file; allowed: this launcher beside the jar\n", said);
  }
}
