package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.app.casting.PowderAsk;
import org.heatwright.work.casting.CastingClock;
import org.heatwright.work.casting.PowderNeed;

/**
 * What {@code cast powder --json} prints; {@code weigh} is what the scale can show, never short of
 * powder.
 */
public record CastPowderJson(
    double slurryMillilitres,
    SpreadJson powderGrams,
    SpreadJson waterGrams,
    double waterPowder,
    WeighJson weigh,
    ClockJson workingTime,
    List<String> notes,
    List<RemarkJson> cautions) {

  /** Rounded for the scale. */
  public record WeighJson(double powderGrams, double waterGrams, double waterPowder) {}

  /** A clock around the kiln; minutes are null where nothing tells them. */
  public record ClockJson(
      String code, String what, Optional<MinutesJson> minutes, String advice, String origin) {
    static ClockJson of(CastingClock clock) {
      return new ClockJson(
          clock.code(),
          clock.what(),
          clock.minutes().map(m -> new MinutesJson(m.low(), m.high())),
          clock.advice(),
          clock.origin().words());
    }
  }

  /** From the shortest to the longest. */
  public record MinutesJson(double low, double high) {}

  public static CastPowderJson of(PowderAsk.Answer answer) {
    PowderNeed need = answer.need();
    PowderNeed.Weighed weighed = answer.weighed();
    return new CastPowderJson(
        need.slurryCubicMetres() * 1e6,
        SpreadJson.thousandfold(need.powderKilograms()),
        SpreadJson.thousandfold(need.waterKilograms()),
        need.waterPowder(),
        new WeighJson(
            weighed.powderKilograms() * 1000,
            weighed.waterKilograms() * 1000,
            weighed.waterPowder()),
        ClockJson.of(answer.workingTime()),
        answer.notes(),
        RemarkJson.of(answer.cautions()));
  }
}
