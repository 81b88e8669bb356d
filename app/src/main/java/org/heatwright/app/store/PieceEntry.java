package org.heatwright.app.store;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One firing of a named piece, as the log of its session told it.
 *
 * @param piece what the log calls it
 * @param number of the firing in its log, 1-based
 * @param coat which coat, where the log says so
 * @param place where in the kiln, or empty
 * @param log name of the log's file
 * @param kiln name of the kiln
 * @param metal what carries the enamel, one word of work files
 * @param fired when it went in, to the millisecond, where the log tells clock times with their
 *     offset
 * @param inSeconds when it went in, s in the log
 * @param staySeconds from the door's shutting to its opening, s
 * @param workingCelsius where heat-work is counted, °C
 * @param heatSeconds heat-work, s at that temperature
 * @param hottestCelsius the piece at its hottest, °C
 * @param look the stage that this makes likely, one word of work files
 */
public record PieceEntry(
    String piece,
    int number,
    OptionalInt coat,
    String place,
    String log,
    String kiln,
    String metal,
    Optional<Instant> fired,
    double inSeconds,
    double staySeconds,
    double workingCelsius,
    double heatSeconds,
    double hottestCelsius,
    String look) {}
