package org.heatwright.app.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.json.OffsetJson;
import org.heatwright.inspect.Wording;
import org.heatwright.kiln.Kiln;
import org.heatwright.sensing.DisplayCheck;
import org.heatwright.sensing.MeltCheck;
import org.heatwright.sensing.OffsetCorrection;
import org.heatwright.sensing.ThermocoupleType;
import org.heatwright.sensing.WrongType.Comparison;
import org.heatwright.sensing.WrongType.Suspect;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/**
 * How far a display is off, in words.
 *
 * @param suspects what explains the readings better than an offset, the best first
 * @param correction empty where something else is wrong than an offset
 * @param kiln whose display it is, where that is known
 * @param work the true temperature that is worked at
 * @param unit of the display and of the answer
 * @param today the day of the check
 */
record OffsetPage(
    DisplayCheck check,
    List<Suspect> suspects,
    Optional<OffsetCorrection> correction,
    Optional<Kiln> kiln,
    Temperature work,
    TemperatureUnit unit,
    LocalDate today) {

  /** A file that states it so well states it rightly. */
  private static final double SAME_KELVINS = 0.05;

  private static final double SAME_DEGREES = 1e-5;

  /** Class 2 of type K is 7 K at the melt, what use does to it 1.7 %: more is something else. */
  private static final double ODD_KELVINS = 25;

  OffsetJson json() {
    return OffsetJson.of(check, suspects, kiln, correction, work, table(), notes(), cautions());
  }

  Page page() {
    Page page = new Page();
    check.melt().ifPresent(m -> page.line(m.correction().sentence(unit)));
    check.comparisons().forEach(each -> page.line(sentence(each)));
    correction.ifPresentOrElse(c -> offset(page, c), () -> somethingElse(page));
    page.blank();
    notes().forEach(note -> page.hanging("note  ", note));
    cautions().forEach(caution -> page.hanging("care  ", caution));
    check.origins().forEach(origin -> page.hanging("from  ", origin.words()));
    return page;
  }

  private String sentence(Comparison seen) {
    TemperatureChange offset = seen.shown().minus(seen.truth());
    return "At %s the display shows %s: %s."
        .formatted(
            Wording.of(seen.truth(), unit),
            Wording.of(seen.shown(), unit),
            Math.abs(offset.kelvins()) < SAME_KELVINS
                ? "the truth"
                : "%s %s too %s"
                    .formatted(
                        Wording.number(Math.abs(unit.value(offset))),
                        unit.differenceSymbol(),
                        offset.kelvins() > 0 ? "much" : "little"));
  }

  // ---- an offset

  private void offset(Page page, OffsetCorrection known) {
    page.line(work(known));
    page.blank();
    page.raw("  true         display      off\n");
    for (Temperature truth : table()) {
      Temperature shown = known.shown(truth);
      page.raw(
          "  %-11s  %-11s  %-9s  %s\n"
              .formatted(
                  Wording.of(truth, unit),
                  tenth(unit.value(shown)) + " " + unit.symbol(),
                  tenth(unit.value(shown.minus(truth))) + " " + unit.differenceSymbol(),
                  standing(truth)));
    }
  }

  private String work(OffsetCorrection known) {
    Temperature shown = known.shown(work);
    TemperatureChange offset = shown.minus(work);
    String said =
        "For work at %s (%s) the display must say %s. That is offset-k: %s in the kiln file"
            .formatted(
                Wording.of(work, unit),
                standing(work),
                tenth(unit.value(shown)) + " " + unit.symbol(),
                tenth(offset.kelvins()));
    String converted =
        unit == TemperatureUnit.CELSIUS
            ? ""
            : " (in K; %s °F)".formatted(tenth(unit.value(offset)));
    return said + converted + kiln.map(k -> filed(k, offset)).orElse(".");
  }

  private static String filed(Kiln kiln, TemperatureChange offset) {
    return agrees(kiln, offset)
        ? ", as that of %s has it.".formatted(kiln.name())
        : "; that of %s has %s."
            .formatted(kiln.name(), Wording.number(kiln.thermocouple().offset().kelvins()));
  }

  private static boolean agrees(Kiln kiln, TemperatureChange offset) {
    double stated = kiln.thermocouple().offset().kelvins();
    return Math.abs(stated - offset.kelvins()) <= SAME_KELVINS;
  }

  private String standing(Temperature truth) {
    return switch (check.standing(truth)) {
      case SEEN -> isMelt(truth) ? "the melt" : "compared";
      case BETWEEN -> "between";
      case FIRST_GUESS -> "a first guess";
    };
  }

  private boolean isMelt(Temperature truth) {
    return check.melt().isPresent()
        && Math.abs(truth.minus(MeltCheck.SILVER_MELTS).kelvins()) < SAME_DEGREES;
  }

  /**
   * True temperatures to show: every 100 °C or 200 °F from 500 °C or the coolest reading to the
   * hottest, what was seen and what is worked at; beyond the kiln's limit only those two.
   */
  private List<Temperature> table() {
    List<OffsetCorrection.Point> points = check.points();
    boolean celsius = unit == TemperatureUnit.CELSIUS;
    double step = celsius ? 100 : 200;
    double least = Math.min(unit.value(points.get(0).truth()), celsius ? 500 : 1000);
    double most = unit.value(points.get(points.size() - 1).truth());
    List<Temperature> all = new ArrayList<>();
    points.forEach(point -> all.add(point.truth()));
    all.add(work);
    for (double value = step * Math.floor(least / step);
        value <= step * Math.ceil(most / step);
        value += step) {
      Temperature truth = unit.temperature(value);
      if (kiln.isEmpty() || truth.compareTo(kiln.get().limit()) <= 0) {
        all.add(truth);
      }
    }
    all.sort(Comparator.naturalOrder());
    List<Temperature> rows = new ArrayList<>();
    for (Temperature each : all) {
      boolean twice =
          !rows.isEmpty() && each.minus(rows.get(rows.size() - 1)).kelvins() < SAME_DEGREES;
      if (!twice) {
        rows.add(each);
      }
    }
    return rows;
  }

  // ---- something else

  private void somethingElse(Page page) {
    page.blank();
    ThermocoupleType type = check.setTo().orElseThrow();
    suspects.forEach(suspect -> page.line(Wording.in(suspect.sentence(type), unit)));
    page.line(
        suspects.isEmpty()
            ? "More than %s %s off is no offset, and neither another couple nor swapped leads explain the readings: check the unit, where the tip is and the controller."
                .formatted(
                    Wording.number(unit.value(MeltCheck.LARGEST_OFFSET)), unit.differenceSymbol())
            : "Put that right first and read again: an offset would only hide it.");
  }

  // ---- notes

  private List<String> notes() {
    List<String> notes = new ArrayList<>();
    if (!suspects.isEmpty() && check.points().size() == 1) {
      notes.add("One reading is a hint; a second one far from it is nearly proof.");
    }
    correction.ifPresent(known -> offsetNotes(known, notes));
    return notes;
  }

  private void offsetNotes(OffsetCorrection known, List<String> notes) {
    check
        .setTo()
        .ifPresent(
            type ->
                notes.add(
                    "Nothing points to another couple than type %s or to swapped leads."
                        .formatted(type)));
    if (check.points().size() == 1) {
      notes.add(
          "From one reading the rest is a guess: --compare with a trusted thermometer near the working temperature beats it.");
    }
    boolean odd =
        check.points().stream().anyMatch(p -> Math.abs(p.offset().kelvins()) > ODD_KELVINS);
    if (odd) {
      notes.add(
          "More than %s %s is more than wire and age usually come to: look where the tip is, at the leads and at the type before you trust it."
              .formatted(
                  Wording.number(unit.value(TemperatureChange.ofKelvins(ODD_KELVINS))),
                  unit.differenceSymbol()));
    }
    TemperatureChange offset = known.shown(work).minus(work);
    double stated = kiln.map(k -> k.thermocouple().offset().kelvins()).orElse(0.0);
    if (Math.abs(stated - offset.kelvins()) > SAME_KELVINS) {
      notes.add(
          "Write it into the kiln file or correct the display at the controller, never both: a display that was corrected wants offset-k: 0, a new check, and {date: %s, what: offset-changed} in the file's history."
              .formatted(today));
      kiln.flatMap(Kiln::learned)
          .ifPresent(
              learned ->
                  notes.add(
                      "After that learn again: what this kiln's logs taught counted on the offset-k it has."));
    }
  }

  private List<String> cautions() {
    List<String> cautions = new ArrayList<>();
    if (check.melt().isPresent()) {
      MeltCheck.cautions().forEach(caution -> cautions.add(Wording.in(caution, unit)));
    }
    if (!check.comparisons().isEmpty()) {
      cautions.add(
          "Compare where both readings have stood still for some minutes, the trusted tip beside the sensor's and touching nothing.");
      cautions.add(
          "Put a trusted couple in, and take it out, with the kiln cold and unplugged: its elements are live.");
    }
    return cautions;
  }

  private static String tenth(double value) {
    double rounded = Math.rint(10 * value) / 10 + 0.0;
    return rounded == Math.rint(rounded)
        ? Long.toString(Math.round(rounded))
        : Double.toString(rounded);
  }
}
