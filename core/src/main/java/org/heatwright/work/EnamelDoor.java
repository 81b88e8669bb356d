package org.heatwright.work;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.kiln.LumpedLoad;
import org.heatwright.material.HeatCurves;
import org.heatwright.mould.Surroundings;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.enamel.DoorDips;
import org.heatwright.work.enamel.Range;

/**
 * What the chamber does after its door was opened at the working heat and shut again behind a cold
 * piece.
 *
 * @param draws equally likely chambers, seconds from the door's shutting
 * @param usual the chamber of the median kiln
 * @param fallKelvins how far the display falls
 * @param backSeconds from the shutting until it is back; infinite where it is not while followed
 * @param simulated whether it is this kiln's; else an estimate for any kiln
 */
public record EnamelDoor(
    List<Surroundings> draws,
    Surroundings usual,
    Range fallKelvins,
    Range backSeconds,
    boolean simulated) {

  /** How long the door stands open to take one piece out and put the next in, s. Estimate. */
  public static final double OPEN_SECONDS = 20;

  /** How long the chamber is followed, s. */
  public static final double FOLLOWED_SECONDS = 1200;

  private static final double SAMPLE_SECONDS = 5;

  public EnamelDoor {
    draws = List.copyOf(draws);
  }

  /** Tells it of a kiln at a working temperature. Values of a kind are equal. */
  public interface Model {
    /**
     * What the chamber does.
     *
     * @param cold what goes in when the door shuts, in place of as much that is hot
     */
    EnamelDoor at(Kiln kiln, Temperature working, List<LumpedLoad> cold);
  }

  /**
   * By the kiln's own model, as far as it is known: draws of what is believed of it.
   *
   * @param count how many, an odd number: the last one is the median kiln
   */
  public record Simulated(int count) implements Model {

    public Simulated {
      if (count % 2 == 0) {
        throw new IllegalArgumentException(
            "The draws of a door are an odd number, but %d were asked for.".formatted(count));
      }
    }

    /** A kiln that is not there after so long will not be. */
    private static final Duration LONGEST = Duration.ofHours(6);

    private static final double LOOK_SECONDS = 1800;

    /** Nearer than this, the display has arrived, K. */
    private static final double ARRIVED_KELVINS = 5;

    /** So many draws that their ends are within a seventh of what many more tell (tested). */
    private static final int USUAL_DRAWS = 33;

    /** Enough draws for nine in ten. */
    public static Simulated usual() {
      return new Simulated(USUAL_DRAWS);
    }

    @Override
    public EnamelDoor at(Kiln kiln, Temperature working, List<LumpedLoad> cold) {
      Schedule schedule =
          Schedule.of(
              "door",
              TemperatureUnit.CELSIUS,
              List.of(new Segment(Ramp.fastest(), working, LONGEST)));
      HeatCurves curves = new HeatCurves();
      List<Optional<Opened>> opened =
          kiln.beliefs().ensemble(kiln, count, 1L).parallelStream()
              .map(draw -> opened(kiln, draw, cold, schedule, working, curves))
              .toList();
      if (opened.stream().anyMatch(Optional::isEmpty)) {
        return new Estimated().at(kiln, working, cold);
      }
      List<Opened> all = opened.stream().map(Optional::orElseThrow).toList();
      return new EnamelDoor(
          all.stream().map(Opened::around).toList(),
          all.get(count - 1).around(),
          Range.ofSample(all.stream().mapToDouble(Opened::fallKelvins).toArray()),
          Range.ofSample(all.stream().mapToDouble(Opened::backSeconds).toArray()),
          true);
    }

    private record Opened(Surroundings around, double fallKelvins, double backSeconds) {}

    private static Optional<Opened> opened(
        Kiln kiln,
        KilnParameters draw,
        List<LumpedLoad> cold,
        Schedule schedule,
        Temperature working,
        HeatCurves curves) {
      Optional<FiringSimulation.Checkpoint> before = Optional.empty();
      double arrives = Double.POSITIVE_INFINITY;
      // Half an hour at a time: most kilns are there soon.
      for (double to = LOOK_SECONDS; to <= LONGEST.toSeconds(); to += LOOK_SECONDS) {
        FiringSimulation shut =
            simulation(kiln, draw, cold, schedule, curves, FiringConditions.usual());
        before.ifPresent(shut::resume);
        shut.runProgram(to);
        arrives = shut.run().arrivalSeconds(0, working.celsius(), ARRIVED_KELVINS, to);
        if (Double.isFinite(arrives)) {
          break;
        }
        before = shut.checkpoint();
      }
      if (Double.isInfinite(arrives)) {
        return Optional.empty();
      }
      double opens = arrives + EnamelRules.SETTLE.toSeconds();
      double shuts = opens + OPEN_SECONDS;
      FiringSimulation open =
          simulation(
              kiln,
              draw,
              cold,
              schedule,
              curves,
              FiringConditions.usual()
                  .with(new Disturbance(Disturbance.Kind.DOOR_OPEN, opens, OPEN_SECONDS)));
      // Up to where it had not arrived yet, the day is the same with and without the door.
      before.ifPresent(open::resume);
      open.changeLoadAt(shuts);
      open.runProgram(shuts + FOLLOWED_SECONDS);
      FiringRun run = open.run();
      double shown = run.readingCelsiusAt(opens - 1);
      double low = shown;
      double lowAt = shuts;
      for (double second = opens; second <= shuts + FOLLOWED_SECONDS; second += SAMPLE_SECONDS) {
        if (run.readingCelsiusAt(second) < low) {
          low = run.readingCelsiusAt(second);
          lowAt = second;
        }
      }
      double back = Double.POSITIVE_INFINITY;
      for (double second = Math.max(lowAt, shuts);
          second <= shuts + FOLLOWED_SECONDS;
          second += SAMPLE_SECONDS) {
        if (run.readingCelsiusAt(second) >= shown - DoorDips.BACK_KELVINS) {
          back = second - shuts;
          break;
        }
      }
      Surroundings around =
          Surroundings.sampled(
                  FOLLOWED_SECONDS,
                  SAMPLE_SECONDS,
                  second -> run.airCelsiusAt(shuts + second),
                  second -> run.radiantCelsiusAt(shuts + second))
              .thinned(0.5);
      return Optional.of(new Opened(around, shown - low, back));
    }

    private static FiringSimulation simulation(
        Kiln kiln,
        KilnParameters draw,
        List<LumpedLoad> cold,
        Schedule schedule,
        HeatCurves curves,
        FiringConditions conditions) {
      return new FiringSimulation(
          kiln, draw, conditions, cold, schedule, FiringSimulation.Accuracy.USUAL, curves);
    }
  }

  /**
   * For a kiln that cannot be simulated to its working heat: it falls by some 75 K and comes back
   * in some five minutes (read, a blog on enamelled steel samples, one loaded studio kiln).
   */
  public record Estimated() implements Model {

    @Override
    public EnamelDoor at(Kiln kiln, Temperature working, List<LumpedLoad> cold) {
      double top = working.celsius();
      return new EnamelDoor(
          List.of(dip(top, 50, 60), dip(top, 75, 110), dip(top, 100, 180)),
          dip(top, 75, 110),
          Range.of(50, 75, 100),
          Range.of(140, 300, 540),
          false);
    }

    private static Surroundings dip(double top, double fall, double constantSeconds) {
      return Surroundings.sampled(
              FOLLOWED_SECONDS,
              30,
              second -> top - fall * Math.exp(-second / constantSeconds),
              second -> top - fall * Math.exp(-second / constantSeconds))
          .thinned(1);
    }
  }
}
