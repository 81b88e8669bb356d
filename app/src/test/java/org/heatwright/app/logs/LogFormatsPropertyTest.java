package org.heatwright.app.logs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.heatwright.app.files.LogFile;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The same kind of firing in forms that chance draws comes back, or what is unsure is told. */
class LogFormatsPropertyTest {

  private static final int FORMS = 520;

  /**
   * What is read wrong was no sure decision, and the right word stood beside it; said so by hand,
   * everything is right.
   */
  @Tag("property")
  @Test
  void aLogInAnyFormComesBackOrIsToldToBeUnsure() {
    int atOnce = 0;
    Map<Topic, Integer> guessedWrong = new EnumMap<>(Topic.class);
    for (long seed = 1; seed <= FORMS; seed++) {
      RandomLog log = new RandomLog(seed);
      String about = "seed " + seed + "\n" + log.text.lines().limit(9).toList();
      LogReading reading = LogImport.read(log.bytes, "log.csv", Corrections.none());
      Map<Topic, String> wrong = new EnumMap<>(Topic.class);
      log.right.forEach(
          (topic, word) -> {
            if (!word(reading, topic).equals(word)) {
              wrong.put(topic, word);
            }
          });
      wrong.forEach(
          (topic, word) -> {
            Decision decision =
                reading.decision(topic).orElseThrow(() -> new AssertionError(topic + " " + about));
            assertThat(decision.sure()).as("%s %s", decision, about).isNotEqualTo(Sureness.SURE);
            assertThat(decision.alternatives().stream().map(w -> number(reading, topic, w)))
                .as("%s %s", decision, about)
                .contains(word);
            guessedWrong.merge(topic, 1, Integer::sum);
          });
      if (wrong.isEmpty()) {
        atOnce++;
        requireSame(log, reading, about);
      } else {
        requireSame(log, LogImport.read(log.bytes, "log.csv", new Corrections(log.right)), about);
      }
    }
    System.out.printf("forms read right at once: %d of %d; else %s%n", atOnce, FORMS, guessedWrong);
    assertThat(atOnce).isGreaterThan(FORMS * 8 / 10);
  }

  /** What was decided; a column by its number. */
  private static String word(LogReading reading, Topic topic) {
    return reading.decision(topic).map(d -> number(reading, topic, d.word())).orElse(Topic.NONE);
  }

  private static String number(LogReading reading, Topic topic, String word) {
    boolean column = List.of(Topic.TIME, Topic.CHAMBER, Topic.SETPOINT).contains(topic);
    return !column
        ? word
        : reading.columns().stream()
            .filter(c -> c.name().equals(word))
            .findFirst()
            .map(c -> Integer.toString(c.number()))
            .orElse(word);
  }

  private static void requireSame(RandomLog log, LogReading reading, String about) {
    List<LogFile.Row> rows = reading.log().rows();
    assertThat(rows).as(about).hasSize(log.seconds.length);
    double first = rows.get(0).seconds();
    for (int i = 0; i < log.seconds.length; i++) {
      LogFile.Row row = rows.get(i);
      requireNear(row.seconds() - first, log.seconds[i], 0.5, about);
      requireNear(row.chamberCelsius(), log.celsius[i], log.toleranceKelvins, about);
      if (log.hasSetpoint) {
        requireNear(
            row.setpointCelsius().orElseThrow(), log.setpoint[i], log.toleranceKelvins, about);
      }
    }
  }

  /** Plain, as it is asked a hundred thousand times. */
  private static void requireNear(double is, double right, double within, String about) {
    if (!(Math.abs(is - right) <= within)) {
      throw new AssertionError("%s instead of %s: %s".formatted(is, right, about));
    }
  }

  /** What was imported and written reads back in our own form. */
  @Test
  void whatIsWrittenReadsBack() {
    for (long seed = 1; seed <= 60; seed++) {
      RandomLog log = new RandomLog(seed);
      LogFile.Log imported = LogImport.read(log.bytes, "log.csv", new Corrections(log.right)).log();
      LogFile.Log back = LogFile.read(LogFile.writeDated(imported), "log.csv");
      assertThat(back.start()).isEqualTo(imported.start());
      assertThat(back.localStart()).isEqualTo(imported.localStart());
      assertThat(back.rows()).hasSameSizeAs(imported.rows());
      for (int i = 0; i < back.rows().size(); i++) {
        assertThat(back.rows().get(i).seconds())
            .isCloseTo(imported.rows().get(i).seconds(), within(0.0011));
        assertThat(back.rows().get(i).chamberCelsius())
            .isCloseTo(imported.rows().get(i).chamberCelsius(), within(1e-9));
      }
    }
  }
}
