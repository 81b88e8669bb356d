package org.heatwright.app.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.catalogue.Catalogue;
import org.heatwright.app.catalogue.Shelf;
import org.heatwright.app.json.MaterialsJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

@Answers(MaterialsJson.class)
@Command(
    name = "materials",
    description = {
      "Prints what is known of materials, every value with where it is from: read in a source, from memory, common practice, an estimate."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright materials sterling",
      "  heatwright materials float glass --unit F",
      "  heatwright materials --json"
    })
final class MaterialsCommand implements Callable<Integer> {

  @Parameters(
      arity = "0..*",
      paramLabel = "WORDS",
      description = "Only what all these words are found in.")
  private List<String> words = List.of();

  @Mixin private InUnit inUnit;
  @Mixin private Answer answer;

  private final Surroundings surroundings;

  MaterialsCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    String wanted = String.join(" ", words);
    List<Shelf> found =
        new Catalogue(inUnit.unit())
            .shelves().stream()
                .map(shelf -> wanted.isBlank() ? shelf : shelf.matching(wanted))
                .filter(shelf -> !shelf.items().isEmpty())
                .toList();
    answer.give(surroundings, MaterialsJson.of(inUnit.unit(), found), page(wanted, found));
    return Answer.DONE;
  }

  private static Page page(String wanted, List<Shelf> found) {
    Page page = new Page();
    if (found.isEmpty()) {
      page.line("Nothing here speaks of \"%s\".".formatted(wanted));
    }
    for (Shelf shelf : found) {
      page.line(shelf.name() + ". " + shelf.about()).blank();
      for (Shelf.Item item : shelf.items()) {
        page.line(item.name());
        for (Shelf.Value value : item.values()) {
          page.hanging(
              "  ", "%s: %s (%s)".formatted(value.what(), value.value(), value.origin().words()));
        }
        page.blank();
      }
    }
    return page;
  }
}
