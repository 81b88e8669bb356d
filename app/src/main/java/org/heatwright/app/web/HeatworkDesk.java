package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.files.TypedNumber;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.report.HeatworkCurves;
import org.heatwright.app.report.HeatworkWords;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.inspect.Wording;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.HeatWork;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.heatwork.Equivalence;
import org.heatwright.work.heatwork.HeatWorkComparison;

/** Compares two schedules of the shelf and the book by what time and temperature do together. */
final class HeatworkDesk {

  private static final double LEAST_KILOJOULES = 20;
  private static final double MOST_KILOJOULES = 1000;
  private static final double LEAST_CELSIUS = 100;
  private static final double MOST_CELSIUS = 1800;
  private static final int FIRINGS_SHOWN = 20;

  private final Store store;
  private final FiringDesk firings;

  HeatworkDesk(Store store, FiringDesk firings) {
    this.store = store;
    this.firings = firings;
  }

  /**
   * @param typed fields as they were typed: a, b, kiln, activation, at, unit
   */
  HeatworkPage page(String clock, Map<String, String> typed) {
    Map<String, Schedule> known = schedules();
    String first = typed.getOrDefault("a", "");
    String second = typed.getOrDefault("b", "");
    boolean fahrenheit = typed.getOrDefault("unit", "").equals("F");
    TemperatureUnit unit = fahrenheit ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
    String activation = typed.getOrDefault("activation", "").strip();
    String at = typed.getOrDefault("at", "").strip();
    OptionalDouble kilojoules = TypedNumber.bare(activation);
    boolean rightQ =
        kilojoules.isPresent()
            && kilojoules.getAsDouble() >= LEAST_KILOJOULES
            && kilojoules.getAsDouble() <= MOST_KILOJOULES;
    Optional<Temperature> reference =
        TypedNumber.celsius(at, unit).stream().mapToObj(Temperature::ofCelsius).findFirst();
    boolean rightAt =
        at.isEmpty()
            || reference
                .filter(t -> t.celsius() >= LEAST_CELSIUS && t.celsius() <= MOST_CELSIUS)
                .isPresent();
    boolean asked = typed.containsKey("a");
    Schedule one = known.get(first);
    Schedule two = known.get(second);
    HeatworkPage.Wrong wrong =
        new HeatworkPage.Wrong(
            !asked || rightQ
                ? ""
                : "“%s” is no number from 20 to 1000 (kJ/mol).".formatted(activation),
            rightAt
                ? ""
                : "“%s” is no temperature from %s to %s."
                    .formatted(
                        at, Wording.whole(LEAST_CELSIUS, unit), Wording.whole(MOST_CELSIUS, unit)),
            asked && (one == null || two == null) ? "Choose two schedules." : "");
    Optional<HeatworkPage.Answer> answer =
        one == null || two == null || !rightQ || !rightAt
            ? Optional.empty()
            : Optional.of(
                answer(
                    one,
                    two,
                    kiln(typed.getOrDefault("kiln", "")),
                    kilojoules.getAsDouble(),
                    reference.orElse(one.peak()),
                    unit));
    return new HeatworkPage(
        clock,
        choices(known, first),
        choices(known, second),
        kilns(typed.getOrDefault("kiln", "")),
        new HeatworkPage.Typed(asked ? activation : "185", at, fahrenheit),
        wrong,
        answer);
  }

  private HeatworkPage.Answer answer(
      Schedule one,
      Schedule two,
      Optional<Kiln> kiln,
      double kilojoules,
      Temperature reference,
      TemperatureUnit unit) {
    try {
      HeatworkCurves first = curves(one, kiln);
      HeatworkCurves second = curves(two, kiln);
      Map<String, HeatWorkComparison> cases = new LinkedHashMap<>();
      Map<String, Equivalence> laws =
          HeatworkWords.laws(kilojoules, reference, HeatWork.Weighting.PLAIN);
      laws.forEach(
          (name, law) ->
              cases.put(name, HeatWorkComparison.of(law, first.likely(), second.likely(), two)));
      List<String> notes = new ArrayList<>();
      kiln.flatMap(
              k ->
                  HeatworkWords.byDisplay(k.name(), laws.values().iterator().next(), first, second))
          .ifPresent(notes::add);
      notes.add(HeatworkWords.counted(kiln.isPresent()));
      notes.add(HeatworkWords.ONE_LAW);
      HeatWorkComparison likely = cases.values().iterator().next();
      return new HeatworkPage.Answer(
          HeatworkWords.verdict(likely),
          "Heat-work as time at %s:".formatted(Wording.of(reference, unit)),
          List.of(
              "A, " + HeatworkWords.line(one, likely.firstSeconds()),
              "B, " + HeatworkWords.line(two, likely.secondSeconds())),
          HeatworkWords.hold(likely, two, unit),
          HeatworkWords.cases(cases, two, unit),
          notes);
    } catch (IllegalArgumentException e) {
      return new HeatworkPage.Answer(
          "That cannot be compared on paper.",
          "%s Choose a kiln: it knows what its fastest is.".formatted(e.getMessage()),
          List.of(),
          "",
          List.of(),
          List.of());
    }
  }

  private static HeatworkCurves curves(Schedule schedule, Optional<Kiln> kiln) {
    return kiln.map(k -> HeatworkCurves.inKiln(schedule, k))
        .orElseGet(
            () -> HeatworkCurves.onPaper(schedule, Temperature.ofCelsius(20), Optional.empty()));
  }

  // ---- what there is to choose from

  /** Kept schedules, what ran in logs, what the book planned: by a key of its own. */
  private Map<String, Schedule> schedules() {
    Map<String, Schedule> known = new LinkedHashMap<>();
    for (Document kept : store.all(Kind.SCHEDULE)) {
      read(kept.text(), kept.name())
          .ifPresent(s -> known.put("schedule:" + kept.name(), s.withName(kept.name())));
    }
    for (Document kiln : store.all(Kind.KILN)) {
      for (FiringLog log : store.logs(kiln.name())) {
        read(log.schedule(), log.name())
            .ifPresent(
                s ->
                    known.putIfAbsent(
                        "log:" + log.id(),
                        s.withName("%s, %s".formatted(log.name(), kiln.name()))));
      }
    }
    firings.pressed().stream()
        .limit(FIRINGS_SHOWN)
        .forEach(
            told ->
                firings
                    .find(told.id())
                    .flatMap(HeatworkDesk::planned)
                    .ifPresent(s -> known.put("firing:" + told.id(), s.withName(told.words()))));
    return known;
  }

  private static Optional<Schedule> planned(FiringRecord firing) {
    try {
      return Optional.of(firing.runs());
    } catch (InputException ofAnotherVersion) {
      return Optional.empty();
    }
  }

  private static Optional<Schedule> read(String text, String name) {
    try {
      return Optional.of(ScheduleFile.read(text, name));
    } catch (InputException notReadable) {
      return Optional.empty();
    }
  }

  private static List<HeatworkPage.Choice> choices(Map<String, Schedule> known, String chosen) {
    return known.entrySet().stream()
        .map(
            e ->
                new HeatworkPage.Choice(
                    e.getKey(), e.getValue().name(), true, e.getKey().equals(chosen)))
        .toList();
  }

  private List<HeatworkPage.Choice> kilns(String chosen) {
    List<HeatworkPage.Choice> all = new ArrayList<>();
    all.add(new HeatworkPage.Choice("", "on paper", false, chosen.isEmpty()));
    store
        .all(Kind.KILN)
        .forEach(
            k ->
                all.add(
                    new HeatworkPage.Choice(k.name(), k.name(), true, k.name().equals(chosen))));
    return all;
  }

  private Optional<Kiln> kiln(String name) {
    try {
      return store
          .find(Kind.KILN, name)
          .map(d -> Objects.requireNonNull(KilnFile.read(d.text(), d.name())));
    } catch (InputException notReadable) {
      return Optional.empty();
    }
  }
}
