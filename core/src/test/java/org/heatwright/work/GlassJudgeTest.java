package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.heatwright.forecast.InsideForecast;
import org.heatwright.forecast.PieceForecast;
import org.heatwright.inspect.Severity;
import org.heatwright.mould.Surroundings;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.SlabHistory;
import org.heatwright.units.Temperature;
import org.heatwright.work.GlassWork.Faces;
import org.heatwright.work.GlassWork.Form;
import org.heatwright.work.GlassWork.OwnTop;
import org.heatwright.work.glass.Annealing;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.Glass.Elastic;
import org.heatwright.work.glass.Glass.Family;
import org.heatwright.work.glass.GlassProcess;
import org.heatwright.work.glass.PlateStress;
import org.junit.jupiter.api.Test;

/** What the judge says of firings whose curve is given, by the glass's own curve. */
class GlassJudgeTest {

  private static final Glass ART =
      Glass.of(Family.SOFT_ART).withAnnealPoint(Temperature.ofCelsius(500));

  private static GlassWork work(GlassProcess process, double sheetMm, int layers) {
    return new GlassWork(
        ART,
        process,
        sheetMm / 1000,
        layers,
        OptionalDouble.empty(),
        0.15,
        1,
        Faces.ONE,
        process == GlassProcess.SLUMP ? Optional.of(new Form(0.18, 0.025)) : Optional.empty(),
        Optional.empty(),
        OwnTop.none(),
        OptionalDouble.empty(),
        Optional.empty(),
        DataSheet.none(),
        Optional.empty());
  }

  /** Hours and °C in turn; the kiln's gas and walls are alike. */
  private static Map<String, Outcome> judged(GlassWork work, double... hoursCelsius) {
    Composition composed = Composer.compose(work, Scenarios.capstan(), Optional.empty());
    FollowedPiece piece = composed.charge().followed().get(0);
    double[] points = hoursCelsius.clone();
    for (int i = 0; i < points.length; i += 2) {
      points[i] *= 3600;
    }
    double end = points[points.length - 2];
    SlabHistory history =
        SlabHistory.of(piece.slab(), Surroundings.points(points), Temperature.ofCelsius(20), end);
    PieceForecast forecast =
        new PieceForecast(piece, List.of(history), List.of(new InsideForecast.Day(end, 0)));
    return composed.judge().outcomes(composed.schedule(), List.of(forecast)).stream()
        .collect(Collectors.toMap(Outcome::code, Function.identity()));
  }

  private static Optional<Severity> severity(Map<String, Outcome> outcomes, String code) {
    return outcomes.get(code).severity();
  }

  /** A careful firing of 2 x 3 mm by hand: nothing to say against it. */
  @Test
  void aCarefulFuseIsSound() {
    Map<String, Outcome> all =
        judged(
            work(GlassProcess.FULL_FUSE, 3, 2),
            0,
            20,
            3.6,
            640,
            4.1,
            640,
            4.65,
            800,
            4.9,
            800,
            5.3,
            500,
            6.2,
            500,
            7.0,
            420,
            7.5,
            350,
            12,
            80,
            14,
            60);
    assertThat(all.values()).allMatch(o -> o.severity().isEmpty());
    assertThat(all.get("flow").value()).contains("full fuse");
    assertThat(all.get("left-stress").value()).contains("MPa");
    assertThat(all.keySet())
        .containsExactlyInAnyOrder(
            "hottest",
            "flow",
            "heating-tension",
            "anneal-soak",
            "slow-range-difference",
            "left-stress",
            "devitrification",
            "opening");
    assertThat(all.get("flow").meaning()).contains("strips");
    assertThat(all.get("left-stress").meaning()).contains("polarisers");
  }

  /** Ten minutes less of heat in three ways. */
  @Test
  void tooLittleAndTooMuchHeat() {
    Map<String, Outcome> cold =
        judged(
            work(GlassProcess.FULL_FUSE, 3, 2),
            0,
            20,
            4,
            700,
            4.2,
            700,
            4.6,
            500,
            6,
            500,
            7,
            400,
            12,
            60);
    assertThat(severity(cold, "flow")).contains(Severity.WARN);
    assertThat(cold.get("flow").meaning()).contains("comes only to");
    Map<String, Outcome> hot =
        judged(
            work(GlassProcess.TACK, 3, 2),
            0,
            20,
            4,
            820,
            4.5,
            820,
            5,
            500,
            7,
            500,
            12,
            400,
            20,
            60);
    assertThat(hot.get("flow").meaning()).contains("goes further");
    Map<String, Outcome> blistered =
        judged(
            work(GlassProcess.FULL_FUSE, 3, 2),
            0,
            20,
            4,
            910,
            4.5,
            910,
            5,
            500,
            7,
            500,
            12,
            400,
            20,
            60);
    assertThat(severity(blistered, "hottest")).contains(Severity.STOP);
  }

  @Test
  void aSlumpByItsDose() {
    GlassWork bowl = work(GlassProcess.SLUMP, 6, 1);
    assertThat(
            severity(
                judged(bowl, 0, 20, 3.5, 560, 3.6, 560, 4, 500, 5, 500, 6, 400, 10, 60), "slump"))
        .contains(Severity.WARN);
    assertThat(
            severity(
                judged(bowl, 0, 20, 3.5, 650, 3.7, 650, 4, 500, 5, 500, 6, 400, 10, 60), "slump"))
        .isEmpty();
    Map<String, Outcome> long700 =
        judged(bowl, 0, 20, 3.5, 720, 5.5, 720, 6, 500, 7, 500, 8, 400, 12, 60);
    assertThat(severity(long700, "slump")).contains(Severity.WARN);
    assertThat(long700.get("slump").meaning()).contains("rim");
  }

  /** 19 mm that comes down as thin sheet may: the soak is counted in the glass and falls short. */
  @Test
  void thickGlassCooledAsThin() {
    Map<String, Outcome> all =
        judged(work(GlassProcess.ANNEAL, 19, 1), 0, 20, 4, 500, 4.5, 500, 5.5, 400, 8, 60);
    assertThat(severity(all, "anneal-soak")).contains(Severity.WARN);
    assertThat(severity(all, "slow-range-difference")).contains(Severity.WARN);
    assertThat(severity(all, "left-stress")).isPresent();
    assertThat(all).doesNotContainKey("devitrification");
  }

  @Test
  void thickGlassHeatedInAMinuteIsStopped() {
    Map<String, Outcome> all =
        judged(work(GlassProcess.ANNEAL, 25, 1), 0, 20, 0.05, 500, 4, 500, 30, 420, 40, 60);
    assertThat(severity(all, "heating-tension")).contains(Severity.STOP);
  }

  @Test
  void aCurveThatEndsHotIsNotTold() {
    Map<String, Outcome> all =
        judged(work(GlassProcess.FULL_FUSE, 3, 2), 0, 20, 4, 800, 4.3, 800, 5, 500, 6, 500);
    assertThat(all.get("left-stress").value()).isEqualTo("not told");
    assertThat(severity(all, "opening")).contains(Severity.WARN);
  }

  @Test
  void anHourWhereItDevitrifiesIsTold() {
    Map<String, Outcome> all =
        judged(
            work(GlassProcess.TACK, 3, 2),
            0,
            20,
            4,
            700,
            6,
            740,
            6.5,
            500,
            8,
            500,
            14,
            400,
            20,
            60);
    assertThat(severity(all, "devitrification")).contains(Severity.WARN);
  }

  /**
   * The whole chain of numbers on one plate: 12 mm at a steady 23.4 K/h in a kiln, by the solver of
   * the slab and the flowing plate, against the closed form's 0.3 MPa. The plate's conduction is
   * that of a glass at 500 °C (5.0e-7 m²/s, not the table's 4.2e-7), which the form gets too.
   */
  @Test
  void aSteadilyCooledSlabComesToTheClosedForm() {
    GlassWork slab = work(GlassProcess.ANNEAL, 12, 1);
    Composition composed = Composer.compose(slab, Scenarios.capstan(), Optional.empty());
    FollowedPiece piece = composed.charge().followed().get(0);
    double hours = 250 / 23.4;
    SlabHistory history =
        SlabHistory.of(
            piece.slab(),
            Surroundings.points(
                0, 560, 3600, 560, 3600 + hours * 3600, 310, 3600 + hours * 3600 + 36_000, 310),
            Temperature.ofCelsius(560),
            3600 + hours * 3600 + 36_000);
    PlateStress left =
        PlateStress.follow(
                Elastic.ART,
                ART.viscosities().usual(),
                0.012,
                history::celsiusAt,
                history.endSecond())
            .held();
    double conduction =
        piece.slab().layers().get(0).material().conductivityWattsPerMetreKelvin().at(480);
    double heat =
        piece.slab().layers().get(0).material().heatCapacityJoulesPerKilogramKelvin().at(480);
    Elastic same = new Elastic(70e9, 0.22, 9e-6, conduction / (2500 * heat), Elastic.ART.origin());
    double closed =
        Annealing.tensionPascals(
            same, 0.012, org.heatwright.units.HeatingRate.ofKelvinsPerHour(23.4));
    assertThat(left.endTensionPascals()).isCloseTo(closed, within(0.05 * closed));
  }
}
