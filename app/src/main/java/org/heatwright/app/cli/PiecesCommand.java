package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.heatwright.app.enamel.LoggedSession;
import org.heatwright.app.enamel.PieceHistory;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.json.PiecesJson;
import org.heatwright.kiln.Kiln;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.Work;
import org.heatwright.work.enamel.LoggedPieces;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "pieces",
    description = {
      "Splits the log of an enamelling session into its pieces, by the dips of the door.",
      "Each gets its time, its heat-work and what it looks like by that; named pieces get a history."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright pieces --log friday.csv --work brooches.yaml --kiln buoy.yaml",
      "  heatwright pieces --log friday.csv --log sunday.csv --work brooches.yaml \\",
      "      --kiln buoy.yaml --json",
      "  An event column may tell what the reading cannot:",
      "      door-open brooch 3, coat 2, left"
    })
final class PiecesCommand implements Callable<Integer> {

  @Option(
      names = "--log",
      required = true,
      paramLabel = "L",
      description = "Log of a session; may be given again for more sessions.")
  private List<Path> logs;

  @Option(names = "--work", required = true, paramLabel = "W", description = "Work file, enamel.")
  private Path workPath;

  @Option(names = "--kiln", required = true, paramLabel = "K", description = "Kiln file.")
  private Path kilnPath;

  @Option(
      names = "--two-openings",
      description =
          "The door is opened once to put a piece in and once to take it out; usual: at one opening"
              + " one comes out and the next goes in.")
  private boolean twoOpenings;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  PiecesCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Work work = Input.work(workPath);
    if (!(work instanceof EnamelWork enamel)) {
      throw InputException.in(
          workPath.toString(), "this work is no enamel; expected kind: enamel.");
    }
    Kiln kiln = Input.kiln(kilnPath).kiln();
    LoggedPieces.Openings openings =
        twoOpenings ? LoggedPieces.Openings.TWO_A_PIECE : LoggedPieces.Openings.ONE_A_PIECE;
    LoggedSession.Judge judge = LoggedSession.judge(enamel, kiln);
    List<LoggedSession> sessions = new ArrayList<>();
    for (Path path : logs) {
      LogFile.Log log = Input.log(path);
      sessions.add(LoggedSession.of(path.toString(), log, judge, openings));
    }
    List<PieceHistory> histories = PieceHistory.of(sessions, enamel);
    answer.give(surroundings, PiecesJson.of(sessions, histories), page(sessions, histories, judge));
    return Answer.DONE;
  }

  private static Page page(
      List<LoggedSession> sessions, List<PieceHistory> histories, LoggedSession.Judge judge) {
    Page page = new Page();
    for (LoggedSession session : sessions) {
      page.line(session.headline());
      if (session.pieces().firings().isEmpty()) {
        page.line(
            "No opening of the door shows: nothing fell by 12 K and came back, and no event tells"
                + " one.");
        continue;
      }
      page.line(session.doorWords());
      for (LoggedPieces.Firing firing : session.pieces().firings()) {
        page.hanging("%4d  ".formatted(firing.number()), session.words(firing));
      }
      page.blank();
    }
    if (!histories.isEmpty()) {
      page.line("By piece:");
      histories.forEach(history -> page.hanging("  - ", history.words()));
      page.blank();
    }
    page.line(judge.caveat());
    return page;
  }
}
