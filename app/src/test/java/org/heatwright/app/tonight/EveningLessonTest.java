package org.heatwright.app.tonight;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What the demo's evening of enamel teaches of kiln Buoy, beside the kiln that made the log (see
 * {@link IndependentKiln} and {@link DemoLogsTest}).
 */
class EveningLessonTest {

  private static final Schedule NEXT =
      Schedule.of(
          "next",
          TemperatureUnit.CELSIUS,
          List.of(
              new Segment(
                  Ramp.at(HeatingRate.ofKelvinsPerHour(300)),
                  Temperature.ofCelsius(500),
                  Duration.ofMinutes(30)),
              new Segment(Ramp.fastest(), Temperature.ofCelsius(900), Duration.ofMinutes(20))));

  private static Kiln buoy;
  private static Lesson told;
  private static Lesson read;

  @BeforeAll
  static void learn() throws IOException {
    Locale.setDefault(Locale.ROOT);
    buoy = KilnFile.read(text("kilns/buoy.yaml"), "buoy.yaml");
    String csv = text("logs/2026-11-20.csv");
    told = learned(csv);
    read = learned(csv.replaceAll("(?m),\"?door.*$", ","));
  }

  private static Lesson learned(String csv) throws IOException {
    LogFile.Log log = LogFile.read(csv, "evening");
    LoggedFiring firing =
        WatchedFiring.opened(
            new LoggedFiring(
                "evening",
                ScheduleFile.read(text("logs/enamel-evening.yaml"), "schedule"),
                FiringConditions.usual(),
                Charge.empty(),
                WatchedFiring.readings(log)),
            log);
    return KilnLearner.learn(buoy, List.of(LogAlignment.of(buoy, firing).firing()));
  }

  @Test
  void truth() throws IOException {
    Map<KilnQuantity, Double> hidden = kiln().hidden();
    for (Lesson lesson : List.of(told, read)) {
      hidden.forEach(
          (q, v) -> {
            double score = lesson.beliefs().score(q);
            double sd = lesson.beliefs().ignoranceFactor(q);
            System.out.printf(
                "%s true %.3f now %.3f sd %.2f, off %.1f of it, before %.1f%n",
                q, v, q.value(score), sd, (score - q.score(v)) / sd, q.score(v));
          });
      System.out.println(lesson.openings().get(0).words());
      for (Kiln k : List.of(buoy, known(lesson))) {
      Forecast f = Forecaster.forecast(ForecastRequest.of(NEXT, k, Charge.empty()));
      double[] display = kiln().displayEveryTenSeconds(NEXT, 12_000);
      double sum = 0; int in = 0; int n = 0;
      for (int i = 0; i < 11000/10; i += 1) { Band b = f.trace().displayCelsiusAt(10.0*i); n++; sum += Math.pow(b.median()-display[i],2); if (display[i]>=b.low()&&display[i]<=b.high()) in++; }
      System.out.printf("arrived %s rms %.1f in %d of %d%n", f.segments().get(1).arrivedSeconds(), Math.sqrt(sum/n), in, n);
      double at=-1; for (int i=0;i<display.length;i++) if(display[i]>=897){at=10.0*i;break;}
      System.out.printf("true %.0f%n", at);
      }
    }
  }

  private static Kiln known(Lesson lesson) {
    return buoy.withLearned(
        new Learned(LocalDate.of(2026, 11, 21), 1, Learned.ENGINE, lesson.beliefs()));
  }

  private static IndependentKiln kiln() {
    return new IndependentKiln(
        buoy, Charge.empty(), buoy.room().celsius(), new Random(DemoLogsTest.SEED));
  }

  private static String text(String name) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(EveningLessonTest.class.getResourceAsStream("/demo/" + name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
