package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.GlassWork.Faces;
import org.heatwright.work.GlassWork.OwnTop;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.Glass.Expansion;
import org.heatwright.work.glass.Glass.Family;
import org.heatwright.work.glass.GlassProcess;
import org.junit.jupiter.api.Test;

class GlassComposerTest {

  private static GlassWork work(Glass glass, GlassProcess process, double sheetMm, int layers) {
    return new GlassWork(
        glass,
        process,
        sheetMm / 1000,
        layers,
        OptionalDouble.empty(),
        0.15,
        1,
        Faces.ONE,
        Optional.empty(),
        Optional.empty(),
        OwnTop.none(),
        OptionalDouble.empty(),
        Optional.empty(),
        DataSheet.none(),
        Optional.empty());
  }

  private static GlassWork withOwn(GlassWork work, OwnTop own, DataSheet sheet) {
    return new GlassWork(
        work.glass(),
        work.process(),
        work.sheetMetres(),
        work.layers(),
        work.thinnestMetres(),
        work.pieceMetres(),
        work.pieces(),
        work.faces(),
        work.form(),
        work.accent(),
        own,
        work.tensionPascals(),
        work.annealSoak(),
        sheet,
        work.readyBy());
  }

  private static Composition compose(GlassWork work) {
    return Composer.compose(work, Scenarios.capstan(), Optional.empty());
  }

  private static Segment segment(Composition composition, String purpose) {
    int number =
        composition.reasons().stream()
            .filter(r -> r.purpose().equals(purpose))
            .findFirst()
            .orElseThrow()
            .segment();
    return composition.schedule().segments().get(number - 1);
  }

  private static double rate(Segment segment) {
    return segment.ramp().rate().orElseThrow().kelvinsPerHour();
  }

  /**
   * Question 16 of the trade's twenty: a 19 mm disc, fused, face down on a shelf, annealing point
   * from the maker. One face at 0.3 MPa: 9.3 K/h (implementers' sheet CHK-E2), keyed as 9.
   */
  @Test
  void theNineteenMillimetreDisc() {
    GlassWork disc =
        work(
            Glass.of(Family.SOFT_ART).withAnnealPoint(Temperature.ofCelsius(482)),
            GlassProcess.ANNEAL,
            19,
            1);
    assertThat(disc.effectiveMetres()).isEqualTo(0.019);
    assertThat(disc.depthMetres()).isEqualTo(0.019);
    Composition composed = compose(disc);
    Segment soak = segment(composed, "anneal soak");
    assertThat(soak.target().celsius()).isEqualTo(482);
    assertThat(soak.hold()).isEqualTo(Duration.ofMinutes(115));
    Segment slow = segment(composed, "cool slowly");
    assertThat(slow.target().celsius()).isEqualTo(482 - 37 - 20);
    assertThat(rate(slow)).isEqualTo(9);
    assertThat(rate(segment(composed, "cool further"))).isEqualTo(18);
    Segment door = segment(composed, "cool to the door");
    assertThat(rate(door)).isEqualTo(45);
    assertThat(door.target().celsius()).isEqualTo(50);
    assertThat(composed.schedule().segments()).hasSize(4);
    Duration paper = composed.schedule().nominalTime(Temperature.ofCelsius(18)).total();
    assertThat(paper).isBetween(Duration.ofHours(18), Duration.ofHours(24));
    assertThat(composed.reasons()).allMatch(r -> !r.rule().isBlank() && !r.purpose().isBlank());
    assertThat(composed.cautions())
        .extracting(Caution::code)
        .contains("hot-opening", "shelf-dust", "sharp-edges", "power-cut")
        .doesNotContain("anneal-point-unknown", "glare");
  }

  /** Read: tack-fused pieces cool as twice the thickest; from one face as twice again. */
  @Test
  void tackIsTreatedAsTwiceAsThick() {
    Glass art = Glass.of(Family.SOFT_ART);
    GlassWork tack = work(art, GlassProcess.TACK, 3, 2);
    assertThat(tack.effectiveMetres()).isEqualTo(0.012);
    assertThat(rate(segment(compose(tack), "cool slowly"))).isEqualTo(20); // 23.4 by the table
    GlassWork full = work(art, GlassProcess.FULL_FUSE, 3, 2);
    assertThat(rate(segment(compose(full), "cool slowly"))).isEqualTo(90); // 93.6 by the table
  }

  @Test
  void withoutAMakersFigureTheWholeRangeIsCooledSlowly() {
    Composition composed = compose(work(Glass.of(Family.UNKNOWN), GlassProcess.ANNEAL, 6, 1));
    assertThat(segment(composed, "anneal soak").target().celsius()).isEqualTo(555);
    assertThat(segment(composed, "cool slowly").target().celsius()).isEqualTo(477 - 57);
    assertThat(composed.cautions()).extracting(Caution::code).contains("anneal-point-unknown");
  }

  /** The number for expansion changes the stress, never the soak. */
  @Test
  void anExpansionDoesNotMoveTheSoak() {
    Glass low =
        new Glass(
            Family.SOFT_ART,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(new Expansion(8.2e-6)));
    Glass high =
        new Glass(
            Family.SOFT_ART,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(new Expansion(10.4e-6)));
    Composition one = compose(work(low, GlassProcess.FULL_FUSE, 3, 4));
    Composition two = compose(work(high, GlassProcess.FULL_FUSE, 3, 4));
    assertThat(segment(one, "anneal soak")).isEqualTo(segment(two, "anneal soak"));
    assertThat(rate(segment(one, "cool slowly"))).isGreaterThan(rate(segment(two, "cool slowly")));
  }

  @Test
  void aFullFuseGoesUpSlowlyLetsTheAirOutAndComesDownQuickly() {
    Composition composed = compose(work(Glass.of(Family.SOFT_ART), GlassProcess.FULL_FUSE, 3, 2));
    List<Segment> segments = composed.schedule().segments();
    assertThat(segments).hasSize(6);
    assertThat(segments.get(0).target().celsius()).isEqualTo(640);
    assertThat(rate(segments.get(0))).isEqualTo(170);
    assertThat(segments.get(0).hold()).isEqualTo(Duration.ofMinutes(30));
    assertThat(segments.get(1).target().celsius()).isEqualTo(800);
    assertThat(segments.get(1).hold()).isEqualTo(Duration.ofMinutes(15));
    assertThat(segments.get(2).ramp()).isEqualTo(Ramp.fastest());
    assertThat(segments.get(2).target().celsius()).isEqualTo(515);
    assertThat(composed.cautions())
        .extracting(Caution::code)
        .contains("glare", "devitrification", "anneal-point-unknown");
  }

  /** Float is stiffer: practice's temperatures move up with its annealing point. */
  @Test
  void floatIsFusedHotter() {
    double art =
        segment(compose(work(Glass.of(Family.SOFT_ART), GlassProcess.TACK, 3, 2)), "tack fuse")
            .target()
            .celsius();
    double plate =
        segment(compose(work(Glass.of(Family.FLOAT), GlassProcess.TACK, 3, 2)), "tack fuse")
            .target()
            .celsius();
    assertThat(plate - art).isCloseTo(33, within(1.0));
  }

  @Test
  void ownValuesAndSheetsGoFirst() {
    GlassWork base = work(Glass.of(Family.SOFT_ART), GlassProcess.FULL_FUSE, 3, 2);
    DataSheet sheet =
        DataSheet.none()
            .withTop(Temperature.ofCelsius(809), Duration.ofMinutes(12))
            .withFastestRise(HeatingRate.ofKelvinsPerHour(220), HeatingRate.ofKelvinsPerHour(220));
    Segment top = segment(compose(withOwn(base, OwnTop.none(), sheet)), "full fuse");
    assertThat(top.target().celsius()).isEqualTo(809);
    assertThat(top.hold()).isEqualTo(Duration.ofMinutes(12));
    assertThat(rate(compose(withOwn(base, OwnTop.none(), sheet)).schedule().segments().get(0)))
        .isEqualTo(220);
    OwnTop own =
        new OwnTop(Optional.of(Temperature.ofCelsius(795)), Optional.of(Duration.ofMinutes(20)));
    Segment mine = segment(compose(withOwn(base, own, sheet)), "full fuse");
    assertThat(mine.target().celsius()).isEqualTo(795);
    assertThat(mine.hold()).isEqualTo(Duration.ofMinutes(20));
  }

  @Test
  void aCoolerLimitIsMadeUpByTheHold() {
    GlassWork base = work(Glass.of(Family.SOFT_ART), GlassProcess.FULL_FUSE, 3, 2);
    Segment capped =
        segment(
            compose(withOwn(base, OwnTop.none(), DataSheet.ofMax(Temperature.ofCelsius(785)))),
            "full fuse");
    assertThat(capped.target().celsius()).isEqualTo(785);
    assertThat(capped.hold()).isBetween(Duration.ofMinutes(20), Duration.ofMinutes(35));
    assertThatThrownBy(
            () ->
                compose(withOwn(base, OwnTop.none(), DataSheet.ofMax(Temperature.ofCelsius(700)))))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessage(
            "A full fuse of soft art glass wants 793 °C to 804 °C, above 700 °C for soft art glass.");
  }

  @Test
  void whatCannotBeIsRefusedInASentence() {
    GlassWork base = work(Glass.of(Family.SOFT_ART), GlassProcess.FULL_FUSE, 3, 2);
    OwnTop inFahrenheit = new OwnTop(Optional.of(Temperature.ofCelsius(1470)), Optional.empty());
    assertThatThrownBy(() -> compose(withOwn(base, inFahrenheit, DataSheet.none())))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("1470 °F is 799 °C");
    assertThatThrownBy(() -> compose(work(Glass.of(Family.SOFT_ART), GlassProcess.TACK, 30, 2)))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageStartingWith("Glass treated as 120 mm would have to cool for ")
        .hasMessageEndingWith("make it thinner or let it cool from both faces.");
    assertThatThrownBy(() -> work(Glass.of(Family.SOFT_ART), GlassProcess.ANNEAL, 35, 2))
        .hasMessage("The glass (70 mm thick) is thicker than the 60 mm that are planned here.");
  }

  @Test
  void twoExpansionsAreTold() {
    GlassWork base = work(Glass.of(Family.SOFT_ART), GlassProcess.FULL_FUSE, 3, 2);
    GlassWork two =
        new GlassWork(
            base.glass(),
            base.process(),
            base.sheetMetres(),
            base.layers(),
            base.thinnestMetres(),
            base.pieceMetres(),
            base.pieces(),
            base.faces(),
            base.form(),
            Optional.of(new Expansion(9.6e-6)),
            base.own(),
            base.tensionPascals(),
            base.annealSoak(),
            base.dataSheet(),
            base.readyBy());
    assertThat(compose(two).cautions())
        .filteredOn(c -> c.code().equals("compatibility"))
        .singleElement()
        .satisfies(
            c -> assertThat(c.message()).contains("they do not go together").contains("MPa"));
  }

  // ---- the inspector on other people's schedules

  private static List<String> findings(GlassWork work, List<Segment> segments) {
    Composition composed = compose(work);
    return Inspector.inspect(
            Inspection.of(Schedule.of("s", org.heatwright.units.TemperatureUnit.CELSIUS, segments))
                .in(Scenarios.capstan())
                .forWork(composed.demands()))
        .stream()
        .filter(f -> f.severity() != Severity.NOTE)
        .map(Finding::code)
        .toList();
  }

  private static Segment to(double rate, double celsius, int minutes) {
    return new Segment(
        rate == 0 ? Ramp.fastest() : Ramp.at(HeatingRate.ofKelvinsPerHour(rate)),
        Temperature.ofCelsius(celsius),
        Duration.ofMinutes(minutes));
  }

  @Test
  void aScheduleForThinGlassIsStoppedForThick() {
    GlassWork thin = work(Glass.of(Family.SOFT_ART), GlassProcess.FULL_FUSE, 3, 2);
    GlassWork thick = work(Glass.of(Family.SOFT_ART), GlassProcess.FULL_FUSE, 3, 6);
    List<Segment> own = compose(thin).schedule().segments();
    assertThat(findings(thin, own)).isEmpty();
    assertThat(findings(thick, own))
        .contains("glass-cracks", "short-anneal-soak", "cools-too-fast");
  }

  @Test
  void aScheduleThatEndsHotIsTold() {
    GlassWork thin = work(Glass.of(Family.SOFT_ART), GlassProcess.FULL_FUSE, 3, 2);
    assertThat(findings(thin, List.of(to(150, 640, 30), to(300, 800, 15), to(0, 515, 60))))
        .contains("ends-hot");
    assertThat(findings(thin, List.of(to(150, 640, 30), to(300, 800, 15), to(0, 60, 0))))
        .contains("cools-too-fast", "short-anneal-soak");
  }
}
