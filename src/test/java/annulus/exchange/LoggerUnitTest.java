package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.exchange.LoggerOptions.TemperatureUnit;
import java.io.IOException;
import java.io.StringReader;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The unit of a temperature log: °F is never read as °C where anything in the file speaks of it.
 */
class LoggerUnitTest {
  private static final LoggerOptions UTC = LoggerOptions.in(ZoneOffset.UTC);
  private static final String DECLARE =
      "allowed: declare the unit, C or F (at the command line --unit)";

  private static LoggerReading read(String above, String behind, LoggerOptions options)
      throws IOException {
    StringBuilder text = new StringBuilder(above);
    for (int i = 10; i < 20; i++) {
      text.append("2027-03-11 ").append(i).append(":00,45.0").append(behind).append('\n');
    }
    return LoggerCsv.read(
        "log.csv",
        () -> new StringReader(text.toString()),
        options,
        LoggerCsvTest.rules(),
        () -> (s, a, e, b) -> {});
  }

  private static void assertNamed(TemperatureUnit unit, LoggerReading reading) {
    assertEquals(unit, reading.unit());
    assertFalse(reading.unitAssumed());
  }

  private static String refusal(String above, String behind) {
    return assertThrows(InputRefused.class, () -> read(above, behind, UTC)).getMessage();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "temperature F",
        "Temp F",
        "TempF",
        "TEMPF",
        "temp_f",
        "Temp1F",
        "tF",
        "F",
        "ambientF",
        "Temperature (degrees F)",
        "Temperature F°",
        "Temperature ºF",
        "Temp ℉",
        "degF",
        "temp [F]",
        "temperature Fahrenheit",
        "temperature farenheit",
        "Temp. in Fahr."
      })
  void a_header_that_names_fahrenheit_in_any_way_is_fahrenheit(String header) throws IOException {
    assertNamed(TemperatureUnit.FAHRENHEIT, read("time," + header + "\n", "", UTC));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "temperature C",
        "TempC",
        "Temp_C",
        "C",
        "Temperature (degrees C)",
        "Temp ℃",
        "temp celcius",
        "Temp. °C, farm"
      })
  void a_header_that_names_celsius_is_celsius(String header) throws IOException {
    String quoted = "time,\"" + header + "\"\n";
    assertNamed(TemperatureUnit.CELSIUS, read(quoted, "", UTC));
  }

  @ParameterizedTest
  @ValueSource(strings = {"temperature", "Probe C", "TC", "Sensor", "Temp fan"})
  void a_header_that_names_none_leaves_the_unit_taken(String header) throws IOException {
    LoggerReading reading = read("time," + header + "\n", "", UTC);
    assertEquals(TemperatureUnit.CELSIUS, reading.unit());
    assertTrue(reading.unitAssumed());
  }

  @ParameterizedTest
  @ValueSource(strings = {"F", "°F", "deg F", "Fahrenheit"})
  void a_column_or_a_line_may_give_the_unit(String unit) throws IOException {
    TemperatureUnit fahrenheit = TemperatureUnit.FAHRENHEIT;
    assertNamed(fahrenheit, read("time,temp,Unit\n", "," + unit, UTC));
    assertNamed(fahrenheit, read("", "," + unit, UTC));
    assertNamed(fahrenheit, read("Unit: " + unit + "\ntime,temp\n", "", UTC));
    assertNamed(fahrenheit, read("Temperature unit," + unit + "\ntime,temp\n", "", UTC));
    assertNamed(fahrenheit, read("time,temp\n," + unit + "\n", "", UTC));
    assertNamed(fahrenheit, read("time,temp,Unit " + unit + "\n", "", UTC));
  }

  @Test
  void a_line_in_words_may_give_the_unit() throws IOException {
    assertNamed(
        TemperatureUnit.FAHRENHEIT, read("Temperatures in Fahrenheit\ntime,value\n", "", UTC));
    assertNamed(TemperatureUnit.CELSIUS, read("Temperatures in °C\ntime,value\n", "", UTC));
    assertNamed(TemperatureUnit.CELSIUS, read("Unit,C\ntime,value\n", "", UTC));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Logger 7, alarm above 30 °C",
        "Sensor accuracy,0.5 °C",
        "Temperature range: -30 °C to 70 °C",
        "Temperature alarm in °C"
      })
  void a_line_of_a_limit_or_an_accuracy_decides_no_unit(String line) throws IOException {
    LoggerReading taken = read(line + "\ntime,temp\n", "", UTC);
    assertTrue(taken.unitAssumed());
    assertNamed(TemperatureUnit.FAHRENHEIT, read(line + "\ntime,Temp F\n", "", UTC));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"Logger 7, alarm above 90 °F", "Sensor accuracy,1 deg F", "Temp logger, F"})
  void fahrenheit_spoken_of_where_no_unit_is_named_is_asked_about(String line) throws IOException {
    String said = refusal(line + "\ntime,temp\n", "");
    assertEquals(
        "log.csv:1: unit: °F is spoken of here, and no unit is named for the readings; " + DECLARE,
        said);
    LoggerOptions declared = UTC.with(TemperatureUnit.CELSIUS);
    assertNamed(TemperatureUnit.CELSIUS, read(line + "\ntime,temp\n", "", declared));
    assertNamed(TemperatureUnit.CELSIUS, read(line + "\ntime,temp °C\n", "", UTC));
  }

  @Test
  void a_contradiction_is_asked_about() throws IOException {
    String lineAndHeader = "Unit: F\ntime,temp °C\n";
    assertEquals(
        "log.csv:1: unit: °F is named here, but °C in line 2; " + DECLARE,
        refusal(lineAndHeader, ""));
    assertEquals(
        "log.csv:1: unit: both °C and °F are named here; " + DECLARE,
        refusal("time,temp °C/°F\n", ""));
    assertEquals(
        "log.csv:2: unit: the readings carry °F, the lines above °C; " + DECLARE,
        refusal("time,temp °C,unit\n", ",F"));
    LoggerOptions declared = UTC.with(TemperatureUnit.FAHRENHEIT);
    assertNamed(TemperatureUnit.FAHRENHEIT, read(lineAndHeader, "", declared));
  }

  @Test
  void a_unit_that_changes_on_the_way_is_refused() {
    String first = "time,temp,unit\n2027-03-11 08:00,20,C\n";
    assertTrue(refusal(first, ",F").contains("°C and °F stand in one column"));
    String joined = "time,temp C\n2027-03-11 08:00,20\n2027-03-11 09:00,20\ntime,temp F\n";
    assertEquals(
        "log.csv:4: unit: °F is named here, but °C above; " + DECLARE, refusal(joined, ""));
  }

  @Test
  void a_state_written_as_a_letter_is_no_unit() throws IOException {
    assertTrue(read("time,temp,alarm\n", ",F", UTC).unitAssumed());
  }
}
