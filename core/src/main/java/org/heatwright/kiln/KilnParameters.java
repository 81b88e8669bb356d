package org.heatwright.kiln;

/**
 * What one draw believes about a kiln beyond its nameplate. Factors multiply what the nameplate and
 * the material tables give. Immutable.
 *
 * @param powerFactor full power over the nameplate's at the supply's voltage
 * @param conductivityFactor wall conductivity over the tables'
 * @param conductivitySteepnessFactor how much more wall conductivity grows from 400 to 1400 °C than
 *     in the tables
 * @param capacityFactor wall heat capacity over the tables'
 * @param leakWattsPerKelvin heat lost past the door, vents and element tails, W/K between chamber
 *     air and room
 * @param fittingsJoulesPerKelvin heat capacity of what is built in and heats at once: hearth plate,
 *     element carriers, J/K
 * @param sensorFactor heat capacity of the sensor over that of a plain steel rod of its sheath's
 *     diameter
 * @param convectionFactor convection inside over the usual
 * @param sensorViewShare share of the radiation the sensor receives that comes straight from the
 *     elements, 0 to 0.9
 * @param offsetKelvinsAt1000 what the display shows above the truth at 1000 °C, K; in proportion
 *     below
 * @param gainPerKelvin proportional gain of the controller, duty a kelvin
 * @param integralSeconds integral time of the controller, s
 * @param derivativeSeconds derivative time of the controller, on the reading's slope, s; 0: it has
 *     none
 * @param crestKelvins how far the crests that the controller sees stand above the display's line, K
 * @param switchSeconds how long an on-off controller takes from the edge of its hysteresis to the
 *     switch, s: filter, relay, minimum on and off times
 * @param doorFactor share of the two-way exchange through the open door that leaves with heat
 * @param elementFactor heat capacity of the elements over the usual
 * @param roomShiftKelvins room temperature above the stated one, K
 * @param loadConductivityFactor conductivity of the load over the tables'
 * @param loadHeatFactor heat content of the load over the tables'
 */
public record KilnParameters(
    double powerFactor,
    double conductivityFactor,
    double conductivitySteepnessFactor,
    double capacityFactor,
    double leakWattsPerKelvin,
    double fittingsJoulesPerKelvin,
    double sensorFactor,
    double convectionFactor,
    double sensorViewShare,
    double offsetKelvinsAt1000,
    double gainPerKelvin,
    double integralSeconds,
    double derivativeSeconds,
    double crestKelvins,
    double switchSeconds,
    double doorFactor,
    double elementFactor,
    double roomShiftKelvins,
    double loadConductivityFactor,
    double loadHeatFactor) {

  public KilnParameters {
    for (double positive :
        new double[] {
          powerFactor,
          conductivityFactor,
          conductivitySteepnessFactor,
          capacityFactor,
          leakWattsPerKelvin,
          fittingsJoulesPerKelvin,
          sensorFactor,
          convectionFactor,
          gainPerKelvin,
          integralSeconds,
          crestKelvins,
          switchSeconds,
          doorFactor,
          elementFactor,
          loadConductivityFactor,
          loadHeatFactor
        }) {
      if (!(positive > 0 && positive < Double.POSITIVE_INFINITY)) {
        throw new IllegalArgumentException(
            "A kiln parameter (%s) must be finite and above zero.".formatted(positive));
      }
    }
    if (!(derivativeSeconds >= 0 && derivativeSeconds < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "The derivative time of a controller (%s s) must be finite and not negative."
              .formatted(derivativeSeconds));
    }
    if (!(sensorViewShare >= 0 && sensorViewShare <= MOST_VIEW)) {
      throw new IllegalArgumentException(
          "The sensor's view of the elements (%s) must be from 0 to 0.9."
              .formatted(sensorViewShare));
    }
    if (!Double.isFinite(offsetKelvinsAt1000) || !Double.isFinite(roomShiftKelvins)) {
      throw new IllegalArgumentException(
          "The sensor offset (%s K) and the room shift (%s K) must be finite."
              .formatted(offsetKelvinsAt1000, roomShiftKelvins));
    }
  }

  /**
   * The parameters at given scores.
   *
   * @param kiln the nameplate, which turns values by area and length into values of this kiln
   * @param scores one a {@link KilnQuantity}, in their order
   */
  static KilnParameters at(Kiln kiln, double[] scores) {
    double perimeterMetres = 4 * Math.sqrt(kiln.openingSquareMetres());
    return new KilnParameters(
        value(KilnQuantity.POWER, scores) * value(KilnQuantity.MAINS, scores),
        value(KilnQuantity.CONDUCTIVITY, scores),
        value(KilnQuantity.STEEPNESS, scores),
        value(KilnQuantity.CAPACITY, scores),
        value(KilnQuantity.LEAK, scores) * perimeterMetres,
        value(KilnQuantity.FITTINGS, scores) * kiln.chamber().floorSquareMetres(),
        value(KilnQuantity.SENSOR, scores),
        value(KilnQuantity.CONVECTION, scores),
        Math.min(MOST_VIEW, value(KilnQuantity.VIEW, scores)),
        value(KilnQuantity.OFFSET, scores),
        value(KilnQuantity.GAIN, scores),
        value(KilnQuantity.INTEGRAL, scores),
        value(KilnQuantity.DERIVATIVE, scores),
        value(KilnQuantity.CREST, scores),
        value(KilnQuantity.SWITCH, scores),
        value(KilnQuantity.DOOR, scores),
        value(KilnQuantity.ELEMENT, scores),
        value(KilnQuantity.ROOM, scores),
        value(KilnQuantity.LOAD_CONDUCTIVITY, scores),
        value(KilnQuantity.LOAD_HEAT, scores));
  }

  /**
   * What a score is of a quantity where it stands: of one that is a logarithm, in the logarithm; of
   * the steepness, the sensor's view and the crests, which enter as they are, in their own unit.
   */
  static double perScore(KilnQuantity quantity, double score) {
    double spread = quantity.logarithmPerScore();
    return switch (quantity) {
      case STEEPNESS, CREST -> spread * quantity.value(score);
      case VIEW -> quantity.value(score) < MOST_VIEW ? spread * quantity.value(score) : 0;
      default -> spread;
    };
  }

  private static final double MOST_VIEW = 0.9;

  private static double value(KilnQuantity quantity, double[] scores) {
    return quantity.value(scores[quantity.ordinal()]);
  }
}
