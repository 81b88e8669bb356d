package org.heatwright.work.casting;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.units.TemperatureUnit;

/**
 * Temperatures of mould and metal for a pour, the clocks around it and what to beware of.
 *
 * @param question what was asked
 * @param mould temperature of the mould, all through; empty where no source speaks
 * @param metal temperature of the metal; empty where nothing tells when it is liquid
 * @param superheatKelvins the metal above its liquidus, where that is known
 * @param remarks contradictions and limits
 * @param cautions what can hurt
 * @param clocks what runs against the work, in the order of the work
 */
public record PouringPlan(
    PouringQuestion question,
    Optional<Proposal> mould,
    Optional<Proposal> metal,
    Optional<Spread> superheatKelvins,
    List<Remark> remarks,
    List<Remark> cautions,
    List<CastingClock> clocks) {

  public PouringPlan {
    Objects.requireNonNull(question, "question");
    Objects.requireNonNull(mould, "mould");
    Objects.requireNonNull(metal, "metal");
    Objects.requireNonNull(superheatKelvins, "superheatKelvins");
    remarks = List.copyOf(remarks);
    cautions = List.copyOf(cautions);
    clocks = List.copyOf(clocks);
  }

  /**
   * The plan.
   *
   * @param unit proposed values are tens of its degrees
   */
  public static PouringPlan of(PouringQuestion question, TemperatureUnit unit) {
    return new PouringPlanner(question, unit).plan();
  }
}
