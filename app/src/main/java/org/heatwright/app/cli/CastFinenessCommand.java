package org.heatwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.casting.CastInput;
import org.heatwright.app.casting.CastWords;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.CastFinenessJson;
import org.heatwright.work.casting.Fineness;
import org.heatwright.work.casting.Lot;
import org.heatwright.work.casting.Troy;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(CastFinenessJson.class)
@Command(
    name = "fineness",
    description = {
      "Melts lots of metal together and says what to add to come to a fineness.",
      "A fineness is karats (18k), thousandths (750) or a share (0.75); 14k is 583.3,",
      "its usual mark 585. Begin each lot with --fineness."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast fineness --metal-g 100 --fineness 750 --to 585",
      "  heatwright cast fineness --metal-g 100 --fineness 585 --to 750",
      "  heatwright cast fineness --fineness 18k --metal-g 31 \\",
      "      --fineness 14k --metal-dwt 4 --to 585 --adding 375"
    })
final class CastFinenessCommand implements Callable<Integer> {

  /** One lot of metal. */
  static final class LotOptions {
    @Option(names = "--metal-g", paramLabel = "G", description = "Its mass in grams.")
    private @Nullable Double grams;

    @Option(names = "--metal-ozt", paramLabel = "OZ", description = "The same in troy ounces.")
    private @Nullable Double ounces;

    @Option(names = "--metal-dwt", paramLabel = "DWT", description = "The same in pennyweight.")
    private @Nullable Double pennyweights;

    @Option(names = "--fineness", required = true, paramLabel = "F", description = "Its fineness.")
    private String fineness = "";
  }

  @ArgGroup(exclusive = false, multiplicity = "1..*", heading = "Each lot of metal:%n")
  private List<LotOptions> lots = new ArrayList<>();

  @Option(names = "--to", paramLabel = "F", description = "The fineness to come to.")
  private Optional<String> wantedText;

  @Option(
      names = "--adding",
      paramLabel = "F",
      description = "Fineness of what is added (pure to raise, none to lower).")
  private Optional<String> addingText;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastFinenessCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Lot together = Lot.together(lots.stream().map(CastFinenessCommand::lot).toList());
    if (wantedText.isEmpty() && addingText.isPresent()) {
      throw InputException.in("--adding", "needs --to, the fineness to come to.");
    }
    Optional<Fineness> wanted = wantedText.map(t -> CastInput.fineness("--to", t));
    Optional<Lot> add = wanted.map(w -> addition(together, w));
    List<String> notes = new ArrayList<>();
    wanted.flatMap(Fineness::mark).ifPresent(mark -> notes.add(markNote(together, mark)));
    notes.add(
        "Exact for the masses given: scales, losses in melting and an unsure fineness come on top. A"
            + " marked fineness is for an assay to prove; marks and what they allow differ from land"
            + " to land.");
    answer.give(
        surroundings, CastFinenessJson.of(together, add, notes), page(together, add, notes));
    return Answer.DONE;
  }

  private static Lot lot(LotOptions options) {
    Map<String, Optional<Double>> masses = CastInput.options();
    masses.put("--metal-g", Optional.ofNullable(options.grams));
    masses.put("--metal-ozt", Optional.ofNullable(options.ounces));
    masses.put("--metal-dwt", Optional.ofNullable(options.pennyweights));
    if (masses.values().stream().filter(Optional::isPresent).count() > 1) {
      throw InputException.in(
          "--fineness",
          "two masses are given for one lot; expected each lot to begin with --fineness and to have"
              + " one mass.");
    }
    Map.Entry<String, Double> mass = CastInput.oneOf(masses);
    double kilograms =
        switch (mass.getKey()) {
          case "--metal-ozt" -> Troy.kilogramsOfOunces(mass.getValue());
          case "--metal-dwt" -> Troy.kilogramsOfPennyweights(mass.getValue());
          default -> mass.getValue() / 1000;
        };
    return new Lot(kilograms, CastInput.fineness("--fineness", options.fineness));
  }

  private Lot addition(Lot together, Fineness wanted) {
    boolean raise = wanted.compareTo(together.fineness()) > 0;
    Fineness adding =
        addingText
            .map(t -> CastInput.fineness("--adding", t))
            .orElse(raise ? Fineness.PURE : Fineness.NONE);
    return CastInput.blaming(
        addingText.isPresent() ? "--adding" : "--to", () -> together.addition(wanted, adding));
  }

  private String markNote(Lot together, Fineness mark) {
    String how;
    try {
      how = " To it: add %s.".formatted(CastWords.grams(addition(together, mark).kilograms()));
    } catch (InputException e) {
      how = "";
    }
    return "The usual mark is %s, not the plain fraction.%s"
        .formatted(CastWords.figure(mark.thousandths()), how);
  }

  private static Page page(Lot together, Optional<Lot> add, List<String> notes) {
    Page page = new Page();
    String start =
        "%s of %s".formatted(CastWords.grams(together.kilograms()), words(together.fineness()));
    if (add.isEmpty()) {
      page.line("Together: %s.".formatted(start));
    } else if (add.get().kilograms() == 0) {
      page.line("%s: nothing to add.".formatted(start));
    } else {
      Lot result = together.and(add.get());
      page.line(
          "To %s add %s of %s: %s of %s."
              .formatted(
                  start,
                  CastWords.grams(add.get().kilograms()),
                  added(add.get().fineness()),
                  CastWords.grams(result.kilograms()),
                  words(result.fineness())));
    }
    double kilograms = add.map(together::and).orElse(together).kilograms();
    page.hanging(
        "  ",
        "in troy weight %s oz or %s dwt in all"
            .formatted(
                CastWords.figure(Troy.ounces(kilograms)),
                CastWords.figure(Troy.pennyweights(kilograms))));
    page.blank();
    notes.forEach(note -> page.hanging("note  ", note));
    return page;
  }

  private static String added(Fineness fineness) {
    if (fineness.equals(Fineness.PURE)) {
      return "the pure metal";
    }
    return fineness.equals(Fineness.NONE) ? "alloy without any" : words(fineness);
  }

  private static String words(Fineness fineness) {
    return "%s (%s k)"
        .formatted(CastWords.figure(fineness.thousandths()), CastWords.figure(fineness.karats()));
  }
}
