package org.heatwright.app.web;

import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.app.enamel.KeptPiece;
import org.heatwright.app.enamel.LoggedSession;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.WorkFile;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.PieceEntry;
import org.heatwright.app.store.Store;
import org.heatwright.inspect.Wording;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Composer;
import org.heatwright.work.EnamelJudge;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.WorkRefusedException;
import org.heatwright.work.enamel.LoggedPieces;

/** Splits the log of an enamelling session into its pieces, and keeps what it tells of them. */
final class PiecesDesk {

  private final Store store;
  private final Clock clock;

  PiecesDesk(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /**
   * Which log is meant, and how it is read.
   *
   * @param kiln its name on the shelf
   * @param log its id
   * @param work an enamel work on the shelf; empty or unknown: the first one
   * @param twoOpenings whether the door is opened twice a piece
   */
  record Asked(String kiln, String log, String work, boolean twoOpenings) {}

  /** A session with its rows to keep. */
  private record Split(LoggedSession session, LoggedSession.Judge judge, List<PieceEntry> rows) {}

  /**
   * @param unit of every temperature
   */
  PiecesPage page(String time, Optional<Asked> asked, TemperatureUnit unit) {
    List<PiecesPage.Kept> kept =
        KeptPiece.of(store.pieces()).stream()
            .map(
                piece ->
                    new PiecesPage.Kept(
                        piece.words(),
                        piece.firings().stream()
                            .map(firing -> KeptPiece.words(firing, unit, clock.getZone()))
                            .toList()))
            .toList();
    return new PiecesPage(time, unit.letter(), asked.flatMap(a -> session(a, unit)), kept);
  }

  /** Keeps its named pieces; the same log again replaces what it told. */
  void keep(Asked asked) {
    log(asked)
        .ifPresent(
            log ->
                work(asked)
                    .ifPresent(
                        work -> store.keepPieces(log.csv(), split(asked, log, work).rows())));
  }

  private Optional<FiringLog> log(Asked asked) {
    return store.logs(asked.kiln()).stream().filter(l -> l.id().equals(asked.log())).findFirst();
  }

  private Optional<PiecesPage.Session> session(Asked asked, TemperatureUnit unit) {
    return log(asked).map(log -> session(asked, log, unit));
  }

  private PiecesPage.Session session(Asked asked, FiringLog log, TemperatureUnit unit) {
    Optional<Document> work = work(asked);
    if (work.isEmpty()) {
      return refused(
          asked, log, "There is no enamel on the shelf to judge it by: put a work there first.");
    }
    try {
      Split split = split(asked, log, work.get());
      LoggedSession session = split.session();
      List<LoggedPieces.Firing> firings = session.pieces().firings();
      return new PiecesPage.Session(
          session.headline(),
          options(work),
          asked.twoOpenings(),
          firings.isEmpty()
              ? Wording.in(
                  "No opening of the door shows: nothing fell by 12 K and came back, and no event tells one.",
                  unit)
              : "",
          firings.isEmpty() ? "" : session.doorWords(unit),
          firings.stream().map(f -> session.words(f, unit)).toList(),
          Wording.in(split.judge().caveat(), unit),
          split.rows().size(),
          new PiecesPage.Hidden(asked.kiln(), log.id()));
    } catch (InputException | WorkRefusedException e) {
      return refused(
          asked, log, Wording.capital(Objects.requireNonNull(e.getMessage(), "message")));
    }
  }

  private PiecesPage.Session refused(Asked asked, FiringLog log, String why) {
    return new PiecesPage.Session(
        log.name(),
        options(work(asked)),
        asked.twoOpenings(),
        why,
        "",
        List.of(),
        "",
        0,
        new PiecesPage.Hidden(asked.kiln(), log.id()));
  }

  private Split split(Asked asked, FiringLog log, Document document) {
    EnamelWork work = (EnamelWork) WorkFile.read(document.text(), document.name());
    var kiln =
        KilnFile.read(
            store
                .find(Kind.KILN, asked.kiln())
                .orElseThrow(() -> InputException.in("kiln", "it is not on the shelf any more."))
                .text(),
            asked.kiln());
    EnamelJudge known = (EnamelJudge) Composer.compose(work, kiln, Optional.empty()).judge();
    LoggedSession.Judge judge = LoggedSession.judge(work, known.known());
    LogFile.Log read = LogFile.read(log.csv(), log.name());
    LoggedSession session =
        LoggedSession.of(
            log.name(),
            read,
            judge,
            asked.twoOpenings()
                ? LoggedPieces.Openings.TWO_A_PIECE
                : LoggedPieces.Openings.ONE_A_PIECE);
    return new Split(
        session, judge, KeptPiece.rows(session, log.name(), read.start(), work, asked.kiln()));
  }

  private Optional<Document> work(Asked asked) {
    List<Document> enamel = enamel();
    return enamel.stream()
        .filter(d -> d.name().equals(asked.work()))
        .findFirst()
        .or(() -> enamel.stream().findFirst());
  }

  private List<Page.Option> options(Optional<Document> chosen) {
    return enamel().stream()
        .map(
            d ->
                new Page.Option(
                    d.name(), chosen.filter(c -> c.name().equals(d.name())).isPresent()))
        .toList();
  }

  /** Enamel on the shelf; what cannot be read is none. */
  private List<Document> enamel() {
    return store.all(Kind.WORK).stream().filter(PiecesDesk::isEnamel).toList();
  }

  private static boolean isEnamel(Document document) {
    try {
      return WorkFile.read(document.text(), document.name()) instanceof EnamelWork;
    } catch (InputException e) {
      return false;
    }
  }
}
