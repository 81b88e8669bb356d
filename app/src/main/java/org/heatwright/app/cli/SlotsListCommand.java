package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.json.SlotsJson;
import org.heatwright.app.report.PageSize;
import org.heatwright.app.report.RegisterPdf;
import org.heatwright.app.report.RegisterSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Answers(SlotsJson.class)
@Command(
    name = "list",
    description = "Says what is in every slot of a kiln's keypad, and whether it is proven.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright slots list --kiln Anchor --keypad Gull",
      "  heatwright slots list --kiln Anchor --print register.pdf --paper letter"
    })
final class SlotsListCommand extends SlotsAction {

  /** Papers by the words of the command line. */
  enum Paper {
    a4(PageSize.A4),
    letter(PageSize.LETTER);

    private final PageSize size;

    Paper(PageSize size) {
      this.size = size;
    }
  }

  @Option(
      names = "--print",
      paramLabel = "PDF",
      description = "Write the register as a PDF, to hang by the kiln.")
  @Written
  private Optional<Path> print;

  @Option(
      names = "--paper",
      paramLabel = "PAPER",
      defaultValue = "a4",
      description = "a4 or letter. Usual: ${DEFAULT-VALUE}.")
  private Paper paper;

  SlotsListCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  List<String> act(Place place) {
    return print
        .map(
            path ->
                List.of(
                    Output.write(
                        path,
                        Output.Kind.PDF,
                        RegisterPdf.render(
                            RegisterSheet.of(
                                place.kiln(),
                                place.name(),
                                place.register(),
                                place.now(),
                                place.zone()),
                            paper.size))))
        .orElse(List.of());
  }
}
