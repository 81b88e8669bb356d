package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.work.casting.PouringPlan;
import org.heatwright.work.casting.Proposal;

/**
 * What {@code cast pour --json} prints. {@code mould} and {@code metal} are null where no source
 * tells them; in {@code sources} the studio's own value comes first, and {@code counts} says which
 * enter the value.
 */
public record CastPourJson(
    String alloy,
    Optional<String> section,
    String method,
    Optional<ProposalJson> mould,
    Optional<ProposalJson> metal,
    Optional<SpreadJson> superheatKelvins,
    List<RemarkJson> remarks,
    List<RemarkJson> cautions,
    List<CastPowderJson.ClockJson> clocks) {

  /** A temperature and what it rests on. */
  public record ProposalJson(
      double celsius, boolean own, RangeJson rangeCelsius, String why, List<SourceJson> sources) {
    static ProposalJson of(Proposal proposal) {
      return new ProposalJson(
          proposal.value().celsius(),
          proposal.own(),
          RangeJson.of(proposal.range()),
          proposal.why(),
          proposal.rows().stream()
              .map(
                  r ->
                      new SourceJson(
                          r.about(), RangeJson.of(r.range()), r.counts(), r.origin().words()))
              .toList());
    }
  }

  /** Lowest and highest. */
  public record RangeJson(double low, double high) {
    static RangeJson of(TemperatureRange range) {
      return new RangeJson(range.from().celsius(), range.to().celsius());
    }
  }

  /** One source's value. */
  public record SourceJson(String about, RangeJson celsius, boolean counts, String origin) {}

  public static CastPourJson of(PouringPlan plan) {
    return new CastPourJson(
        plan.question().alloy(),
        plan.question().section().map(s -> s.word()),
        plan.question().method().word(),
        plan.mould().map(ProposalJson::of),
        plan.metal().map(ProposalJson::of),
        plan.superheatKelvins().map(SpreadJson::of),
        RemarkJson.of(plan.remarks()),
        RemarkJson.of(plan.cautions()),
        plan.clocks().stream().map(CastPowderJson.ClockJson::of).toList());
  }
}
