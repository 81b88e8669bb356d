package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.work.casting.PouringOrder;

/** What {@code cast order --json} prints; minutes count from now. */
public record CastOrderJson(
    List<StepJson> steps, double totalMinutes, Optional<CompromiseJson> compromise) {

  /** Moulds in their turn. */
  public record StepJson(
      String name,
      int count,
      double celsius,
      double kilnMinutes,
      double settleMinutes,
      double readyMinutes,
      double pouredMinutes) {}

  /** One temperature for all. */
  public record CompromiseJson(
      double celsius, boolean withinAll, double savedMinutes, List<CostJson> costs) {}

  /** What it means for one kind of mould. */
  public record CostJson(String name, double offKelvins, boolean accepted, String sentence) {}

  public static CastOrderJson of(PouringOrder order) {
    return new CastOrderJson(
        order.steps().stream()
            .map(
                s ->
                    new StepJson(
                        s.moulds().name(),
                        s.moulds().count(),
                        s.moulds().wanted().celsius(),
                        s.kilnMinutes(),
                        s.settleMinutes(),
                        s.readyMinutes(),
                        s.pouredMinutes()))
            .toList(),
        order.totalMinutes(),
        order
            .compromise()
            .map(
                c ->
                    new CompromiseJson(
                        c.temperature().celsius(),
                        c.withinAll(),
                        c.savedMinutes(),
                        c.costs().stream()
                            .map(
                                k ->
                                    new CostJson(
                                        k.name(), k.offKelvins(), k.accepted(), k.sentence()))
                            .toList())));
  }
}
