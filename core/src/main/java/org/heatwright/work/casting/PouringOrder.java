package org.heatwright.work.casting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.forecast.Changeover;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.units.Temperature;

/**
 * Moulds that want different temperatures from one kiln: the hottest first, while the kiln comes
 * down; and what one temperature for all would cost.
 *
 * @param steps in the order of pouring
 * @param totalMinutes until the last mould is poured
 * @param compromise one temperature for all; empty if all want the same
 */
public record PouringOrder(List<Step> steps, double totalMinutes, Optional<Compromise> compromise) {

  /** How long kiln and cores take between temperatures: by a forecast or a plain rate. */
  @FunctionalInterface
  public interface Change {
    Changeover between(Temperature from, Temperature to);
  }

  /**
   * Moulds that want one temperature.
   *
   * @param name what the studio calls them
   * @param count how many, 1 to 200
   * @param wanted temperature all through at the pour
   * @param accepted what would do, around the wanted
   */
  public record Wanted(String name, int count, Temperature wanted, TemperatureRange accepted) {
    public Wanted {
      Objects.requireNonNull(name, "name");
      if (count < 1 || count > 200) {
        throw new IllegalArgumentException(
            "The number of moulds (%d) must be 1 to 200.".formatted(count));
      }
      if (!accepted.contains(wanted)) {
        throw new IllegalArgumentException(
            "What would do for %s must hold what is wanted.".formatted(name));
      }
    }
  }

  /**
   * One kind of mould in its turn.
   *
   * @param moulds which
   * @param kilnMinutes the kiln on its way there
   * @param settleMinutes the cores catching up
   * @param readyMinutes from now until the first is drawn
   * @param pouredMinutes from now until the last of them is poured
   */
  public record Step(
      Wanted moulds,
      double kilnMinutes,
      double settleMinutes,
      double readyMinutes,
      double pouredMinutes) {}

  /**
   * One temperature for all.
   *
   * @param temperature inside what all accept where there is such; else midway between the hottest
   *     and the coolest wish
   * @param withinAll whether all accept it
   * @param savedMinutes what it saves against the order
   * @param costs what it means for each, in the order of pouring
   */
  public record Compromise(
      Temperature temperature, boolean withinAll, double savedMinutes, List<Cost> costs) {
    public Compromise {
      Objects.requireNonNull(temperature, "temperature");
      costs = List.copyOf(costs);
    }
  }

  /**
   * What a compromise means for one kind of mould.
   *
   * @param name which
   * @param offKelvins above what is wanted; below it if negative
   * @param accepted whether it would do
   * @param sentence what may come of it
   */
  public record Cost(String name, double offKelvins, boolean accepted, String sentence) {}

  public PouringOrder {
    steps = List.copyOf(steps);
    Objects.requireNonNull(compromise, "compromise");
  }

  /**
   * The order.
   *
   * @param moulds at least one kind
   * @param kilnNow temperature of the kiln and of every core now
   * @param change the time between temperatures
   * @param pourMinutes for each mould, zero or more
   */
  public static PouringOrder of(
      List<Wanted> moulds, Temperature kilnNow, Change change, double pourMinutes) {
    if (moulds.isEmpty()) {
      throw new IllegalArgumentException("There must be at least one mould.");
    }
    if (!(pourMinutes >= 0)) {
      throw new IllegalArgumentException("The time to pour must not be negative.");
    }
    List<Wanted> hottestFirst =
        moulds.stream().sorted(Comparator.comparing(Wanted::wanted).reversed()).toList();
    List<Step> steps = steps(hottestFirst, kilnNow, change, pourMinutes);
    double total = steps.get(steps.size() - 1).pouredMinutes();
    Temperature hottest = hottestFirst.get(0).wanted();
    Temperature coolest = hottestFirst.get(hottestFirst.size() - 1).wanted();
    Optional<Compromise> compromise =
        hottest.equals(coolest)
            ? Optional.empty()
            : Optional.of(compromise(hottestFirst, kilnNow, change, pourMinutes, total));
    return new PouringOrder(steps, total, compromise);
  }

  private static List<Step> steps(
      List<Wanted> inOrder, Temperature kilnNow, Change change, double pourMinutes) {
    List<Step> steps = new ArrayList<>();
    Temperature at = kilnNow;
    double clock = 0;
    for (Wanted moulds : inOrder) {
      boolean moves = !at.equals(moulds.wanted());
      Changeover took = moves ? change.between(at, moulds.wanted()) : new Changeover(0, 0);
      double ready = clock + took.kilnMinutes() + took.settleMinutes();
      clock = ready + moulds.count() * pourMinutes;
      steps.add(new Step(moulds, took.kilnMinutes(), took.settleMinutes(), ready, clock));
      at = moulds.wanted();
    }
    return steps;
  }

  private static Compromise compromise(
      List<Wanted> hottestFirst,
      Temperature kilnNow,
      Change change,
      double pourMinutes,
      double totalMinutes) {
    double lowCelsius =
        hottestFirst.stream().mapToDouble(m -> m.accepted().from().celsius()).max().orElseThrow();
    double highCelsius =
        hottestFirst.stream().mapToDouble(m -> m.accepted().to().celsius()).min().orElseThrow();
    double midCelsius =
        (hottestFirst.get(0).wanted().celsius()
                + hottestFirst.get(hottestFirst.size() - 1).wanted().celsius())
            / 2;
    boolean withinAll = lowCelsius <= highCelsius;
    Temperature one =
        Temperature.ofCelsius(
            withinAll ? Math.max(lowCelsius, Math.min(highCelsius, midCelsius)) : midCelsius);
    List<Wanted> same =
        hottestFirst.stream()
            .map(m -> new Wanted(m.name(), m.count(), one, new TemperatureRange(one, one)))
            .toList();
    List<Step> steps = steps(same, kilnNow, change, pourMinutes);
    List<Cost> costs = hottestFirst.stream().map(m -> cost(m, one)).toList();
    return new Compromise(
        one, withinAll, totalMinutes - steps.get(steps.size() - 1).pouredMinutes(), costs);
  }

  private static Cost cost(Wanted moulds, Temperature one) {
    double off = one.minus(moulds.wanted()).kelvins();
    boolean accepted = moulds.accepted().contains(one);
    String sentence;
    if (off == 0) {
      sentence = "as wanted.";
    } else {
      sentence =
          off > 0
              ? "hotter than wanted: freezes later, coarser and more porous, more gas from the mould"
              : "colder than wanted: thin parts may not fill";
      sentence += accepted ? "; still inside what you accept." : ".";
    }
    return new Cost(moulds.name(), off, accepted, sentence);
  }
}
