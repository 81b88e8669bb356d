package org.heatwright.work.casting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** Gathers what the sources say for one pour. Used once, by one thread. */
final class PouringPlanner {

  /** Tops of burnouts; no mould of gypsum is poured hotter. */
  private static final Temperature HOTTEST_GYPSUM = Temperature.ofCelsius(730);

  /** Metal hotter than this drives gas out of gypsum and silica. {@code estimate:} */
  private static final Temperature HOT_FOR_GYPSUM = Temperature.ofCelsius(1050);

  /** A source is taken at its middle unless something moves it by this share. {@code practice:} */
  private static final double QUARTER = 0.25;

  /** Metals that melt low go into other moulds; no source here speaks of them. {@code estimate:} */
  private static final double COOLEST_CELSIUS = 300;

  private static final double ROUND_DEGREES = 10;

  private final PouringQuestion question;
  private final TemperatureUnit unit;
  private final List<Remark> remarks = new ArrayList<>();

  PouringPlanner(PouringQuestion question, TemperatureUnit unit) {
    this.question = question;
    this.unit = unit;
  }

  PouringPlan plan() {
    Optional<Proposal> mould = mould();
    Optional<Proposal> metal = metal();
    Optional<Spread> superheat =
        metal.flatMap(m -> question.liquidus().map(liquidus -> superheat(m, liquidus)));
    remarkOnContradictions(mould, metal);
    return new PouringPlan(
        question,
        mould,
        metal,
        superheat,
        remarks,
        CastingCautions.of(question, mould, metal),
        CastingClocks.all());
  }

  // The mould.

  private Optional<Proposal> mould() {
    List<TemperatureRow> rows = new ArrayList<>();
    switch (question.family()) {
      case SILVER -> silverRows(rows);
      case GOLD, WHITE_GOLD -> goldRows(rows);
      case BRONZE, BRASS -> {
        rows.add(
            TemperatureRow.ofCelsius(
                question.family().words() + ", any section", 480, 600, true, Origin.practice()));
        sectionRows(rows);
      }
      case PLATINUM -> {
        rows.add(
            TemperatureRow.ofCelsius(
                "platinum, phosphate-bonded mould", 850, 900, true, Origin.practice()));
        rows.add(
            TemperatureRow.ofCelsius(
                "platinum at 650 °C: asked, and answered that it risks misruns",
                650,
                650,
                false,
                Origin.read("questions and answers in a platinum trade review")));
      }
      case OTHER -> {}
    }
    boolean alone = rows.isEmpty();
    question
        .liquidus()
        .filter(liquidus -> liquidus.celsius() - 200 >= COOLEST_CELSIUS)
        .ifPresent(
            liquidus ->
                rows.add(
                    TemperatureRow.ofCelsius(
                        "any metal: mould about 200 K under melting",
                        liquidus.celsius() - 200,
                        liquidus.celsius() - 200,
                        alone,
                        Sources.VACUUM_THREAD)));
    double place = 0.5;
    String moved = "";
    if (question.method() == PouringMethod.CENTRIFUGAL) {
      place -= QUARTER;
      moved += "; centrifugal takes the low end (" + Sources.KARAT_CASTING.words() + ")";
    }
    if (question.method() == PouringMethod.GRAVITY) {
      place += QUARTER;
      moved += "; gravity alone pushes little and takes the high end (common practice, no source)";
    }
    if (question.family() == AlloyFamily.WHITE_GOLD) {
      place += QUARTER;
      moved += "; white gold takes the high end (" + Sources.KARAT_CASTING.words() + ")";
    }
    Optional<Proposal> proposal =
        propose(rows, question.ownMould(), Math.min(1, place), moved, "the mould");
    if (question.binder() != Binder.PHOSPHATE
        && proposal.isPresent()
        && proposal.get().value().compareTo(HOTTEST_GYPSUM) > 0) {
      remarks.add(
          new Remark(
              "above-gypsum",
              "%s for the mould is above the top of a burnout in gypsum (%s): that takes another binder."
                  .formatted(degrees(proposal.get().value()), degrees(HOTTEST_GYPSUM)),
              Origin.practice()));
      return proposal.filter(Proposal::own);
    }
    return proposal;
  }

  /** The forum's table, by section; without a section every row is shown and none is left out. */
  private void sectionRows(List<TemperatureRow> rows) {
    section(rows, SectionClass.HEAVY, 400, 480);
    section(rows, SectionClass.MEDIUM, 510, 565);
    section(rows, SectionClass.LIGHT, 565, 620);
    section(rows, SectionClass.FILIGREE, 620, 675);
  }

  private void section(
      List<TemperatureRow> rows, SectionClass section, double fromCelsius, double toCelsius) {
    boolean asked = question.section().map(s -> s == section).orElse(true);
    if (asked) {
      rows.add(
          TemperatureRow.ofCelsius(
              section.word() + " sections, any metal, vacuum",
              fromCelsius,
              toCelsius,
              question.section().isPresent(),
              Sources.SECTIONS_THREAD));
    }
  }

  private boolean asked(SectionClass... sections) {
    return question.section().map(s -> List.of(sections).contains(s)).orElse(false);
  }

  private void silverRows(List<TemperatureRow> rows) {
    sectionRows(rows);
    boolean bySection = asked(SectionClass.HEAVY, SectionClass.LIGHT, SectionClass.FILIGREE);
    if (question.section().isEmpty() || asked(SectionClass.HEAVY)) {
      rows.add(
          TemperatureRow.ofCelsius("heavy sterling", 450, 450, bySection, Sources.VACUUM_THREAD));
    }
    if (question.section().isEmpty() || asked(SectionClass.LIGHT, SectionClass.FILIGREE)) {
      rows.add(
          TemperatureRow.ofCelsius("thin sterling", 475, 500, bySection, Sources.SULPHUR_THREAD));
    }
    rows.add(
        TemperatureRow.ofCelsius(
            "sterling, any section", 482, 621, !bySection, Sources.USUAL_ADVICE));
    rows.add(
        TemperatureRow.ofCelsius(
            "sterling, any section", 450, 590, !bySection, Sources.TEMPERATURES_THREAD));
    rows.add(
        TemperatureRow.ofCelsius("sterling, any section", 480, 500, !bySection, Origin.practice()));
  }

  private void goldRows(List<TemperatureRow> rows) {
    sectionRows(rows);
    boolean any = question.section().isEmpty();
    if (any || asked(SectionClass.HEAVY)) {
      rows.add(TemperatureRow.ofCelsius("heavy karat gold", 427, 538, true, Sources.KARAT_CASTING));
    }
    if (asked(SectionClass.MEDIUM)) {
      rows.add(
          TemperatureRow.ofCelsius(
              "karat gold between heavy and detailed",
              538,
              593,
              true,
              Origin.derived("between the two values of " + Sources.KARAT_CASTING.text())));
    }
    if (any || asked(SectionClass.LIGHT, SectionClass.FILIGREE)) {
      rows.add(
          TemperatureRow.ofCelsius(
              "small or detailed karat gold", 593, 704, true, Sources.KARAT_CASTING));
    }
  }

  // The metal.

  private Optional<Proposal> metal() {
    List<TemperatureRow> rows = new ArrayList<>();
    boolean gold =
        question.family() == AlloyFamily.GOLD || question.family() == AlloyFamily.WHITE_GOLD;
    for (Melting melting : question.meltings()) {
      melting
          .liquidus()
          .ifPresent(
              liquidus -> {
                if (gold) {
                  superheatRow(
                      rows,
                      "vacuum",
                      melting,
                      56,
                      111,
                      question.method() == PouringMethod.VACUUM,
                      Sources.KARAT_CASTING);
                  superheatRow(
                      rows,
                      "centrifugal",
                      melting,
                      28,
                      69,
                      question.method() == PouringMethod.CENTRIFUGAL,
                      Sources.KARAT_CASTING);
                }
                superheatRow(
                    rows, "any metal", melting, 50, 100, true, Sources.TEMPERATURES_THREAD);
              });
    }
    boolean sterling =
        question.family() == AlloyFamily.SILVER
            && question.liquidus().map(t -> t.celsius() < 930).orElse(false);
    if (sterling) {
      rows.add(TemperatureRow.ofCelsius("sterling", 960, 1010, true, Origin.practice()));
    }
    if (question.family() == AlloyFamily.BRONZE) {
      rows.add(TemperatureRow.ofCelsius("bronze", 1050, 1120, true, Origin.practice()));
    }
    if (question.family() == AlloyFamily.BRASS) {
      rows.add(TemperatureRow.ofCelsius("brass", 1000, 1060, true, Origin.practice()));
    }
    double place = 0.5;
    String moved = "";
    if (asked(SectionClass.LIGHT, SectionClass.FILIGREE)) {
      place += QUARTER;
      moved = "; thin sections take the hotter side (common practice, no source)";
    } else if (asked(SectionClass.HEAVY)) {
      place -= QUARTER;
      moved = "; heavy sections take the cooler side (common practice, no source)";
    }
    return propose(rows, question.ownMetal(), place, moved, "the metal");
  }

  private void superheatRow(
      List<TemperatureRow> rows,
      String about,
      Melting melting,
      double fromKelvins,
      double toKelvins,
      boolean counts,
      Origin origin) {
    double liquidusCelsius = melting.liquidus().orElseThrow().celsius();
    rows.add(
        TemperatureRow.ofCelsius(
            "%s: %.0f to %.0f K over melting at %s (%s)"
                .formatted(
                    about,
                    fromKelvins,
                    toKelvins,
                    degrees(melting.liquidus().orElseThrow()),
                    melting.origin().words()),
            liquidusCelsius + fromKelvins,
            liquidusCelsius + toKelvins,
            counts,
            origin));
  }

  private static Spread superheat(Proposal metal, Temperature liquidus) {
    double usual = Math.max(0, metal.value().celsius() - liquidus.celsius());
    double low = Math.max(0, metal.range().from().celsius() - liquidus.celsius());
    double high = Math.max(0, metal.range().to().celsius() - liquidus.celsius());
    return new Spread(Math.min(low, usual), usual, Math.max(high, usual));
  }

  // Both.

  private Optional<Proposal> propose(
      List<TemperatureRow> rows,
      Optional<Temperature> own,
      double place,
      String moved,
      String what) {
    List<TemperatureRow> counted = rows.stream().filter(TemperatureRow::counts).toList();
    if (own.isPresent()) {
      return Optional.of(ownProposal(rows, counted, own.get(), what));
    }
    if (counted.isEmpty()) {
      remarks.add(
          new Remark(
              "no-source",
              "No source here tells a temperature of %s for %s: ask the maker of the alloy, and say it."
                  .formatted(what, question.alloy()),
              Origin.practice()));
      return Optional.empty();
    }
    double meanCelsius =
        counted.stream()
            .mapToDouble(
                r ->
                    r.range().from().celsius()
                        + place * (r.range().to().celsius() - r.range().from().celsius()))
            .average()
            .orElseThrow();
    double degrees = unit.value(Temperature.ofCelsius(meanCelsius));
    Temperature value = unit.temperature(Math.rint(degrees / ROUND_DEGREES) * ROUND_DEGREES);
    String why =
        "%s%s%s, rounded to tens."
            .formatted(
                counted.size() == 1
                    ? "One source speaks"
                    : "%d rows speak".formatted(counted.size()),
                question
                        .section()
                        .map(s -> " for this work (" + s.words() + ")")
                        .orElse(", the section not being told")
                    + (counted.size() == 1 ? ": its " : ": the mean of their ")
                    + placeWords(place)
                    + (counted.size() == 1 ? "" : "s"),
                moved);
    return Optional.of(new Proposal(value, span(counted), rows, why));
  }

  private static String placeWords(double place) {
    if (place == 0.5) {
      return "middle";
    }
    return place > 0.5 ? (place >= 1 ? "upper end" : "upper quarter point") : "lower quarter point";
  }

  private Proposal ownProposal(
      List<TemperatureRow> rows, List<TemperatureRow> counted, Temperature own, String what) {
    List<TemperatureRow> all = new ArrayList<>();
    TemperatureRange point = new TemperatureRange(own, own);
    all.add(new TemperatureRow("your own value", point, true, Origin.own("")));
    all.addAll(rows);
    TemperatureRange range = counted.isEmpty() ? point : span(counted);
    if (!range.contains(own)) {
      remarks.add(
          new Remark(
              "own-outside",
              "Your %s for %s lies outside what the sources give (%s to %s). It goes first all the"
                      .formatted(degrees(own), what, degrees(range.from()), degrees(range.to()))
                  + " same; write down how it fills.",
              Origin.derived("from the rows")));
    }
    return new Proposal(own, range, all, "Your own value goes first.");
  }

  private static TemperatureRange span(List<TemperatureRow> rows) {
    return new TemperatureRange(
        rows.stream().map(r -> r.range().from()).min(Temperature::compareTo).orElseThrow(),
        rows.stream().map(r -> r.range().to()).max(Temperature::compareTo).orElseThrow());
  }

  private void remarkOnContradictions(Optional<Proposal> mould, Optional<Proposal> metal) {
    if (question.binder() != Binder.PHOSPHATE) {
      remarks.add(
          new Remark(
              "hotter-may-fill-less",
              "Thin work that does not fill asks for a hotter mould by one school; another holds that"
                  + " more heat sets sulphur gas free in gypsum and fills less. Change one of the"
                  + " two by 20 to 30 K at a time and write down both.",
              Sources.SULPHUR_THREAD));
    } else if (question.family() != AlloyFamily.PLATINUM) {
      remarks.add(
          new Remark(
              "practice-of-gypsum",
              "The values for the mould are of gypsum-bonded practice; a phosphate-bonded one bears"
                  + " more heat and draws gas less well.",
              Origin.practice()));
    }
    mould
        .filter(
            m ->
                m.rows().stream()
                    .anyMatch(a -> m.rows().stream().anyMatch(b -> apart(a.range(), b.range()))))
        .ifPresent(
            m ->
                remarks.add(
                    new Remark(
                        "sources-disagree",
                        "The sources for the mould do not agree: between some rows there is no common"
                            + " value. The thermometers behind them may not either: yours, and what"
                            + " it poured well, settles it.",
                        Origin.derived("from the rows"))));
    question
        .liquidus()
        .ifPresent(
            liquidus ->
                metal
                    .filter(m -> m.value().compareTo(liquidus) <= 0)
                    .ifPresent(
                        m ->
                            remarks.add(
                                new Remark(
                                    "not-liquid",
                                    "At %s the metal is not all liquid (liquidus %s)."
                                        .formatted(degrees(m.value()), degrees(liquidus)),
                                    Origin.derived("from the melting range")))));
    if (question.binder() != Binder.PHOSPHATE) {
      metal
          .filter(m -> m.value().compareTo(HOT_FOR_GYPSUM) > 0)
          .ifPresent(
              m ->
                  remarks.add(
                      new Remark(
                          "hot-for-gypsum",
                          "Metal at %s is hot for a gypsum-bonded mould: its sulphate gives gas on contact,"
                                  .formatted(degrees(m.value()))
                              + " the more the hotter the mould. Burn out clean of carbon, keep the"
                              + " mould to the cool side.",
                          Origin.estimate("the threshold of 1050 °C is ours"))));
    }
  }

  private static boolean apart(TemperatureRange a, TemperatureRange b) {
    return a.to().compareTo(b.from()) < 0 || b.to().compareTo(a.from()) < 0;
  }

  private String degrees(Temperature temperature) {
    return "%.0f %s".formatted(unit.value(temperature), unit.symbol());
  }
}
