package org.heatwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.CastMetalJson;
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
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "metal",
    description = {
      "How much metal to melt for a pattern of wax or resin, or for a volume, with",
      "sprues and button, as a value and a range. Your own density goes first."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast metal --alloy sterling-925 --wax-g 5",
      "  heatwright cast metal --alloy 14k-white-gold --resin-g 2.1 --method gravity",
      "  heatwright cast metal --mix Au=750,Pd=130,Ag=120 --volume-mm3 840 \\",
      "      --without-sprues",
      "  heatwright cast metal --density-g-cm3 15.4 --wax-g 3.2 --button-percent 15"
    })
final class CastMetalCommand implements Callable<Integer> {

  @Option(
      names = "--alloy",
      paramLabel = "A",
      description = "Such as sterling-925 or 14k-red-gold.")
  private Optional<String> alloyName;

  @Option(
      names = "--mix",
      paramLabel = "M",
      description = "Your own alloy by parts: Au=750,Ag=125,Cu=125.")
  private Optional<String> mixText;

  @Option(
      names = "--density-g-cm3",
      paramLabel = "D",
      description = "Your own density of the metal; goes before any other.")
  private Optional<Double> ownDensity;

  @Option(names = "--wax-g", paramLabel = "G", description = "Mass of the wax pattern.")
  private Optional<Double> waxGrams;

  @Option(names = "--resin-g", paramLabel = "G", description = "Mass of the resin pattern.")
  private Optional<Double> resinGrams;

  @Option(names = "--volume-cm3", paramLabel = "V", description = "Volume to cast instead, cm³.")
  private Optional<Double> cubicCentimetres;

  @Option(names = "--volume-mm3", paramLabel = "V", description = "The same in mm³.")
  private Optional<Double> cubicMillimetres;

  @Option(
      names = "--pattern-density-g-cm3",
      paramLabel = "D",
      description = "Your own density of wax or resin (wax 0.95, resin 1.09).")
  private Optional<Double> patternDensity;

  @Option(
      names = "--method",
      paramLabel = "M",
      defaultValue = "vacuum",
      description = "vacuum, centrifugal or gravity: sets the button.")
  private String methodWord;

  @Option(
      names = "--button-percent",
      paramLabel = "P",
      description = "Your own allowance for the button.")
  private Optional<Double> buttonPercent;

  @Option(
      names = "--without-sprues",
      description = "The pieces alone were weighed: adds 10 to 30 %% for sprues.")
  private boolean withoutSprues;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastMetalCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
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
    PouringMethod method = CastInput.method("--method", methodWord);
    Spread button =
        buttonPercent
            .map(p -> Spread.exactly(CastInput.percent("--button-percent", p)))
            .orElse(method.buttonShare());
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
    List<String> notes = notes(material, pattern, method, need, metalDensity);
    List<Remark> cautions = List.of(CastingCautions.steamAndMetal());
    answer.give(
        surroundings,
        CastMetalJson.of(
            name, method.word(), need, metalDensity, pattern, densities, notes, cautions),
        page(name, need, densities, notes, cautions));
    return Answer.DONE;
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
                        .formatted(m.words(), CastInput.figure(patternDensity.get()))
                    : "%s taken as %s g/cm³ (%s to %s; %s)."
                        .formatted(
                            m.words(),
                            CastInput.figure(pattern.orElseThrow().usual() / 1000),
                            CastInput.figure(pattern.orElseThrow().low() / 1000),
                            CastInput.figure(pattern.orElseThrow().high() / 1000),
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
                  CastInput.figure(method.buttonShare().low() * 100),
                  CastInput.figure(method.buttonShare().high() * 100),
                  method.buttonOrigin().words()));
    }
    Spread used = UsedMetal.atMostKilograms(need.totalKilograms().usual());
    notes.add(
        "Used metal: at most %s of it (%s). %s"
            .formatted(CastInput.grams(used), UsedMetal.ORIGIN.words(), UsedMetal.WHY));
    Spread feed =
        Shrinkage.feedCubicMetres(need.castKilograms().usual() / metalDensity.usual())
            .times(metalDensity.usual());
    notes.add(
        "While it freezes it draws %s more from sprue and button: they must freeze last (silver, gold,"
                .formatted(CastInput.grams(feed))
            + " copper 4 to 6 %% of volume; %s)."
                .formatted(Shrinkage.SOLIDIFICATION_ORIGIN.words()));
    return notes;
  }

  private static Page page(
      String name,
      MetalNeed need,
      List<QuotedDensity> densities,
      List<String> notes,
      List<Remark> cautions) {
    Page page = new Page();
    page.line("%s: melt %s.".formatted(name, CastInput.grams(need.totalKilograms())));
    page.hanging(
        "  ",
        "casting and sprues %s, button %s"
            .formatted(
                CastInput.grams(need.castKilograms()), CastInput.grams(need.buttonKilograms())));
    double total = need.totalKilograms().usual();
    page.hanging(
        "  ",
        "in troy weight %s oz or %s dwt"
            .formatted(
                CastInput.figure(Troy.ounces(total)), CastInput.figure(Troy.pennyweights(total))));
    page.blank().line("Density of the metal, g/cm³, the first one taken:");
    densities.forEach(
        d ->
            page.hanging(
                "  %-7s".formatted(CastInput.figure(d.kilogramsPerCubicMetre() / 1000)),
                d.how().equals("your own value")
                    ? d.how()
                    : "%s (%s)".formatted(d.how(), d.origin().words())));
    page.blank();
    notes.forEach(note -> page.hanging("note  ", note));
    CastInput.remarks(page, "care  ", cautions);
    return page;
  }
}
