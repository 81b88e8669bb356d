package org.heatwright.app.casting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.YamlText;
import org.heatwright.mould.Mould;
import org.heatwright.work.casting.CastingCautions;
import org.heatwright.work.casting.CastingClock;
import org.heatwright.work.casting.CastingClocks;
import org.heatwright.work.casting.MouldFill;
import org.heatwright.work.casting.PatternMaterial;
import org.heatwright.work.casting.PowderNeed;
import org.heatwright.work.casting.Remark;
import org.heatwright.work.casting.Spread;

/**
 * Powder and water for moulds, as asked for.
 *
 * @param sizes at least one
 * @param waterPowder water to powder by mass
 * @param wastePercent left in the bowl, percent of the mould
 * @param litresPerKilogram slurry from a kilogram of powder by its data sheet
 * @param scaleGrams step of the scale, g
 */
public record PowderAsk(
    List<Size> sizes,
    double waterPowder,
    double wastePercent,
    Optional<Double> litresPerKilogram,
    double scaleGrams) {

  public static final double USUAL_WASTE_PERCENT = 100 * PowderNeed.USUAL_WASTE_SHARE;
  public static final double USUAL_SCALE_GRAMS = 1;

  public PowderAsk {
    sizes = List.copyOf(sizes);
  }

  /** Equal moulds: outer size, thickness of the ring, wax and resin in each. */
  public record Size(
      double diameterMillimetres,
      double heightMillimetres,
      double wallMillimetres,
      int count,
      Optional<Double> waxGrams,
      Optional<Double> resinGrams) {

    private MouldFill fill() {
      double pattern =
          volume("--wax-g", waxGrams, PatternMaterial.WAX)
              + volume("--resin-g", resinGrams, PatternMaterial.RESIN);
      if (count < 1 || count > 200) {
        throw InputException.in(
            "--count", "\"%d\" is not possible; expected 1 to 200.".formatted(count));
      }
      if (!(wallMillimetres >= 0 && wallMillimetres < diameterMillimetres / 4)) {
        throw InputException.in(
            "--wall-mm",
            "\"%s\" is not possible; expected zero or more, under a quarter of the diameter."
                .formatted(CastInput.typed(wallMillimetres)));
      }
      Mould mould =
          CastInput.blaming(
              "--diameter-mm",
              () ->
                  new Mould(
                      count,
                      diameterMillimetres / 1000,
                      heightMillimetres / 1000,
                      wallMillimetres / 1000));
      return CastInput.blaming(
          waxGrams.isPresent() ? "--wax-g" : "--resin-g", () -> new MouldFill(mould, pattern));
    }

    private static double volume(String option, Optional<Double> grams, PatternMaterial material) {
      return grams
          .map(
              g -> CastInput.positive(option, g) / 1000 / material.kilogramsPerCubicMetre().usual())
          .orElse(0.0);
    }
  }

  /**
   * What comes of it.
   *
   * @param weighed for the scale
   * @param workingTime how long the slurry can be worked
   */
  public record Answer(
      PowderNeed need,
      PowderNeed.Weighed weighed,
      CastingClock workingTime,
      List<String> notes,
      List<Remark> cautions) {

    public CastAnswer words() {
      List<String> details = new ArrayList<>();
      details.add(
          "exactly %s of powder and %s of water for %s mL of slurry"
              .formatted(
                  CastWords.grams(need.powderKilograms()),
                  CastWords.grams(need.waterKilograms()),
                  CastWords.figure(need.slurryCubicMetres() * 1e6)));
      workingTime
          .minutes()
          .ifPresent(
              m ->
                  details.add(
                      "%s to %s minutes: %s"
                          .formatted(
                              YamlText.number(m.low()),
                              YamlText.number(m.high()),
                              CastWords.about(workingTime))));
      return new CastAnswer(
          "Weigh %s of powder and %s of water (as many mL)."
              .formatted(toTheStep(weighed.powderKilograms()), toTheStep(weighed.waterKilograms())),
          details,
          List.of(),
          notes,
          cautions);
    }

    private static String toTheStep(double kilograms) {
      return CastWords.rounded(kilograms * 1000, 1e4) + " g";
    }
  }

  /** Works it out. */
  public Answer answer() {
    List<MouldFill> moulds = sizes.stream().map(Size::fill).toList();
    double waste = CastInput.percent("--waste-percent", wastePercent);
    if (!(waterPowder >= 0.2 && waterPowder <= 0.8)) {
      throw InputException.in(
          "--water-powder",
          "\"%s\" is not possible; expected 0.2 to 0.8, 0.40 meaning 40 g to 100 g."
              .formatted(CastInput.typed(waterPowder)));
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
    return new Answer(
        need,
        weighed,
        CastingClocks.workingTime(),
        notes(weighed),
        List.of(CastingCautions.silicaDust()));
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
}
