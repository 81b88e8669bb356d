package org.heatwright.app.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.heatwright.app.casting.CastAnswer;
import org.heatwright.app.casting.MetalAsk;
import org.heatwright.app.casting.OrderAsk;
import org.heatwright.app.casting.PourAsk;
import org.heatwright.app.casting.PowderAsk;
import org.heatwright.app.casting.SizeAsk;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.PourWords;
import org.heatwright.app.report.WhenWords;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.BurnoutWork;
import org.heatwright.work.PatternedMould;
import org.heatwright.work.casting.CastingAlloys;
import org.heatwright.work.casting.PouringOrder;
import org.heatwright.work.casting.PowderNeed;

/** Answers what a caster asks about a pour, with a planned firing behind it or without. */
final class PourDesk {

  private static final List<String> SIZE_NAMES = List.of("Moulds", "A second size", "A third size");
  private static final List<String> WISH_NAMES =
      List.of("Moulds", "Others", "Still others", "The last ones");
  private static final String[] METHODS = {"vacuum", "centrifugal", "gravity"};

  /** The pages, in the order of the work. */
  private enum Topic {
    TEMPERATURES("Temperatures", "Mould and metal", "How hot mould and metal should be, and why.") {
      @Override
      Optional<CastAnswer> answer(PourForm form, Optional<Firing> firing) {
        form.group("", false)
            .alloy("alloy", "Alloy")
            .text("thinnest-mm", "Thinnest section, mm")
            .choice("method", "Method", METHODS)
            .choice("binder", "Mould bonded by", "not told", "gypsum", "phosphate", "unknown")
            .text("my-mould", "Your own mould temperature")
            .text("my-metal", "Your own metal temperature")
            .text("liquidus", "All liquid at")
            .choice("unit", "Degrees", "C", "F");
        PourAsk ask =
            new PourAsk(
                form.word("alloy"),
                form.number("thinnest-mm"),
                form.word("method"),
                form.word("binder"),
                form.number("my-mould"),
                form.number("my-metal"),
                form.number("liquidus"),
                form.unit());
        return Optional.of(PourAsk.words(ask.plan(), form.unit()));
      }
    },
    METAL("Metal", "Metal to melt", "What to melt for a pattern, with sprues and button.") {
      @Override
      Optional<CastAnswer> answer(PourForm form, Optional<Firing> firing) {
        form.group("", false)
            .alloy("alloy", "Alloy")
            .text("wax-g", "Wax, g")
            .text("resin-g", "Or resin, g")
            .text("volume-cm3", "Or a volume, cm³")
            .choice("method", "Method", METHODS)
            .choice("without-sprues", "Sprues", "weighed too", "not weighed")
            .called("without-sprues", "Sprues: not weighed");
        form.group("Your own numbers", true)
            .text("mix", "Your own alloy by parts, Au=750,Cu=250")
            .text("density-g-cm3", "Your own density, g/cm³")
            .text("pattern-density-g-cm3", "Density of wax or resin, g/cm³")
            .text("button-percent", "Button, percent");
        if (form.number("wax-g").isEmpty()
            && form.number("resin-g").isEmpty()
            && form.number("volume-cm3").isEmpty()) {
          return Optional.empty();
        }
        boolean own = form.word("mix").isPresent();
        return Optional.of(
            new MetalAsk(
                    own ? Optional.empty() : form.word("alloy"),
                    form.word("mix"),
                    form.number("density-g-cm3"),
                    form.number("wax-g"),
                    form.number("resin-g"),
                    form.number("volume-cm3"),
                    Optional.empty(),
                    form.number("pattern-density-g-cm3"),
                    form.word("method").orElse(METHODS[0]),
                    form.number("button-percent"),
                    form.value("without-sprues").equals("not weighed"))
                .answer()
                .words());
      }
    },
    POWDER(
        "Powder",
        "Powder and water",
        "What to weigh for the moulds, and how long it can be worked.") {
      @Override
      Optional<CastAnswer> answer(PourForm form, Optional<Firing> firing) {
        for (int row = 1; row <= SIZE_NAMES.size(); row++) {
          form.group(SIZE_NAMES.get(row - 1), row > 1)
              .text("diameter-mm" + row, "Outside the ring, mm")
              .text("height-mm" + row, "Height, mm")
              .text("wall-mm" + row, "Ring, mm thick")
              .text("count" + row, "How many")
              .text("wax-g" + row, "Wax in each, g")
              .text("resin-g" + row, "Resin in each, g");
        }
        form.group("Powder", false)
            .text("water-powder", "Water to powder, by mass")
            .text("litres-per-kg", "Slurry of a kilogram, L (data sheet)")
            .text("waste-percent", "Left in the bowl, percent")
            .text("scale-g", "Step of the scale, g");
        List<PowderAsk.Size> sizes = new ArrayList<>();
        for (int i = 1; i <= SIZE_NAMES.size(); i++) {
          String row = Integer.toString(i);
          if (form.word("diameter-mm" + row).isPresent()
              || form.word("height-mm" + row).isPresent()) {
            PowderAsk.Size size =
                new PowderAsk.Size(
                    form.required("diameter-mm" + row),
                    form.required("height-mm" + row),
                    form.number("wall-mm" + row, 0),
                    form.count("count" + row),
                    form.number("wax-g" + row),
                    form.number("resin-g" + row));
            inRow(row, () -> ask(form, List.of(size)).answer());
            sizes.add(size);
          }
        }
        return sizes.isEmpty() ? Optional.empty() : Optional.of(ask(form, sizes).answer().words());
      }

      private PowderAsk ask(PourForm form, List<PowderAsk.Size> sizes) {
        return new PowderAsk(
            sizes,
            form.number("water-powder", PowderNeed.USUAL_WATER_POWDER.usual()),
            form.number("waste-percent", PowderAsk.USUAL_WASTE_PERCENT),
            form.number("litres-per-kg"),
            form.number("scale-g", PowderAsk.USUAL_SCALE_GRAMS));
      }
    },
    SIZE("Size", "Size of a pattern", "How much larger a pattern must be than its casting.") {
      @Override
      Optional<CastAnswer> answer(PourForm form, Optional<Firing> firing) {
        form.group("", false)
            .text("wanted-mm", "Wanted size of the casting, mm")
            .text("pattern-mm", "Or size of the pattern, mm")
            .text("shrinkage-percent", "Your own shrinkage, percent");
        return form.number("wanted-mm").isEmpty() && form.number("pattern-mm").isEmpty()
            ? Optional.empty()
            : Optional.of(
                new SizeAsk(
                        form.number("wanted-mm"),
                        form.number("pattern-mm"),
                        form.number("shrinkage-percent"))
                    .answer()
                    .words());
      }
    },
    ORDER("Order", "Order of pouring", "Moulds that want different temperatures from one kiln.") {
      @Override
      Optional<CastAnswer> answer(PourForm form, Optional<Firing> firing) {
        for (int row = 1; row <= WISH_NAMES.size(); row++) {
          form.group(WISH_NAMES.get(row - 1), row > 2)
              .text("mould" + row, "What you call them")
              .text("wants" + row, "Temperature they want")
              .text("count" + row, "How many");
        }
        form.group("Kiln", false)
            .text("kiln-now", "Kiln and moulds now")
            .text(
                "fall-per-hour",
                firing.isPresent()
                    ? "It comes down, degrees an hour (empty: forecast)"
                    : "It comes down, degrees an hour")
            .text("rise-per-hour", "It goes up, degrees an hour")
            .text(
                "settle-minutes",
                firing.isPresent()
                    ? "For the cores, minutes (where a rate is told)"
                    : "For the cores, minutes")
            .text("pour-minutes", "For each mould, minutes")
            .text("accept-degrees", "What would do, degrees either side")
            .choice("unit", "Degrees", "C", "F");
        List<OrderAsk.Mould> moulds = new ArrayList<>();
        List<String> rows = new ArrayList<>();
        for (int i = 1; i <= WISH_NAMES.size(); i++) {
          String row = Integer.toString(i);
          if (form.word("wants" + row).isPresent()) {
            rows.add(row);
            moulds.add(
                new OrderAsk.Mould(
                    form.word("mould" + row).orElse("moulds " + row),
                    form.required("wants" + row),
                    form.count("count" + row)));
          }
        }
        if (moulds.isEmpty() || form.word("kiln-now").isEmpty()) {
          return Optional.empty();
        }
        PouringOrder.Change change = change(form, firing);
        for (int i = 0; i < moulds.size(); i++) {
          OrderAsk.Mould one = moulds.get(i);
          inRow(rows.get(i), () -> ask(form, List.of(one), change).requireMoulds());
        }
        return Optional.of(OrderAsk.words(ask(form, moulds, change).order(), form.unit()));
      }

      /** By forecast where there is a firing and no rate is told. */
      private PouringOrder.Change change(PourForm form, Optional<Firing> firing) {
        boolean forecast = firing.isPresent() && form.word("fall-per-hour").isEmpty();
        return forecast
            ? OrderAsk.byForecast(
                ForecastRequest.of(
                    firing.get().program().expressible().withStartDelay(Duration.ZERO),
                    firing.get().kiln(),
                    firing.get().composition().charge()),
                Optional.empty(),
                form.unit())
            : OrderAsk.atRates(
                form.required("fall-per-hour"),
                form.number("rise-per-hour"),
                form.number("settle-minutes", OrderAsk.USUAL_SETTLE_MINUTES),
                form.unit());
      }

      private OrderAsk ask(PourForm form, List<OrderAsk.Mould> moulds, PouringOrder.Change change) {
        return new OrderAsk(
            moulds,
            form.required("kiln-now"),
            change,
            form.number("pour-minutes", OrderAsk.USUAL_POUR_MINUTES),
            form.number("accept-degrees"),
            form.unit());
      }
    };

    private final String tab;
    private final String title;
    private final String says;

    Topic(String tab, String title, String says) {
      this.tab = tab;
      this.title = title;
      this.says = says;
    }

    /** Lays out the fields, then answers; empty where too little is said. */
    abstract Optional<CastAnswer> answer(PourForm form, Optional<Firing> firing);

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private PourDesk() {}

  /** What a row of several does wrong is told beside that row. */
  private static void inRow(String row, Runnable alone) {
    try {
      alone.run();
    } catch (InputException e) {
      throw new RowException(row, e);
    }
  }

  private static final class RowException extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final String row;
    private final InputException wrong;

    RowException(String row, InputException wrong) {
      super(wrong);
      this.row = row;
      this.wrong = wrong;
    }
  }

  /**
   * The page.
   *
   * @param typed the address's fields
   * @param firing the plan it belongs to
   */
  static PourPage page(Map<String, String> typed, Optional<Firing> firing, String clock) {
    Topic topic =
        Arrays.stream(Topic.values())
            .filter(t -> t.word().equals(typed.getOrDefault("what", "")))
            .findFirst()
            .orElse(Topic.TEMPERATURES);
    PourForm form = new PourForm(typed, usual(topic, firing));
    Optional<CastAnswer> answer = answer(topic, form, firing);
    String plan = firing.map(f -> f.choices().sealed()).orElse("");
    return new PourPage(
        clock,
        firing.map(f -> "/plan?" + f.choices().query()),
        plan,
        tabs(topic, plan),
        topic.word(),
        topic.title,
        topic.says,
        topic == Topic.TEMPERATURES ? firing.map(PourDesk::facts).orElse(List.of()) : List.of(),
        answer.map(a -> said(form, a)),
        form.alarm(),
        form.groups(),
        Arrays.asList(CastingAlloys.names().split(", ")));
  }

  private static Optional<CastAnswer> answer(Topic topic, PourForm form, Optional<Firing> firing) {
    try {
      return topic.answer(form, firing);
    } catch (RowException e) {
      form.blame(e.wrong, e.row);
    } catch (InputException e) {
      form.blame(e);
    }
    return Optional.empty();
  }

  private static CastAnswer said(PourForm form, CastAnswer answer) {
    return new CastAnswer(
        answer.headline(),
        answer.details().stream().map(form::said).toList(),
        answer.tables(),
        answer.notes().stream().map(form::said).toList(),
        answer.cautions());
  }

  private static List<PourPage.Tab> tabs(Topic here, String plan) {
    return Arrays.stream(Topic.values())
        .map(
            topic ->
                new PourPage.Tab(
                    topic.tab,
                    "/pour?what="
                        + topic.word()
                        + (plan.isEmpty()
                            ? ""
                            : "&plan=" + URLEncoder.encode(plan, StandardCharsets.UTF_8)),
                    topic == here))
        .toList();
  }

  private static List<Card.Fact> facts(Firing firing) {
    return firing
        .pour()
        .map(
            sheet ->
                new PourWords(
                        sheet,
                        firing.forecast(),
                        firing.program().unit(),
                        new WhenWords(Optional.of(firing.start().start())))
                    .facts())
        .orElse(List.of());
  }

  // ---- what stands in the fields at first

  private static Map<String, String> usual(Topic topic, Optional<Firing> firing) {
    Map<String, String> usual = new LinkedHashMap<>();
    usual.put("method", METHODS[0]);
    usual.put("unit", "C");
    usual.put("alloy", "sterling-925");
    if (topic == Topic.POWDER) {
      usual.put("water-powder", YamlText.number(PowderNeed.USUAL_WATER_POWDER.usual()));
      usual.put("waste-percent", YamlText.number(PowderAsk.USUAL_WASTE_PERCENT));
      usual.put("scale-g", YamlText.number(PowderAsk.USUAL_SCALE_GRAMS));
    }
    if (topic == Topic.ORDER) {
      usual.put("settle-minutes", YamlText.number(OrderAsk.USUAL_SETTLE_MINUTES));
      usual.put("pour-minutes", YamlText.number(OrderAsk.USUAL_POUR_MINUTES));
    }
    firing.ifPresent(
        f -> {
          if (f.work() instanceof BurnoutWork burnout) {
            usual.putAll(ofWork(topic, f, burnout));
          }
        });
    return usual;
  }

  private static Map<String, String> ofWork(Topic topic, Firing firing, BurnoutWork work) {
    Map<String, String> usual = new LinkedHashMap<>();
    TemperatureUnit unit = firing.program().unit();
    usual.put("unit", unit.letter());
    usual.put("alloy", work.metal().alloy());
    work.metal().method().ifPresent(m -> usual.put("method", m.word()));
    usual.put("binder", work.investment().binder().name().toLowerCase(Locale.ROOT));
    work.metal()
        .thinnestMetres()
        .ifPresent(t -> usual.put("thinnest-mm", YamlText.number(t * 1000)));
    work.metal().pourMould().ifPresent(t -> usual.put("my-mould", YamlText.number(unit.value(t))));
    work.metal().pourMetal().ifPresent(t -> usual.put("my-metal", YamlText.number(unit.value(t))));
    boolean gypsum = work.investment().binder() != Binder.PHOSPHATE;
    if (topic == Topic.POWDER && gypsum) {
      usual.put("water-powder", YamlText.number(work.investment().waterPowder()));
    }
    for (int i = 0; i < work.moulds().size(); i++) {
      mould(topic, usual, work.moulds().get(i), i + 1);
    }
    if (topic == Topic.ORDER) {
      firing.pour().ifPresent(p -> usual.put("wants1", YamlText.number(unit.value(p.mould()))));
      usual.put("mould1", "these moulds");
      usual.put("count1", Integer.toString(work.count()));
      usual.put("kiln-now", YamlText.number(unit.value(firing.program().expressible().peak())));
    }
    return usual;
  }

  private static void mould(
      Topic topic, Map<String, String> usual, PatternedMould each, int number) {
    Optional<String> grams =
        each.patternKilograms().stream().mapToObj(kg -> YamlText.number(kg * 1000)).findFirst();
    String pattern = each.pattern() == PatternedMould.Pattern.RESIN ? "resin-g" : "wax-g";
    if (topic == Topic.METAL && number == 1) {
      grams.ifPresent(g -> usual.put(pattern, g));
    }
    if (topic == Topic.POWDER && number <= SIZE_NAMES.size()) {
      usual.put("diameter-mm" + number, YamlText.number(each.mould().diameterMetres() * 1000));
      usual.put("height-mm" + number, YamlText.number(each.mould().heightMetres() * 1000));
      usual.put("wall-mm" + number, YamlText.number(each.mould().wallMetres() * 1000));
      usual.put("count" + number, Integer.toString(each.mould().count()));
      grams.ifPresent(g -> usual.put(pattern + number, g));
    }
  }
}
