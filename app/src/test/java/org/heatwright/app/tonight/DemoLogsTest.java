package org.heatwright.app.tonight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.HeatingElement;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The demo studio's logs are what a kiln simulated apart would show (see {@link IndependentKiln}),
 * with power that falls from log to log. With {@code -Dheatwright.write=true} they are written
 * anew.
 */
class DemoLogsTest {

  private static final Path DEMO = Path.of("src", "main", "resources", "demo");
  static final long SEED = 4711;

  /** A log, how much of the first power is left, and how long it was watched. */
  record Made(DemoStudio.Logged logged, double power, double watchedSeconds) {}

  static List<Made> logs() {
    List<DemoStudio.Logged> logged = DemoStudio.LOGS;
    double[] power = {1, 0.985, 0.965, 0.94};
    double[] watched = {4.5 * 3600, 4 * 3600, 6 * 3600, 4.5 * 3600};
    return IntStream.range(0, logged.size())
        .mapToObj(i -> new Made(logged.get(i), power[i], watched[i]))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("logs")
  void aDemoLogIsAMinuteByMinuteReadingOfAKilnSimulatedApart(Made made) throws IOException {
    Path file = DEMO.resolve("logs").resolve(made.logged().file() + ".csv");
    double[] display = display(made);
    if (Boolean.getBoolean("heatwright.write")) {
      Files.writeString(file, csv(made, display), StandardCharsets.UTF_8);
    }
    LogFile.Log log = LogFile.read(Files.readString(file), made.logged().file());
    assertThat(log.remarks()).isEmpty();
    assertThat(log.start().orElseThrow().atZone(zone()).toLocalDate())
        .isEqualTo(made.logged().date());
    assertThat(log.rows()).hasSize((int) (made.watchedSeconds() / 60) + 1);
    for (int i = 0; i < log.rows().size(); i++) {
      assertThat(log.rows().get(i).seconds()).isEqualTo(60.0 * i);
      assertThat(log.rows().get(i).chamberCelsius()).isCloseTo(display[6 * i], within(3.0));
    }
  }

  /** From one opening to the next, s: a person is no clock, and one piece came out too soon. */
  private static final int[] APART = {120, 110, 120, 130, 120, 110, 110, 120, 120, 70, 130, 110};

  /** Six brooches, two coats each: at each opening one comes out and the next goes in. */
  private static List<IndependentKiln.Opening> openings() {
    List<IndependentKiln.Opening> all = new ArrayList<>();
    double second = 4800;
    for (int apart : APART) {
      // 45 mm of 0.8 mm copper with enamel, and 50 g of steel.
      all.add(new IndependentKiln.Opening(second, 20, 38, 0.018));
      second += apart;
    }
    all.add(new IndependentKiln.Opening(second, 20, 1, 0)); // the last one out
    return all;
  }

  /** What the enameller wrote down: who goes in. */
  private static String event(double second) {
    List<IndependentKiln.Opening> all = openings();
    for (int i = 0; i < all.size(); i++) {
      double since = second - all.get(i).atSecond();
      if (since == 0) {
        return i < APART.length
            ? "\"door-open brooch %d, coat %d, %s\""
                .formatted(i % 6 + 1, i / 6 + 1, i % 2 == 0 ? "left" : "right")
            : "door-open empty";
      } else if (since == 20) {
        return "door-shut";
      }
    }
    return "";
  }

  @Test
  void theSessionIsATenSecondReadingOfBuoySimulatedApart() throws IOException {
    double watched = 7800;
    Kiln buoy = KilnFile.read(text("kilns/buoy.yaml"), "buoy.yaml");
    double[] display =
        new IndependentKiln(buoy, Charge.empty(), buoy.room().celsius(), new Random(SEED))
            .opened(openings())
            .displayEveryTenSeconds(
                ScheduleFile.read(text("logs/enamel-evening.yaml"), "schedule"), watched);
    Path file = DEMO.resolve("logs").resolve("2026-11-20.csv");
    if (Boolean.getBoolean("heatwright.write")) {
      ZonedDateTime start = LocalDateTime.of(2026, 11, 20, 18, 30).atZone(zone());
      StringBuilder csv = new StringBuilder("time,chamber_c,event\n");
      for (int i = 0; 10 * i <= watched; i++) {
        csv.append(DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(start.plusSeconds(10L * i)))
            .append(',')
            .append(Math.round(display[i]))
            .append(',')
            .append(event(10.0 * i))
            .append('\n');
      }
      Files.writeString(file, csv.toString(), StandardCharsets.UTF_8);
    }
    LogFile.Log log = LogFile.read(Files.readString(file), "2026-11-20.csv");
    assertThat(log.remarks()).isEmpty();
    assertThat(log.rows()).hasSize((int) (watched / 10) + 1);
    for (int i = 0; i < log.rows().size(); i++) {
      assertThat(log.rows().get(i).chamberCelsius()).isCloseTo(display[i], within(3.0));
    }
  }

  private static double[] display(Made made) throws IOException {
    Kiln kiln = KilnFile.read(text("kilns/anchor.yaml"), "anchor.yaml");
    HeatingElement fresh = kiln.element();
    Kiln aged =
        new Kiln(
            kiln.name(),
            kiln.chamber(),
            new HeatingElement(
                made.power() * fresh.ratedWatts(), fresh.ratedVolts(), fresh.supplyVolts()),
            kiln.walls(),
            kiln.door(),
            kiln.limit(),
            kiln.thermocouple(),
            kiln.control(),
            kiln.room(),
            kiln.timeZone(),
            kiln.tariff(),
            kiln.circuit(),
            kiln.history());
    Schedule schedule =
        ScheduleFile.read(text("logs/" + made.logged().schedule() + ".yaml"), "schedule");
    return new IndependentKiln(aged, Charge.empty(), kiln.room().celsius(), new Random(SEED))
        .displayEveryTenSeconds(schedule, made.watchedSeconds());
  }

  private static String csv(Made made, double[] display) throws IOException {
    LocalDateTime began = made.logged().date().atTime(18, 40);
    ZonedDateTime start = began.atZone(zone());
    StringBuilder csv = new StringBuilder("time,chamber_c\n");
    for (int i = 0; 60 * i <= made.watchedSeconds(); i++) {
      csv.append(DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(start.plusMinutes(i)))
          .append(',')
          .append(Math.round(display[6 * i]))
          .append('\n');
    }
    return csv.toString();
  }

  private static ZoneId zone() {
    return ZoneId.of("Europe/Lisbon");
  }

  private static String text(String name) throws IOException {
    return Files.readString(DEMO.resolve(name));
  }
}
