package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.forecast.StartPlan;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Schedule;

/**
 * A log on the program's clock: a logger may have begun earlier or later.
 *
 * @param log its rows counted from the program's start
 */
record AlignedLog(LogFile.Log log, LogAlignment alignment) {

  static AlignedLog of(Path path, LogFile.Log log, Schedule schedule, Fire.Planned planned) {
    LogAlignment alignment =
        LogAlignment.of(
            planned.kiln(),
            new LoggedFiring(
                path.toString(),
                schedule,
                planned.conditions(),
                planned.charge(),
                WatchedFiring.readings(log)));
    return new AlignedLog(log.startingAt(alignment.startSeconds()), alignment);
  }

  Readings readings() {
    return alignment.firing().readings();
  }

  /** When the program began: the log's own clock goes first, then the start that was given. */
  Optional<ZonedDateTime> start(Fire.Planned planned) {
    return planned
        .kiln()
        .timeZone()
        .flatMap(zone -> WatchedFiring.start(log, zone))
        .or(() -> planned.start().map(StartPlan::start));
  }

  /** What is odd about it, one sentence each. */
  List<String> notes() {
    List<String> notes = new ArrayList<>(log.remarks());
    notes.addAll(alignment.told());
    return notes;
  }
}
