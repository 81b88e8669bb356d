package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.ProgramLimits;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScheduleCodeTest {

  /** The example of docs/schema/schedule-code.md; its check sum is from Python's zlib.crc32. */
  private static final String EXAMPLE =
      "HEATWRIGHT:1:HARBOUR-BURNOUT:C:120/150/120*150/370/120*180/720/150*F/500/180:210:KEEP:AEF7EE7F";

  private static Schedule read(String text) {
    return ScheduleCode.read(text, "card.jpg");
  }

  private static Schedule example() {
    return ScheduleFile.read(
        """
        name: harbour-burnout
        unit: C
        segments:
          - {rate: 120, target: 150, hold: "2:00"}
          - {rate: 150, target: 370, hold: "2:00"}
          - {rate: 180, target: 720, hold: "2:30"}
          - {rate: fastest, target: 500, hold: "3:00"}
        start-delay: "3:30"
        at-end: keep
        """,
        "s");
  }

  @Test
  void theExampleIsWrittenAsTheSpecificationHasIt() {
    assertThat(ScheduleCode.write(example())).isEqualTo(EXAMPLE);
    assertThat(read(EXAMPLE)).isEqualTo(example());
  }

  @Test
  void typedInSmallLettersAndWrappedByAMailItReadsTheSame() {
    String wrapped = EXAMPLE.toLowerCase(java.util.Locale.ROOT).replaceAll("(.{20})", "$1\r\n > ");
    assertThat(read("\uFEFF  " + wrapped.replace(" >", "") + "\n")).isEqualTo(example());
    assertThat(ScheduleCode.isOurs(wrapped.replace(" >", ""))).isTrue();
    assertThat(ScheduleCode.isOurs("https://example.org")).isFalse();
  }

  @Test
  void everyScheduleThatAFileHoldsReadsBackEqual() {
    Random random = new Random(20261126);
    int inKelvins = 0;
    int kept = 0;
    while (kept < 5000) {
      Schedule schedule = anySchedule(random);
      if (ProgramLimits.beyond(schedule.segments()).isPresent()) {
        continue;
      }
      kept++;
      String code = ScheduleCode.write(schedule);
      assertThat(code).matches("[0-9A-Z $%*+./:-]+"); // QR alphanumeric mode, ISO/IEC 18004
      assertThat(read(code)).isEqualTo(schedule);
      inKelvins += code.contains("/K") ? 1 : 0;
    }
    assertThat(inKelvins).isPositive();
  }

  /** Any name, any unit; every third with numbers of no decimal's making. */
  static Schedule anySchedule(Random random) {
    TemperatureUnit unit =
        random.nextBoolean() ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT;
    boolean odd = random.nextInt(3) == 0;
    List<Segment> segments = new ArrayList<>();
    for (int n = 1 + random.nextInt(16); n > 0; n--) {
      double decimals = Math.pow(10, random.nextInt(7));
      double target = Math.rint((40 + 1800 * random.nextDouble()) * decimals) / decimals;
      double rate = Math.rint((1 + 3000 * random.nextDouble()) * decimals) / decimals;
      Ramp ramp =
          random.nextInt(4) == 0
              ? Ramp.fastest()
              : Ramp.at(
                  odd
                      ? HeatingRate.ofKelvinsPerHour(1 + 900 * random.nextDouble())
                      : unit.rate(rate));
      segments.add(
          new Segment(
              ramp,
              odd ? Temperature.ofCelsius(2000 * random.nextDouble()) : unit.temperature(target),
              Duration.ofMinutes(random.nextBoolean() ? 0 : random.nextInt(3_000))));
    }
    StringBuilder name = new StringBuilder("x");
    for (int n = random.nextInt(20); n > 0; n--) {
      int c = random.nextInt(random.nextInt(4) == 0 ? 0x10FFFF : 0x7F);
      if (c < 0xD800 || c > 0xDFFF) {
        name.appendCodePoint(c);
      }
    }
    return new Schedule(
        name.toString(),
        unit,
        segments,
        Duration.ofMinutes(random.nextInt(60_000)),
        random.nextBoolean() ? AtEnd.OFF : AtEnd.KEEP);
  }

  /** CRC-32 finds every error within 32 bits in a row: no single wrong character gets through. */
  @Test
  void aWrongMissingOrSwappedCharacterIsAlwaysNoticed() {
    for (int i = ScheduleCode.MARK.length() + 2; i < EXAMPLE.length(); i++) {
      for (char c : "0123456789ABCKZ$%*+-./:".toCharArray()) {
        if (EXAMPLE.charAt(i) != c) {
          damaged(EXAMPLE.substring(0, i) + c + EXAMPLE.substring(i + 1));
        }
      }
      damaged(EXAMPLE.substring(0, i) + EXAMPLE.substring(i + 1));
      damaged(EXAMPLE.substring(0, i));
      if (i + 1 < EXAMPLE.length() && EXAMPLE.charAt(i) != EXAMPLE.charAt(i + 1)) {
        damaged(
            EXAMPLE.substring(0, i)
                + EXAMPLE.charAt(i + 1)
                + EXAMPLE.charAt(i)
                + EXAMPLE.substring(i + 2));
      }
    }
  }

  private static void damaged(String text) {
    assertThatThrownBy(() -> read(text))
        .as(text)
        .isInstanceOf(InputException.class)
        .hasMessage(
            "card.jpg: the code is damaged or not whole (its check sum does not agree); take another"
                + " picture, or copy the text again from HEATWRIGHT: to the end.");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          https://example.org | this is not a schedule's code; expected a text that begins with "HEATWRIGHT:1:".
          HEATWRIGHT | this is not a schedule's code; expected a text that begins with "HEATWRIGHT:1:".
          HEATWRIGHT:2:SOMETHING NEW | this code is of version 2 and this Heatwright reads version 1; use the release that wrote it.
          """)
  void whatIsNotOursIsToldInOneSentence(String text, String message) {
    Inputs.refused(() -> read(text), "card.jpg: " + message);
  }

  /** Somebody else's writer, with a check sum that agrees. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          X:K:1/2:0:OFF | unit of the code is "K"; expected C or F.
          X:C:1/2:0:STAY | at end of the code is "STAY"; expected OFF or KEEP.
          X:C:1/2:-1:OFF | start delay of the code is "-1"; expected whole minutes, at most 999:59.
          X:C:1/2:60000:OFF | start delay of the code is "60000"; expected whole minutes, at most 999:59.
          X:C::0:OFF | segment 1 of the code is ""; expected rate/target/minutes, such as 150/730/120.
          X:C:1/2*1:0:OFF | segment 2 of the code is "1"; expected rate/target/minutes, such as 150/730/120.
          X:C:1/2/3/4:0:OFF | segment 1 of the code is "1/2/3/4"; expected rate/target/minutes, such as 150/730/120.
          X:C:0/2:0:OFF | segment 1 of the code is "0/2"; expected a rate above zero.
          X:C:K-5/2:0:OFF | segment 1 of the code is "K-5/2"; expected a rate above zero.
          X:C:100001/2:0:OFF | segment 1 of the code is "100001/2"; expected a rate of at most 100000 an hour.
          X:C:1/2001:0:OFF | segment 1 of the code is "1/2001"; expected a target of 0 to 2000 °C.
          X:F:1/31:0:OFF | segment 1 of the code is "1/31"; expected a target of 0 to 2000 °C.
          X:C:1/K-300:0:OFF | segment 1 of the code is "1/K-300"; expected a target of 0 to 2000 °C.
          :C:1/2:0:OFF | name of the code is ""; expected at least one letter or digit.
          %FF:C:1/2:0:OFF | name of the code is "%FF"; expected letters, digits, and %XX for the bytes of anything else.
          A%G0:C:1/2:0:OFF | name of the code is "A%G0"; expected letters, digits, and %XX for the bytes of anything else.
          """)
  void aWrongFieldIsNamed(String fields, String message) {
    String text = "HEATWRIGHT:1:" + fields;
    CRC32 sum = new CRC32();
    sum.update(text.getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    Inputs.refused(() -> read(text + ":%08X".formatted(sum.getValue())), "card.jpg: " + message);
  }

  @Test
  void whatNoFileMayHoldHasNoCode() {
    Schedule cold =
        Schedule.of(
            "cold",
            TemperatureUnit.CELSIUS,
            List.of(new Segment(Ramp.fastest(), Temperature.ofCelsius(-40), Duration.ZERO)));
    assertThatThrownBy(() -> ScheduleCode.write(cold))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no schedule file may hold");
  }
}
