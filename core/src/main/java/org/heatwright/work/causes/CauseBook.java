package org.heatwright.work.causes;

import java.util.List;
import org.heatwright.work.Found;

/** Which causes may be behind which fault in which kind of work. */
public final class CauseBook {

  /** What a kiln itself does wrong is asked under this kind. */
  public static final String KILN = "kiln";

  /** Work of which only the schedule is known. */
  public static final String ANY = "any";

  private static final List<String> KINDS =
      List.of("burnout", "enamel", "sinter", "heat-treat", "glass", KILN, ANY);

  private CauseBook() {}

  /** Kinds of work, as files name them, then the kiln itself and any work. */
  public static List<String> kinds() {
    return KINDS;
  }

  /** What a kind is called. */
  public static String words(String kind) {
    return switch (kind) {
      case "burnout" -> "burnout and casting";
      case "enamel" -> "enamel";
      case "sinter" -> "metal clay";
      case "heat-treat" -> "heat treatment";
      case "glass" -> "glass";
      case KILN -> "the kiln itself";
      default -> "other work";
    };
  }

  /** What may be found, without "good". */
  public static List<Found> faults(String kind) {
    List<Found> all = kind.equals(KILN) ? KilnCauses.SIGNS : Found.after(kind);
    return all.stream().filter(found -> !found.code().equals("good")).toList();
  }

  /**
   * What may be behind a fault.
   *
   * @param kind as {@link org.heatwright.work.Work#kind()} names it, {@link #KILN}, or anything
   *     else for work of which nothing is known
   * @param found code of the fault
   * @return empty for "good" and for a code that this kind does not know
   */
  public static List<Suspect> suspects(String kind, String found) {
    return switch (kind) {
      case "burnout" -> CastingCauses.of(found);
      case "enamel" -> EnamelCauses.of(found);
      case "sinter" -> ClayCauses.of(found);
      case "heat-treat" -> HeatTreatCauses.of(found);
      case "glass" -> GlassCauses.of(found);
      case KILN -> KilnCauses.of(found);
      default -> KilnCauses.ofAny(found);
    };
  }

  /** Ranks what may be behind a fault by what is known of the firing. */
  public static Ranking rank(String kind, String found, Facts facts) {
    return Ranking.of(suspects(kind, found), facts);
  }
}
