package org.heatwright.work;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.inspect.Wording;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.EnamelWork.Hardness;

/**
 * The coats of a piece in the order of firing, each at its chamber temperature: as its enamel
 * likes, never hotter than the coat before, so that a lower layer does not break through.
 *
 * @param steps in order
 * @param outOfOrder whether a later coat is harder than an earlier one
 */
record EnamelCoats(List<Step> steps, boolean outOfOrder) {

  /** One coat at its heat. */
  record Step(EnamelCoat coat, Temperature chamber) {}

  /** The last, a flash for the gloss, may be so much cooler. */
  private static final double OVERGLAZE_KELVINS = 10;

  EnamelCoats {
    steps = List.copyOf(steps);
  }

  /**
   * The plan.
   *
   * @param work the session
   * @param working the session's heat: no coat is fired hotter
   */
  static EnamelCoats of(EnamelWork work, Temperature working) {
    List<Step> steps = new ArrayList<>();
    Temperature last = working;
    Hardness before = Hardness.HARD;
    boolean outOfOrder = false;
    EnamelCoat.Kind kind = EnamelCoat.Kind.COUNTER;
    for (EnamelCoat coat : work.build().coats()) {
      Hardness hardness = coat.hardness().orElse(work.hardness());
      // The counter-enamel lies on the other side and moves nothing.
      boolean front = coat.kind() != EnamelCoat.Kind.COUNTER;
      outOfOrder |= front && hardness.compareTo(before) > 0 || coat.kind().compareTo(kind) < 0;
      before = front ? hardness : before;
      kind = coat.kind();
      // A softer enamel than the session's is fired cooler by as much as their usual heats differ.
      double cooler =
          Math.max(
              0,
              EnamelRules.usual(work.hardness()).celsius() - EnamelRules.usual(hardness).celsius());
      double wanted =
          working.celsius()
              - cooler
              - (coat.kind() == EnamelCoat.Kind.OVERGLAZE ? OVERGLAZE_KELVINS : 0);
      Temperature chamber = RoundNumbers.lower(Temperature.ofCelsius(wanted), last);
      steps.add(new Step(coat, chamber));
      last = chamber;
    }
    return new EnamelCoats(steps, outOfOrder);
  }

  int firings() {
    return steps.stream().mapToInt(step -> step.coat().times()).sum();
  }

  /** "Counter-enamel at 820 °C to orange peel, ground coat at 820 °C, ..." */
  String words(TemperatureUnit unit) {
    List<String> parts = new ArrayList<>();
    for (Step step : steps) {
      parts.add(
          "%s%s at %s%s"
              .formatted(
                  step.coat().kind().words(),
                  step.coat().times() > 1 ? ", %d times".formatted(step.coat().times()) : "",
                  Wording.of(step.chamber(), unit),
                  step.coat().kind() == EnamelCoat.Kind.COUNTER
                      ? " to orange peel only: it goes on fusing with the front"
                      : ""));
    }
    String list = String.join("; ", parts);
    return Character.toUpperCase(list.charAt(0))
        + list.substring(1)
        + ". Each coat as hot as the one before or a little cooler and shorter."
        + (outOfOrder
            ? " As they stand, a harder coat comes after a softer one, or the order is turned round: the softer one moves when the harder one fuses."
            : "");
  }
}
