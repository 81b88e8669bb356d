package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.enamel.KeptPiece;
import org.heatwright.app.enamel.LoggedSession;
import org.heatwright.app.enamel.PieceHistory;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.json.KeptPiecesJson;
import org.heatwright.app.json.PiecesJson;
import org.heatwright.app.plot.PiecePlot;
import org.heatwright.app.store.PieceEntry;
import org.heatwright.app.store.Store;
import org.heatwright.inspect.Wording;
import org.heatwright.kiln.Kiln;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.EnamelJudge;
import org.heatwright.work.EnamelOutlook;
import org.heatwright.work.EnamelPieceCurve;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.Outcome;
import org.heatwright.work.Work;
import org.heatwright.work.enamel.LoggedPieces;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers({PiecesJson.class, KeptPiecesJson.class})
@Command(
    name = "pieces",
    description = {
      "What to expect of an enamelled piece that goes into the hot kiln, from the door's shutting on; with logs: each session split into its pieces by the dips of the door.",
      "What logs tell of named pieces can be kept, and listed later."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright pieces --work brooches.yaml --kiln buoy.yaml --plot piece.svg",
      "  heatwright pieces --log friday.csv --work brooches.yaml --kiln buoy.yaml",
      "  heatwright pieces --log friday.csv --log sunday.csv --work brooches.yaml \\",
      "      --kiln buoy.yaml --json",
      "  heatwright pieces --log friday.csv --work brooches.yaml --kiln buoy.yaml \\",
      "      --keep",
      "  heatwright pieces --kept --piece \"brooch 3\"",
      "  An event column may tell what the reading cannot:",
      "      door-open brooch 3, coat 2, left",
      "      door-open empty                     (nothing goes in)"
    })
final class PiecesCommand implements Callable<Integer> {

  @Option(
      names = "--log",
      paramLabel = "L",
      description = "Log of a session; may be given again for more sessions.")
  private List<Path> logs = List.of();

  @Option(
      names = "--work",
      paramLabel = "W",
      description = "Work file, enamel; always, but for --kept.")
  private Optional<Path> workPath;

  @Option(names = "--kiln", paramLabel = "K", description = "Kiln file; always, but for --kept.")
  private Optional<Path> kilnPath;

  @Option(
      names = "--two-openings",
      description =
          "The door is opened once to put a piece in and once to take it out; usual: at one opening"
              + " one comes out and the next goes in.")
  private boolean twoOpenings;

  @Option(
      names = "--plot",
      paramLabel = "FILE",
      description = "Draws the piece on its own clock there (.svg or .png).")
  @Written
  private Optional<Path> plot;

  @Option(
      names = "--keep",
      description = "Keeps what the logs tell of named pieces; the same log again replaces itself.")
  private boolean keep;

  @Option(names = "--kept", description = "Lists what was kept of pieces, and does nothing else.")
  private boolean kept;

  @Option(names = "--piece", paramLabel = "NAME", description = "With --kept: this piece only.")
  private Optional<String> piece;

  @Mixin private InUnit degrees;

  @Mixin private OwnStore ownStore;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  PiecesCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    if (kept) {
      return listKept();
    }
    if (piece.isPresent()) {
      throw InputException.in("--piece", "it chooses from what was kept; add --kept.");
    }
    if (keep && logs.isEmpty()) {
      throw InputException.in("--keep", "there is no log to keep the pieces of; add --log.");
    }
    Path file = workPath.orElseThrow(() -> missing("--work", "a work file of kind enamel"));
    Work work = Input.work(file);
    if (!(work instanceof EnamelWork enamel)) {
      throw InputException.in(file.toString(), "this work is no enamel; expected kind: enamel.");
    }
    Kiln kiln = Input.kiln(kilnPath.orElseThrow(() -> missing("--kiln", "a kiln file"))).kiln();
    LoggedPieces.Openings openings =
        twoOpenings ? LoggedPieces.Openings.TWO_A_PIECE : LoggedPieces.Openings.ONE_A_PIECE;
    plot.ifPresent(PlotFile::require);
    Composition composition = Composer.compose(enamel, kiln, Optional.empty());
    EnamelOutlook outlook = ((EnamelJudge) composition.judge()).known();
    TemperatureUnit unit = degrees.unit();
    LoggedSession.Judge judge = LoggedSession.judge(enamel, outlook);
    List<LoggedSession> sessions = new ArrayList<>();
    for (Path path : logs) {
      LogFile.Log log = Input.log(path);
      sessions.add(LoggedSession.of(path.toString(), log, judge, openings));
    }
    List<PieceHistory> histories = PieceHistory.of(sessions, enamel);
    List<Outcome> outcomes = composition.judge().outcomes(composition.schedule(), List.of());
    Optional<String> drawn =
        plot.map(
            path ->
                PlotFile.write(
                    path,
                    PiecePlot.of(
                        "%s, %s enamel, in %s"
                            .formatted(
                                enamel.metal().words(), enamel.hardness().words(), kiln.name()),
                        outlook,
                        unit)));
    Page page =
        sessions.isEmpty()
            ? expected(outlook, outcomes, unit)
            : page(sessions, histories, judge, unit);
    drawn.ifPresent(sentence -> page.blank().line(sentence));
    if (keep) {
      page.blank().line(keepPieces(sessions, enamel, kiln));
    }
    answer.give(surroundings, PiecesJson.of(outlook, outcomes, sessions, histories), page);
    return Answer.DONE;
  }

  private static InputException missing(String option, String expected) {
    return InputException.in(option, "it is missing; expected %s.".formatted(expected));
  }

  // ---- what is kept

  /** Keeps the named pieces of all logs; says how many. */
  private String keepPieces(List<LoggedSession> sessions, EnamelWork work, Kiln kiln) {
    int firings = 0;
    try (Store store = ownStore.open(surroundings)) {
      for (int i = 0; i < logs.size(); i++) {
        Path path = logs.get(i);
        List<PieceEntry> rows =
            KeptPiece.rows(
                sessions.get(i),
                String.valueOf(path.getFileName()),
                Input.log(path).start(),
                work,
                kiln.name());
        store.keepPieces(Input.logText(path), rows);
        firings += rows.size();
      }
    }
    return firings == 0
        ? "Nothing kept: no log names a piece. An event such as door-open brooch 3 does."
        : "Kept: %d firing%s of named pieces.".formatted(firings, firings == 1 ? "" : "s");
  }

  private int listKept() {
    try (Store store = ownStore.open(surroundings)) {
      List<KeptPiece> all = KeptPiece.of(store.pieces());
      List<KeptPiece> chosen =
          all.stream().filter(one -> piece.isEmpty() || one.name().equals(piece.get())).toList();
      if (piece.isPresent() && chosen.isEmpty()) {
        throw InputException.in(
            "--piece",
            "nothing was kept of \"%s\"; expected %s."
                .formatted(
                    piece.get(),
                    all.isEmpty()
                        ? "the name of a piece, but none was kept yet"
                        : all.stream().map(KeptPiece::name).collect(Collectors.joining(" or "))));
      }
      Page page = new Page();
      if (chosen.isEmpty()) {
        page.line("Nothing was kept yet: heatwright pieces --log ... --keep does.");
      }
      for (KeptPiece one : chosen) {
        page.line(one.words());
        for (PieceEntry firing : one.firings()) {
          page.hanging(
              "  ", KeptPiece.words(firing, degrees.unit(), surroundings.clock().getZone()));
        }
      }
      answer.give(surroundings, KeptPiecesJson.of(chosen), page);
    }
    return Answer.DONE;
  }

  /** The piece on its own clock, and what it does. */
  private static Page expected(
      EnamelOutlook outlook, List<Outcome> outcomes, TemperatureUnit unit) {
    Page page = new Page();
    page.line(
        "From the door's shutting, at %s:"
            .formatted(Wording.whole(outlook.working().celsius(), unit)));
    List<EnamelPieceCurve.Row> rows = outlook.curve().rows();
    for (int i = 0; i < rows.size(); i += 6) {
      EnamelPieceCurve.Row row = rows.get(i);
      page.line(
          "%6.0f s   piece %4.0f to %4.0f %s   chamber %4.0f %s"
              .formatted(
                  row.seconds(),
                  unit.value(Temperature.ofCelsius(row.lowCelsius())),
                  unit.value(Temperature.ofCelsius(row.highCelsius())),
                  unit.symbol(),
                  unit.value(Temperature.ofCelsius(row.chamberCelsius())),
                  unit.symbol()));
    }
    page.blank();
    for (Outcome outcome : outcomes) {
      page.hanging(
          "  ",
          Wording.in(
              "%s%s: %s. %s (%s)"
                  .formatted(
                      outcome
                          .severity()
                          .map(s -> s.name().toLowerCase(Locale.ROOT) + ": ")
                          .orElse(""),
                      outcome.what(),
                      outcome.value(),
                      outcome.meaning(),
                      outcome.origin().words()),
              unit));
    }
    return page;
  }

  private static Page page(
      List<LoggedSession> sessions,
      List<PieceHistory> histories,
      LoggedSession.Judge judge,
      TemperatureUnit unit) {
    Page page = new Page();
    for (LoggedSession session : sessions) {
      page.line(session.headline());
      if (session.pieces().firings().isEmpty()) {
        page.line(
            Wording.in(
                "No opening of the door shows: nothing fell by 12 K and came back, and no event"
                    + " tells one.",
                unit));
        continue;
      }
      page.line(session.doorWords(unit));
      for (LoggedPieces.Firing firing : session.pieces().firings()) {
        page.hanging("%4d  ".formatted(firing.number()), session.words(firing, unit));
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
