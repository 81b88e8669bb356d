package org.heatwright.work;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.units.Temperature;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.heattreat.Treatment;

/**
 * Metal pieces to be heated for what happens in them, from annealing to a patina bake.
 *
 * @param treatment what for
 * @param phase which of the two heats, for solution and age hardening alone
 * @param metal what the pieces are of
 * @param piece one of them
 * @param pieces how many, 1 to 500
 * @param setting what they lie on or in
 * @param settingMetres thickness of the block or height of the box, m, 1 mm to 150 mm; empty where
 *     there is none
 * @param own what the person knows better than the rules
 * @param dataSheet what the supplier of the metal says
 * @param readyBy when the pieces must be ready
 */
public record HeatTreatWork(
    Treatment treatment,
    Optional<Phase> phase,
    TreatedMetal metal,
    Piece piece,
    int pieces,
    Setting setting,
    OptionalDouble settingMetres,
    Own own,
    DataSheet dataSheet,
    Optional<LocalDateTime> readyBy)
    implements Work {

  /** The two heats of age hardening; water lies between them. */
  public enum Phase {
    SOLUTION("solution heat"),
    AGE("ageing");

    private final String words;

    Phase(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    /** The other of the two. */
    public Phase other() {
      return this == SOLUTION ? AGE : SOLUTION;
    }
  }

  /** What pieces lie on or in. */
  public enum Setting {
    /** Open below: both faces see the kiln. */
    MESH,
    /** Flat on the shelf: one face sees the kiln. */
    SHELF,
    /** On a heavy steel block, which evens out what the kiln does. */
    BLOCK,
    /** In a steel box filled with charcoal, out of the air. */
    CARBON_BOX
  }

  /**
   * One piece.
   *
   * @param thickestMetres thickest section, m, 0.1 mm to 50 mm: it rules the soak
   * @param thinnestMetres thinnest section, m: it rules the way to the water; not above the
   *     thickest
   * @param massKilograms kg, 0.01 g to 5 kg
   */
  public record Piece(double thickestMetres, double thinnestMetres, double massKilograms) {
    public Piece {
      if (!(thinnestMetres >= 1e-4
          && thinnestMetres <= thickestMetres
          && thickestMetres <= 0.05
          && massKilograms >= 1e-5
          && massKilograms <= 5)) {
        throw new IllegalArgumentException(
            "A piece (%s to %s mm thick, %s g) must be 0.1 to 50 mm thick, its thinnest not above its thickest, of 0.01 to 5000 g."
                .formatted(thinnestMetres * 1000, thickestMetres * 1000, massKilograms * 1000));
      }
    }
  }

  /**
   * What the person knows better than the rules; each goes before a rule.
   *
   * @param target temperature of the heat
   * @param soak time at temperature in the piece, whole minutes, above zero, up to 48 h
   * @param window what the piece must stay in
   * @param solidus where this metal begins to melt
   * @param soldered whether the pieces have soldered joints
   * @param solderFlow the lowest flow temperature of a joint, where known
   * @param solution where the pieces had their solution heat, for the ageing
   * @param wantedHardness what hardness is wanted, HV, 20 to 400
   */
  public record Own(
      Optional<Temperature> target,
      Optional<Duration> soak,
      Optional<TemperatureRange> window,
      Optional<Temperature> solidus,
      boolean soldered,
      Optional<Temperature> solderFlow,
      Optional<Temperature> solution,
      OptionalDouble wantedHardness) {

    public Own {
      sensible("target", target, 30, 1500);
      sensible("solidus", solidus, 300, 1800);
      sensible("solder flow", solderFlow, 150, 1200);
      sensible("solution", solution, 300, 1200);
      window.ifPresent(
          w -> {
            sensible("lower window", Optional.of(w.from()), 20, 1500);
            sensible("upper window", Optional.of(w.to()), 30, 1500);
          });
      soak.ifPresent(
          s -> {
            if (s.isNegative()
                || s.isZero()
                || s.compareTo(Duration.ofHours(48)) > 0
                || !s.equals(Duration.ofMinutes(s.toMinutes()))) {
              throw new IllegalArgumentException(
                  "The soak (%s) must be whole minutes, above zero, up to 48 h.".formatted(s));
            }
          });
      if (solderFlow.isPresent() && !soldered) {
        throw new IllegalArgumentException("A solder's flow temperature needs soldered: true.");
      }
      wantedHardness.ifPresent(
          hv -> {
            if (!(hv >= 20 && hv <= 400)) {
              throw new IllegalArgumentException(
                  "The wanted hardness (%s HV) must be 20 to 400 HV.".formatted(hv));
            }
          });
    }

    /** Nothing of one's own. */
    public static Own none() {
      return new Own(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          false,
          Optional.empty(),
          Optional.empty(),
          OptionalDouble.empty());
    }

    public Own withTarget(Temperature newTarget, Duration newSoak) {
      return new Own(
          Optional.of(newTarget),
          Optional.of(newSoak),
          window,
          solidus,
          soldered,
          solderFlow,
          solution,
          wantedHardness);
    }

    public Own withWindow(TemperatureRange newWindow) {
      return new Own(
          target,
          soak,
          Optional.of(newWindow),
          solidus,
          soldered,
          solderFlow,
          solution,
          wantedHardness);
    }

    public Own withSolidus(Temperature newSolidus) {
      return new Own(
          target,
          soak,
          window,
          Optional.of(newSolidus),
          soldered,
          solderFlow,
          solution,
          wantedHardness);
    }

    /** With soldered joints, of that flow temperature where it is known. */
    public Own withSolder(Optional<Temperature> flow) {
      return new Own(target, soak, window, solidus, true, flow, solution, wantedHardness);
    }

    public Own withWantedHardness(double vickers) {
      return new Own(
          target,
          soak,
          window,
          solidus,
          soldered,
          solderFlow,
          solution,
          OptionalDouble.of(vickers));
    }

    private static void sensible(
        String name, Optional<Temperature> value, double low, double high) {
      value.ifPresent(
          t -> {
            if (!(t.celsius() >= low && t.celsius() <= high)) {
              throw new IllegalArgumentException(
                  "The %s temperature (%s °C) must be %.0f to %.0f °C."
                      .formatted(name, t.celsius(), low, high));
            }
          });
    }
  }

  public HeatTreatWork {
    Objects.requireNonNull(metal, "metal");
    Objects.requireNonNull(piece, "piece");
    Objects.requireNonNull(own, "own");
    Objects.requireNonNull(dataSheet, "dataSheet");
    Objects.requireNonNull(readyBy, "readyBy");
    if (phase.isPresent() != (treatment == Treatment.SOLUTION_AND_AGE)) {
      throw new IllegalArgumentException(
          phase.isPresent()
              ? "Only solution and age hardening has two heats; %s needs no phase."
                  .formatted(treatment.words())
              : "Solution and age hardening is two firings with water between them: say the phase, solution or age.");
    }
    if (pieces < 1 || pieces > 500) {
      throw new IllegalArgumentException("The pieces (%d) must be 1 to 500.".formatted(pieces));
    }
    boolean needsThickness = setting == Setting.BLOCK || setting == Setting.CARBON_BOX;
    if (needsThickness != settingMetres.isPresent()
        || (needsThickness
            && !(settingMetres.getAsDouble() >= 0.001 && settingMetres.getAsDouble() <= 0.15))) {
      throw new IllegalArgumentException(
          "A block or a carbon box needs its thickness or height, 1 to 150 mm; a mesh or a shelf needs none.");
    }
  }

  @Override
  public String kind() {
    return "heat-treat";
  }

  /** Whether this heat is the one before the water. */
  public boolean isSolution() {
    return phase.filter(p -> p == Phase.SOLUTION).isPresent();
  }

  /** Whether this heat hardens by ageing. */
  public boolean isAgeing() {
    return treatment == Treatment.AGE || phase.filter(p -> p == Phase.AGE).isPresent();
  }

  /** "annealing of sterling silver", "solution heat of 14 k yellow gold". */
  public String words() {
    return "%s of %s".formatted(phase.map(Phase::words).orElse(treatment.words()), metal.words());
  }
}
