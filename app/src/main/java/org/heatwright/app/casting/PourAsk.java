package org.heatwright.app.casting;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.app.casting.CastAnswer.Row;
import org.heatwright.app.casting.CastAnswer.Table;
import org.heatwright.app.casting.CastAnswer.Weight;
import org.heatwright.app.files.InputException;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.BurnoutWork;
import org.heatwright.work.PouredMetal;
import org.heatwright.work.casting.AlloyFamily;
import org.heatwright.work.casting.CastingAlloy;
import org.heatwright.work.casting.CastingAlloys;
import org.heatwright.work.casting.CastingClock;
import org.heatwright.work.casting.PouringMethod;
import org.heatwright.work.casting.PouringPlan;
import org.heatwright.work.casting.PouringQuestion;
import org.heatwright.work.casting.Proposal;
import org.heatwright.work.casting.SectionClass;
import org.heatwright.work.casting.TemperatureRow;

/**
 * Temperatures of a pour, as asked for; degrees are of {@code unit}.
 *
 * @param alloy its name; must be known in the end
 * @param thinnestMillimetres thinnest section, on a mixed tree that of the lightest piece
 * @param method what drives the metal; vacuum where it is not said
 * @param binder of the mould; by the alloy where it is not said
 * @param ownMould the studio's own temperature of the mould, likewise of the metal
 * @param liquidus where the studio's alloy is all liquid
 */
public record PourAsk(
    Optional<String> alloy,
    Optional<Double> thinnestMillimetres,
    Optional<String> method,
    Optional<String> binder,
    Optional<Double> ownMould,
    Optional<Double> ownMetal,
    Optional<Double> liquidus,
    TemperatureUnit unit) {

  /** The same, with what a work file says where nothing else is said. */
  public PourAsk or(BurnoutWork work) {
    PouredMetal metal = work.metal();
    boolean same = alloy.isEmpty() || alloy.get().equals(metal.alloy());
    Optional<Temperature> mould = same ? metal.pourMould() : Optional.empty();
    Optional<Temperature> poured = same ? metal.pourMetal() : Optional.empty();
    return new PourAsk(
        alloy.or(() -> Optional.of(metal.alloy())),
        thinnestMillimetres.or(
            () -> metal.thinnestMetres().stream().map(t -> t * 1000).boxed().findFirst()),
        method.or(() -> metal.method().map(PouringMethod::word)),
        binder.or(() -> Optional.of(work.investment().binder().name().toLowerCase(Locale.ROOT))),
        ownMould.or(() -> mould.map(unit::value)),
        ownMetal.or(() -> poured.map(unit::value)),
        liquidus,
        unit);
  }

  /** Works it out. */
  public PouringPlan plan() {
    String named =
        alloy.orElseThrow(
            () -> InputException.in("--alloy", "not given; expected one such as sterling-925."));
    PouringMethod driven =
        method.map(word -> CastInput.method("--method", word)).orElse(PouringMethod.VACUUM);
    AlloyFamily family =
        CastingAlloys.find(named)
            .map(CastingAlloy::family)
            .or(() -> AlloyFamily.ofName(named))
            .orElseGet(() -> CastInput.alloy("--alloy", named).family());
    Binder bound =
        binder
            .map(word -> CastInput.binder("--binder", word))
            .orElse(family.needsPhosphate() ? Binder.PHOSPHATE : Binder.GYPSUM);
    Optional<SectionClass> section =
        thinnestMillimetres.map(
            t -> CastInput.blaming("--thinnest-mm", () -> SectionClass.ofMetres(t / 1000)));
    PouringQuestion question =
        CastInput.blaming("--binder", () -> PouringQuestion.named(named, driven, bound))
            .withOwn(
                ownMould.map(t -> CastInput.temperature("--my-mould", t, unit)),
                ownMetal.map(t -> CastInput.temperature("--my-metal", t, unit)));
    if (section.isPresent()) {
      question = question.withSection(section.get());
    }
    if (liquidus.isPresent()) {
      question = question.withLiquidus(CastInput.temperature("--liquidus", liquidus.get(), unit));
    }
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
    CastAnswer answer =
        new CastAnswer(
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
    return answer.in(unit);
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
