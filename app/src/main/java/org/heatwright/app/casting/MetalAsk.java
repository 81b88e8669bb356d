package org.heatwright.app.casting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.app.casting.CastAnswer.Row;
import org.heatwright.app.casting.CastAnswer.Table;
import org.heatwright.app.casting.CastAnswer.Weight;
import org.heatwright.app.files.InputException;
import org.heatwright.work.casting.CastingAlloy;
import org.heatwright.work.casting.CastingCautions;
import org.heatwright.work.casting.MetalNeed;
import org.heatwright.work.casting.PatternMaterial;
import org.heatwright.work.casting.PouringMethod;
import org.heatwright.work.casting.QuotedDensity;
import org.heatwright.work.casting.Remark;
import org.heatwright.work.casting.Shrinkage;
import org.heatwright.work.casting.Spread;
import org.heatwright.work.casting.Troy;
import org.heatwright.work.casting.UsedMetal;

/**
 * Metal for a pattern or a volume, as asked for: one of alloy, mix and own density says what metal,
 * one of wax, resin and the two volumes how much.
 *
 * @param mixText parts, "Au=750,Ag=125,Cu=125"
 * @param ownDensity of the metal, g/cm³
 * @param patternDensity the studio's own of wax or resin, g/cm³
 * @param method what drives the metal
 * @param buttonPercent the studio's own allowance for the button
 * @param withoutSprues the pieces alone were weighed
 */
public record MetalAsk(
    Optional<String> alloyName,
    Optional<String> mixText,
    Optional<Double> ownDensity,
    Optional<Double> waxGrams,
    Optional<Double> resinGrams,
    Optional<Double> cubicCentimetres,
    Optional<Double> cubicMillimetres,
    Optional<Double> patternDensity,
    String method,
    Optional<Double> buttonPercent,
    boolean withoutSprues) {

  /**
   * What comes of it.
   *
   * @param metal its name
   * @param densities of the metal, the one taken first
   */
  public record Answer(
      String metal,
      PouringMethod method,
      MetalNeed need,
      Spread metalDensity,
      Optional<Spread> patternDensity,
      List<QuotedDensity> densities,
      List<String> notes,
      List<Remark> cautions) {

    public CastAnswer words() {
      double total = need.totalKilograms().usual();
      return new CastAnswer(
          "%s: melt %s.".formatted(metal, CastWords.grams(need.totalKilograms())),
          List.of(
              "casting and sprues %s, button %s"
                  .formatted(
                      CastWords.grams(need.castKilograms()),
                      CastWords.grams(need.buttonKilograms())),
              "in troy weight %s oz or %s dwt"
                  .formatted(
                      CastWords.figure(Troy.ounces(total)),
                      CastWords.figure(Troy.pennyweights(total)))),
          List.of(
              Table.plain(
                  "Density of the metal, g/cm³, the first one taken:",
                  densities.stream().map(Answer::row).toList())),
          notes,
          cautions);
    }

    private static Row row(QuotedDensity density) {
      return new Row(
          Weight.NONE,
          CastWords.figure(density.kilogramsPerCubicMetre() / 1000),
          density.how().equals("your own value")
              ? density.how()
              : CastWords.said(density.how(), density.origin()));
    }
  }

  /** Works it out. */
  public Answer answer() {
    List<QuotedDensity> densities = new ArrayList<>();
    ownDensity.ifPresent(
        d ->
            densities.add(CastInput.blaming("--density-g-cm3", () -> QuotedDensity.own(d * 1000))));
    Optional<CastingAlloy> alloy = alloy();
    alloy.ifPresent(a -> densities.addAll(a.densities()));
    Spread metalDensity =
        ownDensity
            .map(d -> Spread.exactly(d * 1000))
            .orElseGet(() -> alloy.orElseThrow(this::noMetal).kilogramsPerCubicMetre());
    PouringMethod driven = CastInput.method("--method", method);
    Spread button =
        buttonPercent
            .map(p -> Spread.exactly(CastInput.percent("--button-percent", p)))
            .orElse(driven.buttonShare());
    Spread sprues = withoutSprues ? PouringMethod.SPRUES_SHARE : Spread.exactly(0);
    Map<String, Optional<Double>> options = CastInput.options();
    options.put("--wax-g", waxGrams);
    options.put("--resin-g", resinGrams);
    options.put("--volume-cm3", cubicCentimetres);
    options.put("--volume-mm3", cubicMillimetres);
    Map.Entry<String, Double> given = CastInput.oneOf(options);
    Optional<PatternMaterial> material =
        switch (given.getKey()) {
          case "--wax-g" -> Optional.of(PatternMaterial.WAX);
          case "--resin-g" -> Optional.of(PatternMaterial.RESIN);
          default -> Optional.empty();
        };
    if (material.isEmpty() && patternDensity.isPresent()) {
      throw InputException.in(
          "--pattern-density-g-cm3", "a volume needs none; leave it out or give --wax-g.");
    }
    Optional<Spread> pattern = material.map(this::patternDensity);
    double perUnit = given.getKey().equals("--volume-mm3") ? 1e-9 : 1e-6;
    MetalNeed need =
        CastInput.blaming(
            given.getKey(),
            () ->
                pattern
                    .map(
                        p ->
                            MetalNeed.ofPattern(
                                given.getValue() / 1000, p, metalDensity, sprues, button))
                    .orElseGet(
                        () ->
                            MetalNeed.ofVolume(
                                given.getValue() * perUnit, metalDensity, sprues, button)));
    String name = alloy.map(CastingAlloy::name).orElse("your metal");
    List<String> notes = notes(material, pattern, driven, need, metalDensity);
    List<Remark> cautions = List.of(CastingCautions.steamAndMetal());
    return new Answer(name, driven, need, metalDensity, pattern, densities, notes, cautions);
  }

  private Optional<CastingAlloy> alloy() {
    if (alloyName.isPresent() && mixText.isPresent()) {
      throw InputException.in("--mix", "--alloy is given too; keep one of the two.");
    }
    return alloyName
        .map(name -> CastInput.alloy("--alloy", name))
        .or(() -> mixText.map(text -> CastingAlloy.ownMix(CastInput.mix("--mix", text))));
  }

  private InputException noMetal() {
    return InputException.in(
        "--alloy", "not given; expected one of --alloy, --mix, --density-g-cm3.");
  }

  private Spread patternDensity(PatternMaterial material) {
    if (patternDensity.isEmpty()) {
      return material.kilogramsPerCubicMetre();
    }
    double own = patternDensity.get();
    if (!(own >= 0.2 && own <= 3)) {
      throw InputException.in(
          "--pattern-density-g-cm3", "\"%s\" is not possible; expected 0.2 to 3.".formatted(own));
    }
    return Spread.exactly(own * 1000);
  }

  private List<String> notes(
      Optional<PatternMaterial> material,
      Optional<Spread> pattern,
      PouringMethod method,
      MetalNeed need,
      Spread metalDensity) {
    List<String> notes = new ArrayList<>();
    material.ifPresent(
        m ->
            notes.add(
                patternDensity.isPresent()
                    ? "%s at your own %s g/cm³."
                        .formatted(m.words(), CastWords.figure(patternDensity.get()))
                    : "%s taken as %s g/cm³ (%s to %s; %s)."
                        .formatted(
                            m.words(),
                            CastWords.figure(pattern.orElseThrow().usual() / 1000),
                            CastWords.figure(pattern.orElseThrow().low() / 1000),
                            CastWords.figure(pattern.orElseThrow().high() / 1000),
                            m.origin().words())));
    notes.add(
        withoutSprues
            ? "Sprues add 10 to 30 % to the pieces (our estimate); weigh them if you can."
            : "What was given holds the sprues; with --without-sprues they are added.");
    if (buttonPercent.isEmpty()) {
      notes.add(
          "Button for %s: %s to %s %% (%s)."
              .formatted(
                  method.word(),
                  CastWords.figure(method.buttonShare().low() * 100),
                  CastWords.figure(method.buttonShare().high() * 100),
                  method.buttonOrigin().words()));
    }
    Spread used = UsedMetal.atMostKilograms(need.totalKilograms().usual());
    notes.add(
        "Used metal: at most %s of it (%s). %s"
            .formatted(CastWords.grams(used), UsedMetal.ORIGIN.words(), UsedMetal.WHY));
    Spread feed =
        Shrinkage.feedCubicMetres(need.castKilograms().usual() / metalDensity.usual())
            .times(metalDensity.usual());
    notes.add(
        "While it freezes it draws %s more from sprue and button: they must freeze last (silver, gold,"
                .formatted(CastWords.grams(feed))
            + " copper 4 to 6 %% of volume; %s)."
                .formatted(Shrinkage.SOLIDIFICATION_ORIGIN.words()));
    return notes;
  }
}
