package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.catalogue.Shelf;
import org.heatwright.app.catalogue.ValueWords;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.OwnValues;
import org.heatwright.app.files.ValuesFile;
import org.heatwright.app.json.ValuesJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(ValuesJson.class)
@Command(
    name = "values",
    description = {
      "Reads your own values of a material, and puts them into a work that takes them.",
      "All else in the work's file stays as you wrote it."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright values shop-powder.yaml",
      "  heatwright values shop-powder.yaml --work harbour.yaml -o harbour-new.yaml"
    })
final class ValuesCommand implements Callable<Integer> {

  @Parameters(paramLabel = "VALUES", description = "File of your own values.")
  private Path valuesPath;

  @Option(names = "--work", paramLabel = "W", description = "Work file to put them into.")
  private Optional<Path> workPath;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "NEW",
      description =
          "Write the changed work there. A work that is there already is kept under its name with"
              + " ~ at the end; any other file is left alone.")
  @Written(inPlace = true)
  private Optional<Path> output;

  @Mixin private InUnit inUnit;
  @Mixin private Answer answer;

  private final Surroundings surroundings;

  ValuesCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    if (workPath.isPresent() != output.isPresent()) {
      throw InputException.in(
          output.isPresent() ? "--work" : "--output",
          output.isPresent()
              ? "--output is given without it; expected the work to put the values into."
              : "--work is given without it; expected the name of the file for the changed work.");
    }
    output.ifPresent(path -> Output.requireReplaceable(path, Output.Kind.WORK));
    OwnValues values = Input.values(valuesPath);
    Optional<String> written =
        workPath.map(
            work -> {
              String changed =
                  ValuesFile.into(
                      values, name(), Input.workText(work), String.valueOf(work.getFileName()));
              return Output.write(output.orElseThrow(), Output.Kind.WORK, changed);
            });
    Shelf.Item item = ValueWords.item(name(), values, inUnit.unit());
    Page page = new Page();
    page.line("%s, %s, from: %s".formatted(name(), ValueWords.of(values.of()), values.source()));
    item.values().forEach(v -> page.hanging("  ", "%s: %s".formatted(v.what(), v.value())));
    written.ifPresent(sentence -> page.blank().line(sentence));
    answer.give(surroundings, ValuesJson.of(name(), values), page);
    return Answer.DONE;
  }

  /** "shop-powder" for {@code shop-powder.yaml}. */
  private String name() {
    return String.valueOf(valuesPath.getFileName()).replaceFirst("\\.ya?ml$", "");
  }
}
