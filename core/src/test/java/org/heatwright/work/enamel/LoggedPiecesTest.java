package org.heatwright.work.enamel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Logs of sessions, made here: a chamber at 820 °C that dips 70 K and comes back. */
class LoggedPiecesTest {

  private static final double WORKING = 820;

  private final SplittableRandom random = new SplittableRandom(77);

  /** A log that this test writes. */
  private record Log(
      double[] seconds, double[] celsius, double[] setpoint, List<Optional<String>> events) {
    DoorDips dips() {
      return DoorDips.find(seconds, celsius, setpoint, events);
    }
  }

  /**
   * A session.
   *
   * @param opens when the door opens, s
   * @param stepSeconds between rows
   * @param noiseKelvins of a reading
   * @param swingKelvins of a switch
   * @param told whether the log says door-open and door-shut
   */
  private Log log(
      double[] opens, double stepSeconds, double noiseKelvins, double swingKelvins, boolean told) {
    List<Double> seconds = new ArrayList<>();
    List<Double> celsius = new ArrayList<>();
    List<Optional<String>> events = new ArrayList<>();
    double end = opens[opens.length - 1] + 600;
    double dip = 0;
    for (double t = 0; t <= end + 3000; t += stepSeconds) {
      double now = t;
      boolean open = Arrays.stream(opens).anyMatch(o -> now >= o && now < o + 20);
      dip =
          open
              ? dip + (75 - dip) * (1 - Math.exp(-stepSeconds / 9))
              : dip * Math.exp(-stepSeconds / 70);
      double base = t < 3600 ? 20 + (WORKING - 20) * (1 - Math.exp(-t / 500)) : WORKING;
      double cooling = t > end ? (t - end) * 0.15 : 0;
      seconds.add(t);
      celsius.add(
          base
              - dip
              - cooling
              + noiseKelvins * random.nextGaussian()
              + swingKelvins * Math.sin(t / 40));
      Optional<String> event = Optional.empty();
      for (int i = 0; told && i < opens.length; i++) {
        if (Math.abs(t - opens[i]) < stepSeconds / 2) {
          event = Optional.of("door-open brooch " + (i + 1));
        } else if (Math.abs(t - opens[i] - 20) < stepSeconds / 2) {
          event = Optional.of("door-shut");
        }
      }
      events.add(event);
    }
    double[] all = seconds.stream().mapToDouble(d -> d).toArray();
    double[] setpoint = new double[all.length];
    Arrays.fill(setpoint, Double.NaN);
    return new Log(all, celsius.stream().mapToDouble(d -> d).toArray(), setpoint, events);
  }

  private static double[] openings(int count, double first, double apart) {
    double[] opens = new double[count];
    for (int i = 0; i < count; i++) {
      opens[i] = first + apart * i;
    }
    return opens;
  }

  private static LoggedPieces pieces(Log log) {
    return LoggedPieces.of(
        log.seconds(),
        log.celsius(),
        log.dips(),
        LoggedPieces.Openings.ONE_A_PIECE,
        PieceBody.of(EnamelMetals.COPPER, 0.0008, 0.0006, PieceBody.Underside.COUNTER_ENAMEL),
        FusingClass.MEDIUM.viscosity(),
        0,
        WORKING);
  }

  /** The trade's scenario: fourteen dips are fourteen firings, and the ninth came out too soon. */
  @Test
  void fourteenDipsAreFourteenFirings() {
    double[] opens = openings(14, 5400, 420);
    opens[9] = opens[8] + 70;
    for (int i = 10; i < 14; i++) {
      opens[i] = opens[9] + 420 * (i - 9);
    }
    Log log = log(opens, 5, 0.4, 1.5, false);

    LoggedPieces pieces = pieces(log);

    assertThat(pieces.firings()).hasSize(14);
    for (int i = 0; i < 14; i++) {
      assertThat(pieces.firings().get(i).inSeconds()).isCloseTo(opens[i] + 20, within(15.0));
    }
    assertThat(pieces.firings().stream().filter(LoggedPieces.Firing::beforeRecovery))
        .singleElement()
        .satisfies(f -> assertThat(f.number()).isEqualTo(9));
    LoggedPieces.Firing ninth = pieces.firings().get(8);
    LoggedPieces.Firing eighth = pieces.firings().get(7);
    assertThat(ninth.heatSeconds()).isLessThan(0.5 * eighth.heatSeconds());
    assertThat(ninth.look()).isLessThan(eighth.look());
    assertThat(eighth.look()).isGreaterThanOrEqualTo(Look.GLOSSY);
    assertThat(pieces.fallKelvins().median()).isCloseTo(65, within(12.0));
    assertThat(pieces.backSeconds().orElseThrow().median()).isBetween(120.0, 260.0);
  }

  /** What the log tells goes before what the reading shows, and names the piece. */
  @Test
  void toldOpeningsCountAsTheyAreTold() {
    double[] opens = openings(5, 5400, 300);
    LoggedPieces pieces = pieces(log(opens, 5, 0.4, 1, true));

    assertThat(pieces.firings()).hasSize(5);
    assertThat(pieces.firings().get(2).name()).isEqualTo("brooch 3");
    assertThat(pieces.firings().get(2).inSeconds()).isCloseTo(opens[2] + 20, within(2.6));
    assertThat(pieces.firings().get(2).openSeconds()).isCloseTo(20, within(5.1));
    assertThat(pieces.firings().get(2).staySeconds()).isCloseTo(280, within(5.1));
  }

  /** Rows of 5 to 20 s, noise and the swing of a switch make no piece and lose none. */
  @Test
  void randomSessionsAreCountedRight() {
    int right = 0;
    int sessions = 60;
    for (int n = 0; n < sessions; n++) {
      int count = 1 + random.nextInt(15);
      double[] opens = new double[count];
      double at = 5400;
      for (int i = 0; i < count; i++) {
        opens[i] = at;
        at += random.nextDouble(110, 500);
      }
      double step = random.nextInt(1, 5) * 5;
      Log log = log(opens, step, random.nextDouble(0, 1), random.nextDouble(0, 3), false);
      right += log.dips().dips().size() == count ? 1 : 0;
    }
    assertThat(right).isGreaterThanOrEqualTo(57);
  }

  /** A kiln that heats, holds and cools has no firings. */
  @Test
  void aSessionWithoutADoorHasNone() {
    Log log = log(new double[] {20_000}, 10, 0.5, 3, false);
    int rows = 1200;
    DoorDips dips =
        DoorDips.find(
            Arrays.copyOf(log.seconds(), rows),
            Arrays.copyOf(log.celsius(), rows),
            Arrays.copyOf(log.setpoint(), rows),
            log.events().subList(0, rows));

    assertThat(dips.dips()).isEmpty();
  }

  @Test
  void twoOpeningsMayBeOnePiece() {
    Log log = log(openings(6, 5400, 200), 5, 0.3, 1, false);
    LoggedPieces pieces =
        LoggedPieces.of(
            log.seconds(),
            log.celsius(),
            log.dips(),
            LoggedPieces.Openings.TWO_A_PIECE,
            PieceBody.of(EnamelMetals.COPPER, 0.0008, 0.0006, PieceBody.Underside.OXIDISED),
            FusingClass.MEDIUM.viscosity(),
            0,
            WORKING);

    assertThat(pieces.firings()).hasSize(3);
    assertThat(pieces.firings().get(1).staySeconds()).isCloseTo(180, within(20.0));
  }
}
