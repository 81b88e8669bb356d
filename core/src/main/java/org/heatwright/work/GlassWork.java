package org.heatwright.work;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.Temperature;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.Glass.Expansion;
import org.heatwright.work.glass.GlassProcess;

/**
 * Flat glass to be bent, fused or only annealed.
 *
 * @param glass what is known of the glass
 * @param process what is to become of it
 * @param sheetMetres thickness of one sheet, m, 1 to 40 mm
 * @param layers sheets on one another at the thickest place, 1 to 20; the whole stays under 60 mm
 * @param thinnestMetres thickness at the thinnest place, if the piece is uneven, m
 * @param pieceMetres longest side of a piece, m, 10 mm to 1 m
 * @param pieces how many, 1 to 100
 * @param faces how heat leaves it
 * @param form what it slumps into, for a slump
 * @param accent expansion of a second glass fused to it, if it is another
 * @param own the studio's own top
 * @param tension what tension may stay in the middle; practice's where empty
 * @param annealSoak what the maker says of the soak at the annealing point
 * @param dataSheet what else the maker says: limit, top and its hold, fastest rise
 * @param readyBy when the kiln may be opened
 */
public record GlassWork(
    Glass glass,
    GlassProcess process,
    double sheetMetres,
    int layers,
    OptionalDouble thinnestMetres,
    double pieceMetres,
    int pieces,
    Faces faces,
    Optional<Form> form,
    Optional<Expansion> accent,
    OwnTop own,
    OptionalDouble tensionPascals,
    Optional<Duration> annealSoak,
    DataSheet dataSheet,
    Optional<LocalDateTime> readyBy)
    implements Work {

  /** How heat leaves the glass. */
  public enum Faces {
    /** It lies on a shelf or form: from above alone. */
    ONE("one face"),
    /** It stands or hangs free: from both sides. */
    BOTH("both faces");

    private final String words;

    Faces(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * A form to slump into.
   *
   * @param spanMetres across its opening, m
   * @param depthMetres how deep, m
   */
  public record Form(double spanMetres, double depthMetres) {
    public Form {
      if (!(spanMetres >= 0.02 && spanMetres <= 1)
          || !(depthMetres >= 0.001 && depthMetres <= spanMetres / 2)) {
        throw new IllegalArgumentException(
            "The form (%.0f mm across, %.0f mm deep) must be 20 to 1000 mm across and at most half as deep."
                .formatted(spanMetres * 1000, depthMetres * 1000));
      }
    }
  }

  /**
   * A studio's own top.
   *
   * @param top temperature
   * @param hold how long
   */
  public record OwnTop(Optional<Temperature> top, Optional<Duration> hold) {
    public OwnTop {
      top.ifPresent(
          t -> {
            if (!(t.celsius() >= 400 && t.celsius() <= 1500)) {
              throw new IllegalArgumentException(
                  "The top temperature (%.0f °C) must be 400 to 1500 °C.".formatted(t.celsius()));
            }
          });
      hold.ifPresent(h -> requireHold("hold at the top", h));
    }

    public static OwnTop none() {
      return new OwnTop(Optional.empty(), Optional.empty());
    }
  }

  public GlassWork {
    Objects.requireNonNull(glass, "glass");
    Objects.requireNonNull(process, "process");
    Objects.requireNonNull(faces, "faces");
    Objects.requireNonNull(own, "own");
    Objects.requireNonNull(dataSheet, "dataSheet");
    Objects.requireNonNull(accent, "accent");
    Objects.requireNonNull(readyBy, "readyBy");
    double whole = sheetMetres * layers;
    if (!(sheetMetres >= 0.001 && sheetMetres <= 0.04) || layers < 1 || layers > 20) {
      throw new IllegalArgumentException(
          "The sheets (%d of %s mm) must be 1 to 20 of 1 to 40 mm."
              .formatted(layers, sheetMetres * 1000));
    }
    if (whole > 0.06) {
      throw new IllegalArgumentException(
          "The glass (%.0f mm thick) is thicker than the 60 mm that are planned here."
              .formatted(whole * 1000));
    }
    thinnestMetres.ifPresent(
        thin -> {
          if (!(thin >= 0.0005 && thin <= whole + 1e-9)) {
            throw new IllegalArgumentException(
                "The thinnest place (%.1f mm) must be at least 0.5 mm and no thicker than the thickest, %.1f mm."
                    .formatted(thin * 1000, whole * 1000));
          }
        });
    if (pieces < 1 || pieces > 100 || !(pieceMetres >= 0.01 && pieceMetres <= 1)) {
      throw new IllegalArgumentException(
          "The pieces (%d of %s mm) must be 1 to 100 of 10 to 1000 mm."
              .formatted(pieces, pieceMetres * 1000));
    }
    if (form.isPresent() && process != GlassProcess.SLUMP) {
      throw new IllegalArgumentException(
          "A form belongs to a slump, not to a %s.".formatted(process.words()));
    }
    if (!process.hasTop() && (own.top().isPresent() || own.hold().isPresent())) {
      throw new IllegalArgumentException(
          "Annealing has no top of its own: give the annealing point and its soak instead.");
    }
    tensionPascals.ifPresent(
        pascals -> {
          if (!(pascals >= 0.05e6 && pascals <= 3e6)) {
            throw new IllegalArgumentException(
                "The tension that may stay (%s MPa) must be 0.05 to 3 MPa."
                    .formatted(pascals / 1e6));
          }
        });
    annealSoak.ifPresent(h -> requireHold("anneal soak", h));
  }

  private static void requireHold(String name, Duration hold) {
    if (hold.isNegative()
        || hold.compareTo(Duration.ofHours(48)) > 0
        || !hold.equals(Duration.ofMinutes(hold.toMinutes()))) {
      throw new IllegalArgumentException(
          "The %s (%s) must be whole minutes, 0:00 to 48:00."
              .formatted(name, HourMinute.words(hold)));
    }
  }

  /** At the thickest place, m. */
  public double wholeMetres() {
    return sheetMetres * layers;
  }

  /** How much thicker the thickest place is than the thinnest, m. */
  public double unevenMetres() {
    return wholeMetres() - thinnestMetres.orElse(wholeMetres());
  }

  /**
   * The even thickness it is treated as, m: twice the whole where pieces stand on one another with
   * steps (read: a kiln-forming blog), or the whole and the difference to the thinnest place (our
   * estimate), whichever is more.
   */
  public double effectiveMetres() {
    double steps = process.leavesSteps() ? 2 * wholeMetres() : wholeMetres();
    return Math.max(steps, wholeMetres() + unevenMetres());
  }

  /** Through which depth of that its heat leaves, m. */
  public double depthMetres() {
    return faces == Faces.ONE ? effectiveMetres() : effectiveMetres() / 2;
  }

  @Override
  public String kind() {
    return "glass";
  }
}
