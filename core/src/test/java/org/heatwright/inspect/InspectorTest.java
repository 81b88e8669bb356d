package org.heatwright.inspect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.forecast.WorkForecast;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.kiln.Circuit;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Thermocouple;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.sensing.ToleranceClass;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Composer;
import org.heatwright.work.DataSheet;
import org.heatwright.work.Scenarios;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class InspectorTest {

  /** Three 90 mm moulds, wax, gypsum-bonded, sterling poured into 500 °C. */
  private static final Demands MOULDS =
      Composer.compose(Scenarios.threeNineties(), Scenarios.capstan(), Optional.empty()).demands();

  private static final Segment DRY = at(120, 150, 120);
  private static final Segment WAX_OUT = at(100, 370, 120);
  private static final Segment TOP = at(150, 730, 180);
  private static final Segment POUR = at(200, 500, 90);

  @Test
  void aSoundScheduleFindsNothing() {
    assertThat(inspect(celsius(DRY, WAX_OUT, TOP, POUR))).isEmpty();
  }

  @Test
  void aboveTheKilnsLimitStops() {
    Schedule schedule = celsius(at(300, 1120, 10));
    List<Finding> findings = Inspector.inspect(Inspection.of(schedule).in(Scenarios.capstan()));
    assertOne(findings, "above-kiln-limit", Severity.STOP, 1);
    assertThat(of(findings, "above-kiln-limit").message()).contains("1120 °C", "1100 °C");
    assertNone(
        Inspector.inspect(Inspection.of(celsius(at(300, 1100, 10))).in(Scenarios.capstan())),
        "above-kiln-limit");
  }

  @Test
  void aboveTheBindersLimitStopsAndNearItWarns() {
    assertOne(
        inspect(celsius(DRY, WAX_OUT, at(150, 800, 180), POUR)),
        "above-work-limit",
        Severity.STOP,
        3);
    List<Finding> near = inspect(celsius(DRY, WAX_OUT, at(150, 760, 180), POUR));
    assertOne(near, "near-work-limit", Severity.WARN, 3);
    assertNone(near, "above-work-limit");
  }

  @Test
  void theDataSheetsLimitGoesBeforeTheBinders() {
    Demands demands =
        Composer.compose(
                Scenarios.burnout(
                    Scenarios.threeNineties().moulds(),
                    DataSheet.ofMax(Temperature.ofCelsius(720))),
                Scenarios.capstan(),
                Optional.empty())
            .demands();
    List<Finding> findings =
        Inspector.inspect(Inspection.of(celsius(DRY, WAX_OUT, TOP, POUR)).forWork(demands));
    assertOne(findings, "above-work-limit", Severity.STOP, 3);
    assertThat(of(findings, "above-work-limit").message()).contains("data sheet");
  }

  @Test
  void aSoundFahrenheitScheduleFindsNothing() {
    assertThat(
            inspect(
                Schedule.of(
                    "moulds",
                    TemperatureUnit.FAHRENHEIT,
                    List.of(
                        fahrenheit(210, 300, 120),
                        fahrenheit(180, 700, 120),
                        fahrenheit(270, 1350, 180),
                        fahrenheit(360, 930, 90)))))
        .isEmpty();
  }

  // ---- the unit trap

  @Test
  void a1500FahrenheitNumberInACelsiusFileIsNamed() {
    for (Inspection inspection :
        List.of(
            Inspection.of(celsius(at(300, 1500, 10))),
            Inspection.of(celsius(at(300, 1500, 10))).in(Scenarios.capstan()))) {
      List<Finding> findings = Inspector.inspect(inspection);
      assertOne(findings, "unit-mistaken", Severity.STOP, 1);
      assertThat(of(findings, "unit-mistaken").message())
          .contains("1500 reads like °F: 1500 °F is 816 °C");
    }
  }

  @Test
  void aWholeFahrenheitFileCalledCelsiusIsNamed() {
    Schedule schedule =
        celsius(at(120, 300, 120), at(180, 700, 120), at(270, 1350, 180), at(360, 930, 90));
    List<Finding> findings = inspect(schedule);
    assertThat(findings)
        .filteredOn(f -> f.code().equals("unit-mistaken"))
        .extracting(f -> f.segment().getAsInt())
        .containsExactly(3, 4);
    assertThat(of(findings, "unit-mistaken").message()).contains("1350 °F is 732 °C");
  }

  @Test
  void aWholeCelsiusFileCalledFahrenheitIsNamed() {
    Schedule schedule =
        Schedule.of(
            "moulds",
            TemperatureUnit.FAHRENHEIT,
            List.of(
                fahrenheit(120, 150, 120),
                fahrenheit(100, 370, 120),
                fahrenheit(150, 732, 180),
                fahrenheit(200, 480, 90)));
    List<Finding> findings = inspect(schedule);
    assertThat(findings)
        .filteredOn(f -> f.code().equals("unit-mistaken"))
        .extracting(f -> f.segment().getAsInt())
        .containsExactly(3, 4);
    assertThat(findings.get(0).message())
        .contains("732 reads like °C", "schedule is in °F", "389 °C");
  }

  /** 900 °F is 482 °C; as 900 °C it is past the binder. */
  @Test
  void nineHundredMeantInFahrenheitKeyedIntoCelsiusIsCaught() {
    List<Finding> findings = inspect(celsius(DRY, WAX_OUT, TOP, at(200, 900, 90)));
    assertOne(findings, "unit-mistaken", Severity.STOP, 4);
    assertThat(of(findings, "unit-mistaken").message()).contains("900 °F is 482 °C");
    assertOne(findings, "above-work-limit", Severity.STOP, 4);
  }

  @Test
  void fourHundredEightyCelsiusKeyedIntoFahrenheitIsCaught() {
    Schedule schedule =
        Schedule.of(
            "moulds",
            TemperatureUnit.FAHRENHEIT,
            List.of(
                fahrenheit(210, 300, 120),
                fahrenheit(180, 700, 120),
                fahrenheit(270, 1350, 180),
                fahrenheit(360, 480, 90)));
    List<Finding> findings = inspect(schedule);
    assertOne(findings, "unit-mistaken", Severity.STOP, 4);
    assertThat(of(findings, "unit-mistaken").message()).contains("480 reads like °C", "249 °C");
  }

  @ParameterizedTest
  @ValueSource(doubles = {700, 780, 840, 900, 930, 1000})
  void workThatMaySeeNineHundredRaisesNoFalseAlarm(double celsius) {
    Demands copper =
        Composer.compose(Scenarios.quaysideEnamel().work(), Scenarios.buoy(), Optional.empty())
            .demands();
    Schedule schedule =
        celsius(new Segment(Ramp.fastest(), Temperature.ofCelsius(celsius), hours(3)));
    assertThat(Inspector.inspect(Inspection.of(schedule).in(Scenarios.buoy()).forWork(copper)))
        .extracting(Finding::code)
        .containsExactly("couple-tolerance");
    assertThat(
            Inspector.inspect(
                Inspection.of(schedule.withUnit(TemperatureUnit.FAHRENHEIT))
                    .in(Scenarios.buoy())
                    .forWork(copper)))
        .extracting(Finding::code)
        .containsExactly("couple-tolerance");
  }

  @Test
  void withoutKnownWorkANumberThatFitsBothUnitsIsOnlyANote() {
    List<Finding> findings =
        Inspector.inspect(Inspection.of(celsius(at(600, 900, 10))).in(Scenarios.capstan()));
    assertThat(findings)
        .extracting(Finding::code)
        .containsExactly("unit-unproven", "couple-tolerance");
    assertThat(findings.get(0).severity()).isEqualTo(Severity.NOTE);
    assertThat(findings.get(0).message()).contains("900 °F which is 482 °C");
  }

  @Test
  void aRateMeantInFahrenheitIsNamedWhereItWouldFit() {
    List<Finding> findings = inspect(celsius(at(250, 150, 120), WAX_OUT, TOP, POUR));
    assertThat(of(findings, "wet-ramp-too-fast").message())
        .contains("If 250 was meant in °F/h, that is 138.9 °C/h");
  }

  // ---- the work

  @Test
  void aWetMouldThroughBoilingTooFastIsFound() {
    assertOne(
        inspect(celsius(at(200, 150, 120), WAX_OUT, TOP, POUR)),
        "wet-ramp-too-fast",
        Severity.WARN,
        1);
    assertOne(
        inspect(celsius(at(400, 150, 120), WAX_OUT, TOP, POUR)),
        "wet-ramp-too-fast",
        Severity.STOP,
        1);
    assertOne(
        inspect(celsius(fastest(150, 120), WAX_OUT, TOP, POUR)),
        "wet-ramp-too-fast",
        Severity.STOP,
        1);
  }

  @Test
  void inversionsTakenTooFastAreFound() {
    List<Finding> cristobalite =
        inspect(celsius(DRY, at(120, 205, 10), at(250, 370, 120), TOP, POUR));
    assertOne(cristobalite, "inversion-too-fast", Severity.WARN, 3);
    assertThat(of(cristobalite, "inversion-too-fast").message()).contains("220 °C to 280 °C");
    List<Finding> quartz = inspect(celsius(DRY, WAX_OUT, at(300, 730, 180), POUR));
    assertOne(quartz, "inversion-too-fast", Severity.WARN, 3);
    assertThat(of(quartz, "inversion-too-fast").message()).contains("560 °C to 590 °C");
  }

  @Test
  void coolingIsNotARise() {
    assertThat(inspect(celsius(DRY, WAX_OUT, TOP, at(900, 500, 90)))).isEmpty();
  }

  @Test
  void holdsThatAreTooShortAreFound() {
    assertOne(
        inspect(celsius(DRY, WAX_OUT, at(150, 730, 60), POUR)), "short-top-hold", Severity.WARN, 0);
    assertOne(
        inspect(celsius(at(120, 150, 0), WAX_OUT, TOP, POUR)), "short-dry-hold", Severity.WARN, 0);
    // A slow enough ramp dries as well as a hold.
    assertNone(inspect(celsius(at(30, 200, 0), at(100, 370, 120), TOP, POUR)), "short-dry-hold");
  }

  @Test
  void noSoakAtThePourTemperatureIsFound() {
    assertOne(
        inspect(celsius(DRY, WAX_OUT, TOP, at(200, 500, 0))), "no-pour-soak", Severity.WARN, 4);
    assertOne(
        inspect(celsius(DRY, WAX_OUT, TOP, at(200, 500, 30))), "short-pour-soak", Severity.WARN, 4);
    assertOne(inspect(celsius(DRY, WAX_OUT, TOP)), "not-at-pour-temperature", Severity.WARN, 3);
  }

  @Test
  void aSoakMayGoOnInAnotherSegment() {
    assertNone(
        inspect(celsius(DRY, WAX_OUT, TOP, at(200, 500, 40), at(200, 500, 40))), "short-pour-soak");
  }

  // ---- the keypad

  @Test
  void whatTheKeypadCannotDoStopsAndWhatItRoundsIsNoted() {
    List<Finding> findings =
        Inspector.inspect(
            Inspection.of(celsius(DRY, at(0.5, 370, 120), at(150, 1250, 1200), at(200, 500.5, 90)))
                .on(TestKeypads.digits()));
    assertThat(findings)
        .filteredOn(f -> f.code().equals("keypad-refuses"))
        .allSatisfy(f -> assertThat(f.severity()).isEqualTo(Severity.STOP))
        .extracting(f -> f.segment().getAsInt())
        .containsExactly(2, 3, 3); // the rate; the target and the hold
    assertOne(findings, "keypad-rounds", Severity.NOTE, 4);
  }

  @Test
  void moreSegmentsThanTheKeypadHoldsStop() {
    List<Segment> many = new ArrayList<>();
    for (int i = 1; i <= 13; i++) {
      many.add(at(50, 20 + 50 * i, 0));
    }
    List<Finding> findings =
        Inspector.inspect(
            Inspection.of(celsius(many.toArray(Segment[]::new))).on(TestKeypads.digits()));
    assertOne(findings, "keypad-refuses", Severity.STOP, 0);
    assertThat(of(findings, "keypad-refuses").message()).contains("13 segments", "holds 12");
  }

  @Test
  void aLastTargetThatIsKeptIsASoak() {
    Schedule kept =
        new Schedule(
            "moulds",
            TemperatureUnit.CELSIUS,
            List.of(DRY, WAX_OUT, TOP, at(200, 500, 0)),
            Duration.ZERO,
            AtEnd.KEEP);
    assertThat(inspect(kept)).isEmpty();
  }

  @Test
  void coolingThroughTheInversionAndHeatingAgainIsFound() {
    List<Finding> findings = inspect(celsius(DRY, WAX_OUT, TOP, at(200, 250, 0), at(100, 500, 90)));
    assertOne(findings, "reheat-after-cooling", Severity.WARN, 5);
    assertNone(
        inspect(celsius(DRY, WAX_OUT, TOP, at(200, 300, 0), at(100, 500, 90))),
        "reheat-after-cooling");
  }

  @Test
  void aLongWaitWithWetMouldsIsFound() {
    Schedule schedule = celsius(DRY, WAX_OUT, TOP, POUR);
    assertOne(inspect(schedule.withStartDelay(hours(9))), "dries-while-waiting", Severity.WARN, 0);
    assertThat(inspect(schedule.withStartDelay(hours(7)))).isEmpty();
  }

  // ---- the schedule itself

  @Test
  void aTargetThatDoesNotChangeIsFound() {
    assertOne(
        inspect(celsius(DRY, WAX_OUT, TOP, at(150, 730, 60), POUR)),
        "goes-nowhere",
        Severity.WARN,
        4);
    assertOne(
        Inspector.inspect(Inspection.of(celsius(at(100, 20, 60)))),
        "goes-nowhere",
        Severity.WARN,
        1);
  }

  @Test
  void aTargetBelowTheRoomAndALongHoldAreFound() {
    assertOne(
        Inspector.inspect(Inspection.of(celsius(at(100, 300, 60), at(100, 10, 0)))),
        "below-room",
        Severity.WARN,
        2);
    assertOne(
        Inspector.inspect(Inspection.of(celsius(at(100, 150, 20 * 60)))),
        "long-hold",
        Severity.NOTE,
        1);
  }

  // ---- the circuit

  @Test
  void anOverloadedCircuitStopsAndANearlyFullOneIsNoted() {
    Schedule schedule = celsius(DRY, WAX_OUT, TOP, POUR);
    assertOne(circuit(schedule, 10), "circuit-overloaded", Severity.STOP, 0);
    List<Finding> near = circuit(schedule, 16);
    assertOne(near, "circuit-near-limit", Severity.NOTE, 0);
    assertThat(of(near, "circuit-near-limit").message())
        .contains("13 A", "US-style practice wants a circuit of 20 A", "your local code decides");
    assertThat(circuit(schedule, 20)).extracting(Finding::code).containsExactly("couple-tolerance");
  }

  // ---- the couple

  private static String coupleNote(
      char type,
      Optional<ToleranceClass> known,
      double offsetKelvins,
      Schedule schedule,
      double limit) {
    Kiln kiln =
        Scenarios.kiln("Capstan", Scenarios.capstan().chamber(), 3000, limit, Optional.empty(), 3);
    Thermocouple couple =
        new Thermocouple(type, 0.0045, TemperatureChange.ofKelvins(offsetKelvins), known);
    Kiln fitted =
        new Kiln(
            kiln.name(),
            kiln.chamber(),
            kiln.element(),
            kiln.walls(),
            kiln.door(),
            kiln.limit(),
            couple,
            kiln.control(),
            kiln.room(),
            kiln.timeZone(),
            kiln.tariff(),
            kiln.circuit(),
            kiln.history());
    List<Finding> findings = Inspector.inspect(Inspection.of(schedule).in(fitted));
    assertOne(findings, "couple-tolerance", Severity.NOTE, 0);
    assertThat(of(findings, "couple-tolerance").origin().words())
        .contains("not the standard itself");
    return of(findings, "couple-tolerance").message();
  }

  @Test
  void theDisplayIsWorthWhatItsCoupleIs() {
    Schedule schedule = celsius(at(300, 800, 10), at(300, 500, 10));
    assertThat(coupleNote('K', Optional.empty(), 0, schedule, 1100))
        .isEqualTo(
            "A class 2 type K couple may be 6 K off at 800 °C; a melt check (heatwright offset) tells by how much."
                + " (The kiln's description names no class; class 2 is the usual one.) Used type K"
                + " shifts besides, by up to 5 K after hours between 340 and 600 °C, and creeps up"
                + " by some kelvins in hundreds of hours above 800 °C.");
    assertThat(coupleNote('S', Optional.of(ToleranceClass.CLASS_1), 0, schedule, 1100))
        .startsWith(
            "A class 1 type S couple may be 1 K off at 800 °C; a melt check (heatwright offset) tells")
        .doesNotContain("usual")
        .contains("Type S drifts little");
    assertThat(
            coupleNote(
                'N',
                Optional.of(ToleranceClass.CLASS_2),
                0,
                Schedule.of("f", TemperatureUnit.FAHRENHEIT, List.of(fahrenheit(360, 1472, 10))),
                1100))
        .startsWith("A class 2 type N couple may be 11 °F off at 1472 °F; ");
  }

  /** Silver is no judge of a kiln that must not get there. */
  @Test
  void aKilnThatMayNotMeltSilverIsJudgedOtherwise() {
    Schedule schedule = celsius(at(300, 800, 10));
    assertThat(coupleNote('K', Optional.empty(), 0, schedule, 970))
        .contains("; a trusted couple beside it (heatwright offset) tells by how much.");
  }

  @Test
  void whatIsKnownOfTheCoupleIsSaid() {
    Schedule schedule = celsius(at(300, 800, 10));
    assertThat(coupleNote('K', Optional.empty(), -4.5, schedule, 1100))
        .contains("; the kiln's description counts on the display being 4.5 K low. (");
    assertThat(coupleNote('J', Optional.of(ToleranceClass.CLASS_2), 0, schedule, 1100))
        .startsWith(
            "No class 2 couple of type J is vouched for at 800 °C; a melt check (heatwright offset) tells how far it is"
                + " off. The iron leg");
  }

  // ---- the forecast

  @Test
  void aRateTheKilnCannotFollowIsFound() {
    Schedule schedule = celsius(DRY, WAX_OUT, TOP, POUR);
    Forecast late = forecast(schedule, 3, 3000, 1);
    List<Finding> waits = inForecast(schedule, late, true);
    assertOne(waits, "kiln-falls-behind", Severity.NOTE, 3);
    List<Finding> runsOn = inForecast(schedule, late, false);
    assertOne(runsOn, "kiln-falls-behind", Severity.WARN, 3);
    // 360 K at 150 K/h are 8640 s; with 3000 s more it climbs 111 K/h.
    assertThat(of(runsOn, "kiln-falls-behind").message())
        .contains("50 min of it is lost", "about 111.3 °C/h", "20 min at full power");
    assertThat(inForecast(schedule, forecast(schedule, 3, 500, 1), true))
        .extracting(Finding::code)
        .containsExactly("couple-tolerance");
  }

  @Test
  void aKilnThatCoolsSlowerIsFound() {
    Schedule schedule = celsius(DRY, WAX_OUT, TOP, POUR);
    assertOne(
        inForecast(schedule, forecast(schedule, 4, 3600, 1), true),
        "kiln-cools-slower",
        Severity.NOTE,
        4);
  }

  @Test
  void workThatIsNotReadyOrNotDryAtTheEndIsFound() {
    Schedule schedule = celsius(DRY, WAX_OUT, TOP, POUR);
    Band end = new Band(470, 490, 520);
    Optional<Band> some = Optional.of(Band.exactly(1000));
    assertOne(
        inForecast(schedule, withWork(schedule, some, Optional.empty(), end), true),
        "work-not-ready",
        Severity.WARN,
        4);
    assertOne(
        inForecast(schedule, withWork(schedule, Optional.empty(), Optional.empty(), end), true),
        "work-not-dry",
        Severity.STOP,
        4);
    assertThat(inForecast(schedule, withWork(schedule, some, some, end), true))
        .extracting(Finding::code)
        .doesNotContain("work-not-ready", "work-not-dry");
  }

  private static Forecast withWork(
      Schedule schedule, Optional<Band> dry, Optional<Band> ready, Band atEnd) {
    Forecast plain = forecast(schedule, 0, 0, 1);
    return new Forecast(
        plain.schedule(),
        plain.kiln(),
        plain.segments(),
        plain.endSeconds(),
        plain.energyKilowattHours(),
        plain.meanWatts(),
        List.of(new WorkForecast(1, "centre", dry, ready, atEnd)),
        plain.trace(),
        List.of(),
        List.of());
  }

  @Test
  void aTargetTheKilnDoesNotReachIsFound() {
    Schedule schedule = celsius(DRY, WAX_OUT, TOP, POUR);
    assertOne(
        inForecast(schedule, forecast(schedule, 3, 0, 0.25), true),
        "target-not-reached",
        Severity.STOP,
        3);
    assertOne(
        inForecast(schedule, forecast(schedule, 3, 0, 0.9), true),
        "target-not-reached",
        Severity.WARN,
        3);
  }

  @Test
  void aHoldThatCountsWhileTheKilnHeatsIsFound() {
    Schedule brief = celsius(fastest(780, 30));
    Schedule ample = celsius(fastest(780, 180));
    Kiln runsOn =
        Scenarios.kiln("Lantern", Scenarios.buoy().chamber(), 1500, 1050, Optional.empty(), 0);
    for (Schedule schedule : List.of(brief, ample)) {
      List<Finding> findings =
          Inspector.inspect(Inspection.of(schedule).in(runsOn).with(forecast(schedule, 1, 0, 1)));
      assertOne(
          findings,
          "hold-counts-while-heating",
          schedule == brief ? Severity.WARN : Severity.NOTE,
          1);
      assertThat(of(findings, "hold-counts-while-heating").message()).contains("about 20 min");
      assertNone(
          Inspector.inspect(
              Inspection.of(schedule).in(Scenarios.buoy()).with(forecast(schedule, 1, 0, 1))),
          "hold-counts-while-heating");
    }
  }

  /** A control that runs by the clock never waits, so nothing else tells that the kiln is cold. */
  @Test
  void aProgramThatGoesOnWithoutTheKilnIsStopped() {
    Schedule schedule = celsius(DRY, WAX_OUT, TOP, POUR);
    for (double watts : new double[] {500, 3000}) {
      Kiln kiln =
          Scenarios.kiln(
              "Capstan", Scenarios.capstan().chamber(), watts, 1100, Optional.empty(), 0);
      Forecast forecast = Forecaster.forecast(ForecastRequest.of(schedule, kiln, Charge.empty()));
      List<Finding> findings =
          Inspector.inspect(Inspection.of(schedule).in(kiln).with(forecast)).stream()
              .filter(f -> f.code().equals("goes-on-without-target"))
              .toList();
      if (watts == 3000) {
        assertThat(findings).isEmpty();
      } else {
        assertThat(findings)
            .anySatisfy(
                finding -> {
                  assertThat(finding.severity()).isEqualTo(Severity.STOP);
                  assertThat(finding.segment()).hasValue(3);
                  assertThat(finding.message())
                      .contains("goes on before the kiln is at 730 °C")
                      .contains("when segment 3 ends");
                });
      }
    }
  }

  @Test
  void aForecastOfAnotherScheduleIsRefused() {
    Schedule schedule = celsius(DRY, WAX_OUT, TOP, POUR);
    assertThatThrownBy(() -> Inspection.of(celsius(DRY)).with(forecast(schedule, 3, 0, 1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("4 segments");
  }

  // ---- order and words

  @Test
  void theGravestComeFirstThenBySegment() {
    List<Finding> findings =
        inspect(
            celsius(
                at(200, 150, 20),
                at(250, 370, 20),
                at(150, 1500, 20),
                at(150, 730, 20),
                at(200, 500, 0)));
    assertThat(findings)
        .isSortedAccordingTo(
            Comparator.comparing(Finding::severity).thenComparing(f -> f.segment().orElse(0)));
    assertThat(findings.get(0).severity()).isEqualTo(Severity.STOP);
    assertThat(findings)
        .allSatisfy(
            f -> {
              assertThat(f.code()).matches("[a-z]+(-[a-z]+)*");
              assertThat(f.message()).matches("(?s)[A-Z0-9].*[.?)]");
              assertThat(f.origin().words()).isNotBlank();
            });
  }

  private static List<Finding> inspect(Schedule schedule) {
    return Inspector.inspect(Inspection.of(schedule).forWork(MOULDS));
  }

  private static List<Finding> circuit(Schedule schedule, double limitAmperes) {
    Kiln kiln =
        Scenarios.kiln(
            "Capstan",
            Scenarios.capstan().chamber(),
            3000,
            1100,
            Optional.of(new Circuit("yard", limitAmperes)),
            3);
    return Inspector.inspect(Inspection.of(schedule).in(kiln).forWork(MOULDS));
  }

  private static List<Finding> inForecast(Schedule schedule, Forecast forecast, boolean holdWaits) {
    Kiln kiln =
        Scenarios.kiln(
            "Capstan",
            Scenarios.capstan().chamber(),
            3000,
            1100,
            Optional.empty(),
            holdWaits ? 3 : 0);
    return Inspector.inspect(Inspection.of(schedule).in(kiln).forWork(MOULDS).with(forecast));
  }

  /** A display that climbs 40 K a minute and stays at 800 °C. */
  private static final double[] SECONDS = {0, 300, 600, 900, 1200, 1500, 60_000};

  private static final double[] DISPLAY = {20, 220, 420, 620, 800, 800, 800};

  /** Hand-made: one segment late or not reached, all others on time. */
  private static Forecast forecast(
      Schedule schedule, int late, double behindSeconds, double reachedShare) {
    List<SegmentForecast> segments = new ArrayList<>();
    for (int i = 1; i <= schedule.segments().size(); i++) {
      segments.add(
          new SegmentForecast(
              i,
              Band.exactly(3600.0 * i),
              Optional.of(Band.exactly(3600.0 * i)),
              Band.exactly(3600.0 * i + 1800),
              i == late ? 1200 : 0,
              i == late ? behindSeconds : 0,
              i == late ? reachedShare : 1));
    }
    return new Forecast(
        schedule.name(),
        "Capstan",
        segments,
        Band.exactly(50_000),
        Band.exactly(12),
        800,
        List.of(),
        new ForecastTrace(
            SECONDS, DISPLAY, DISPLAY, DISPLAY, DISPLAY, new double[SECONDS.length], Map.of()),
        List.of(),
        List.of());
  }

  private static void assertOne(
      List<Finding> findings, String code, Severity severity, int segment) {
    assertThat(findings)
        .filteredOn(f -> f.code().equals(code))
        .as("%s among %s", code, findings)
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.severity()).isEqualTo(severity);
              assertThat(f.segment().orElse(0)).isEqualTo(segment);
            });
  }

  private static void assertNone(List<Finding> findings, String code) {
    assertThat(findings).noneMatch(f -> f.code().equals(code));
  }

  private static Finding of(List<Finding> findings, String code) {
    return findings.stream().filter(f -> f.code().equals(code)).findFirst().orElseThrow();
  }

  private static Schedule celsius(Segment... segments) {
    return Schedule.of("moulds", TemperatureUnit.CELSIUS, List.of(segments));
  }

  private static Segment at(double kelvinsPerHour, double celsius, long minutes) {
    return new Segment(
        Ramp.at(HeatingRate.ofKelvinsPerHour(kelvinsPerHour)),
        Temperature.ofCelsius(celsius),
        Duration.ofMinutes(minutes));
  }

  private static Segment fastest(double celsius, long minutes) {
    return new Segment(Ramp.fastest(), Temperature.ofCelsius(celsius), Duration.ofMinutes(minutes));
  }

  private static Segment fahrenheit(double degreesPerHour, double degrees, long minutes) {
    return new Segment(
        Ramp.at(TemperatureUnit.FAHRENHEIT.rate(degreesPerHour)),
        Temperature.ofFahrenheit(degrees),
        Duration.ofMinutes(minutes));
  }

  private static Duration hours(long hours) {
    return Duration.ofHours(hours);
  }
}
