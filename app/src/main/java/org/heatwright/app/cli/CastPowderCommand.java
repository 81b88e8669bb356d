package org.heatwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.json.CastPowderJson;
import org.heatwright.mould.Mould;
import org.heatwright.work.casting.CastingCautions;
import org.heatwright.work.casting.CastingClock;
import org.heatwright.work.casting.CastingClocks;
import org.heatwright.work.casting.MouldFill;
import org.heatwright.work.casting.PatternMaterial;
import org.heatwright.work.casting.PowderNeed;
import org.heatwright.work.casting.Remark;
import org.heatwright.work.casting.Spread;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "powder",
    description = {
      "Powder and water for one mould or several, from their size, what is in them",
      "and the water to powder ratio. Begin the next size with --diameter-mm."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast powder --diameter-mm 75 --height-mm 100 --wax-g 20",
      "  heatwright cast powder --diameter-mm 90 --height-mm 150 --count 3 --wax-g 14 \\",
      "      --diameter-mm 63 --height-mm 63 --resin-g 6 --water-powder 0.38",
      "  heatwright cast powder --diameter-mm 75 --height-mm 100 --litres-per-kg 0.79"
    })
final class CastPowderCommand implements Callable<Integer> {

  /** One size of mould. */
  static final class Size {
    @Option(
        names = "--diameter-mm",
        required = true,
        paramLabel = "D",
        description = "Outside the ring.")
    private double diameterMillimetres;

    @Option(names = "--height-mm", required = true, paramLabel = "H", description = "Height.")
    private double heightMillimetres;

    @Option(names = "--wall-mm", paramLabel = "W", description = "Thickness of the ring (0).")
    private @Nullable Double wallMillimetres;

    @Option(names = "--count", paramLabel = "N", description = "How many of this size (1).")
    private @Nullable Integer count;

    @Option(names = "--wax-g", paramLabel = "G", description = "Wax in each, with its sprue.")
    private @Nullable Double waxGrams;

    @Option(names = "--resin-g", paramLabel = "G", description = "Resin in each, beside the wax.")
    private @Nullable Double resinGrams;
  }

  @ArgGroup(exclusive = false, multiplicity = "1..*", heading = "Each size of mould:%n")
  private List<Size> sizes = new ArrayList<>();

  @Option(
      names = "--water-powder",
      paramLabel = "R",
      defaultValue = "0.40",
      description = "Water to powder by mass (0.40); the data sheet goes first.")
  private double waterPowder;

  @Option(
      names = "--waste-percent",
      paramLabel = "P",
      defaultValue = "5",
      description = "Left in the bowl, percent of the mould (5).")
  private double wastePercent;

  @Option(
      names = "--litres-per-kg",
      paramLabel = "L",
      description = "Slurry from a kilogram of your powder, by its data sheet.")
  private Optional<Double> litresPerKilogram;

  @Option(
      names = "--scale-g",
      paramLabel = "G",
      defaultValue = "1",
      description = "Step of your scale, grams (1).")
  private double scaleGrams;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastPowderCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    List<MouldFill> moulds = sizes.stream().map(CastPowderCommand::fill).toList();
    double waste = CastInput.percent("--waste-percent", wastePercent);
    if (!(waterPowder >= 0.2 && waterPowder <= 0.8)) {
      throw InputException.in(
          "--water-powder",
          "\"%s\" is not possible; expected 0.2 to 0.8, 0.40 meaning 40 g to 100 g."
              .formatted(waterPowder));
    }
    PowderNeed need =
        litresPerKilogram
            .map(
                litres ->
                    CastInput.blaming(
                        "--litres-per-kg",
                        () -> PowderNeed.ofYield(moulds, waterPowder, waste, litres / 1000)))
            .orElseGet(
                () ->
                    CastInput.blaming(
                        "--diameter-mm", () -> PowderNeed.gypsum(moulds, waterPowder, waste)));
    PowderNeed.Weighed weighed =
        CastInput.blaming("--scale-g", () -> need.weighed(scaleGrams / 1000));
    List<String> notes = notes(weighed);
    CastingClock clock = CastingClocks.workingTime();
    List<Remark> cautions = List.of(CastingCautions.silicaDust());
    answer.give(
        surroundings,
        CastPowderJson.of(need, weighed, clock, notes, cautions),
        page(need, weighed, clock, notes, cautions));
    return Answer.DONE;
  }

  private static MouldFill fill(Size size) {
    Optional<Double> wax = Optional.ofNullable(size.waxGrams);
    Optional<Double> resin = Optional.ofNullable(size.resinGrams);
    wax.ifPresent(g -> CastInput.positive("--wax-g", g));
    resin.ifPresent(g -> CastInput.positive("--resin-g", g));
    double wall = Optional.ofNullable(size.wallMillimetres).orElse(0.0);
    int count = Optional.ofNullable(size.count).orElse(1);
    if (count < 1 || count > 200) {
      throw InputException.in(
          "--count", "\"%d\" is not possible; expected 1 to 200.".formatted(count));
    }
    if (!(wall >= 0 && wall < size.diameterMillimetres / 4)) {
      throw InputException.in(
          "--wall-mm",
          "\"%s\" is not possible; expected zero or more, under a quarter of the diameter."
              .formatted(wall));
    }
    Mould mould =
        CastInput.blaming(
            "--diameter-mm",
            () ->
                new Mould(
                    count,
                    size.diameterMillimetres / 1000,
                    size.heightMillimetres / 1000,
                    wall / 1000));
    double pattern = volume(wax, PatternMaterial.WAX) + volume(resin, PatternMaterial.RESIN);
    return CastInput.blaming(
        wax.isPresent() ? "--wax-g" : "--resin-g", () -> new MouldFill(mould, pattern));
  }

  private static double volume(Optional<Double> grams, PatternMaterial material) {
    return grams.orElse(0.0) / 1000 / material.kilogramsPerCubicMetre().usual();
  }

  private List<String> notes(PowderNeed.Weighed weighed) {
    List<String> notes = new ArrayList<>();
    notes.add(
        litresPerKilogram.isPresent()
            ? "By your data sheet a kilogram makes %s L of slurry."
                .formatted(YamlText.number(litresPerKilogram.get()))
            : "For the usual mix of a gypsum-bonded powder; powders differ by about 3 % either way (our"
                + " estimate), so --litres-per-kg from the data sheet goes first.");
    Spread usual = PowderNeed.USUAL_WATER_POWDER;
    if (!usual.contains(waterPowder)) {
      notes.add(
          "A ratio of %s is outside %s to %s, what gypsum-bonded powders take (%s): look at the data sheet."
              .formatted(
                  YamlText.number(waterPowder),
                  YamlText.number(usual.low()),
                  YamlText.number(usual.high()),
                  PowderNeed.WATER_POWDER_ORIGIN.words()));
    }
    double off = Math.abs(weighed.waterPowder() / waterPowder - 1);
    if (off > 0.01) {
      notes.add(
          "Rounded to the scale the ratio becomes %.3f: weigh finer."
              .formatted(weighed.waterPowder()));
    }
    return notes;
  }

  private static Page page(
      PowderNeed need,
      PowderNeed.Weighed weighed,
      CastingClock clock,
      List<String> notes,
      List<Remark> cautions) {
    Page page = new Page();
    page.line(
        "Weigh %s of powder and %s of water (as many mL)."
            .formatted(grams(weighed.powderKilograms()), grams(weighed.waterKilograms())));
    page.hanging(
        "  ",
        "exactly %s of powder and %s of water for %s mL of slurry"
            .formatted(
                CastInput.grams(need.powderKilograms()),
                CastInput.grams(need.waterKilograms()),
                CastInput.figure(need.slurryCubicMetres() * 1e6)));
    clock
        .minutes()
        .ifPresent(
            m ->
                page.hanging(
                    "  ",
                    "%s to %s minutes: %s. %s (%s)"
                        .formatted(
                            YamlText.number(m.low()),
                            YamlText.number(m.high()),
                            clock.what(),
                            clock.advice(),
                            clock.origin().words())));
    page.blank();
    notes.forEach(note -> page.hanging("note  ", note));
    CastInput.remarks(page, "care  ", cautions);
    return page;
  }

  /** To the scale's step, unrounded. */
  private static String grams(double kilograms) {
    return YamlText.number(Math.rint(kilograms * 1e7) / 1e4) + " g";
  }
}
