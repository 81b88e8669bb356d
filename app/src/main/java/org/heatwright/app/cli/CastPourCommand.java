package org.heatwright.app.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.json.CastPourJson;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.AlloyFamily;
import org.heatwright.work.casting.CastingAlloy;
import org.heatwright.work.casting.CastingAlloys;
import org.heatwright.work.casting.CastingClock;
import org.heatwright.work.casting.Melting;
import org.heatwright.work.casting.PouringMethod;
import org.heatwright.work.casting.PouringPlan;
import org.heatwright.work.casting.PouringQuestion;
import org.heatwright.work.casting.Proposal;
import org.heatwright.work.casting.SectionClass;
import org.heatwright.work.casting.TemperatureRow;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "pour",
    description = {
      "Temperatures of mould and metal for a pour: your own value first, then every",
      "source with its own row, a proposed value and why. And the clocks around the",
      "kiln, from mixing powder to breaking out."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast pour --alloy sterling-925 --thinnest-mm 1.2",
      "  heatwright cast pour --alloy 18k-white-gold --thinnest-mm 0.7 --unit F \\",
      "      --method centrifugal --my-mould 1250",
      "  heatwright cast pour --alloy 9k-yellow-gold --liquidus 890"
    })
final class CastPourCommand implements Callable<Integer> {

  @Option(
      names = "--alloy",
      required = true,
      paramLabel = "A",
      description = "Such as sterling-925 or 14k-yellow-gold.")
  private String alloyName;

  @Option(
      names = "--thinnest-mm",
      paramLabel = "T",
      description = "Thinnest section; on a mixed tree that of the lightest piece.")
  private Optional<Double> thinnestMillimetres;

  @Option(
      names = "--method",
      paramLabel = "M",
      defaultValue = "vacuum",
      description = "vacuum, centrifugal or gravity.")
  private String methodWord;

  @Option(
      names = "--binder",
      paramLabel = "B",
      description = "gypsum, phosphate or unknown (gypsum; platinum: phosphate).")
  private Optional<String> binderWord;

  @Option(
      names = "--my-mould",
      paramLabel = "T",
      description = "Your own mould temperature, in --unit.")
  private Optional<Double> ownMould;

  @Option(
      names = "--my-metal",
      paramLabel = "T",
      description = "Your own metal temperature, in --unit.")
  private Optional<Double> ownMetal;

  @Option(
      names = "--liquidus",
      paramLabel = "T",
      description = "Where your alloy is all liquid, in --unit.")
  private Optional<Double> liquidus;

  @Option(names = "--unit", paramLabel = "U", defaultValue = "C", description = "C or F.")
  private String unitLetter;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastPourCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    TemperatureUnit unit = CastInput.unit("--unit", unitLetter);
    PouringMethod method = CastInput.method("--method", methodWord);
    Optional<CastingAlloy> known = CastingAlloys.find(alloyName);
    AlloyFamily family =
        known
            .map(CastingAlloy::family)
            .or(() -> AlloyFamily.ofName(alloyName))
            .orElseGet(() -> CastInput.alloy("--alloy", alloyName).family());
    Binder binder = binder(family);
    List<Melting> meltings = known.map(CastingAlloy::meltings).orElse(List.of());
    Optional<SectionClass> section =
        thinnestMillimetres.map(
            t -> CastInput.blaming("--thinnest-mm", () -> SectionClass.ofMetres(t / 1000)));
    PouringQuestion asked =
        CastInput.blaming(
            "--binder",
            () ->
                new PouringQuestion(
                    known.map(CastingAlloy::name).orElse(alloyName),
                    family,
                    meltings,
                    section,
                    method,
                    binder,
                    ownMould.map(t -> CastInput.temperature("--my-mould", t, unit)),
                    ownMetal.map(t -> CastInput.temperature("--my-metal", t, unit))));
    PouringQuestion question =
        liquidus
            .map(t -> asked.withLiquidus(CastInput.temperature("--liquidus", t, unit)))
            .orElse(asked);
    PouringPlan plan = PouringPlan.of(question, unit);
    answer.give(surroundings, CastPourJson.of(plan), page(plan, unit));
    return Answer.DONE;
  }

  private Binder binder(AlloyFamily family) {
    if (binderWord.isEmpty()) {
      return family.needsPhosphate() ? Binder.PHOSPHATE : Binder.GYPSUM;
    }
    return switch (binderWord.get().toLowerCase(Locale.ROOT)) {
      case "gypsum" -> Binder.GYPSUM;
      case "phosphate" -> Binder.PHOSPHATE;
      case "unknown" -> Binder.UNKNOWN;
      default ->
          throw InputException.in(
              "--binder",
              "\"%s\" is not known; expected gypsum, phosphate or unknown."
                  .formatted(binderWord.get()));
    };
  }

  private static Page page(PouringPlan plan, TemperatureUnit unit) {
    Page page = new Page();
    PouringQuestion question = plan.question();
    page.line(
        "%s, %s, %s:"
            .formatted(
                question.alloy(),
                question.section().map(SectionClass::words).orElse("section not told"),
                question.method().word()));
    page.blank();
    proposal(page, "Mould", plan.mould(), unit);
    page.blank();
    proposal(page, "Metal", plan.metal(), unit);
    plan.superheatKelvins()
        .ifPresent(
            s ->
                page.hanging(
                    "  ",
                    "that is %.0f %s over melting (%.0f to %.0f)"
                        .formatted(
                            degrees(s.usual(), unit),
                            unit == TemperatureUnit.CELSIUS ? "K" : "°F",
                            degrees(s.low(), unit),
                            degrees(s.high(), unit))));
    page.blank();
    CastInput.remarks(page, "note  ", plan.remarks());
    CastInput.remarks(page, "care  ", plan.cautions());
    page.blank().line("The clocks (gypsum-bonded moulds):");
    plan.clocks().forEach(clock -> page.hanging("  ", clock(clock)));
    return page;
  }

  private static void proposal(
      Page page, String what, Optional<Proposal> proposal, TemperatureUnit unit) {
    if (proposal.isEmpty()) {
      page.line("%s: no value; see the notes.".formatted(what));
      return;
    }
    Proposal told = proposal.get();
    page.line(
        "%s: %s; sources for this work give %s."
            .formatted(
                what,
                CastInput.degrees(told.value(), unit),
                CastInput.degrees(told.range().from(), told.range().to(), unit)));
    page.hanging("  ", told.why());
    page.hanging("  ", "Rows with * enter:");
    for (TemperatureRow row : told.rows()) {
      String range = CastInput.degrees(row.range().from(), row.range().to(), unit);
      String origin = row.about().equals("your own value") ? "" : " (" + row.origin().words() + ")";
      page.hanging(
          "  %s %-16s".formatted(row.counts() ? "*" : " ", range), " " + row.about() + origin);
    }
  }

  private static double degrees(double kelvins, TemperatureUnit unit) {
    return unit == TemperatureUnit.CELSIUS ? kelvins : kelvins * 1.8;
  }

  private static String clock(CastingClock clock) {
    String time = clock.minutes().map(m -> time(m.low(), m.high()) + ": ").orElse("");
    return "%s%s. %s (%s)".formatted(time, clock.what(), clock.advice(), clock.origin().words());
  }

  private static String time(double lowMinutes, double highMinutes) {
    if (highMinutes < 1) {
      return "%.0f to %.0f s".formatted(lowMinutes * 60, highMinutes * 60);
    }
    if (highMinutes >= 60) {
      return "%s to %s h"
          .formatted(
              YamlText.number(Math.rint(lowMinutes / 6) / 10),
              YamlText.number(Math.rint(highMinutes / 6) / 10));
    }
    return "%s to %s min".formatted(YamlText.number(lowMinutes), YamlText.number(highMinutes));
  }
}
