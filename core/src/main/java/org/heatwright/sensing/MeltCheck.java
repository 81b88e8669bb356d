package org.heatwright.sensing;

import java.util.List;
import java.util.Objects;
import org.heatwright.material.FixedPoints;
import org.heatwright.material.Origin;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/**
 * A fine-silver wire beside the sensor, watched until it melts. Nobody sees the moment itself: the
 * display was read when the wire was last seen whole and when it was first seen melted.
 *
 * @param lastWhole what the display said at the last look at a whole wire
 * @param firstMelted what it said at the first look at a melted one, not below {@code lastWhole}
 * @param surroundings what was around the wire
 * @param mostBehind how far the display may have been behind the wire at most, K, zero or more: the
 *     heating rate times the sensor's lag (see {@link #behind})
 */
public record MeltCheck(
    Temperature lastWhole,
    Temperature firstMelted,
    Surroundings surroundings,
    TemperatureChange mostBehind) {

  /** Freezing point of silver, exact by definition. */
  public static final Temperature SILVER_MELTS = Temperature.ofCelsius(FixedPoints.SILVER_CELSIUS);

  /** A kiln must be allowed more than this: the wire is led through 940 to 970 °C. */
  public static final Temperature KILN_ABOVE = Temperature.ofCelsius(970);

  /** Further off than this is not an offset but something to find (our estimate). */
  public static final TemperatureChange LARGEST_OFFSET = TemperatureChange.ofKelvins(100);

  /** What is around the wire: silver takes up oxygen from air, which lowers its melting point. */
  public enum Surroundings {
    /** 999 wire, 1000 ppm of copper: 0.7 K lower (read: abstract on doped silver samples). */
    SHIELDED_BY_CHARCOAL(0.7, "shielded by charcoal"),
    /** Air-saturated silver melts near 950.5 °C (from memory), and irregularly. */
    BARE_IN_AIR(12.0, "bare in air");

    private final double lowerByKelvins;
    private final String words;

    Surroundings(double lowerByKelvins, String words) {
      this.lowerByKelvins = lowerByKelvins;
      this.words = words;
    }

    /** How far below {@link #SILVER_MELTS} the wire may have melted at most. */
    public TemperatureChange lowerByAtMost() {
      return TemperatureChange.ofKelvins(lowerByKelvins);
    }

    public String words() {
      return words;
    }
  }

  public MeltCheck {
    Objects.requireNonNull(surroundings, "surroundings");
    if (lastWhole.compareTo(firstMelted) > 0) {
      throw new IllegalArgumentException(
          "The wire cannot be seen melted at %s and still whole at %s: heat slowly, never back."
              .formatted(Words.celsius(firstMelted), Words.celsius(lastWhole)));
    }
    if (!(mostBehind.kelvins() >= 0)) {
      throw new IllegalArgumentException(
          "While the kiln heats the display is behind by 0 K or more, not by %s."
              .formatted(Words.kelvins(mostBehind)));
    }
    double offKelvins =
        Math.max(
            Math.abs(lastWhole.minus(SILVER_MELTS).kelvins()),
            Math.abs(firstMelted.minus(SILVER_MELTS).kelvins()));
    if (offKelvins > LARGEST_OFFSET.kelvins()) {
      throw new IllegalArgumentException(
          "The wire melts at %s, and the display said %s to %s: more than %s off is no offset; check"
                  .formatted(
                      Words.celsius(SILVER_MELTS),
                      Words.celsius(lastWhole),
                      Words.celsius(firstMelted),
                      Words.kelvins(LARGEST_OFFSET))
              + " the type setting, the leads, the unit and where the tip is.");
    }
  }

  /** A melt seen as it happened, at a display that was not behind. */
  public static MeltCheck seenAt(Temperature shown, Surroundings surroundings) {
    return new MeltCheck(shown, shown, surroundings, TemperatureChange.ofKelvins(0));
  }

  /**
   * How far a display is behind while the kiln heats.
   *
   * @param lagSeconds time constant of the sensor, s, zero or more
   */
  public static TemperatureChange behind(HeatingRate rate, double lagSeconds) {
    if (!(lagSeconds >= 0)) {
      throw new IllegalArgumentException(
          "The lag of the sensor (%s s) must be zero or more.".formatted(lagSeconds));
    }
    return TemperatureChange.ofKelvins(rate.kelvinsPerHour() / 3600 * lagSeconds);
  }

  /**
   * What the check says about the display. The stated offset takes the wire to melt at 961.78 °C:
   * of all that is possible this takes the kiln to be hottest, the safe side where overheating
   * spoils work. The band is uneven: bare in air the truth may be up to 12 K lower.
   */
  public Correction correction() {
    double low = lastWhole.minus(SILVER_MELTS).kelvins();
    double high = firstMelted.minus(SILVER_MELTS).kelvins() + mostBehind.kelvins();
    return new Correction(
        Temperature.ofCelsius(0.5 * (lastWhole.celsius() + firstMelted.celsius())),
        TemperatureChange.ofKelvins(0.5 * (low + high)),
        TemperatureChange.ofKelvins(low),
        TemperatureChange.ofKelvins(high + surroundings.lowerByKelvins),
        surroundings);
  }

  /**
   * An offset with limits, not with a probability: between them anything is possible.
   *
   * @param shown what the display said at the melt
   * @param offset what it shows above the truth there, if the wire melted at 961.78 °C
   * @param lowOffset the least that it can be
   * @param highOffset the most that it can be
   * @param surroundings what was around the wire
   */
  public record Correction(
      Temperature shown,
      TemperatureChange offset,
      TemperatureChange lowOffset,
      TemperatureChange highOffset,
      Surroundings surroundings) {

    public Correction {
      Objects.requireNonNull(shown, "shown");
      Objects.requireNonNull(surroundings, "surroundings");
      if (lowOffset.compareTo(offset) > 0 || offset.compareTo(highOffset) > 0) {
        throw new IllegalArgumentException(
            "The offset (%s) must lie between its limits (%s, %s)."
                .formatted(
                    Words.kelvins(offset), Words.kelvins(lowOffset), Words.kelvins(highOffset)));
      }
    }

    /** The stated offset where it belongs: at the melt, with a display that stands still. */
    public OffsetCorrection.Point point() {
      return new OffsetCorrection.Point(SILVER_MELTS.plus(offset), offset);
    }

    /** One sentence for people, in the unit that the display shows. */
    public String sentence(TemperatureUnit unit) {
      return "At %s the display shows %s (possible: %s to %s above the truth; wire %s)."
          .formatted(
              Words.of(shown, unit),
              amount(offset, unit),
              Words.oneDecimal(unit.value(lowOffset)),
              Words.of(highOffset, unit),
              surroundings.words());
    }

    /** Where the numbers come from. */
    public List<Origin> origins() {
      Origin point = Origin.read("silver point 961.78 °C: " + FixedPoints.ORIGIN.text());
      return surroundings == Surroundings.BARE_IN_AIR
          ? List.of(
              point,
              Origin.read("air lowers the point, irregularly: Nature 52 (1895) 596, abstract"),
              Origin.memory("air-saturated silver melts near 950.5 °C"))
          : List.of(
              point,
              Origin.read("copper lowers silver by 0.69 mK per ppm: abstract, doped samples"),
              Origin.memory("charcoal keeps the oxygen away"));
    }

    private static String amount(TemperatureChange offset, TemperatureUnit unit) {
      String size = Words.oneDecimal(Math.abs(unit.value(offset)));
      return size.equals("0")
          ? "the truth"
          : "%s %s too %s"
              .formatted(size, unit.differenceSymbol(), offset.kelvins() > 0 ? "much" : "little");
    }
  }

  /** What to mind before and during the check. */
  public static List<String> cautions() {
    return List.of(
        "Only in a kiln that its maker allows above 970 °C, without work, investment or glass in it.",
        "Fine silver of at least 99.9 %, a thin wire across supports beside the tip, over a tray"
            + " that catches the drop.",
        "Heat through 940 to 970 °C at 2 to 5 K a minute and look often, through dark glasses.",
        "Charcoal burns to carbon monoxide: a little in a small covered dish, the room well aired."
            + " A carbon atmosphere makes a type K couple read low with time.",
        "One melt says nothing about other temperatures, nor about how evenly the chamber is heated.");
  }
}
