package org.heatwright.app.casting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.casting.CastAnswer.Row;
import org.heatwright.app.casting.CastAnswer.Table;
import org.heatwright.app.casting.CastAnswer.Weight;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.AlloyFamily;
import org.heatwright.work.casting.CastingAlloy;
import org.heatwright.work.casting.CastingAlloys;
import org.heatwright.work.casting.CastingClock;
import org.heatwright.work.casting.Melting;
import org.heatwright.work.casting.PouringMethod;
import org.heatwright.work.casting.PouringPlan;
import org.heatwright.work.casting.PouringQuestion;
import org.heatwright.work.casting.Proposal;
import org.heatwright.work.casting.SectionClass;
import org.heatwright.work.casting.TemperatureRow;

/**
 * Temperatures of a pour, as asked for; degrees are of {@code unit}.
 *
 * @param thinnestMillimetres thinnest section, on a mixed tree that of the lightest piece
 * @param method what drives the metal
 * @param binder of the mould; by the alloy where it is not said
 * @param ownMould the studio's own temperature of the mould, likewise of the metal
 * @param liquidus where the studio's alloy is all liquid
 */
public record PourAsk(
    String alloy,
    Optional<Double> thinnestMillimetres,
    String method,
    Optional<String> binder,
    Optional<Double> ownMould,
    Optional<Double> ownMetal,
    Optional<Double> liquidus,
    TemperatureUnit unit) {

  /** Works it out. */
  public PouringPlan plan() {
    PouringMethod driven = CastInput.method("--method", method);
    Optional<CastingAlloy> known = CastingAlloys.find(alloy);
    AlloyFamily family =
        known
            .map(CastingAlloy::family)
            .or(() -> AlloyFamily.ofName(alloy))
            .orElseGet(() -> CastInput.alloy("--alloy", alloy).family());
    Binder bound =
        binder
            .map(word -> CastInput.binder("--binder", word))
            .orElse(family.needsPhosphate() ? Binder.PHOSPHATE : Binder.GYPSUM);
    List<Melting> meltings = known.map(CastingAlloy::meltings).orElse(List.of());
    Optional<SectionClass> section =
        thinnestMillimetres.map(
            t -> CastInput.blaming("--thinnest-mm", () -> SectionClass.ofMetres(t / 1000)));
    PouringQuestion asked =
        CastInput.blaming(
            "--binder",
            () ->
                new PouringQuestion(
                    known.map(CastingAlloy::name).orElse(alloy),
                    family,
                    meltings,
                    section,
                    driven,
                    bound,
                    ownMould.map(t -> CastInput.temperature("--my-mould", t, unit)),
                    ownMetal.map(t -> CastInput.temperature("--my-metal", t, unit))));
    PouringQuestion question =
        liquidus
            .map(t -> asked.withLiquidus(CastInput.temperature("--liquidus", t, unit)))
            .orElse(asked);
    return PouringPlan.of(question, unit);
  }

  /** A plan in words. */
  public static CastAnswer words(PouringPlan plan, TemperatureUnit unit) {
    PouringQuestion question = plan.question();
    List<String> superheat =
        plan.superheatKelvins().stream()
            .map(
                s ->
                    "that is %.0f %s over melting (%.0f to %.0f)"
                        .formatted(
                            CastWords.difference(s.usual(), unit),
                            unit.differenceSymbol(),
                            CastWords.difference(s.low(), unit),
                            CastWords.difference(s.high(), unit)))
            .toList();
    return new CastAnswer(
        "%s, %s, %s:"
            .formatted(
                question.alloy(),
                question.section().map(SectionClass::words).orElse("section not told"),
                question.method().word()),
        List.of(),
        List.of(
            proposal("Mould", plan.mould(), List.of(), unit),
            proposal("Metal", plan.metal(), superheat, unit),
            Table.plain(
                "The clocks (gypsum-bonded moulds):",
                plan.clocks().stream().map(PourAsk::clock).toList())),
        plan.remarks().stream().map(CastWords::words).toList(),
        plan.cautions());
  }

  private static Table proposal(
      String name, Optional<Proposal> proposal, List<String> more, TemperatureUnit unit) {
    if (proposal.isEmpty()) {
      return new Table(name, "", ": no value; see the notes.", List.of(), List.of());
    }
    Proposal told = proposal.get();
    List<String> lines = new ArrayList<>();
    lines.add(told.why());
    lines.addAll(more);
    return new Table(
        name,
        CastWords.degrees(told.value(), unit),
        "; sources for this work give %s."
            .formatted(CastWords.degrees(told.range().from(), told.range().to(), unit)),
        lines,
        told.rows().stream().map(row -> row(row, unit)).toList());
  }

  private static Row row(TemperatureRow row, TemperatureUnit unit) {
    return new Row(
        row.counts() ? Weight.COUNTS : Weight.BESIDE,
        CastWords.degrees(row.range().from(), row.range().to(), unit),
        row.about().equals("your own value")
            ? row.about()
            : CastWords.said(row.about(), row.origin()));
  }

  private static Row clock(CastingClock clock) {
    return new Row(
        Weight.NONE, clock.minutes().map(CastWords::minutes).orElse(""), CastWords.about(clock));
  }
}
