package org.heatwright.app.catalogue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.heatwright.inspect.Wording;
import org.heatwright.material.KnownMaterial;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.material.SolidMaterials;
import org.heatwright.material.Viscosity;
import org.heatwright.material.WallMaterials;
import org.heatwright.mould.BodyMaterials;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.BurnoutWork;
import org.heatwright.work.DataSheet;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.GlassWork;
import org.heatwright.work.HeatTreatWork;
import org.heatwright.work.SinterWork;
import org.heatwright.work.Work;
import org.heatwright.work.casting.CastingAlloy;
import org.heatwright.work.casting.CastingAlloys;
import org.heatwright.work.enamel.EnamelMetal;
import org.heatwright.work.enamel.EnamelMetals;
import org.heatwright.work.enamel.FusingClass;
import org.heatwright.work.enamel.Range;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.GlassProcess;
import org.heatwright.work.heattreat.Practice;
import org.heatwright.work.heattreat.Practices;
import org.heatwright.work.heattreat.Solidus;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.sinter.Clay;
import org.heatwright.work.sinter.ClayFacts;
import org.heatwright.work.sinter.Clays;

/** Lists what the core knows of materials. The values are the core's own, read at the moment. */
public final class Catalogue {

  private static final double COLD_CELSIUS = 20;
  private static final double WARM_CELSIUS = 500;
  private static final double HOT_CELSIUS = 1000;

  private final TemperatureUnit unit;

  /**
   * @param unit of every temperature in the texts
   */
  public Catalogue(TemperatureUnit unit) {
    this.unit = unit;
  }

  /** Everything, in the order of use. */
  public List<Shelf> shelves() {
    return List.of(
        enamelMetals(), enamels(), clays(), treated(), glasses(), alloys(), bodies(), walls());
  }

  // ---- enamel

  private Shelf enamelMetals() {
    List<Shelf.Item> items = new ArrayList<>();
    for (EnamelMetal metal : EnamelMetals.all()) {
      items.add(
          new Shelf.Item(
              metal.name(),
              List.of(
                  value(
                      "expansion to " + at(WARM_CELSIUS),
                      perMillionKelvins(metal.perKelvin()),
                      metal.expansionOrigin()),
                  value(
                      "begins to melt",
                      Wording.of(Temperature.ofCelsius(metal.solidusCelsius()), unit),
                      metal.solidusOrigin()),
                  value(
                      "stiffness",
                      "%.0f GPa, Poisson's ratio %s"
                          .formatted(metal.youngPascals() / 1e9, number(metal.poissonRatio())),
                      metal.elasticOrigin()),
                  value(
                      "yields when annealed",
                      "%.0f to %.0f MPa"
                          .formatted(
                              metal.yieldPascals().low() / 1e6, metal.yieldPascals().high() / 1e6),
                      metal.elasticOrigin()))));
    }
    return new Shelf(
        "enamel-metals",
        "Metals under enamel",
        "How enamel and metal pull on each other, and how hot they may get together.",
        items);
  }

  private Shelf enamels() {
    List<Shelf.Item> items = new ArrayList<>();
    for (FusingClass fusing : FusingClass.values()) {
      items.add(
          new Shelf.Item(
              lower(fusing.name()) + "-fusing enamel",
              List.of(
                  value(
                      "sets on cooling",
                      span(fusing.setsCelsius().low(), fusing.setsCelsius().high()),
                      Origin.estimate("the class of enamel")),
                  value(
                      "softens",
                      Wording.of(
                          fusing.viscosity().temperatureAt(Viscosity.SOFTENING_LOG_POISE), unit),
                      fusing.viscosity().origin()))));
    }
    return new Shelf(
        "enamels",
        "Enamels by how hard they are to fuse",
        "Until your own test tiles say more: when to look, and how the coats follow each other.",
        items);
  }

  // ---- metal clay

  private Shelf clays() {
    List<Shelf.Item> items = new ArrayList<>();
    for (Clay clay : Clay.values()) {
      ClayFacts facts = Clays.of(clay);
      List<Shelf.Value> values = new ArrayList<>();
      values.add(value("never above", Wording.of(facts.limit(), unit), facts.limitOrigin()));
      for (ClayFacts.Row row : facts.rows()) {
        values.add(
            value(
                switch (row.strength()) {
                  case LEAST -> "least firing";
                  case GOOD -> "good firing";
                  case BEST -> "strongest firing";
                },
                "%s for %s".formatted(Wording.of(row.at(), unit), HourMinute.words(row.hold())),
                row.origin()));
      }
      values.add(
          value(
              "shrinks, of the dry length",
              "%.0f to %.0f %%"
                  .formatted(
                      100 * facts.shrinkage().lowShare(), 100 * facts.shrinkage().highShare()),
              facts.shrinkage().origin()));
      items.add(new Shelf.Item(clay.words(), values));
    }
    return new Shelf(
        "metal-clay",
        "Metal clays",
        "Firings that sources and practice name; strips of your own narrow the shrinkage.",
        items);
  }

  // ---- heat treatment

  private Shelf treated() {
    List<Shelf.Item> items = new ArrayList<>();
    for (TreatedMetal metal : TreatedMetal.values()) {
      List<Shelf.Value> values = new ArrayList<>();
      Solidus solidus = Solidus.of(metal);
      values.add(
          value("begins to melt", Wording.of(solidus.temperature(), unit), solidus.origin()));
      practice(values, "anneal", Practices.anneal(metal));
      practice(values, "solution", Practices.solution(metal));
      practice(values, "age", Practices.age(metal));
      practice(values, "stress relief", Practices.stressRelief(metal));
      items.add(new Shelf.Item(metal.words(), values));
    }
    return new Shelf(
        "heat-treatment",
        "Metals for heat treatment",
        "Time counts in the piece, not on the display.",
        items);
  }

  private void practice(List<Shelf.Value> values, String what, Optional<Practice> known) {
    known.ifPresent(
        p ->
            values.add(
                value(
                    what,
                    "%s to %s for %s to %s; planned %s for %s"
                        .formatted(
                            Wording.of(p.low(), unit),
                            Wording.of(p.high(), unit),
                            minutes(p.leastMinutes()),
                            minutes(p.mostMinutes()),
                            Wording.of(p.plan(), unit),
                            minutes(p.planMinutes())),
                    p.origin())));
  }

  // ---- glass

  private Shelf glasses() {
    List<Shelf.Item> items = new ArrayList<>();
    for (Glass.Family family : Glass.Family.values()) {
      Glass glass = Glass.of(family);
      List<Shelf.Value> values = new ArrayList<>();
      values.add(value("anneals", span(glass.anneal()), glass.anneal().origin()));
      values.add(value("strain point", span(glass.strain()), glass.strain().origin()));
      for (GlassProcess process : GlassProcess.values()) {
        if (process.hasTop()) {
          Glass.Span range = process.range(glass);
          values.add(value(process.words(), span(range), range.origin()));
        }
      }
      items.add(new Shelf.Item(family.words(), values));
    }
    return new Shelf(
        "glass", "Glasses", "Where they flow, where stress leaves them, where it stays.", items);
  }

  private String span(Glass.Span span) {
    return "%s to %s, usually %s"
        .formatted(
            Wording.of(span.low(), unit),
            Wording.of(span.high(), unit),
            Wording.of(span.usual(), unit));
  }

  // ---- casting

  private Shelf alloys() {
    List<Shelf.Item> items = new ArrayList<>();
    for (CastingAlloy alloy : CastingAlloys.all()) {
      List<Shelf.Value> values = new ArrayList<>();
      alloy
          .densities()
          .forEach(
              d ->
                  values.add(
                      value(
                          "density, " + d.how(),
                          "%.2f g/cm³".formatted(d.kilogramsPerCubicMetre() / 1000),
                          d.origin())));
      alloy
          .meltings()
          .forEach(
              m ->
                  values.add(
                      value(
                          "melts",
                          m.solidus().map(s -> Wording.of(s, unit) + " to ").orElse("")
                              + m.liquidus().map(l -> Wording.of(l, unit)).orElse("not told"),
                          m.origin())));
      items.add(new Shelf.Item(alloy.name().replace('-', ' '), values));
    }
    return new Shelf(
        "casting-alloys",
        "Casting alloys",
        "How much metal a mould needs, and how hot it is poured.",
        items);
  }

  // ---- heat flow

  private Shelf bodies() {
    List<KnownMaterial> known = new ArrayList<>(BodyMaterials.known());
    known.addAll(SolidMaterials.known());
    List<Shelf.Item> items = new ArrayList<>();
    for (KnownMaterial one : known.stream().distinct().toList()) {
      List<Shelf.Value> values = new ArrayList<>(flow(one.material()));
      values.add(
          value(
              "meant for, and how sure",
              "%s; conductivity within %.0f %%, heat within %.0f %%"
                  .formatted(
                      span(one.fromCelsius(), one.toCelsius()),
                      100 * one.conductivityShare(),
                      100 * one.heatShare()),
              Origin.estimate("one standard deviation")));
      items.add(new Shelf.Item(one.name().replace('-', ' '), values));
    }
    return new Shelf(
        "bodies",
        "Moulds, boxes, shelves and pieces",
        "How heat goes through what stands in the kiln.",
        items);
  }

  private Shelf walls() {
    return new Shelf(
        "walls",
        "Walls of kilns",
        "Until a kiln's own logs teach more.",
        WallMaterials.all().stream()
            .map(m -> new Shelf.Item(m.name().replace('-', ' '), flow(m)))
            .toList());
  }

  private List<Shelf.Value> flow(Material material) {
    return List.of(
        value(
            "density",
            "%.0f kg/m³".formatted(material.densityKilogramsPerCubicMetre()),
            material.origin()),
        value(
            "conducts at " + steps(),
            each(material.conductivityWattsPerMetreKelvin()::at) + " W/(m K)",
            material.origin()),
        value(
            "takes up at " + steps(),
            each(c -> Math.rint(material.heatCapacityJoulesPerKilogramKelvin().at(c)))
                + " J/(kg K)",
            material.origin()));
  }

  private String steps() {
    return "%s, %s, %s".formatted(at(COLD_CELSIUS), at(WARM_CELSIUS), at(HOT_CELSIUS));
  }

  private static String each(DoubleUnaryOperator of) {
    return String.join(
        ", ",
        Arrays.stream(new double[] {COLD_CELSIUS, WARM_CELSIUS, HOT_CELSIUS})
            .map(of)
            .mapToObj(Catalogue::number)
            .toList());
  }

  // ---- a person's own

  /**
   * What data sheets and own values say of works; they go before everything above.
   *
   * @param works by name
   */
  public Shelf own(Map<String, Work> works) {
    List<Shelf.Item> items = new ArrayList<>();
    works.forEach(
        (name, work) -> {
          List<Shelf.Value> values = own(sheet(work));
          if (!values.isEmpty()) {
            items.add(new Shelf.Item(name, values));
          }
        });
    return new Shelf(
        "own",
        "Data sheets in works",
        "They stand in the works on the shelf, and go before every other value here.",
        items);
  }

  private static DataSheet sheet(Work work) {
    if (work instanceof BurnoutWork burnout) {
      return burnout.dataSheet();
    } else if (work instanceof EnamelWork enamel) {
      return enamel.dataSheet();
    } else if (work instanceof GlassWork glass) {
      return glass.dataSheet();
    } else if (work instanceof HeatTreatWork treated) {
      return treated.dataSheet();
    }
    return ((SinterWork) work).dataSheet();
  }

  private List<Shelf.Value> own(DataSheet sheet) {
    Origin origin = Origin.own("data sheet");
    List<Shelf.Value> values = new ArrayList<>();
    sheet.max().ifPresent(t -> values.add(value("never above", Wording.of(t, unit), origin)));
    sheet.dry().ifPresent(t -> values.add(value("dries at", Wording.of(t, unit), origin)));
    sheet.dryHold().ifPresent(d -> values.add(value("dries for", HourMinute.words(d), origin)));
    sheet.top().ifPresent(t -> values.add(value("fired at", Wording.of(t, unit), origin)));
    sheet.topHold().ifPresent(d -> values.add(value("held for", HourMinute.words(d), origin)));
    sheet
        .fastestRise()
        .ifPresent(r -> values.add(value("rises at most", Wording.of(r, unit), origin)));
    sheet
        .fastestWetRise()
        .ifPresent(r -> values.add(value("rises wet at most", Wording.of(r, unit), origin)));
    sheet
        .pourSoak()
        .ifPresent(d -> values.add(value("soaks before the pour", HourMinute.words(d), origin)));
    return values;
  }

  // ---- words

  private static Shelf.Value value(String what, String value, Origin origin) {
    return new Shelf.Value(what, value, origin);
  }

  private String at(double celsius) {
    return Wording.of(Temperature.ofCelsius(celsius), unit);
  }

  private String span(double fromCelsius, double toCelsius) {
    return at(fromCelsius) + " to " + at(toCelsius);
  }

  private static String perMillionKelvins(Range perKelvin) {
    return "%.1f to %.1f, usually %.1f millionths a kelvin"
        .formatted(perKelvin.low() * 1e6, perKelvin.high() * 1e6, perKelvin.median() * 1e6);
  }

  private static String minutes(int minutes) {
    return HourMinute.words(Duration.ofMinutes(minutes));
  }

  /** Three significant digits, without a tail of zeros. */
  private static String number(double value) {
    return new BigDecimal(value).round(new MathContext(3)).stripTrailingZeros().toPlainString();
  }

  private static String lower(String name) {
    return name.toLowerCase(Locale.UK).replace('_', ' ');
  }
}
